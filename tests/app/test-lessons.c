/* Lessons from inside: the runner, then the window: guesses by marker and by choice, what is revealed and
 * when, what is kept, files that cannot be used, and that the study of the main window stays as it is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <math.h>
#include <string.h>

#include "tb-guess-grip.h"
#include "tb-lesson-end.h"
#include "tb-lesson-list.h"
#include "tb-lesson-window.h"
#include "tb-lesson-words.h"
#include "tb-progress-page.h"
#include "window-support.h"

/* Until the step is no longer being set up or thrown. */
static void
settle (TbLessonRunner *runner)
{
  WAIT_UNTIL (tb_lesson_runner_get_stage (runner) != TB_LESSON_SETTING_UP
              && tb_lesson_runner_get_stage (runner) != TB_LESSON_THROWING);
}

static TbLesson *
find_builtin (const char *id)
{
  g_autoptr (GPtrArray) lessons = tb_lessons_builtin ();

  for (guint i = 0; i < lessons->len; i++)
    if (g_str_equal (((TbLesson *) g_ptr_array_index (lessons, i))->id, id))
      return tb_lesson_ref (g_ptr_array_index (lessons, i));
  g_assert_not_reached ();
}

static double
answer_of (TbLessonRunner *runner)
{
  return tb_lesson_number (tb_lesson_runner_get_thrown (runner), &tb_lesson_runner_get_step (runner)->asked);
}

/* The runner, without a window. */

static void
test_runner (void)
{
  g_autoptr (TbLessonRunner) runner = tb_lesson_runner_new (tb_application_get_library (application));
  g_autoptr (TbLesson) lesson = find_builtin ("speed");
  g_autofree char *early = NULL, *late = NULL;
  TbLessonScore score;
  double answer;

  g_assert_cmpint (tb_lesson_runner_get_stage (runner), ==, TB_LESSON_OVER);
  tb_lesson_runner_begin (runner, lesson);
  g_assert_cmpint (tb_lesson_runner_get_stage (runner), ==, TB_LESSON_SETTING_UP);
  settle (runner);
  /* A choice. What is right is not told before the throw. */
  g_assert_false (tb_lesson_runner_asks_for_marker (runner));
  g_assert_cmpint (tb_lesson_runner_get_right_choice (runner), ==, -1);
  early = tb_lesson_runner_explain (runner);
  g_assert_null (early);
  tb_lesson_runner_set_choice (runner, 99);
  g_assert_false (tb_lesson_runner_has_guess (runner));
  tb_lesson_runner_set_choice (runner, 0);
  g_assert_true (tb_lesson_runner_has_guess (runner));
  tb_lesson_runner_throw (runner);
  g_assert_cmpint (tb_lesson_runner_get_stage (runner), ==, TB_LESSON_THROWING);
  tb_session_set_playing (tb_lesson_runner_get_session (runner), FALSE);
  g_assert_cmpint (tb_lesson_runner_get_stage (runner), ==, TB_LESSON_REVEALED);
  /* Two miles an hour more finish further right: the first choice (mechanics; claimed by the lesson). */
  g_assert_cmpint (tb_lesson_runner_get_result (runner, 0).verdict, ==, TB_GUESS_RIGHT);
  late = tb_lesson_runner_explain (runner);
  g_assert_nonnull (late);
  g_assert_null (strchr (late, '{'));
  tb_lesson_runner_set_choice (runner, 1);
  g_assert_cmpint (tb_lesson_runner_get_choice (runner), ==, 0);
  /* A marker. */
  tb_lesson_runner_go (runner, 1);
  settle (runner);
  g_assert_true (tb_lesson_runner_asks_for_marker (runner));
  g_assert_cmpfloat (tb_lesson_runner_get_line (runner), ==, TB_HEAD_PIN_Y);
  answer = answer_of (runner);
  tb_lesson_runner_set_board (runner, 1000);
  g_assert_cmpfloat (tb_lesson_runner_get_board (runner), ==, TB_LANE_BOARDS);
  tb_lesson_runner_set_board (runner, answer - 2);
  tb_lesson_runner_reveal (runner);
  g_assert_cmpint (tb_lesson_runner_get_result (runner, 1).verdict, ==, TB_GUESS_CLOSE);
  g_assert_cmpfloat_with_epsilon (tb_lesson_runner_get_result (runner, 1).off, 2, 0.0501);
  /* The end; and back to what was revealed. */
  tb_lesson_runner_go (runner, 2);
  g_assert_cmpint (tb_lesson_runner_get_stage (runner), ==, TB_LESSON_OVER);
  score = tb_lesson_runner_get_score (runner);
  g_assert_cmpuint (score.guessed, ==, 2);
  g_assert_cmpuint (score.right, ==, 1);
  g_assert_cmpuint (score.best_streak, ==, 1);
  g_assert_cmpfloat_with_epsilon (score.mean_off, 2, 0.0501);
  tb_lesson_runner_go (runner, 0);
  g_assert_cmpint (tb_lesson_runner_get_stage (runner), ==, TB_LESSON_REVEALED);
}

