/* The session and its history, without a display.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-history.h"
#include "tb-session.h"
#include "tb-study-document.h"

/* Times that a signal was heard. */
typedef struct Heard
{
  guint changed, opened, modified, can_undo, title, time, playing;
} Heard;

static void
count (guint *number)
{
  (*number)++;
}

static void
listen (TbSession *session, Heard *heard)
{
  *heard = (Heard){ 0 };
  g_signal_connect_swapped (session, "changed", G_CALLBACK (count), &heard->changed);
  g_signal_connect_swapped (session, "opened", G_CALLBACK (count), &heard->opened);
  g_signal_connect_swapped (session, "notify::modified", G_CALLBACK (count), &heard->modified);
  g_signal_connect_swapped (session, "notify::can-undo", G_CALLBACK (count), &heard->can_undo);
  g_signal_connect_swapped (session, "notify::title", G_CALLBACK (count), &heard->title);
  g_signal_connect_swapped (session, "notify::time", G_CALLBACK (count), &heard->time);
  g_signal_connect_swapped (session, "notify::playing", G_CALLBACK (count), &heard->playing);
}

static TbSession *
new_session (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();

  return tb_session_new (library);
}

static const TbField *
speed (void)
{
  return tb_field_find (TB_GROUP_DELIVERY, "speed_mph");
}

static void
set_speed (TbSession *session, double mph)
{
  g_assert_true (tb_session_set_field (session, speed (), mph, NULL));
}

static double
speed_of (TbSession *session, TbSide side)
{
  return tb_session_get_field (session, side, speed ());
}

static double
boards_hooked (TbSession *session, TbSide side)
{
  return tb_measure_value (tb_measure_find ("hook_board"), &tb_session_get_path (session, side)->measures);
}

#define assert_speed(session, side, mph) g_assert_cmpfloat_with_epsilon (speed_of (session, side), mph, 1e-9)

static void
test_starts_even (void)
{
  g_autoptr (TbSession) session = new_session ();

  g_assert_true (tb_setup_equal (tb_session_get_setup (session, TB_SIDE_BEFORE),
                                 tb_session_get_setup (session, TB_SIDE_AFTER)));
  assert_speed (session, TB_SIDE_BEFORE, 17);
  g_assert_nonnull (tb_session_get_path (session, TB_SIDE_BEFORE));
  g_assert_nonnull (tb_session_get_path (session, TB_SIDE_AFTER));
  g_assert_false (tb_session_get_modified (session));
  g_assert_false (tb_session_can_undo (session));
  g_assert_false (tb_session_can_redo (session));
  g_assert_null (tb_session_get_file (session));
  g_assert_cmpfloat (tb_session_get_duration (session), >, 2.0);
}

static void
test_field_throws_at_once (void)
{
  g_autoptr (TbSession) session = new_session ();
  Heard heard;
  TbRun *before = tb_session_get_run (session, TB_SIDE_BEFORE);

  listen (session, &heard);
  set_speed (session, 19);
  g_assert_cmpuint (heard.changed, ==, 1);
  g_assert_cmpuint (heard.modified, ==, 1);
  g_assert_cmpuint (heard.can_undo, ==, 1);
  assert_speed (session, TB_SIDE_AFTER, 19);
  assert_speed (session, TB_SIDE_BEFORE, 17);
  /* A faster ball hooks less (common practice); the other run is the very same one. */
  g_assert_cmpfloat (boards_hooked (session, TB_SIDE_AFTER), <, boards_hooked (session, TB_SIDE_BEFORE));
  g_assert_true (tb_session_get_run (session, TB_SIDE_BEFORE) == before);
}

static void
test_same_value_is_no_change (void)
{
  g_autoptr (TbSession) session = new_session ();
  Heard heard;

  listen (session, &heard);
  set_speed (session, speed_of (session, TB_SIDE_AFTER));
  g_assert_cmpuint (heard.changed, ==, 0);
  g_assert_false (tb_session_can_undo (session));
}

