/* How much a document may hold: each limit, one past it, gives its sentence; and a document within the limits
 * needs little memory, so that what comes from elsewhere cannot use it up.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <string.h>
#include <sys/resource.h>
#include <unistd.h>

#include "tb-document.h"
#include "tb-film-csv.h"
#include "tb-json-check.h"
#include "tb-lesson-shelf.h"
#include "tb-progress.h"
#include "tb-study-document.h"
#include "tb-surface-log-document.h"

/* Memory that is left to a child: measured between 64 and 72 MB for the worst text, most of it the parser’s. */
#define MEMORY_LEFT (128u * 1024u * 1024u)
/* Not enough for the buffer of one file. */
#define LITTLE_MEMORY_LEFT (1024u * 1024u)

static void
check_error (const GError *error, int code, const char *sentence)
{
  g_assert_nonnull (error);
  g_assert_cmpstr (error->message, ==, sentence);
  g_assert_error (error, TB_STORE_ERROR, code);
}

/* An item so many times, with commas between. */
static char *
repeat (const char *item, guint count)
{
  GString *list = g_string_new (NULL);

  for (guint i = 0; i < count; i++)
    g_string_append_printf (list, "%s%s", i ? "," : "", item);
  return g_string_free (list, FALSE);
}

#define CLAIM "{\"measure\":\"board_at_pins\",\"of\":\"after\",\"below\":99}"

/* A step with its parts filled in; each NULL stands for one that is in order. */
typedef struct Step
{
  const char *after, *choices, *claims, *explain;
} Step;

static char *
step_text (const Step *step)
{
  return g_strdup_printf ("{\"name\":\"S\",\"text\":\"T\",\"after\":{%s},\"ask\":{\"question\":\"Q\","
                          "\"measure\":\"board_at_pins\","
                          "\"of\":\"after\"%s},\"claims\":[%s],\"explain\":\"%s\"}",
                          step->after ? step->after : "\"delivery.speed_mph\":18",
                          step->choices ? step->choices : "", step->claims ? step->claims : CLAIM,
                          step->explain ? step->explain : "E");
}

static char *
lesson_text (const char *steps)
{
  return g_strdup_printf (
      "{\"tenboard\":\"lesson\",\"version\":1,\"id\":\"l\",\"name\":\"L\",\"steps\":[%s]}", steps);
}

static TbLesson *
read_step (const Step *step, GError **error)
{
  g_autofree char *body = step_text (step), *text = lesson_text (body);

  return tb_lesson_from_text (text, strlen (text), error);
}

static void
check_step_refused (const Step *step, int code, const char *sentence)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (read_step (step, &error));
  check_error (error, code, sentence);
}

static void
check_step_taken (const Step *step)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TbLesson) lesson = read_step (step, &error);

  g_assert_no_error (error);
  g_assert_nonnull (lesson);
}

static void
test_lesson_steps (void)
{
  g_autofree char *step = step_text (&(Step){ 0 });
  g_autofree char *most = repeat (step, TB_LESSON_MAX_STEPS), *more = repeat (step, TB_LESSON_MAX_STEPS + 1);
  g_autofree char *good = lesson_text (most), *bad = lesson_text (more);
  g_autoptr (TbLesson) lesson = tb_lesson_from_text (good, strlen (good), NULL);
  g_autoptr (GError) error = NULL;

  g_assert_nonnull (lesson);
  g_assert_null (tb_lesson_from_text (bad, strlen (bad), &error));
  check_error (error, TB_STORE_ERROR_TOO_LARGE, "steps[21]: there are more than 20 steps");
}

static void
test_lesson_claims (void)
{
  g_autofree char *most = repeat (CLAIM, TB_LESSON_MAX_CLAIMS),
                  *more = repeat (CLAIM, TB_LESSON_MAX_CLAIMS + 1);

  check_step_taken (&(Step){ .claims = most });
  check_step_refused (&(Step){ .claims = more }, TB_STORE_ERROR_TOO_LARGE,
                      "steps[1].claims[21]: there are more than 20 claims");
}

static void
test_lesson_choices (void)
{
  g_autoptr (GString) choices = g_string_new (",\"choices\":[{\"text\":\"C\",\"below\":1}");

  for (guint i = 1; i <= TB_LESSON_MAX_CHOICES; i++)
    g_string_append_printf (choices, ",{\"text\":\"C\",\"above\":%u,\"below\":%u}", i, i + 1);
  g_string_append (choices, "]");
  check_step_refused (&(Step){ .choices = choices->str }, TB_STORE_ERROR_TOO_LARGE,
                      "steps[1].ask.choices[7]: there are more than 6 choices");
}