/* Every step of every lesson: set up, shown without a guess, explained, told in words. */
static void
test_every_step (void)
{
  g_autoptr (TbLessonRunner) runner = tb_lesson_runner_new (tb_application_get_library (application));
  g_autoptr (GPtrArray) lessons = tb_lessons_builtin ();

  for (guint i = 0; i < lessons->len; i++)
    {
      tb_lesson_runner_begin (runner, g_ptr_array_index (lessons, i));
      for (guint step = 0; step < tb_lesson_runner_get_n_steps (runner); step++)
        {
          g_autofree char *before = NULL, *after = NULL, *explained = NULL, *guess = NULL;

          tb_lesson_runner_go (runner, step);
          settle (runner);
          g_assert_cmpint (tb_lesson_runner_get_stage (runner), ==, TB_LESSON_ASKING);
          before = tb_lesson_words_before (tb_lesson_runner_get_thrown (runner)->study, TB_UNITS_METRIC);
          after = tb_lesson_words_after (tb_lesson_runner_get_thrown (runner)->study, TB_UNITS_IMPERIAL);
          tb_lesson_runner_reveal (runner);
          explained = tb_lesson_runner_explain (runner);
          guess = tb_lesson_words_guess (runner);
          g_assert_false (tb_lesson_runner_get_result (runner, step).guessed);
          g_assert_true (before[0] && after[0] && explained[0] && guess[0]);
        }
    }
}

/* Thrown away while a step is still being set up. */
static void
test_left_early (void)
{
  TbLessonRunner *runner = tb_lesson_runner_new (tb_application_get_library (application));
  g_autoptr (TbLesson) lesson = find_builtin ("moves");

  tb_lesson_runner_begin (runner, lesson);
  tb_lesson_runner_go (runner, 1);
  tb_lesson_runner_go (runner, 0);
  tb_lesson_runner_begin (runner, lesson);
  settle (runner);
  g_assert_cmpint (tb_lesson_runner_get_stage (runner), ==, TB_LESSON_ASKING);
  tb_lesson_runner_go (runner, 1);
  g_object_add_weak_pointer (G_OBJECT (runner), (gpointer *) &runner);
  g_object_unref (runner);
  WAIT_UNTIL (runner == NULL);
}

/* The window. */

typedef struct Lessons
{
  TbWindow *window;
  TbLessonWindow *lessons;
  TbLessonRunner *runner;
  TbLessonPage *page;
} Lessons;

static Lessons
open_lessons (const char *id)
{
  g_autoptr (TbLesson) lesson = NULL;
  Lessons self = { .window = new_window () };

  choose_action (self.window, "win.lessons", NULL);
  self.lessons = find_window (TB_TYPE_LESSON_WINDOW);
  g_assert_nonnull (self.lessons);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (self.lessons));
  self.runner = tb_lesson_window_get_runner (self.lessons);
  self.page = TB_LESSON_PAGE (tb_lesson_window_get_page (self.lessons, "step"));
  if (id == NULL)
    return self;
  lesson = find_builtin (id);
  tb_lesson_window_begin (self.lessons, lesson);
  settle (self.runner);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (self.lessons));
  return self;
}