static void
test_bad_value_changes_nothing (void)
{
  g_autoptr (TbSession) session = new_session ();
  TbProblem problem = { 0 };
  Heard heard;

  listen (session, &heard);
  g_assert_false (tb_session_set_field (session, speed (), 500, &problem));
  g_assert_cmpint (problem.status, ==, TB_ERROR_OUT_OF_RANGE);
  g_assert_true (problem.field == speed ());
  g_assert_false (tb_session_set_field (session, speed (), NAN, &problem));
  g_assert_cmpint (problem.status, ==, TB_ERROR_NOT_FINITE);
  g_assert_cmpuint (heard.changed, ==, 0);
  assert_speed (session, TB_SIDE_AFTER, 17);
}

static void
test_keep_swap_put_back (void)
{
  g_autoptr (TbSession) session = new_session ();

  set_speed (session, 19);
  tb_session_swap (session);
  assert_speed (session, TB_SIDE_BEFORE, 19);
  assert_speed (session, TB_SIDE_AFTER, 17);
  tb_session_put_back (session);
  assert_speed (session, TB_SIDE_AFTER, 19);
  set_speed (session, 15);
  tb_session_keep_as_before (session);
  assert_speed (session, TB_SIDE_BEFORE, 15);
  assert_speed (session, TB_SIDE_AFTER, 15);
  /* Four changes that can be told apart, and all the way back. */
  for (int i = 0; i < 5; i++)
    tb_session_undo (session);
  g_assert_false (tb_session_can_undo (session));
  assert_speed (session, TB_SIDE_BEFORE, 17);
  assert_speed (session, TB_SIDE_AFTER, 17);
  g_assert_false (tb_session_get_modified (session));
}

static void
test_runs_go_with_their_setups (void)
{
  g_autoptr (TbSession) session = new_session ();
  TbRun *before, *after;

  set_speed (session, 19);
  before = tb_session_get_run (session, TB_SIDE_BEFORE);
  after = tb_session_get_run (session, TB_SIDE_AFTER);
  tb_session_swap (session);
  g_assert_true (tb_session_get_run (session, TB_SIDE_BEFORE) == after);
  g_assert_true (tb_session_get_run (session, TB_SIDE_AFTER) == before);
  tb_session_keep_as_before (session);
  g_assert_true (tb_session_get_run (session, TB_SIDE_BEFORE) == before);
}

static void
test_undo_redo (void)
{
  g_autoptr (TbSession) session = new_session ();
  const TbField *rev = tb_field_find (TB_GROUP_DELIVERY, "rev_rate_rpm");

  set_speed (session, 19);
  g_assert_true (tb_session_set_field (session, rev, 400, NULL));
  tb_session_undo (session);
  g_assert_cmpfloat_with_epsilon (tb_session_get_field (session, TB_SIDE_AFTER, rev), 300, 1e-9);
  assert_speed (session, TB_SIDE_AFTER, 19);
  g_assert_true (tb_session_can_redo (session));
  tb_session_redo (session);
  g_assert_cmpfloat_with_epsilon (tb_session_get_field (session, TB_SIDE_AFTER, rev), 400, 1e-9);
  tb_session_undo (session);
  /* Another way from here: what was undone is gone. */
  set_speed (session, 16);
  g_assert_false (tb_session_can_redo (session));
  tb_session_redo (session);
  assert_speed (session, TB_SIDE_AFTER, 16);
}

static void
test_drag_is_one_step (void)
{
  g_autoptr (TbSession) session = new_session ();

  tb_session_begin_gesture (session);
  for (int i = 1; i <= 20; i++)
    set_speed (session, 17 + 0.1 * i);
  tb_session_end_gesture (session);
  tb_session_begin_gesture (session);
  set_speed (session, 20);
  tb_session_end_gesture (session);
  tb_session_undo (session);
  assert_speed (session, TB_SIDE_AFTER, 19);
  tb_session_undo (session);
  assert_speed (session, TB_SIDE_AFTER, 17);
  g_assert_false (tb_session_can_undo (session));
}