static void
test_lesson_changes (void)
{
  g_autoptr (GString) changes = g_string_new ("\"a\":1");
  g_autofree char *text = g_strnfill (TB_NAME_MAX + 1, 'x');
  g_autofree char *value = g_strdup_printf ("\"ball\":\"%s\"", text),
                  *key = g_strdup_printf ("\"%s\":1", text);
  g_autofree char *long_key = NULL;

  for (guint i = 0; i < TB_LESSON_MAX_CHANGES; i++)
    g_string_append_printf (changes, ",\"a%u\":1", i);
  check_step_refused (&(Step){ .after = changes->str }, TB_STORE_ERROR_TOO_LARGE,
                      "steps[1].after: there are more than 100 changes");
  check_step_refused (&(Step){ .after = value }, TB_STORE_ERROR_TOO_LARGE,
                      "steps[1].after.ball: the text is longer than 200 bytes");
  text[60] = '\0';
  long_key = g_strdup_printf ("steps[1].after.%s…: this key is not known here", text);
  check_step_refused (&(Step){ .after = key }, TB_STORE_ERROR_UNKNOWN_KEY, long_key);
}

/* A key is shown in a sentence, perhaps on a terminal. */
static void
test_lesson_key_is_quoted (void)
{
  check_step_refused (&(Step){ .after = "\"\\u001b[2J\":1" }, TB_STORE_ERROR_UNKNOWN_KEY,
                      "steps[1].after.\xef\xbf\xbd[2J: this key is not known here");
  check_step_refused (&(Step){ .after = "\"<b>\":1" }, TB_STORE_ERROR_UNKNOWN_KEY,
                      "steps[1].after.<b>: this key is not known here");
}

static void
test_lesson_texts (void)
{
  g_autofree char *most = g_strnfill (TB_NOTES_MAX, 'x'), *more = g_strnfill (TB_NOTES_MAX + 1, 'x');

  check_step_taken (&(Step){ .explain = most });
  check_step_refused (&(Step){ .explain = more }, TB_STORE_ERROR_TOO_LARGE,
                      "steps[1].explain: the text is longer than 65536 bytes");
  check_step_taken (&(Step){ .explain = "a line\\r\\n\\tand another" });
  check_step_refused (&(Step){ .explain = "\\u001b[2J" }, TB_STORE_ERROR_VALUE,
                      "steps[1].explain: a text without control characters was expected");
}

/* Documents are named by ids, never by files. */
static void
test_lesson_names_no_file (void)
{
  static const char *const paths[] = { "../../secret", "/etc/passwd", "./hybrid-light", "hybrid-light.json" };
  g_autoptr (TbLibrary) library = tb_library_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      g_autofree char *after = g_strdup_printf ("\"ball\":\"%s\"", paths[i]);
      g_autofree char *sentence
          = g_strdup_printf ("steps[1]: ball: there is no ball with the id “%s”", paths[i]);
      g_autoptr (TbLesson) lesson = read_step (&(Step){ .after = after }, NULL);
      g_autoptr (GError) error = NULL;

      g_assert_nonnull (lesson);
      g_assert_false (tb_lesson_check (lesson, library, &error));
      g_assert_cmpstr (error->message, ==, sentence);
    }
}

/* Files on the shelf are read up to a number, and the rest left alone. */
static void
test_shelf (void)
{
  g_autofree char *folder = tb_document_folder (TB_DOCUMENT_LESSON);
  g_autoptr (TbLessonShelf) shelf = NULL;

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  for (guint i = 0; i <= TB_LESSON_SHELF_MAX; i++)
    {
      g_autofree char *name = g_strdup_printf ("%03u.json", i), *path = g_build_filename (folder, name, NULL);

      g_assert_true (g_file_set_contents (path, "{}", -1, NULL));
    }
  shelf = tb_lesson_shelf_new ();
  g_assert_cmpuint (shelf->problems->len, ==, TB_LESSON_SHELF_MAX);
  for (guint i = 0; i <= TB_LESSON_SHELF_MAX; i++)
    {
      g_autofree char *name = g_strdup_printf ("%03u.json", i), *path = g_build_filename (folder, name, NULL);

      g_assert_cmpint (g_remove (path), ==, 0);
    }
}

static char *
progress_text (guint count)
{
  g_autofree char *guesses
      = repeat ("{\"lesson\":\"speed\",\"step\":1,\"off\":null,\"verdict\":\"right\"}", count);

  return g_strdup_printf ("{\"tenboard\":\"progress\",\"version\":1,\"bowler\":\"b\",\"guesses\":[%s]}",
                          guesses);
}

