/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-word.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-core.h"
#include "tb-glossary.h"
#include "tb-help-words.h"

#define SPACING 8
#define WIDTH_CHARS 46

/* What a widget explains, and beside what. */
#define NAME_KEY "tb-word-name"
#define AT_KEY "tb-word-at"

struct _TbWordPopover
{
  GtkPopover parent_instance;

  GtkBox *box;
  const TbTerm *term;
  GtkWidget *came_from; /* had the focus before; a weak pointer */
};

G_DEFINE_FINAL_TYPE (TbWordPopover, tb_word_popover, GTK_TYPE_POPOVER)

static const TbTerm *
term_of (const char *name)
{
  const TbTerm *term = tb_glossary_for_name (name);

  return term != NULL ? term : tb_glossary_find (name);
}

/* The label and the help of a field or a measure, untranslated; FALSE for a mere word. */
static gboolean
look_up (const char *name, const char **label, const char **help)
{
  const TbMeasureInfo *info = tb_measure_find (name);

  if (info != NULL)
    {
      *label = info->label;
      *help = info->help;
      return TRUE;
    }
  for (int group = 0; group < TB_N_GROUPS; group++)
    {
      const TbField *field = tb_field_find ((TbGroup) group, name);

      if (field != NULL)
        {
          *label = field->label;
          *help = field->help;
          return TRUE;
        }
    }
  return FALSE;
}

static GtkWidget *
add_label (TbWordPopover *self, const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_width_chars (GTK_LABEL (label), WIDTH_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (label), WIDTH_CHARS);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  gtk_box_append (self->box, label);
  return label;
}

static void show_term (TbWordPopover *self, const TbTerm *term, gboolean headed);

/* Gives the box the height that its text has at its width: GTK asks for the two apart, and cuts the last
 * line. */
static void
fit (TbWordPopover *self)
{
  GtkWidget *box = GTK_WIDGET (self->box);
  int width, height;

  gtk_widget_set_size_request (box, -1, -1);
  gtk_widget_measure (box, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &width, NULL, NULL);
  gtk_widget_measure (box, GTK_ORIENTATION_VERTICAL, width, NULL, &height, NULL, NULL);
  gtk_widget_set_size_request (box, width, height);
}

static gboolean
on_link (TbWordPopover *self, const char *id)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->box))) != NULL)
    gtk_box_remove (self->box, child);
  show_term (self, tb_glossary_find (id), TRUE);
  fit (self);
  gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
  return TRUE;
}

static void
on_all_words (TbWordPopover *self)
{
  g_autofree char *id = g_strdup (self->term->id);

  /* First: the action may take the focus, and with it this popover. */
  gtk_widget_activate_action (GTK_WIDGET (self), "app.words", "s", id);
  gtk_popover_popdown (GTK_POPOVER (self));
}

static void
add_all_words (TbWordPopover *self)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (_ ("_All words…"));

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_widget_add_css_class (button, "small");
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_all_words), self, G_CONNECT_SWAPPED);
  gtk_box_append (self->box, button);
}

static void
show_term (TbWordPopover *self, const TbTerm *term, gboolean headed)
{
  g_autofree char *markup = tb_help_words_see_markup (term);
  g_autofree char *spoken = g_strdup_printf (_ ("%s: %s"), _ (term->word), _ (term->text));
  GtkWidget *see;

  self->term = term;
  if (headed)
    add_label (self, _ (term->word), "heading");
  add_label (self, _ (term->text), NULL);
  see = add_label (self, NULL, "note");
  gtk_label_set_markup (GTK_LABEL (see), markup);
  /* A link must not be followed while the labels are being taken apart by the one that is followed. */
  g_signal_connect_object (see, "activate-link", G_CALLBACK (on_link), self, G_CONNECT_SWAPPED);
  add_all_words (self);
  tb_accessible_set_name (GTK_WIDGET (self), spoken);
}

/* What the control or the measure itself is, where the name is one's. Whether the word is still to be named.
 */
static gboolean
show_name (TbWordPopover *self, const char *name)
{
  const char *label, *help;

  if (!look_up (name, &label, &help))
    return TRUE;
  add_label (self, _ (label), "heading");
  add_label (self, _ (help), NULL);
  return !g_str_equal (label, self->term->word);
}

static gboolean
unparent (gpointer popover)
{
  if (gtk_widget_get_parent (popover) != NULL)
    gtk_widget_unparent (popover);
  return G_SOURCE_REMOVE;
}

/* The focus goes back to where it was. Not at once away: what was pressed in the popover has yet to be done.
 */
static void
on_closed (TbWordPopover *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (root != NULL && self->came_from != NULL && gtk_widget_get_root (self->came_from) == root)
    gtk_root_set_focus (root, self->came_from);
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, unparent, g_object_ref (self), g_object_unref);
}

