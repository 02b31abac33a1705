/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-application.h"

#include <glib/gi18n-lib.h>

#include "tb-help-window.h"
#include "tb-preferences-window.h"
#include "tb-spoken-names.h"
#include "tb-style.h"
#include "tb-window.h"
#include "tb-word.h"

struct _TbApplication
{
  GtkApplication parent_instance;
  TbLibrary *library;
  GtkWindow *help;        /* borrowed; NULL while there is none */
  GtkWindow *preferences; /* likewise */
  gboolean recovered;     /* what was left unsaved has been looked for */
};

G_DEFINE_FINAL_TYPE (TbApplication, tb_application, GTK_TYPE_APPLICATION)

typedef struct Shortcut
{
  const char *action;
  const char *keys[3]; /* ends with NULL */
} Shortcut;

static const Shortcut shortcuts[] = {
  { "win.throw", { "<Control>t", NULL } },
  { "win.pause", { "<Control>space", NULL } },
  { "win.keep-as-before", { "<Control>k", NULL } },
  { "win.swap", { "<Control>e", NULL } },
  { "win.put-back", { "<Control>b", NULL } },
  { "win.undo", { "<Control>z", NULL } },
  { "win.redo", { "<Shift><Control>z", "<Control>y", NULL } },
  { "win.new", { "<Control>n", NULL } },
  { "win.open", { "<Control>o", NULL } },
  { "win.save", { "<Control>s", NULL } },
  { "win.save-as", { "<Shift><Control>s", NULL } },
  { "win.handout", { "<Control>p", NULL } },
  { "win.edit-title", { "F2", NULL } },
  { "win.lessons", { "<Control>l", NULL } },
  { "win.copy-picture", { "<Shift><Control>c", NULL } },
  { "win.say", { "<Control>i", NULL } },
  { "win.fullscreen", { "F11", NULL } },
  { "win.clinic", { "F9", NULL } },
  { "win.lane-view::plan", { "<Alt>1", NULL } },
  { "win.lane-view::sideways", { "<Alt>2", NULL } },
  { "win.lane-view::approach", { "<Alt>3", NULL } },
  { "win.page::controls", { "<Alt>c", NULL } },
  { "win.page::results", { "<Alt>r", NULL } },
  { "window.close", { "<Control>w", NULL } },
  { "app.help", { "F1", NULL } },
  { "app.preferences", { "<Control>comma", NULL } },
  { "app.quit", { "<Control>q", NULL } },
};

TbLibrary *
tb_application_get_library (TbApplication *self)
{
  return self->library;
}

static TbWindow *
new_window (TbApplication *self)
{
  return tb_window_new (GTK_APPLICATION (self), self->library);
}

/* Once, when the first window is wanted. */
static void
recover (TbApplication *self)
{
  if (!self->recovered)
    tb_window_recover_all (GTK_APPLICATION (self), self->library);
  self->recovered = TRUE;
}

static void
tb_application_activate (GApplication *application)
{
  GtkWindow *window;

  recover (TB_APPLICATION (application));
  window = gtk_application_get_active_window (GTK_APPLICATION (application));

  if (window == NULL)
    {
      window = GTK_WINDOW (new_window (TB_APPLICATION (application)));
      tb_window_offer_tour (TB_WINDOW (window));
    }
  gtk_window_present (window);
}

/* A window that nothing was done in takes the first study; any other gets a window of its own. */
static void
open_file (TbApplication *self, GFile *file)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));
  TbWindow *window = TB_IS_WINDOW (active) ? TB_WINDOW (active) : NULL;

  if (window == NULL || !tb_window_is_fresh (window))
    window = new_window (self);
  /* First, so that what a lesson opens takes its size from it and stays before it. */
  gtk_window_present (GTK_WINDOW (window));
  tb_window_load (window, file);
}

static void
tb_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  recover (TB_APPLICATION (application));
  for (int i = 0; i < n_files; i++)
    open_file (TB_APPLICATION (application), files[i]);
}