static void
test_progress (void)
{
  g_autofree char *good = progress_text (TB_PROGRESS_MAX), *bad = progress_text (TB_PROGRESS_MAX + 1);
  g_autoptr (TbProgress) progress = tb_progress_from_text ("b", good, strlen (good), NULL);
  g_autoptr (GError) error = NULL;

  g_assert_nonnull (progress);
  g_assert_cmpuint (progress->guesses->len, ==, TB_PROGRESS_MAX);
  g_assert_null (tb_progress_from_text ("b", bad, strlen (bad), &error));
  check_error (error, TB_STORE_ERROR_TOO_LARGE, "guesses[2001]: there are more than 2000 guesses");
}

/* A log that could not be opened again is not saved. */
static void
test_surface_log (void)
{
  g_autoptr (TbBallSurface) surface = tb_ball_surface_new (1e-6), again = NULL;
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < TB_SURFACE_LOG_MAX; i++)
    tb_surface_log_add (surface->log, tb_surface_entry_new ("2026-01-01", TB_SURFACE_POLISH, 0, NULL));
  g_assert_true (tb_ball_surface_save (surface, "worn", &error));
  tb_surface_log_add (surface->log, tb_surface_entry_new ("2026-01-02", TB_SURFACE_POLISH, 0, NULL));
  g_assert_false (tb_ball_surface_save (surface, "worn", &error));
  check_error (error, TB_STORE_ERROR_TOO_LARGE, "worn.json: a log has at most 5000 entries.");
  again = tb_ball_surface_load ("worn", 1e-6, NULL);
  g_assert_nonnull (again);
  g_assert_cmpuint (again->log->len, ==, TB_SURFACE_LOG_MAX);
}

/* One row of films at a distance, in tenths of a foot. */
static void
append_row (GString *table, guint tenths)
{
  g_autofree char *films = repeat ("10", TB_OIL_COLUMNS);

  g_string_append_printf (table, "%u.%u,%s\n", tenths / 10, tenths % 10, films);
}

static void
test_film_table (void)
{
  g_autoptr (GString) table = g_string_new (NULL);
  g_autofree TbOil *oil = g_new0 (TbOil, 1);
  g_autoptr (GError) error = NULL;
  g_autofree char *large = g_strnfill (TB_FILM_CSV_MAX_BYTES + 1, '\n');

  for (guint row = 0; row < 2 * TB_OIL_ROWS; row++)
    append_row (table, row);
  g_assert_true (tb_film_csv_from_text (table->str, table->len, oil, &error));
  append_row (table, 2 * TB_OIL_ROWS);
  g_assert_false (tb_film_csv_from_text (table->str, table->len, oil, &error));
  check_error (error, TB_STORE_ERROR_TOO_LARGE, "line 253: at most 252 lines were expected");
  g_clear_error (&error);
  g_assert_false (tb_film_csv_from_text (large, strlen (large), oil, &error));
  check_error (error, TB_STORE_ERROR_TOO_LARGE, "a table of films has at most 1.0\xc2\xa0MB");
}