static void
place (TbWordPopover *self, GtkWidget *host, GtkWidget *at)
{
  graphene_rect_t bounds;

  g_set_weak_pointer (&self->came_from, gtk_root_get_focus (gtk_widget_get_root (host)));
  gtk_widget_set_parent (GTK_WIDGET (self), host);
  g_signal_connect_object (host, "destroy", G_CALLBACK (unparent), self, G_CONNECT_SWAPPED);
  if (gtk_widget_compute_bounds (at, host, &bounds))
    gtk_popover_set_pointing_to (GTK_POPOVER (self),
                                 &(GdkRectangle){ (int) bounds.origin.x, (int) bounds.origin.y,
                                                  (int) bounds.size.width, (int) bounds.size.height });
}

TbWordPopover *
tb_word_show (GtkWidget *host, GtkWidget *at, const char *name)
{
  TbWordPopover *self = g_object_new (TB_TYPE_WORD_POPOVER, NULL);

  self->term = term_of (name);
  g_return_val_if_fail (self->term != NULL, NULL);
  show_term (self, self->term, show_name (self, name));
  place (self, host, at);
  fit (self);
  gtk_popover_popup (GTK_POPOVER (self));
  return self;
}

const char *
tb_word_popover_get_term (TbWordPopover *self)
{
  return self->term->id;
}

void
tb_word_set (GtkWidget *widget, GtkWidget *at, const char *name)
{
  g_return_if_fail (term_of (name) != NULL);

  g_object_set_data (G_OBJECT (widget), NAME_KEY, (gpointer) name);
  g_object_set_data (G_OBJECT (widget), AT_KEY, at);
}

static void
show_of (GtkWidget *widget)
{
  GtkWidget *at = g_object_get_data (G_OBJECT (widget), AT_KEY);

  tb_word_show (widget, at, g_object_get_data (G_OBJECT (widget), NAME_KEY));
}

gboolean
tb_word_show_focused (GtkWindow *window)
{
  for (GtkWidget *widget = gtk_window_get_focus (window); widget != NULL;
       widget = gtk_widget_get_parent (widget))
    {
      if (TB_IS_WORD_POPOVER (widget))
        {
          on_all_words (TB_WORD_POPOVER (widget));
          return TRUE;
        }
      if (g_object_get_data (G_OBJECT (widget), NAME_KEY) != NULL)
        {
          show_of (widget);
          return TRUE;
        }
    }
  return FALSE;
}

/* What a gesture on a label explains. */
typedef struct Listener
{
  GtkWidget *host, *label; /* borrowed: the label belongs to the host, and the gesture to the label */
  const char *name;
} Listener;

static void
on_pressed (GtkGesture *gesture, int presses, double x, double y, Listener *listener)
{
  tb_word_show (listener->host, listener->label, listener->name);
  gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_CLAIMED);
}

static void
on_long_pressed (GtkGesture *gesture, double x, double y, Listener *listener)
{
  on_pressed (gesture, 1, x, y, listener);
}

static void
listen_to (GtkGesture *gesture, const char *signal, GCallback callback, const Listener *listener)
{
  g_signal_connect_data (gesture, signal, callback, g_memdup2 (listener, sizeof *listener),
                         (GClosureNotify) (GCallback) g_free, 0);
  gtk_widget_add_controller (listener->label, GTK_EVENT_CONTROLLER (gesture));
}

void
tb_word_listen (GtkWidget *label, GtkWidget *host, const char *name, gboolean on_click)
{
  const Listener listener = { .host = host, .label = label, .name = name };
  GtkGesture *secondary = gtk_gesture_click_new (), *press = gtk_gesture_long_press_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (secondary), GDK_BUTTON_SECONDARY);
  listen_to (secondary, "pressed", G_CALLBACK (on_pressed), &listener);
  listen_to (press, "pressed", G_CALLBACK (on_long_pressed), &listener);
  if (on_click)
    {
      listen_to (gtk_gesture_click_new (), "released", G_CALLBACK (on_pressed), &listener);
      gtk_widget_set_cursor_from_name (label, "help");
    }
}

static gboolean
on_menu_key (GtkWidget *widget, GVariant *arguments, gpointer user_data)
{
  show_of (widget);
  return TRUE;
}

void
tb_word_attach (GtkWidget *widget, GtkWidget *label, const char *name)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  tb_word_set (widget, label, name);
  tb_word_listen (label, widget, name, TRUE);
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys), gtk_shortcut_new (gtk_shortcut_trigger_parse_string ("Menu|<Shift>F10"),
                                                        gtk_callback_action_new (on_menu_key, NULL, NULL)));
  gtk_widget_add_controller (widget, keys);
}

static void
tb_word_popover_dispose (GObject *object)
{
  g_clear_weak_pointer (&TB_WORD_POPOVER (object)->came_from);
  G_OBJECT_CLASS (tb_word_popover_parent_class)->dispose (object);
}

static void
tb_word_popover_class_init (TbWordPopoverClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_word_popover_dispose;
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_DIALOG);
}

static void
tb_word_popover_init (TbWordPopover *self)
{
  self->box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, SPACING));
  gtk_widget_add_css_class (GTK_WIDGET (self->box), "word-box");
  gtk_popover_set_child (GTK_POPOVER (self), GTK_WIDGET (self->box));
  g_signal_connect (self, "closed", G_CALLBACK (on_closed), NULL);
}