static void
test_history_merges_by_time (void)
{
  g_autoptr (TbHistory) history = tb_history_new ();
  g_autoptr (TbStudy) study = tb_library_start_study ();
  g_autoptr (TbStudy) undone = NULL;

  tb_history_record (history, study, "speed_mph", 0);
  tb_history_record (history, study, "speed_mph", G_USEC_PER_SEC / 2); /* soon after: the same step */
  tb_history_record (history, study, "speed_mph", 3 * G_USEC_PER_SEC); /* a pause: another */
  tb_history_record (history, study, "grit", 3 * G_USEC_PER_SEC + 1);  /* something else: another */
  tb_history_record (history, study, NULL, 3 * G_USEC_PER_SEC + 2);    /* never merges */
  tb_history_record (history, study, NULL, 3 * G_USEC_PER_SEC + 3);
  for (int steps = 0; steps < 5; steps++)
    {
      g_assert_true (tb_history_can_undo (history));
      undone = tb_history_undo (history, study);
      g_clear_pointer (&undone, tb_study_unref);
    }
  g_assert_false (tb_history_can_undo (history));
  g_assert_null (tb_history_undo (history, study));
}

static void
test_texts (void)
{
  g_autoptr (TbSession) session = new_session ();
  Heard heard;
  const char *texts[] = { "T", "Tu", "Tue", "Tuesday" };

  listen (session, &heard);
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    tb_session_set_texts (session, texts[i], "");
  g_assert_cmpuint (heard.title, ==, 4);
  g_assert_cmpstr (tb_session_get_study (session)->title, ==, "Tuesday");
  /* Typing is one step, and it throws nothing anew. */
  tb_session_undo (session);
  g_assert_cmpstr (tb_session_get_study (session)->title, !=, "Tuesday");
  g_assert_false (tb_session_can_undo (session));
}