static void
close_lessons (Lessons *self)
{
  gtk_window_destroy (GTK_WINDOW (self->window));
  do_pending ();
}

static void
test_comes_and_goes (void)
{
  Lessons self = open_lessons ("speed");
  gpointer window = self.window, lessons = self.lessons;

  g_object_add_weak_pointer (G_OBJECT (window), &window);
  g_object_add_weak_pointer (G_OBJECT (lessons), &lessons);
  gtk_widget_activate_action (GTK_WIDGET (self.window), "win.lessons", NULL);
  g_assert_true (find_window (TB_TYPE_LESSON_WINDOW) == self.lessons);
  gtk_window_destroy (GTK_WINDOW (self.lessons));
  g_assert_null (lessons);
  gtk_widget_activate_action (GTK_WIDGET (self.window), "win.lessons", NULL);
  lessons = find_window (TB_TYPE_LESSON_WINDOW);
  g_assert_nonnull (lessons);
  g_object_add_weak_pointer (G_OBJECT (lessons), &lessons);
  close_lessons (&self);
  g_assert_null (lessons);
  g_assert_null (window);
}

static void
activate (Lessons *self, const char *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (self->page), action, NULL));
  settle (self->runner);
}

static void
test_choice (void)
{
  Lessons self = open_lessons ("speed");
  TbSession *session = tb_window_get_session (self.window);
  g_autoptr (TbStudy) study = tb_study_ref (tb_session_get_study (session));
  GtkCheckButton *first = tb_lesson_page_get_choice (self.page, 0);
  const char *told = tb_picture_get_description (TB_PICTURE (tb_lesson_page_get_picture (self.page)));
  g_autofree char *explained = NULL;

  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (first), GTK_ACCESSIBLE_ROLE_RADIO);
  g_assert_null (tb_lesson_page_get_choice (self.page, 3));
  /* What is hidden from the eye is not told either. */
  g_assert_nonnull (strstr (told, "not shown yet"));
  g_assert_null (strstr (told, "After:"));
  gtk_check_button_set_active (first, TRUE);
  g_assert_cmpint (tb_lesson_runner_get_choice (self.runner), ==, 0);
  activate (&self, "step.throw");
  g_assert_cmpstr (tb_lesson_page_get_verdict (self.page), ==, tb_guess_verdict_text (TB_GUESS_RIGHT));
  explained = tb_lesson_runner_explain (self.runner);
  g_assert_cmpstr (tb_lesson_page_get_explanation (self.page), ==, explained);
  told = tb_picture_get_description (TB_PICTURE (tb_lesson_page_get_picture (self.page)));
  g_assert_nonnull (strstr (told, "After:"));
  g_assert_false (gtk_widget_get_sensitive (GTK_WIDGET (first)));
  /* The study is the same object as before, and can be neither undone nor saved. */
  g_assert_true (tb_session_get_study (session) == study);
  g_assert_false (tb_session_can_undo (session));
  g_assert_false (tb_session_get_modified (session));
  close_lessons (&self);
}

/* Where the marker has to be pulled to for a board: measured by pulling it to two places. */
static void
pull_to (TbLessonPicture *picture, TbLessonRunner *runner, double board)
{
  double left = 0.4 * gtk_widget_get_width (GTK_WIDGET (picture)), right = 1.5 * left, y = 50, low, high;

  tb_lesson_picture_drag_to (picture, left, y);
  high = tb_lesson_runner_get_board (runner);
  tb_lesson_picture_drag_to (picture, right, y);
  low = tb_lesson_runner_get_board (runner);
  g_assert_cmpfloat (high, >, low + 5);
  tb_lesson_picture_drag_to (picture, left + (right - left) * (board - high) / (low - high), y);
  g_assert_cmpfloat_with_epsilon (tb_lesson_runner_get_board (runner), board, 0.2);
}

