/* The tour, and the bar that offers it at the first start.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

#include <glib/gi18n-lib.h>

#include "tb-tour.h"

#define SEEN "tour-seen"

/* The first widget that something is true of. */
static GtkWidget *
find (GtkWidget *widget, gboolean (*is_it) (GtkWidget *widget))
{
  GtkWidget *found = is_it (widget) ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find (child, is_it);
  return found;
}

static gboolean
has_action (GtkWidget *widget, const char *action)
{
  return GTK_IS_BUTTON (widget)
         && g_strcmp0 (gtk_actionable_get_action_name (GTK_ACTIONABLE (widget)), action) == 0;
}

static gboolean
is_throw (GtkWidget *widget)
{
  return has_action (widget, "win.throw");
}

static gboolean
is_keep (GtkWidget *widget)
{
  return has_action (widget, "win.keep-as-before");
}

static gboolean
is_main_menu (GtkWidget *widget)
{
  return GTK_IS_MENU_BUTTON (widget) && gtk_menu_button_get_primary (GTK_MENU_BUTTON (widget));
}

/* The column that a target lies in; NULL for none of them. */
static const char *
column_of (TbTourTarget target)
{
  if (target == TB_TOUR_COMPARE || target == TB_TOUR_WHY || target == TB_TOUR_NEXT)
    return "results";
  if (target == TB_TOUR_LANE)
    return "lane";
  return target == TB_TOUR_SPEED ? "controls" : NULL;
}

/* In a narrow window not all columns are seen. */
static GtkWidget *
show_target (gpointer owner, TbTourTarget target)
{
  TbWindow *self = owner;
  GtkWidget *window = GTK_WIDGET (self);
  const char *column = column_of (target);

  if (column != NULL && (!g_str_equal (column, "lane") || tb_columns_get_single (self->columns)))
    gtk_widget_activate_action (window, "win.page", "s", column);
  switch (target)
    {
    case TB_TOUR_THROW:
      return find (window, is_throw);
    case TB_TOUR_LANE:
      return GTK_WIDGET (tb_lane_panel_get_picture (self->lane));
    case TB_TOUR_SPEED:
      return tb_controls_panel_get_row (self->controls, "speed_mph");
    case TB_TOUR_COMPARE:
      tb_results_panel_show_page (self->results, "compare");
      return tb_results_panel_get_tab (self->results, "compare");
    case TB_TOUR_WHY:
      return tb_results_panel_get_tab (self->results, "why");
    case TB_TOUR_NEXT:
      return tb_results_panel_get_tab (self->results, "next");
    case TB_TOUR_KEEP:
      return find (window, is_keep);
    default:
      return find (window, is_main_menu);
    }
}

static const char *
page_of (gpointer owner)
{
  return tb_results_panel_get_page (TB_WINDOW (owner)->results);
}

static void
remember (TbWindow *self)
{
  g_settings_set_boolean (self->settings, SEEN, TRUE);
}

void
tb_window_close_tour (TbWindow *self)
{
  if (self->tour != NULL)
    gtk_widget_unparent (g_steal_pointer (&self->tour));
}

static gboolean
take_away (gpointer window)
{
  g_autoptr (TbWindow) self = window;

  tb_window_close_tour (self);
  return G_SOURCE_REMOVE;
}

/* Not inside the callout's own button. */
static void
on_ended (TbWindow *self)
{
  remember (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->throw_bar));
  g_idle_add (take_away, g_object_ref (self));
}

static void
hide_bar (TbWindow *self)
{
  if (self->tour_bar != NULL)
    gtk_box_remove (GTK_BOX (gtk_window_get_child (GTK_WINDOW (self))), g_steal_pointer (&self->tour_bar));
}

static void
begin_tour (TbWindow *self)
{
  TbTourStage stage = { .show = show_target, .page = page_of, .owner = self };
  TbTour *tour;

  hide_bar (self);
  tb_window_close_tour (self);
  tour = tb_tour_new (GTK_WINDOW (self), self->session, &stage);
  self->tour = GTK_WIDGET (tour);
  g_signal_connect_object (tour, "ended", G_CALLBACK (on_ended), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (tb_results_panel_get_stack (self->results), "notify::visible-child",
                           G_CALLBACK (tb_tour_look), tour, G_CONNECT_SWAPPED);
  tb_tour_start (tour);
}

/* The tour is about the study that comes with Tenboard: one's own work stays in its window. */
static void
take_tour (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbWindow *self = TB_WINDOW (widget);

  if (!tb_window_is_fresh (self))
    {
      self = tb_window_new (gtk_window_get_application (GTK_WINDOW (widget)),
                            tb_session_get_library (self->session));
      gtk_window_present (GTK_WINDOW (self));
    }
  begin_tour (self);
}

static void
not_now (TbWindow *self)
{
  remember (self);
  hide_bar (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->throw_bar));
}

static void
add_button (TbWindow *self, const char *label, void (*pressed) (TbWindow *self))
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (self->tour_bar), button);
  g_signal_connect_object (button, "clicked", G_CALLBACK (pressed), self, G_CONNECT_SWAPPED);
}

void
tb_window_offer_tour (TbWindow *self)
{
  GtkWidget *words;

  if (self->tour_bar != NULL || g_settings_get_boolean (self->settings, SEEN))
    return;
  self->tour_bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  gtk_widget_add_css_class (self->tour_bar, "tour-bar");
  words = gtk_label_new (_ ("New here? A tour of the window takes two minutes."));
  gtk_label_set_wrap (GTK_LABEL (words), TRUE);
  gtk_label_set_xalign (GTK_LABEL (words), 0);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (self->tour_bar), words);
  add_button (self, _ ("Start the tour"), begin_tour);
  add_button (self, _ ("Not now"), not_now);
  gtk_box_prepend (GTK_BOX (gtk_window_get_child (GTK_WINDOW (self))), self->tour_bar);
}

void
tb_window_place_tour (TbWindow *self)
{
  if (self->tour != NULL)
    tb_tour_place (TB_TOUR (self->tour));
}

/* While the focus is on what the tour points at, too. */
static gboolean
on_escape (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  TbWindow *self = TB_WINDOW (widget);

  if (self->tour == NULL)
    return FALSE;
  tb_tour_skip (TB_TOUR (self->tour));
  return TRUE;
}

void
tb_window_class_install_tour_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.tour", NULL, take_tour);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, on_escape, NULL);
}
