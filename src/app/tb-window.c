/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-style.h"

G_DEFINE_FINAL_TYPE (TbWindow, tb_window, GTK_TYPE_APPLICATION_WINDOW)

/* Size of a window whose settings are unusable, px. */
#define DEFAULT_WIDTH 1280
#define DEFAULT_HEIGHT 800

TbSession *
tb_window_get_session (TbWindow *self)
{
  return self->session;
}

gboolean
tb_window_is_fresh (TbWindow *self)
{
  return tb_session_get_file (self->session) == NULL && !tb_session_get_modified (self->session);
}

void
tb_window_tell (TbWindow *self, const char *sentence)
{
  gtk_info_bar_set_message_type (self->message_bar, GTK_MESSAGE_WARNING);
  gtk_label_set_text (self->message, sentence != NULL ? sentence : "");
  gtk_info_bar_set_revealed (self->message_bar, sentence != NULL);
}

void
tb_window_say (TbWindow *self, const char *words)
{
  tb_window_tell (self, words);
  gtk_info_bar_set_message_type (self->message_bar, GTK_MESSAGE_INFO);
}

static void
on_message_closed (TbWindow *self)
{
  tb_window_tell (self, NULL);
}

/* The window's title in the desktop's lists. */
static void
show_title (TbWindow *self)
{
  const char *title = tb_session_get_study (self->session)->title;
  g_autofree char *text = NULL;

  if (title[0] == '\0')
    text = g_strdup (_ ("Tenboard"));
  else
    text = g_strdup_printf (_ ("%s – Tenboard"), title);
  gtk_window_set_title (GTK_WINDOW (self), text);
}

static int
wanted_text_size (TbWindow *self)
{
  g_autofree char *setting = g_settings_get_string (self->settings, "text-size");

  if (g_str_equal (setting, "automatic"))
    return tb_style_suitable_text_size (gtk_widget_get_width (GTK_WIDGET (self)),
                                        gtk_widget_get_height (GTK_WIDGET (self)));
  return (int) g_ascii_strtoll (setting, NULL, 10);
}

/* The size of the text, and what the header bar says in it. */
static gboolean
update_text_size (gpointer data)
{
  TbWindow *self = data;
  int size = wanted_text_size (self);

  self->text_size_idle = 0;
  if (size != tb_style_get_text_size (GTK_WIDGET (self)))
    tb_style_set_text_size (GTK_WIDGET (self), size);
  tb_window_fit_header (self);
  return G_SOURCE_REMOVE;
}

/* Never inside a layout: the size of text changes the layout. */
static void
schedule_text_size (TbWindow *self)
{
  if (self->text_size_idle == 0)
    self->text_size_idle = g_idle_add (update_text_size, self);
}

static void
tb_window_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  GTK_WIDGET_CLASS (tb_window_parent_class)->size_allocate (widget, width, height, baseline);
  tb_window_place_tour (TB_WINDOW (widget));
  schedule_text_size (TB_WINDOW (widget));
}

static void
on_compact_changed (TbWindow *self)
{
  gboolean single = tb_columns_get_single (self->columns);

  gtk_widget_set_visible (self->page_switch, tb_columns_get_compact (self->columns));
  gtk_widget_set_visible (self->lane_switch, single);
  /* The lane has no page of its own any more. */
  if (!single && tb_columns_get_page (self->columns) == TB_COLUMNS_CENTER)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.page", "s", "controls");
  schedule_text_size (self);
}

static void
bind_settings (TbWindow *self)
{
  GtkWindow *window = GTK_WINDOW (self);

  g_settings_bind (self->settings, "window-width", window, "default-width", G_SETTINGS_BIND_DEFAULT);
  g_settings_bind (self->settings, "window-height", window, "default-height", G_SETTINGS_BIND_DEFAULT);
  g_settings_bind (self->settings, "window-maximized", window, "maximized", G_SETTINGS_BIND_DEFAULT);
  g_settings_bind (self->settings, "units", self->session, "units", G_SETTINGS_BIND_DEFAULT);
  g_settings_bind (self->settings, "time-rate", self->session, "rate", G_SETTINGS_BIND_DEFAULT);
  g_signal_connect_object (self->settings, "changed::text-size", G_CALLBACK (schedule_text_size), self,
                           G_CONNECT_SWAPPED);
}

static void
tb_window_constructed (GObject *object)
{
  G_OBJECT_CLASS (tb_window_parent_class)->constructed (object);
  gtk_window_set_default_size (GTK_WINDOW (object), DEFAULT_WIDTH, DEFAULT_HEIGHT);
}

static void
set_session (TbWindow *self, TbSession *session)
{
  self->session = g_object_ref (session);
  self->autosave = tb_autosave_new (session);
  tb_controls_panel_set_session (self->controls, session);
  tb_lane_panel_set_session (self->lane, session);
  tb_results_panel_set_session (self->results, session);
  tb_throw_bar_set_session (self->throw_bar, session);
  tb_title_button_set_session (self->title, session);
  g_signal_connect_object (session, "notify::title", G_CALLBACK (show_title), self, G_CONNECT_SWAPPED);
  show_title (self);
}