static void
test_marker (void)
{
  Lessons self = open_lessons ("grip");
  TbLessonPicture *picture = tb_lesson_page_get_picture (self.page);
  GtkWidget *grip = tb_lesson_picture_get_grip (picture);
  double x, y, to_x;

  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (picture), GTK_ACCESSIBLE_ROLE_IMG);
  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (grip), GTK_ACCESSIBLE_ROLE_SLIDER);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (grip), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT,
                                       "no guess yet");
  g_assert_true (tb_lesson_picture_get_marker (picture, &x, &y));
  g_assert_false (gtk_widget_activate_action (GTK_WIDGET (self.page), "step.throw", NULL)
                  && tb_lesson_runner_get_stage (self.runner) != TB_LESSON_ASKING);
  pull_to (picture, self.runner, 30);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (grip), GTK_ACCESSIBLE_PROPERTY_VALUE_NOW,
                                       tb_lesson_runner_get_board (self.runner));
  g_assert_true (tb_lesson_picture_get_marker (picture, &to_x, &y));
  /* Higher boards lie to the left. */
  g_assert_cmpfloat (to_x, <, x);
  pull_to (picture, self.runner, answer_of (self.runner));
  activate (&self, "step.throw");
  g_assert_cmpint (tb_lesson_runner_get_result (self.runner, 0).verdict, ==, TB_GUESS_RIGHT);
  g_assert_cmpstr (tb_lesson_page_get_verdict (self.page), ==, tb_guess_verdict_text (TB_GUESS_RIGHT));
  /* It stays where it was put. */
  x = tb_lesson_runner_get_board (self.runner);
  tb_lesson_picture_drag_to (picture, 10, y);
  g_assert_cmpfloat (tb_lesson_runner_get_board (self.runner), ==, x);
  close_lessons (&self);
}

static void
test_end (void)
{
  Lessons self = open_lessons ("grip");
  TbSession *session = tb_window_get_session (self.window);
  TbLessonEnd *end = TB_LESSON_END (tb_lesson_window_get_page (self.lessons, "end"));

  activate (&self, "step.show");
  g_assert_false (tb_lesson_runner_get_result (self.runner, 0).guessed);
  activate (&self, "step.next");
  g_assert_cmpstr (tb_lesson_window_get_page_name (self.lessons), ==, "end");
  g_assert_cmpstr (tb_lesson_end_get_words (end), ==, "No guess was made.");
  /* Its throws become a study of the main window. */
  gtk_widget_activate_action (GTK_WIDGET (self.lessons), "lessons.take", "u", 0);
  g_assert_true (tb_session_get_study (session) == tb_lesson_runner_get_study (self.runner, 0));
  g_assert_false (tb_session_get_modified (session));
  gtk_widget_activate_action (GTK_WIDGET (self.lessons), "lessons.list", NULL);
  g_assert_cmpstr (tb_lesson_window_get_page_name (self.lessons), ==, "list");
  close_lessons (&self);
}

/* Changes that would be lost are asked about; without an answer the study stays. */
static void
test_take_asks (void)
{
  Lessons self = open_lessons ("grip");
  TbSession *session = tb_window_get_session (self.window);
  g_autoptr (TbStudy) study = NULL;

  tb_session_set_field (session, tb_field_find (TB_GROUP_DELIVERY, "speed_mph"), 20, NULL);
  study = tb_study_ref (tb_session_get_study (session));
  activate (&self, "step.show");
  gtk_widget_activate_action (GTK_WIDGET (self.lessons), "lessons.take", "u", 0);
  do_pending ();
  g_assert_true (tb_session_get_study (session) == study);
  close_lessons (&self);
}

static char *
progress_path (const char *bowler)
{
  g_autofree char *folder = tb_document_folder (TB_DOCUMENT_PROGRESS),
                  *name = g_strconcat (bowler, ".json", NULL);

  return g_build_filename (folder, name, NULL);
}

