/* The clinic's screen: controls that say which action they are, and go by themselves; a throw whose end
 * nobody hears before it has come.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <string.h>

#include "tb-clinic-bar.h"
#include "tb-clinic-page.h"
#include "tb-clinic-throw-page.h"
#include "window-support.h"

typedef struct Heard
{
  guint action; /* the last */
  guint hidden; /* how often */
} Heard;

static void
on_action (Heard *heard, guint action)
{
  heard->action = action;
}

static void
on_hidden (Heard *heard)
{
  heard->hidden++;
}

/* A part of the screen in a window of its own. */
static GtkWidget *
show_part (GtkWidget *part)
{
  GtkWidget *window = gtk_window_new ();

  gtk_window_set_child (GTK_WINDOW (window), part);
  show_window (window);
  return window;
}

static TbClinicBar *
new_bar (Heard *heard)
{
  TbClinicBar *bar = g_object_new (TB_TYPE_CLINIC_BAR, NULL);

  *heard = (Heard){ 0 };
  g_signal_connect_swapped (bar, "action", G_CALLBACK (on_action), heard);
  g_signal_connect_swapped (bar, "hidden", G_CALLBACK (on_hidden), heard);
  return bar;
}

static void
test_buttons (void)
{
  static const struct
  {
    const char *label;
    TbClinicAction action;
  } buttons[]
      = { { "Back", TB_CLINIC_BACK },       { "On", TB_CLINIC_ONWARD },   { "Throw again", TB_CLINIC_REPLAY },
          { "Freeze", TB_CLINIC_FREEZE },   { "Slower", TB_CLINIC_DOWN }, { "Faster", TB_CLINIC_UP },
          { "Overlay", TB_CLINIC_OVERLAY }, { "Blank", TB_CLINIC_BLANK }, { "Notes", TB_CLINIC_PRESENTER } };
  Heard heard;
  TbClinicBar *bar = new_bar (&heard);
  GtkWidget *window = show_part (GTK_WIDGET (bar));

  tb_clinic_bar_show (bar, "");
  for (gsize i = 0; i < G_N_ELEMENTS (buttons); i++)
    {
      click (bar, buttons[i].label);
      g_assert_cmpuint (heard.action, ==, buttons[i].action);
    }
  g_assert_true (says (bar, "Freeze"));
  tb_clinic_bar_set_throwing (bar, FALSE);
  g_assert_false (says (bar, "Freeze"));
  close_for_good (window);
}

/* Called off, and by themselves. */
static void
test_controls_go (void)
{
  Heard heard;
  TbClinicBar *bar = new_bar (&heard);
  GtkWidget *window = show_part (GTK_WIDGET (bar));

  g_assert_false (tb_clinic_bar_is_shown (bar));
  tb_clinic_bar_show (bar, "The next press leaves.");
  g_assert_true (tb_clinic_bar_is_shown (bar));
  g_assert_true (says (bar, "The next press leaves."));
  tb_clinic_bar_hide (bar);
  g_assert_false (tb_clinic_bar_is_shown (bar));
  g_assert_cmpuint (heard.hidden, ==, 1);

  tb_clinic_bar_show (bar, "");
  g_assert_false (says (bar, "The next press leaves."));
  WAIT_UNTIL (heard.hidden == 2);
  g_assert_false (tb_clinic_bar_is_shown (bar));
  close_for_good (window);
}

static TbClinic *
clinic_at_throw (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (TbStudy) study = tb_library_start_study ();
  TbClinic *clinic = tb_clinic_new (library, study, TB_UNITS_IMPERIAL);

  for (int i = 0; i < 20 && tb_clinic_get_slide (clinic) != TB_CLINIC_THROW; i++)
    tb_clinic_do (clinic, TB_CLINIC_ONWARD);
  g_assert_cmpint (tb_clinic_get_slide (clinic), ==, TB_CLINIC_THROW);
  return clinic;
}

static GtkWidget *
new_throw_page (TbClinic *clinic)
{
  GtkWidget *page = g_object_new (TB_TYPE_CLINIC_THROW_PAGE, NULL);

  tb_clinic_throw_page_set_clinic (TB_CLINIC_THROW_PAGE (page), clinic);
  return page;
}

static gboolean
is_told (GtkWidget *page, const char *has)
{
  g_autofree char *told = gtk_test_accessible_check_property (GTK_ACCESSIBLE (page),
                                                              GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, "nothing");

  return strstr (told, has) != NULL;
}

static void
test_end_is_told_at_the_end (void)
{
  g_autoptr (TbClinic) clinic = clinic_at_throw ();
  TbSession *session = tb_clinic_get_session (clinic);
  g_autofree char *hint = tb_clinic_hint (clinic);
  GtkWidget *page = new_throw_page (clinic), *window = show_part (page);

  g_assert_true (is_told (page, hint));
  tb_session_set_time (session, 0.5 * tb_session_get_duration (session));
  g_assert_true (says (page, "frozen"));
  g_assert_false (is_told (page, "Before: "));
  tb_session_set_time (session, tb_session_get_duration (session));
  g_assert_true (is_told (page, "Before: "));
  tb_session_set_time (session, 0);
  g_assert_true (is_told (page, hint));
  close_for_good (window);
}

/* The page lets time run, and no longer than it is there. */
static void
test_time_runs (void)
{
  g_autoptr (TbClinic) clinic = clinic_at_throw ();
  TbSession *session = tb_clinic_get_session (clinic);
  GtkWidget *window = show_part (new_throw_page (clinic));

  tb_clinic_do (clinic, TB_CLINIC_REPLAY);
  g_assert_true (tb_session_get_playing (session));
  WAIT_UNTIL (!tb_session_get_playing (session));
  g_assert_cmpfloat (tb_session_get_time (session), ==, tb_session_get_duration (session));
  tb_clinic_do (clinic, TB_CLINIC_REPLAY);
  close_for_good (window);
  tb_session_set_playing (session, FALSE);
}

static guint
count_strips (GtkWidget *widget)
{
  guint n = TB_IS_STRIP_PICTURE (widget) && gtk_widget_get_mapped (widget);

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += count_strips (child);
  return n;
}

static void
test_overlay (void)
{
  g_autoptr (TbClinic) clinic = clinic_at_throw ();
  GtkWidget *page = new_throw_page (clinic), *window = show_part (page);

  g_assert_cmpuint (count_strips (page), ==, 2);
  tb_clinic_do (clinic, TB_CLINIC_OVERLAY);
  g_assert_cmpuint (count_strips (page), ==, 1);
  close_for_good (window);
}

static void
add_tests (void)
{
  g_test_add_func ("/clinic-screen/buttons", test_buttons);
  g_test_add_func ("/clinic-screen/controls-go", test_controls_go);
  g_test_add_func ("/clinic-screen/end-is-told-at-the-end", test_end_is_told_at_the_end);
  g_test_add_func ("/clinic-screen/time-runs", test_time_runs);
  g_test_add_func ("/clinic-screen/overlay", test_overlay);
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  start_application ();
  add_tests ();
  return run_tests ();
}
