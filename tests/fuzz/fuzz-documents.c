/* Documents and option lists that nobody would write.
 *
 * Whatever comes in, the answer is a document or one clear sentence, and no memory is touched that is not
 * ours. What is taken can be written, and what is written is taken again, to the same text; a study that is
 * taken can be thrown, and a lesson that is taken can be checked. No text that is taken has a control
 * character in it, apart from line ends and tabs.
 *
 * The first byte says what the rest is taken for. With a fuzzing compiler (clang
 * -fsanitize=fuzzer,address,undefined and -DTB_FUZZING_COMPILER) the fuzzer brings its own main(); without
 * one the main() below mutates the seeds itself:
 *
 *   fuzz-documents [--count N] [--seed N] SEED-FILE...
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gstdio.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "tb-assign.h"
#include "tb-document.h"
#include "tb-film-csv.h"
#include "tb-lesson-shelf.h"
#include "tb-progress.h"
#include "tb-request.h"
#include "tb-study-document.h"
#include "tb-surface-log-document.h"

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

/* What an input may be taken for. */
typedef enum Kind
{
  KIND_STUDY,
  KIND_BALL,
  KIND_BOWLER,
  KIND_PATTERN,
  KIND_FILM_TABLE,
  KIND_SURFACE_LOG,
  KIND_ASSIGNMENT,
  KIND_OPTIONS,
  KIND_LESSON,
  KIND_PROGRESS,
  KIND_SHELF,
  N_KINDS
} Kind;

/* Of all that were taken, one in so many is thrown; a throw costs as much as many documents. */
#define THROW_ONE_IN 8
/* A lesson is up to forty throws, some of which are aimed. */
#define CHECK_ONE_IN 64
/* Words on a command line; what follows stays in the last. */
#define MAX_OPTIONS 24

static TbLibrary *library;
static guint64 taken, refused;
static char *user_folder;

static void
check_words (const char *words)
{
  g_assert_cmpuint (strlen (words), >, 0);
  g_assert_true (g_utf8_validate (words, -1, NULL));
  for (const char *c = words; *c; c = g_utf8_next_char (c))
    g_assert_false (g_unichar_iscntrl (g_utf8_get_char (c)));
}

static void
check_sentence (const GError *error)
{
  g_assert_nonnull (error);
  check_words (error->message);
  refused++;
}

/* Of a document that was taken: what is shown as it is. */
static void
check_text (const char *text)
{
  for (const char *c = text; *c; c = g_utf8_next_char (c))
    g_assert_true (strchr ("\n\r\t", *c) || !g_unichar_iscntrl (g_utf8_get_char (c)));
}

static void
check_throw (const TbStudy *study)
{
  if (taken % THROW_ONE_IN != 0)
    return;
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      g_autoptr (TbRun) run = tb_run_new (study->side[side]);

      g_assert_true (run->status != TB_OK || run->path.count > 0);
    }
}

static void
try_study (const char *text, gsize length)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TbStudy) study = tb_study_from_text (library, text, length, &error);
  g_autoptr (TbStudy) again = NULL;
  g_autofree char *first = NULL, *second = NULL;

  if (!study)
    {
      check_sentence (error);
      return;
    }
  taken++;
  check_text (study->title);
  check_text (study->notes);
  first = tb_study_to_text (study);
  again = tb_study_from_text (library, first, strlen (first), &error);
  g_assert_no_error (error);
  second = tb_study_to_text (again);
  g_assert_cmpstr (first, ==, second);
  check_throw (study);
}

/* The kinds that are read and written in the same way. */
#define DEFINE_TRY(name, Type, prefix)                                     \
  static void try_##name (const char *text, gsize length)                  \
  {                                                                        \
    g_autoptr (GError) error = NULL;                                       \
    g_autoptr (Type) document = prefix##_from_text (text, length, &error); \
    g_autoptr (Type) again = NULL;                                         \
    g_autofree char *first = NULL, *second = NULL;                         \
                                                                           \
    if (!document)                                                         \
      {                                                                    \
        check_sentence (error);                                            \
        return;                                                            \
      }                                                                    \
    taken++;                                                               \
    first = prefix##_to_text (document);                                   \
    again = prefix##_from_text (first, strlen (first), &error);            \
    g_assert_no_error (error);                                             \
    second = prefix##_to_text (again);                                     \
    g_assert_cmpstr (first, ==, second);                                   \
  }