static void
test_progress (void)
{
  Lessons self = open_lessons ("grip");
  TbLearner *learner = tb_lesson_window_get_learner (self.lessons);
  TbProgressPage *page = TB_PROGRESS_PAGE (tb_lesson_window_get_page (self.lessons, "progress"));
  const char *bowler = tb_session_get_setup (tb_window_get_session (self.window), TB_SIDE_AFTER)->bowler_id;
  g_autofree char *path = progress_path (bowler), *words = NULL;
  g_autoptr (TbProgress) kept = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpstr (tb_learner_get_bowler (learner), ==, bowler);
  g_assert_true (tb_learner_forget (learner, NULL));
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  g_assert_nonnull (strstr (tb_progress_page_get_words (page), "Nothing is kept"));
  tb_lesson_runner_set_board (self.runner, answer_of (self.runner) - 2);
  activate (&self, "step.throw");
  kept = tb_progress_load (bowler, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (kept->guesses->len, ==, 1);
  g_assert_cmpstr (g_array_index (kept->guesses, TbProgressGuess, 0).lesson, ==, "grip");
  g_assert_cmpfloat_with_epsilon (g_array_index (kept->guesses, TbProgressGuess, 0).off, 2, 0.0501);
  words = tb_lesson_words_progress (tb_learner_get_progress (learner),
                                    tb_lesson_runner_get_lesson (self.runner));
  g_assert_cmpstr (words, ==, "Done: 0 of 1 right, 2.0 boards off");
  gtk_widget_activate_action (GTK_WIDGET (self.lessons), "lessons.progress", NULL);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (self.lessons));
  g_assert_nonnull (strstr (tb_progress_page_get_words (page), "0 of 1 guess right"));
  g_assert_true (tb_learner_forget (learner, NULL));
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  close_lessons (&self);
}

/* What cannot be read is told, left as it is, and nothing is written over it. */
static void
test_damaged_progress (void)
{
  g_autofree char *path = progress_path ("league-right"), *folder = g_path_get_dirname (path), *text = NULL;
  Lessons self;

  g_mkdir_with_parents (folder, 0700);
  g_assert_true (g_file_set_contents (path, "{ \"tenboard\": ", -1, NULL));
  self = open_lessons ("grip");
  g_assert_nonnull (tb_learner_get_problem (tb_lesson_window_get_learner (self.lessons)));
  tb_lesson_runner_set_board (self.runner, 20);
  activate (&self, "step.throw");
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "{ \"tenboard\": ");
  g_assert_true (tb_learner_forget (tb_lesson_window_get_learner (self.lessons), NULL));
  g_assert_null (tb_learner_get_problem (tb_lesson_window_get_learner (self.lessons)));
  close_lessons (&self);
}