/* The same delivery with the other hand is the same bowler's no more. */
static TbStudy *
with_hand (TbStudy *study, TbHand hand)
{
  TbStudy *changed = tb_study_ref (study);

  for (int side = 0; side < TB_N_SIDES; side++)
    {
      TbDelivery delivery = changed->side[side]->shot.delivery;
      g_autoptr (TbStudy) given = changed;
      g_autoptr (TbSetup) setup = NULL;

      delivery.hand = hand;
      setup = tb_setup_with_bowler (given->side[side], &delivery, NULL, NULL);
      changed = tb_study_with_side (given, (TbSide) side, setup);
    }
  return changed;
}

void
tb_window_start_study (TbWindow *self)
{
  TbHand hand = (TbHand) g_settings_get_enum (self->settings, "hand");
  g_autoptr (TbStudy) study = tb_library_start_study ();
  g_autoptr (TbStudy) wanted = hand == TB_HAND_RIGHT ? tb_study_ref (study) : with_hand (study, hand);

  tb_session_open (self->session, wanted, NULL);
}

TbWindow *
tb_window_new (GtkApplication *application, TbLibrary *library)
{
  TbWindow *self = g_object_new (TB_TYPE_WINDOW, "application", application, NULL);
  g_autoptr (TbSession) session = tb_session_new (library);

  set_session (self, session);
  /* Here, not in init: GTK sets "maximized" to its default after that. */
  bind_settings (self);
  if (g_settings_get_enum (self->settings, "hand") != TB_HAND_RIGHT)
    tb_window_start_study (self);
  tb_window_init_actions (self);
  tb_window_init_files (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->throw_bar));
  return self;
}

static void
close_for_good (TbWindow *self)
{
  self->closing = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static gboolean
tb_window_close_request (GtkWindow *window)
{
  TbWindow *self = TB_WINDOW (window);

  if (!self->closing && tb_session_get_modified (self->session))
    {
      tb_window_ask_then (self, close_for_good);
      return GDK_EVENT_STOP;
    }
  return GTK_WINDOW_CLASS (tb_window_parent_class)->close_request (window);
}

static void
tb_window_dispose (GObject *object)
{
  TbWindow *self = TB_WINDOW (object);

  /* What is being typed is taken, while there is somebody to take it. */
  gtk_window_set_focus (GTK_WINDOW (object), NULL);
  tb_window_close_tour (self);
  g_clear_handle_id (&self->answer_idle, g_source_remove);
  tb_window_close_counter (self);
  tb_window_close_handout (self);
  tb_window_close_lane_play (self);
  tb_window_close_clinic (self);
  tb_window_close_loft_lab (self);
  tb_window_close_lessons (self);
  g_clear_handle_id (&self->text_size_idle, g_source_remove);
  g_clear_object (&self->chooser);
  g_clear_object (&self->next_file);
  g_clear_object (&self->autosave);
  g_clear_object (&self->session);
  if (self->settings != NULL)
    tb_window_remove_actions (self);
  g_clear_object (&self->settings);
  G_OBJECT_CLASS (tb_window_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/io/github/tenboard/Tenboard/ui/tb-window.ui");
  tb_window_class_bind_header (widget_class);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, open_button);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, page_switch);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, lane_switch);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, title);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, message_bar);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, message);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, columns);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, controls);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, lane);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, results);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, throw_bar);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, recent_menu);
  gtk_widget_class_bind_template_callback (widget_class, on_message_closed);
}

static void
tb_window_class_init (TbWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->constructed = tb_window_constructed;
  G_OBJECT_CLASS (klass)->dispose = tb_window_dispose;
  widget_class->size_allocate = tb_window_size_allocate;
  GTK_WINDOW_CLASS (klass)->close_request = tb_window_close_request;
  g_type_ensure (TB_TYPE_COLUMNS);
  g_type_ensure (TB_TYPE_CONTROLS_PANEL);
  g_type_ensure (TB_TYPE_LANE_PANEL);
  g_type_ensure (TB_TYPE_RESULTS_PANEL);
  g_type_ensure (TB_TYPE_THROW_BAR);
  bind_template (widget_class);
  tb_window_class_install_actions (widget_class);
  tb_window_class_install_tour_actions (widget_class);
  tb_window_class_install_file_actions (widget_class);
  tb_window_class_install_counter_actions (widget_class);
  tb_window_class_install_handout_actions (widget_class);
  tb_window_class_install_lane_actions (widget_class);
  tb_window_class_install_clinic_actions (widget_class);
  tb_window_class_install_loft_actions (widget_class);
  tb_window_class_install_lesson_actions (widget_class);
  tb_window_class_install_export_actions (widget_class);
}

static void
tb_window_init (TbWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->settings = g_settings_new (APP_ID);
  tb_accessible_name_message_bar (self->message_bar);
  g_signal_connect_object (self->columns, "notify::single", G_CALLBACK (on_compact_changed), self,
                           G_CONNECT_SWAPPED);
}