DEFINE_TRY (ball, TbBallDocument, tb_ball_document)
DEFINE_TRY (bowler, TbBowler, tb_bowler)
DEFINE_TRY (pattern, TbPattern, tb_pattern)
DEFINE_TRY (surface_log, TbBallSurface, tb_ball_surface)

static void
try_film_table (const char *text, gsize length)
{
  g_autoptr (GError) error = NULL;
  g_autofree TbOil *oil = g_new0 (TbOil, 1);

  if (tb_film_csv_from_text (text, length, oil, &error))
    taken++;
  else
    check_sentence (error);
}

/* As from a command line: words without a zero byte. */
static void
try_assignment (const char *text, gsize length)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TbStudy) start = tb_library_start_study ();
  g_autofree char *word = g_strndup (text, length);
  g_autoptr (TbStudy) study = NULL;

  /* A command line that is no UTF-8 is converted or refused before it comes here. */
  if (!g_utf8_validate (word, -1, NULL))
    return;
  study = tb_assign (start, library, word, &error);
  if (!study)
    {
      check_sentence (error);
      return;
    }
  taken++;
  check_throw (study);
}

static void
try_options (const char *text, gsize length)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *line = g_strndup (text, length);
  g_auto (GStrv) words = NULL;
  g_autofree char *program = NULL;
  g_autoptr (TbRequest) request = NULL;

  if (!g_utf8_validate (line, -1, NULL))
    return;
  program = g_strconcat ("tenboard\n", line, NULL);
  words = g_strsplit (program, "\n", MAX_OPTIONS);
  request = tb_request_new ((int) g_strv_length (words), words, &error);
  if (request)
    taken++;
  else
    check_sentence (error);
}

static void
check_lesson_texts (const TbLesson *lesson)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new ();

  tb_lesson_list_texts (lesson, texts);
  g_assert_cmpuint (texts->len, >=, 1 + 4 * lesson->steps->len);
  for (guint i = 0; i < texts->len; i++)
    check_text (g_ptr_array_index (texts, i));
}

static void
try_lesson (const char *text, gsize length)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TbLesson) lesson = tb_lesson_from_text (text, length, &error);

  if (!lesson)
    {
      check_sentence (error);
      return;
    }
  taken++;
  check_lesson_texts (lesson);
  /* A lesson that is in order may still claim what is not so. */
  if (taken % CHECK_ONE_IN == 0 && !tb_lesson_check (lesson, library, &error))
    check_words (error->message);
}

static void
try_progress (const char *text, gsize length)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TbProgress) progress = tb_progress_from_text ("learner", text, length, &error), again = NULL;
  g_autofree char *first = NULL, *second = NULL;

  if (!progress)
    {
      check_sentence (error);
      return;
    }
  taken++;
  g_assert_cmpuint (tb_progress_best_streak (progress), <=, progress->guesses->len);
  first = tb_progress_to_text (progress);
  again = tb_progress_from_text ("learner", first, strlen (first), &error);
  g_assert_no_error (error);
  second = tb_progress_to_text (again);
  g_assert_cmpstr (first, ==, second);
}

/* As a file in the folder of the user's own lessons: on the shelf, or one problem that is told. */
static void
try_shelf (const char *text, gsize length)
{
  g_autofree char *folder = tb_document_folder (TB_DOCUMENT_LESSON);
  g_autofree char *path = g_build_filename (folder, "own.json", NULL);
  g_autoptr (TbLessonShelf) shelf = NULL;

  g_assert_true (g_str_has_prefix (folder, user_folder));
  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, text, (gssize) length, NULL));
  shelf = tb_lesson_shelf_new ();
  g_assert_cmpuint (shelf->own->len + shelf->problems->len, ==, 1);
  taken += shelf->own->len;
  refused += shelf->problems->len;
  for (guint i = 0; i < shelf->own->len; i++)
    check_lesson_texts (g_ptr_array_index (shelf->own, i));
  for (guint i = 0; i < shelf->problems->len; i++)
    check_words (g_ptr_array_index (shelf->problems, i));
  g_assert_cmpint (g_remove (path), ==, 0);
}

/* Whoever runs this keeps lessons of their own; they are none of ours. */
static void
begin (void)
{
  user_folder = g_dir_make_tmp ("tenboard-fuzz-XXXXXX", NULL);
  g_assert_nonnull (user_folder);
  g_setenv ("XDG_DATA_HOME", user_folder, TRUE);
  library = tb_library_new ();
}

