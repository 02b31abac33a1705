/* Where nothing is to move by itself, nothing does: a throw is at its end at once wherever there is one, one
 * that is under way ends, and a window at rest draws no frames.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-window.h"
#include "tb-lesson-window.h"
#include "window-support.h"

/* A window counts as at rest that drew nothing for so long, ms. */
#define QUIET_MS 300

/* Who wants nothing to move. */
typedef void (*Wish) (gboolean still);

static GSettings *settings;

static void
desktop_wants_still (gboolean still)
{
  set_animations (!still);
}

static void
program_wants_still (gboolean still)
{
  g_settings_set_boolean (settings, "reduced-motion", still);
}

/* What is worked out in threads may draw until it is through; what runs by itself draws for ever. */
static void
assert_comes_to_rest (gpointer window)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (window);
  gint64 end = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC, before;

  do
    {
      before = gdk_frame_clock_get_frame_counter (clock);
      rest (QUIET_MS);
      g_assert_cmpint (g_get_monotonic_time (), <, end);
    }
  while (gdk_frame_clock_get_frame_counter (clock) != before);
}

static void
assert_at_end (TbSession *session)
{
  g_assert_false (tb_session_get_playing (session));
  g_assert_cmpfloat (tb_session_get_duration (session), >, 0);
  g_assert_cmpfloat (tb_session_get_time (session), ==, tb_session_get_duration (session));
}

static void
test_window (gconstpointer data)
{
  Wish wish = *(const Wish *) data;
  TbWindow *window = new_window ();
  TbSession *session = tb_window_get_session (window);

  /* In the middle of it. */
  choose_action (window, "win.throw", NULL);
  g_assert_true (tb_session_get_playing (session));
  wish (TRUE);
  assert_at_end (session);
  choose_action (window, "win.throw", NULL);
  assert_at_end (session);
  tb_session_set_time (session, 0.3);
  choose_action (window, "win.pause", NULL);
  assert_at_end (session);
  assert_comes_to_rest (window);
  wish (FALSE);
  choose_action (window, "win.throw", NULL);
  g_assert_true (tb_session_get_playing (session));
  close_for_good (window);
}

static TbLessonRunner *
begin_lesson (TbLessonWindow *lessons)
{
  g_autoptr (GPtrArray) builtin = tb_lessons_builtin ();
  TbLessonRunner *runner = tb_lesson_window_get_runner (lessons);

  tb_lesson_window_begin (lessons, g_ptr_array_index (builtin, 0));
  WAIT_UNTIL (tb_lesson_runner_get_stage (runner) == TB_LESSON_ASKING);
  if (tb_lesson_runner_asks_for_marker (runner))
    tb_lesson_runner_set_board (runner, 20);
  else
    tb_lesson_runner_set_choice (runner, 0);
  return runner;
}

static void
test_lesson (gconstpointer data)
{
  Wish wish = *(const Wish *) data;
  TbWindow *window = new_window ();
  TbLessonWindow *lessons = tb_lesson_window_new (GTK_WINDOW (window), tb_window_get_session (window));
  TbLessonRunner *runner;

  show_window (lessons);
  runner = begin_lesson (lessons);
  tb_lesson_runner_throw (runner);
  g_assert_cmpint (tb_lesson_runner_get_stage (runner), ==, TB_LESSON_THROWING);
  wish (TRUE);
  g_assert_cmpint (tb_lesson_runner_get_stage (runner), ==, TB_LESSON_REVEALED);
  assert_at_end (tb_lesson_runner_get_session (runner));
  begin_lesson (lessons);
  tb_lesson_runner_throw (runner);
  g_assert_cmpint (tb_lesson_runner_get_stage (runner), ==, TB_LESSON_REVEALED);
  assert_at_end (tb_lesson_runner_get_session (runner));
  assert_comes_to_rest (lessons);
  wish (FALSE);
  close_for_good (lessons);
  close_for_good (window);
}