static void
test_choose (void)
{
  g_autoptr (TbSession) session = new_session ();
  GListModel *balls = tb_library_get_entries (tb_session_get_library (session), TB_DOCUMENT_BALL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpuint (g_list_model_get_n_items (balls), >=, 6);
  for (guint i = 0; i < g_list_model_get_n_items (balls); i++)
    {
      g_autoptr (TbLibraryEntry) entry = g_list_model_get_item (balls, i);

      g_assert_true (tb_session_choose (session, TB_DOCUMENT_BALL, tb_library_entry_get_id (entry), &error));
      g_assert_no_error (error);
      g_assert_cmpstr (tb_session_get_setup (session, TB_SIDE_AFTER)->ball_id, ==,
                       tb_library_entry_get_id (entry));
      g_assert_nonnull (tb_session_get_path (session, TB_SIDE_AFTER));
    }
  g_assert_false (tb_session_choose (session, TB_DOCUMENT_BALL, "nobody-has-this", &error));
  g_assert_error (error, TB_STORE_ERROR, TB_STORE_ERROR_UNKNOWN_ID);
}

static void
test_open_and_saved (void)
{
  g_autoptr (TbSession) session = new_session ();
  g_autoptr (TbStudy) other = NULL;
  g_autoptr (GFile) file = g_file_new_for_path ("/nowhere/study.tenboard");
  Heard heard;

  set_speed (session, 19);
  other = tb_study_ref (tb_session_get_study (session));
  listen (session, &heard);
  tb_session_mark_saved (session, file);
  g_assert_false (tb_session_get_modified (session));
  g_assert_true (tb_session_can_undo (session));
  g_assert_true (tb_session_get_file (session) == file);
  /* Undone past what was saved, and back to it. */
  tb_session_undo (session);
  g_assert_true (tb_session_get_modified (session));
  tb_session_redo (session);
  g_assert_false (tb_session_get_modified (session));
  tb_session_open (session, other, NULL);
  g_assert_cmpuint (heard.opened, ==, 1);
  g_assert_false (tb_session_can_undo (session));
  g_assert_null (tb_session_get_file (session));
  assert_speed (session, TB_SIDE_AFTER, 19);
}

static void
test_time (void)
{
  g_autoptr (TbSession) session = new_session ();
  double duration = tb_session_get_duration (session);
  Heard heard;

  listen (session, &heard);
  tb_session_set_time (session, -1);
  g_assert_cmpfloat (tb_session_get_time (session), ==, 0);
  tb_session_set_time (session, 99);
  g_assert_cmpfloat (tb_session_get_time (session), ==, duration);
  tb_session_throw (session);
  g_assert_true (tb_session_get_playing (session));
  g_assert_cmpfloat (tb_session_get_time (session), ==, 0);
  tb_session_set_rate (session, 0.25);
  tb_session_advance (session, 1.0);
  g_assert_cmpfloat_with_epsilon (tb_session_get_time (session), 0.25, 1e-12);
  tb_session_set_playing (session, FALSE);
  tb_session_resume (session);
  g_assert_cmpfloat_with_epsilon (tb_session_get_time (session), 0.25, 1e-12);
  tb_session_advance (session, 100.0);
  g_assert_false (tb_session_get_playing (session));
  g_assert_cmpfloat (tb_session_get_time (session), ==, duration);
  /* From the end it begins anew. */
  tb_session_resume (session);
  g_assert_cmpfloat (tb_session_get_time (session), ==, 0);
}

/* A ball too slow to arrive: the sentence, no path, and a way back. */
static void
test_run_that_fails (void)
{
  g_autoptr (TbSession) session = new_session ();
  g_autoptr (TbSetup) setup = NULL;
  TbShot shot = tb_session_get_setup (session, TB_SIDE_AFTER)->shot;

  shot.ball.differential = NAN;
  setup = tb_setup_with_shot (tb_session_get_setup (session, TB_SIDE_AFTER), &shot);
  tb_session_set_after (session, setup);
  g_assert_cmpint (tb_session_get_run (session, TB_SIDE_AFTER)->status, !=, TB_OK);
  g_assert_null (tb_session_get_path (session, TB_SIDE_AFTER));
  g_assert_nonnull (tb_session_get_path (session, TB_SIDE_BEFORE));
  g_assert_cmpfloat (tb_session_get_duration (session), >, 0);
  tb_session_undo (session);
  g_assert_nonnull (tb_session_get_path (session, TB_SIDE_AFTER));
}

static void
test_finalized (void)
{
  TbSession *session = new_session ();
  gpointer watched = session;

  set_speed (session, 19);
  g_object_add_weak_pointer (G_OBJECT (session), &watched);
  g_object_unref (session);
  g_assert_null (watched);
}

/* Whatever is typed can be saved, and what is saved can be opened again: the entry counts characters, a file bytes. */
static void
test_any_text_can_be_opened_again (void)
{
  g_autoptr (TbSession) session = new_session ();
  g_autoptr (GString) title = g_string_new ("one\nline\x1b ");
  g_autofree char *notes = g_strnfill (TB_NOTES_MAX + 1, 'n'), *text = NULL;
  g_autoptr (TbStudy) again = NULL;
  g_autoptr (GError) error = NULL;

  while (g_utf8_strlen (title->str, -1) < 200)
    g_string_append (title, "🎳");
  tb_session_set_texts (session, title->str, notes);
  text = tb_study_to_text (tb_session_get_study (session));
  again = tb_study_from_text (tb_session_get_library (session), text, strlen (text), &error);
  g_assert_no_error (error);
  g_assert_true (g_str_has_prefix (again->title, "one line  🎳"));
  g_assert_cmpuint (strlen (again->title), >, TB_NAME_MAX - 4);
  g_assert_cmpuint (strlen (again->notes), ==, TB_NOTES_MAX);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/session/starts-even", test_starts_even);
  g_test_add_func ("/session/field-throws-at-once", test_field_throws_at_once);
  g_test_add_func ("/session/same-value-is-no-change", test_same_value_is_no_change);
  g_test_add_func ("/session/bad-value-changes-nothing", test_bad_value_changes_nothing);
  g_test_add_func ("/session/keep-swap-put-back", test_keep_swap_put_back);
  g_test_add_func ("/session/runs-go-with-their-setups", test_runs_go_with_their_setups);
  g_test_add_func ("/session/undo-redo", test_undo_redo);
  g_test_add_func ("/session/drag-is-one-step", test_drag_is_one_step);
  g_test_add_func ("/session/history-merges-by-time", test_history_merges_by_time);
  g_test_add_func ("/session/texts", test_texts);
  g_test_add_func ("/session/any-text-can-be-opened-again", test_any_text_can_be_opened_again);
  g_test_add_func ("/session/choose", test_choose);
  g_test_add_func ("/session/open-and-saved", test_open_and_saved);
  g_test_add_func ("/session/time", test_time);
  g_test_add_func ("/session/run-that-fails", test_run_that_fails);
  g_test_add_func ("/session/finalized", test_finalized);
  return g_test_run ();
}