static void (*const try_kind[N_KINDS]) (const char *text, gsize length) = {
  [KIND_STUDY] = try_study,           [KIND_BALL] = try_ball,
  [KIND_BOWLER] = try_bowler,         [KIND_PATTERN] = try_pattern,
  [KIND_FILM_TABLE] = try_film_table, [KIND_SURFACE_LOG] = try_surface_log,
  [KIND_ASSIGNMENT] = try_assignment, [KIND_OPTIONS] = try_options,
  [KIND_LESSON] = try_lesson,         [KIND_PROGRESS] = try_progress,
  [KIND_SHELF] = try_shelf,
};

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  if (!library)
    begin ();
  if (size > 0)
    {
      /* A copy of just that size, so that reading past its end is seen. */
      g_autofree char *text = g_memdup2 (data + 1, size - 1);

      try_kind[data[0] % N_KINDS](text ? text : "", size - 1);
    }
  return 0;
}

#ifndef TB_FUZZING_COMPILER

/* Inputs grow to this at the most, bytes. */
#  define MAX_SIZE 65536
#  define MAX_CHANGES 6

static GPtrArray *seeds; /* of GString, the first byte the kind */

/* What tells a parser most: ends of ranges, and what is JSON's and ours. */
static const char *const tokens[] = {
  "0",
  "-0",
  "1e999",
  "-1",
  "1e-320",
  "9007199254740993",
  "0.1",
  "null",
  "true",
  "\"\"",
  "[]",
  "{}",
  "[[",
  "{\"a\":",
  ",",
  ":",
  "\"",
  "\\u0000",
  "\\ud800",
  "\\u202e",
  "\xef\xbb\xbf",
  "\xff",
  "&lt;<b>",
  "%s%n",
  "../../x",
  "\"version\": 2",
  "\"tenboard\": \"study\"",
  "\"holes\": [",
  "games_played",
  "=",
  "before.",
  "after.ball.",
  "--set",
  "\n--size\n0x0",
  ";",
  "\t",
  "1,5",
  "\r\n",
  "NaN",
  "inf",
  "\\u001b[2J",
  "\\u009b",
  "\\u2028",
  "{after.",
  "{size.board_at_pins}",
  "}",
  "\"line\": \"pocket\"",
  "\"choices\": [",
  "\"above\":",
  "\"below\":",
  "\"of\": \"difference\"",
  "\"measure\": \"board_at_pins\"",
  "\"off\":",
};

static void
insert_token (GString *text, GRand *chance)
{
  gssize at = g_rand_int_range (chance, 1, (gint32) text->len + 1);

  g_string_insert (text, at, tokens[g_rand_int_range (chance, 0, G_N_ELEMENTS (tokens))]);
}

static void
flip_byte (GString *text, GRand *chance)
{
  if (text->len > 1)
    text->str[g_rand_int_range (chance, 1, (gint32) text->len)]
        ^= (char) (1 << g_rand_int_range (chance, 0, 8));
}

static void
cut_piece (GString *text, GRand *chance)
{
  gint32 at = g_rand_int_range (chance, 1, (gint32) text->len + 1), length = g_rand_int_range (chance, 0, 40);

  g_string_erase (text, at, MIN (length, (gint32) text->len - at));
}

static void
repeat_piece (GString *text, GRand *chance)
{
  gint32 at = g_rand_int_range (chance, 1, (gint32) text->len + 1),
         length = g_rand_int_range (chance, 0, 200);
  g_autofree char *piece = g_strndup (text->str + at, (gsize) MIN (length, (gint32) text->len - at));

  for (int times = g_rand_int_range (chance, 1, 4); times > 0; times--)
    g_string_insert (text, at, piece);
}

/* Another number in place of one: most documents that are nearly right are wrong in a number. */
static void
change_number (GString *text, GRand *chance)
{
  gint32 at = g_rand_int_range (chance, 1, (gint32) text->len + 1), length = 0;

  while (at < (gint32) text->len && !g_ascii_isdigit (text->str[at]))
    at++;
  while (at + length < (gint32) text->len
         && (g_ascii_isdigit (text->str[at + length]) || text->str[at + length] == '.'))
    length++;
  if (length > 0)
    {
      char number[G_ASCII_DTOSTR_BUF_SIZE];

      g_ascii_formatd (number, sizeof number, "%.4g", g_rand_double_range (chance, -10, 60));
      g_string_erase (text, at, length);
      g_string_insert (text, at, number);
    }
}