/* What would let time run in the clinic: nothing of it does. */
static void
try_all (TbClinicWindow *window, TbSession *session)
{
  static const TbClinicAction actions[]
      = { TB_CLINIC_REPLAY, TB_CLINIC_FREEZE, TB_CLINIC_FRAME_ON, TB_CLINIC_OVERLAY, TB_CLINIC_FREEZE,
          TB_CLINIC_REPLAY, TB_CLINIC_DOWN,   TB_CLINIC_ONWARD,   TB_CLINIC_FREEZE };

  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    {
      tb_clinic_window_act (window, actions[i]);
      g_assert_false (tb_session_get_playing (session));
    }
}

static void
test_clinic (gconstpointer data)
{
  Wish wish = *(const Wish *) data;
  TbWindow *window = new_window ();
  TbSession *shown = tb_window_get_session (window), *session;
  g_autoptr (TbClinic) clinic
      = tb_clinic_new (tb_session_get_library (shown), tb_session_get_study (shown), TB_UNITS_IMPERIAL);
  TbClinicWindow *projected = tb_clinic_window_new (GTK_WINDOW (window), clinic);
  double at;

  session = tb_clinic_get_session (clinic);
  show_window (projected);
  for (int i = 0; i < 20 && tb_clinic_get_slide (clinic) != TB_CLINIC_THROW; i++)
    tb_clinic_window_act (projected, TB_CLINIC_ONWARD);
  tb_clinic_window_act (projected, TB_CLINIC_REPLAY);
  g_assert_true (tb_session_get_playing (session));
  wish (TRUE);
  g_assert_false (tb_session_get_playing (session));
  try_all (projected, session);
  at = tb_session_get_time (session);
  assert_comes_to_rest (projected);
  g_assert_cmpfloat (tb_session_get_time (session), ==, at);
  wish (FALSE);
  tb_clinic_window_act (projected, TB_CLINIC_REPLAY);
  g_assert_true (tb_session_get_playing (session));
  close_for_good (projected);
  close_for_good (window);
}

/* The others have nothing that runs; that they never begin to. */
static void
test_others_rest (void)
{
  static const char *const ways[][2]
      = { { "win.ball-counter", "ball" }, { "win.lane-play", "room" }, { "win.loft-lab", NULL },
          { "win.handout", NULL },        { "app.preferences", NULL }, { "app.contents", NULL } };
  TbWindow *window = new_window ();
  guint n_windows = 0;

  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    choose_action (window, ways[i][0], ways[i][1]);
  for (guint i = 0; i < g_list_model_get_n_items (gtk_window_get_toplevels ()); i++)
    {
      g_autoptr (GtkWidget) shown = g_list_model_get_item (gtk_window_get_toplevels (), i);

      if (gtk_widget_get_mapped (shown))
        assert_comes_to_rest (shown), n_windows++;
    }
  g_assert_cmpuint (n_windows, >, G_N_ELEMENTS (ways));
  close_for_good (window);
}

int
main (int argc, char **argv)
{
  static const Wish desktop = desktop_wants_still, program = program_wants_still;
  int status;

  start_tests (&argc, &argv);
  set_animations (TRUE);
  start_application ();
  settings = g_settings_new (APP_ID);
  g_test_add_data_func ("/still/desktop/window", &desktop, test_window);
  g_test_add_data_func ("/still/desktop/lesson", &desktop, test_lesson);
  g_test_add_data_func ("/still/desktop/clinic", &desktop, test_clinic);
  g_test_add_data_func ("/still/program/window", &program, test_window);
  g_test_add_data_func ("/still/program/lesson", &program, test_lesson);
  g_test_add_data_func ("/still/program/clinic", &program, test_clinic);
  g_test_add_func ("/still/others-rest", test_others_rest);
  status = run_tests ();
  g_object_unref (settings);
  return status;
}