static void
write_own (const char *name, const char *text)
{
  g_autofree char *folder = tb_document_folder (TB_DOCUMENT_LESSON),
                  *path = g_build_filename (folder, name, NULL);

  g_mkdir_with_parents (folder, 0700);
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

#define OWN_LESSON(id, claim)                                                                             \
  "{ \"tenboard\": \"lesson\", \"version\": 1, \"id\": \"" id                                             \
  "\", \"name\": \"Mine\", \"steps\": [ { \"name\": "                                                     \
  "\"One\", \"text\": \"Faster.\", \"after\": { \"delivery.speed_mph\": 19 }, \"ask\": { \"question\": "  \
  "\"Where?\", "                                                                                          \
  "\"measure\": \"board_at_pins\", \"of\": \"after\" }, \"claims\": [ { \"measure\": \"board_at_pins\", " \
  "\"of\": "                                                                                              \
  "\"difference\", " claim " } ], \"explain\": \"To {after.board_at_pins}.\" } ] }"

static void
test_own (void)
{
  const TbLessonShelf *shelf;
  g_autofree char *folder = NULL, *path = NULL;
  g_autoptr (GFile) file = NULL;
  Lessons self;

  write_own ("good.json", OWN_LESSON ("good", "\"below\": 0"));
  write_own ("wrong.json", OWN_LESSON ("wrong", "\"above\": 0"));
  write_own ("taken.json", OWN_LESSON ("speed", "\"below\": 0"));
  write_own ("torn.json", "{ \"tenboard\": \"lesson\", ");
  write_own ("deep.json", "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[");
  self = open_lessons (NULL);
  shelf = tb_lesson_list_get_shelf (TB_LESSON_LIST (tb_lesson_window_get_page (self.lessons, "list")));
  g_assert_cmpuint (shelf->own->len, ==, 2);
  g_assert_cmpuint (shelf->problems->len, ==, 3);
  g_assert_nonnull (strstr (g_ptr_array_index (shelf->problems, 0), "deep.json"));
  g_assert_nonnull (strstr (g_ptr_array_index (shelf->problems, 1), "another lesson has the id"));
  tb_lesson_window_begin (self.lessons, tb_lesson_shelf_find (shelf, "good"));
  settle (self.runner);
  g_assert_cmpint (tb_lesson_runner_get_stage (self.runner), ==, TB_LESSON_ASKING);
  /* One whose claim does not hold is not taught. */
  tb_lesson_window_begin (self.lessons, tb_lesson_shelf_find (shelf, "wrong"));
  settle (self.runner);
  g_assert_cmpint (tb_lesson_runner_get_stage (self.runner), ==, TB_LESSON_FAILED);
  g_assert_nonnull (strstr (tb_lesson_runner_get_problem (self.runner), "not what is claimed"));
  /* From a file anywhere: a damaged one leaves all as it is. */
  folder = tb_document_folder (TB_DOCUMENT_LESSON);
  path = g_build_filename (folder, "torn.json", NULL);
  file = g_file_new_for_path (path);
  g_assert_false (tb_lesson_window_load (self.lessons, file));
  g_assert_cmpstr (tb_lesson_runner_get_lesson (self.runner)->id, ==, "wrong");
  close_lessons (&self);
}

/* A lesson given to the program, or chosen under Open, is no study: the lessons' window takes it. */
static void
test_given_to_the_program (void)
{
  Lessons self = { .window = new_window () };
  TbSession *session = tb_window_get_session (self.window);
  g_autoptr (TbStudy) study = tb_study_ref (tb_session_get_study (session));
  g_autofree char *folder = tb_document_folder (TB_DOCUMENT_LESSON);
  g_autoptr (GFile) place = g_file_new_for_path (folder), good = g_file_get_child (place, "given.json"),
                    bad = g_file_get_child (place, "given-bad.json");

  write_own ("given.json", OWN_LESSON ("given", "\"below\": 0"));
  write_own ("given-bad.json", OWN_LESSON ("given", "\"low\": 0"));
  g_assert_true (tb_window_load (self.window, good));
  self.lessons = find_window (TB_TYPE_LESSON_WINDOW);
  g_assert_cmpstr (tb_lesson_runner_get_lesson (tb_lesson_window_get_runner (self.lessons))->id, ==, "given");
  g_assert_cmpstr (tb_lesson_window_get_page_name (self.lessons), ==, "step");
  g_assert_false (tb_window_load (self.window, bad));
  g_assert_true (find_window (TB_TYPE_LESSON_WINDOW) == self.lessons);
  g_assert_true (tb_study_equal (study, tb_session_get_study (session)));
  close_lessons (&self);
}

static void
add_tests (void)
{
  g_test_add_func ("/lessons/runner", test_runner);
  g_test_add_func ("/lessons/every-step", test_every_step);
  g_test_add_func ("/lessons/left-early", test_left_early);
  g_test_add_func ("/lessons/comes-and-goes", test_comes_and_goes);
  g_test_add_func ("/lessons/choice", test_choice);
  g_test_add_func ("/lessons/marker", test_marker);
  g_test_add_func ("/lessons/end", test_end);
  g_test_add_func ("/lessons/take-asks", test_take_asks);
  g_test_add_func ("/lessons/progress", test_progress);
  g_test_add_func ("/lessons/damaged-progress", test_damaged_progress);
  g_test_add_func ("/lessons/own", test_own);
  g_test_add_func ("/lessons/given-to-the-program", test_given_to_the_program);
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  start_application ();
  add_tests ();
  return run_tests ();
}