static void
splice (GString *text, GRand *chance)
{
  const GString *other = g_ptr_array_index (seeds, g_rand_int_range (chance, 0, (gint32) seeds->len));
  gint32 from = g_rand_int_range (chance, 1, (gint32) other->len + 1);

  g_string_truncate (text, (gsize) g_rand_int_range (chance, 1, (gint32) text->len + 1));
  g_string_append_len (text, other->str + from, (gssize) other->len - from);
}

static void (*const mutations[]) (GString *text, GRand *chance)
    = { insert_token, flip_byte, cut_piece, repeat_piece, change_number, change_number, splice };

static void
try_mutant (GRand *chance)
{
  const GString *seed = g_ptr_array_index (seeds, g_rand_int_range (chance, 0, (gint32) seeds->len));
  g_autoptr (GString) text = g_string_new_len (seed->str, (gssize) seed->len);

  for (int changes = g_rand_int_range (chance, 0, MAX_CHANGES); changes > 0; changes--)
    mutations[g_rand_int_range (chance, 0, G_N_ELEMENTS (mutations))](text, chance);
  LLVMFuzzerTestOneInput ((const uint8_t *) text->str, MIN (text->len, MAX_SIZE));
}

/* What a seed file is, by its folder or its name. */
static Kind
kind_of (const char *path)
{
  static const struct
  {
    const char *part;
    Kind kind;
  } parts[]
      = { { "balls/", KIND_BALL },     { "bowlers/", KIND_BOWLER },         { "patterns/", KIND_PATTERN },
          { ".csv", KIND_FILM_TABLE }, { "surface-log", KIND_SURFACE_LOG }, { "assignment", KIND_ASSIGNMENT },
          { "options", KIND_OPTIONS }, { "lessons/", KIND_LESSON },         { "progress/", KIND_PROGRESS },
          { "shelf/", KIND_SHELF } };

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (strstr (path, parts[i].part))
      return parts[i].kind;
  return KIND_STUDY;
}

static void
add_seed (const char *path)
{
  g_autofree char *content = NULL;
  g_autoptr (GError) error = NULL;
  GString *seed = g_string_new (NULL);
  gsize length;

  if (!g_file_get_contents (path, &content, &length, &error))
    g_error ("%s", error->message);
  g_string_append_c (seed, (char) kind_of (path));
  g_string_append_len (seed, content, (gssize) length);
  g_ptr_array_add (seeds, seed);
}

static void
end (void)
{
  g_autofree char *lessons = tb_document_folder (TB_DOCUMENT_LESSON), *ours = g_path_get_dirname (lessons);

  g_rmdir (lessons);
  g_rmdir (ours);
  g_assert_cmpint (g_rmdir (user_folder), ==, 0);
  g_clear_pointer (&user_folder, g_free);
  g_clear_object (&library);
}

static void
free_seed (gpointer seed)
{
  g_string_free (seed, TRUE);
}

int
main (int argc, char **argv)
{
  guint64 count = 2000, number = 8;
  int first = 1;
  GRand *chance;

  for (; first + 1 < argc && g_str_has_prefix (argv[first], "--"); first += 2)
    *(g_str_equal (argv[first], "--count") ? &count : &number) = g_ascii_strtoull (argv[first + 1], NULL, 10);
  seeds = g_ptr_array_new_with_free_func (free_seed);
  for (int i = first; i < argc; i++)
    add_seed (argv[i]);
  if (seeds->len == 0)
    g_error ("no seeds given");
  /* The seeds as they are, and what they become. */
  for (guint i = 0; i < seeds->len; i++)
    {
      const GString *seed = g_ptr_array_index (seeds, i);
      LLVMFuzzerTestOneInput ((const uint8_t *) seed->str, seed->len);
    }
  chance = g_rand_new_with_seed ((guint32) number);
  for (guint64 i = 0; i < count; i++)
    try_mutant (chance);
  g_rand_free (chance);
  g_print ("1..1\n%s 1 fuzz: %" G_GUINT64_FORMAT " inputs, %" G_GUINT64_FORMAT " taken, %" G_GUINT64_FORMAT
           " refused\n",
           taken > 0 && refused > 0 ? "ok" : "not ok", count + seeds->len, taken, refused);
  g_ptr_array_unref (seeds);
  end ();
  return 0;
}

#endif