static void
about (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  gtk_show_about_dialog (
      gtk_application_get_active_window (GTK_APPLICATION (user_data)), "program-name", _ ("Tenboard"),
      "version", PACKAGE_VERSION, "logo-icon-name", APP_ID, "comments",
      _ ("Shows why a bowling ball hooks as much as it does. What nobody has measured in public is "
         "assumed, and said to be; a number from here is a model's, not a measurement."),
      "license-type", GTK_LICENSE_GPL_3_0, NULL);
}

/* The one Help window, over the window that asks. */
static TbHelpWindow *
help_window (TbApplication *self)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));

  if (self->help == NULL)
    {
      self->help = GTK_WINDOW (tb_help_window_new (active));
      g_object_add_weak_pointer (G_OBJECT (self->help), (gpointer *) &self->help);
    }
  if (TB_IS_WINDOW (active))
    tb_style_set_text_size (GTK_WIDGET (self->help), tb_style_get_text_size (GTK_WIDGET (active)));
  return TB_HELP_WINDOW (self->help);
}

/* The word of what has the focus, or else all of Help. */
static void
help (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (user_data));

  if (active == NULL || !tb_word_show_focused (active))
    g_action_group_activate_action (G_ACTION_GROUP (user_data), "contents", NULL);
}

static void
contents (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  gtk_window_present (GTK_WINDOW (help_window (TB_APPLICATION (user_data))));
}

/* The parameter is a word's id; "" for all of them. */
static void
words (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  TbHelpWindow *window = help_window (TB_APPLICATION (user_data));

  gtk_window_present (GTK_WINDOW (window));
  tb_help_window_show_word (window, g_variant_get_string (parameter, NULL));
}

static void
open_preferences (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  TbApplication *self = TB_APPLICATION (user_data);
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));

  if (self->preferences == NULL)
    {
      self->preferences = GTK_WINDOW (tb_preferences_window_new (active));
      g_object_add_weak_pointer (G_OBJECT (self->preferences), (gpointer *) &self->preferences);
    }
  gtk_window_present (self->preferences);
}

/* Every window may have a question to ask first. */
static void
quit (GSimpleAction *action, GVariant *parameter, gpointer user_data)
{
  GList *windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (user_data)));

  for (GList *item = windows; item != NULL; item = item->next)
    gtk_window_close (item->data);
  g_list_free (windows);
}

static void
tb_application_startup (GApplication *application)
{
  static const GActionEntry entries[] = { { .name = "about", .activate = about },
                                          { .name = "help", .activate = help },
                                          { .name = "contents", .activate = contents },
                                          { .name = "quit", .activate = quit },
                                          { .name = "preferences", .activate = open_preferences },
                                          { .name = "words", .activate = words, .parameter_type = "s" } };

  G_APPLICATION_CLASS (tb_application_parent_class)->startup (application);
  g_action_map_add_action_entries (G_ACTION_MAP (application), entries, G_N_ELEMENTS (entries), application);
  for (gsize i = 0; i < G_N_ELEMENTS (shortcuts); i++)
    gtk_application_set_accels_for_action (GTK_APPLICATION (application), shortcuts[i].action,
                                           shortcuts[i].keys);
  gtk_window_set_default_icon_name (APP_ID);
  tb_style_init (gdk_display_get_default ());
  tb_spoken_names_init ();
  TB_APPLICATION (application)->library = tb_library_new ();
}

static void
tb_application_finalize (GObject *object)
{
  TbApplication *self = TB_APPLICATION (object);

  if (self->help != NULL)
    g_object_remove_weak_pointer (G_OBJECT (self->help), (gpointer *) &self->help);
  if (self->preferences != NULL)
    g_object_remove_weak_pointer (G_OBJECT (self->preferences), (gpointer *) &self->preferences);
  g_clear_object (&self->library);
  G_OBJECT_CLASS (tb_application_parent_class)->finalize (object);
}

static void
tb_application_class_init (TbApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tb_application_finalize;
  application_class->activate = tb_application_activate;
  application_class->open = tb_application_open;
  application_class->startup = tb_application_startup;
}

static void
tb_application_init (TbApplication *self)
{
}

TbApplication *
tb_application_new (void)
{
  return g_object_new (TB_TYPE_APPLICATION, "application-id", APP_ID, "flags", G_APPLICATION_HANDLES_OPEN,
                       "resource-base-path", "/io/github/tenboard/Tenboard", NULL);
}