/* What a person types: cut between two characters, its control characters blanks. */
static void
test_text_fitted (void)
{
  static const struct
  {
    const char *text;
    gsize limit;
    gboolean one_line;
    const char *fitted;
  } cases[] = {
    { "", 9, TRUE, "" },
    { "short", 9, TRUE, "short" },
    { "a\nb\tc\x1b"
      "d",
      9, TRUE, "a b c d" },
    { "a\nb\tc\x1b"
      "d",
      9, FALSE, "a\nb\tc d" },
    { "a\xc2\x9b"
      "b",
      9, FALSE, "a b" },
    { "äöü", 5, TRUE, "äö" },
    { "äöü", 6, TRUE, "äöü" },
    { "🎳🎳", 7, TRUE, "🎳" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *fitted = tb_text_fitted (cases[i].text, cases[i].limit, cases[i].one_line);

      g_assert_cmpstr (fitted, ==, cases[i].fitted);
    }
}

/* A file's name may hold anything but a slash; the sentence stays one line. */
static void
test_file_name_in_sentence (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (tb_lesson_load ("/no-such-folder/a\nb\x1b[2J.json", &error));
  g_assert_cmpstr (error->message, ==,
                   "/no-such-folder/a b [2J.json: the file cannot be read: No such file or directory.");
}

#ifndef __SANITIZE_ADDRESS__

/* So much more address space than the process has now. */
static void
leave_memory (gsize left)
{
  g_autofree char *sizes = NULL;
  struct rlimit limit;

  g_assert_true (g_file_get_contents ("/proc/self/statm", &sizes, NULL, NULL));
  g_assert_cmpint (getrlimit (RLIMIT_AS, &limit), ==, 0);
  limit.rlim_cur = g_ascii_strtoull (sizes, NULL, 10) * (guint64) sysconf (_SC_PAGESIZE) + left;
  g_assert_cmpint (setrlimit (RLIMIT_AS, &limit), ==, 0);
}

/* Texts that need the most for their size: values that are lists, and a table of nothing but ends of lines.
 */
static void
test_little_memory (void)
{
  if (g_test_subprocess ())
    {
      g_autofree char *lists = repeat ("[]", TB_JSON_MAX_VALUES - 2), *text = g_strdup_printf ("[%s]", lists);
      g_autofree char *table = g_strnfill (TB_FILM_CSV_MAX_BYTES, '\n');
      g_autofree TbOil *oil = g_new0 (TbOil, 1);
      g_autoptr (TbLibrary) library = tb_library_new ();
      g_autoptr (GError) error = NULL;

      leave_memory (MEMORY_LEFT);
      g_assert_null (tb_study_from_text (library, text, strlen (text), &error));
      check_error (error, TB_STORE_ERROR_NOT_OURS, "this is not a document of Tenboard");
      g_clear_error (&error);
      g_assert_false (tb_film_csv_from_text (table, strlen (table), oil, &error));
      g_assert_error (error, TB_STORE_ERROR, TB_STORE_ERROR_NOT_OURS);
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_passed ();
}

/* The largest study there is: read, thrown and written within it. */
static void
test_largest_study (void)
{
  if (g_test_subprocess ())
    {
      g_autoptr (TbLibrary) library = tb_library_new ();
      g_autoptr (TbStudy) start = tb_library_start_study (), large = NULL, again = NULL;
      g_autofree char *notes = g_strnfill (TB_NOTES_MAX, 'n'), *text = NULL, *padding = NULL, *padded = NULL;
      g_autoptr (GError) error = NULL;

      large = tb_study_with_text (start, "Large", notes);
      text = tb_study_to_text (large);
      padding = g_strnfill (TB_JSON_MAX_BYTES - strlen (text), ' ');
      padded = g_strconcat (text, padding, NULL);
      leave_memory (MEMORY_LEFT);
      again = tb_study_from_text (library, padded, strlen (padded), &error);
      g_assert_no_error (error);
      g_assert_cmpstr (again->notes, ==, notes);
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_passed ();
}

/* Not even room for a file: a sentence, not the end of the program. */
static void
test_no_memory (void)
{
  if (g_test_subprocess ())
    {
      g_autoptr (TbLibrary) library = tb_library_new ();
      g_autoptr (TbStudy) start = tb_library_start_study ();
      g_autofree char *path = g_build_filename (g_get_user_data_dir (), "study.json", NULL), *sentence = NULL;
      g_autoptr (GError) error = NULL;

      sentence = g_strconcat (path, ": the file cannot be read: Cannot allocate memory.", NULL);
      g_assert_true (tb_study_save (start, path, NULL));
      leave_memory (LITTLE_MEMORY_LEFT);
      g_assert_null (tb_study_load (library, path, &error));
      check_error (error, TB_STORE_ERROR_READ, sentence);
      return;
    }
  g_test_trap_subprocess (NULL, 0, G_TEST_SUBPROCESS_DEFAULT);
  g_test_trap_assert_passed ();
}

/* The sanitizer takes all addresses for itself, so that there is no limit to set. */
static void
add_memory (void)
{
  g_test_add_func ("/limits/little-memory", test_little_memory);
  g_test_add_func ("/limits/largest-study", test_largest_study);
  g_test_add_func ("/limits/no-memory", test_no_memory);
}

#else

static void
add_memory (void)
{
}

#endif

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  g_test_add_func ("/limits/lesson/steps", test_lesson_steps);
  g_test_add_func ("/limits/lesson/claims", test_lesson_claims);
  g_test_add_func ("/limits/lesson/choices", test_lesson_choices);
  g_test_add_func ("/limits/lesson/changes", test_lesson_changes);
  g_test_add_func ("/limits/lesson/key-is-quoted", test_lesson_key_is_quoted);
  g_test_add_func ("/limits/lesson/texts", test_lesson_texts);
  g_test_add_func ("/limits/lesson/names-no-file", test_lesson_names_no_file);
  g_test_add_func ("/limits/shelf", test_shelf);
  g_test_add_func ("/limits/progress", test_progress);
  g_test_add_func ("/limits/surface-log", test_surface_log);
  g_test_add_func ("/limits/film-table", test_film_table);
  g_test_add_func ("/limits/text-fitted", test_text_fitted);
  g_test_add_func ("/limits/file-name-in-sentence", test_file_name_in_sentence);
  add_memory ();
  return g_test_run ();
}
