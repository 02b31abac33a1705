/* Tables of a film: there and back to the bit, hand-made ones, damaged ones with their sentences; who played
 * on a lane, in a study; and a bowler's feet.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "tb-film-csv.h"
#include "tb-library.h"
#include "tb-study-document.h"

static TbPattern *
strips_pattern (void)
{
  TbStripsPlan plan = { .length = tb_metres_from_ft (40.7),
                        .volume = tb_cubic_metres_from_ml (23.3),
                        .ratio = 2.9,
                        .taper = tb_metres_from_ft (3.3) };
  TbStrip strips[TB_STRIPS_PLAN_COUNT];

  g_assert_true (tb_strips_plan (&plan, strips));
  return tb_pattern_new_strips (NULL, "Built", strips, TB_STRIPS_PLAN_COUNT, NULL);
}

static void
test_round_trip (void)
{
  g_autoptr (TbPattern) built = strips_pattern ();
  /* A table's films are whole numbers of the last decimal of a unit. */
  g_autoptr (TbPattern) pattern = tb_pattern_new_table (NULL, "Table", &built->oil, NULL);
  g_autofree char *text = tb_film_csv_to_text (&pattern->oil);
  g_autofree char *again = NULL;
  g_autofree TbOil *oil = g_new (TbOil, 1);
  g_autoptr (GError) error = NULL;

  g_assert_true (tb_film_csv_from_text (text, strlen (text), oil, &error));
  g_assert_no_error (error);
  g_assert_cmpmem (oil, sizeof *oil, &pattern->oil, sizeof pattern->oil);
  again = tb_film_csv_to_text (oil);
  g_assert_cmpstr (again, ==, text);
}

/* Saved and imported: a pattern of its own, called as the file is. */
static void
test_file (void)
{
  g_autoptr (TbPattern) pattern = strips_pattern ();
  g_autofree char *path = g_build_filename (g_get_user_cache_dir (), "Some pattern.csv", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (TbPattern) read = NULL;

  g_assert_true (tb_film_csv_save (&pattern->oil, path, &error));
  g_assert_no_error (error);
  read = tb_pattern_import (path, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (read->name, ==, "Some pattern");
  g_assert_null (read->id);
  g_assert_cmpint (read->kind, ==, TB_PATTERN_TABLE);
  g_assert_cmpfloat (fabs (tb_oil_volume (&read->oil) / tb_oil_volume (&pattern->oil) - 1), <, 1e-12);
}

/* A line of 39 films: `units` on all boards. */
static void
append_line (GString *text, double feet, double units, const char *separator)
{
  g_string_append_printf (text, "%g", feet);
  for (int board = 1; board <= TB_OIL_COLUMNS; board++)
    g_string_append_printf (text, "%s%g", separator, units);
  g_string_append (text, "\r\n");
}

/* Made by hand: a mark of the byte order, semicolons, no headings, uneven distances, an empty line, empty
 * values at the end. */
static void
test_by_hand (void)
{
  g_autoptr (GString) text = g_string_new ("\xef\xbb\xbf");
  g_autofree TbOil *oil = g_new (TbOil, 1);
  g_autoptr (GError) error = NULL;

  append_line (text, 5, 40, ";");
  g_string_append (text, "\r\n");
  append_line (text, 25, 20, " ; ");
  g_string_truncate (text, text->len - 2);
  g_string_append (text, ";;;\n");
  append_line (text, 35.25, 0, ";");
  g_assert_true (tb_film_csv_from_text (text->str, text->len, oil, &error));
  g_assert_no_error (error);
  /* Before the first line as there, half way between two in the middle, past the last nothing. */
  g_assert_cmpfloat (tb_units_from_film (tb_oil_cell (oil, 0, 0)), ==, 40);
  g_assert_cmpfloat (fabs (tb_units_from_film (tb_oil_cell (oil, 30, 38)) - (40 - 20 * (15.25 - 5) / 20)), <,
                     1e-9);
  g_assert_cmpfloat (tb_oil_cell (oil, 2 * 36, 20), ==, 0);
}

typedef struct Damage
{
  const char *text;     /* %s: a good line */
  const char *sentence; /* with the file's name before it */
} Damage;

static const Damage damages[] = {
  { "", "lines with a distance and 39 films were expected, none was found." },
  { "feet,board 1\n", "lines with a distance and 39 films were expected, none was found." },
  { "%s1,2,3\n", "line 2: a distance and 39 films were expected, 3 values were found." },
  { "%s2,x\n", "line 2: a distance and 39 films were expected, 2 values were found." },
  { "%s%s", "line 2: a distance beyond that of the line before was expected." },
  { "{\"tenboard\": \"pattern\"}", "lines with a distance and 39 films were expected, none was found." },
};

static char *
load_sentence (const char *text, gssize length)
{
  g_autofree char *path = g_build_filename (g_get_user_cache_dir (), "film.csv", NULL);
  g_autofree TbOil *oil = g_new0 (TbOil, 1);
  g_autoptr (GError) error = NULL;

  g_mkdir_with_parents (g_get_user_cache_dir (), 0700);
  g_assert_true (g_file_set_contents (path, text, length, NULL));
  g_assert_false (tb_film_csv_load (path, oil, &error));
  g_assert_nonnull (error);
  g_assert_cmpint ((int)error->domain, ==, (int)TB_STORE_ERROR);
  g_assert_cmpfloat (tb_oil_volume (oil), ==, 0);
  g_assert_true (g_str_has_prefix (error->message, path));
  return g_strdup (error->message + strlen (path) + 2);
}

/* The text of a damage with its good lines put in. */
static char *
damaged_text (const char *pattern)
{
  g_autoptr (GString) good = g_string_new (NULL);
  g_auto (GStrv) parts = g_strsplit (pattern, "%s", -1);

  append_line (good, 1, 10, ",");
  return g_strjoinv (good->str, parts);
}

static void
test_damaged (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (damages); i++)
    {
      g_autofree char *text = damaged_text (damages[i].text);
      g_autofree char *sentence = load_sentence (text, -1);

      g_assert_cmpstr (sentence, ==, damages[i].sentence);
    }
}

static void
check_value (const char *value, const char *want)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *sentence = NULL;

  append_line (text, 1, 10, ",");
  g_string_append_printf (text, "2,%s", value);
  for (int board = 2; board <= TB_OIL_COLUMNS; board++)
    g_string_append (text, ",1");
  sentence = load_sentence (text->str, -1);
  g_assert_cmpstr (sentence, ==, want);
}

static void
test_values (void)
{
  g_autoptr (GString) dry = g_string_new (NULL);
  g_autofree char *sentence = NULL;

  check_value ("oil", "line 2: “oil” in column 2 is no number.");
  check_value ("", "line 2: “” in column 2 is no number.");
  check_value ("nan", "line 2: “nan” in column 2 is no number.");
  check_value ("-1", "line 2: -1 in column 2 is out of range; a number from 0 to 500 was expected.");
  check_value ("501", "line 2: 501 in column 2 is out of range; a number from 0 to 500 was expected.");
  append_line (dry, 1, 0, ",");
  sentence = load_sentence (dry->str, -1);
  g_assert_cmpstr (sentence, ==, "some oil was expected, there is none.");
}

/* Bytes that are no text, and a good table cut off or spoilt anywhere: an answer, and never a crash. */
static void
test_hostile (void)
{
  g_autoptr (TbPattern) pattern = strips_pattern ();
  g_autofree char *good = tb_film_csv_to_text (&pattern->oil);
  g_autofree char *sentence = load_sentence ("1,2\0003,4\n", 8);
  gsize length = strlen (good);

  g_assert_cmpstr (sentence, ==, "a text was expected.");
  for (guint i = 0; i < 300; i++)
    {
      g_autofree char *spoilt = g_memdup2 (good, length + 1);
      g_autofree TbOil *oil = g_new0 (TbOil, 1);
      g_autoptr (GError) error = NULL;
      gsize at = (gsize)g_test_rand_int_range (0, (gint32)length);

      spoilt[at] = (char)g_test_rand_int_range (0, 256);
      if (tb_film_csv_from_text (spoilt, g_test_rand_bit () ? length : at, oil, &error))
        g_assert_cmpint (tb_oil_check (oil), ==, TB_OK);
      else
        g_assert_nonnull (error);
    }
}

/* A study with games on its lane, bowled by ours and by one of the user's: read back, it is equal, film and
 * all. */
static void
test_mix (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (TbStudy) start = tb_library_start_study ();
  TbSetup *setup = start->side[TB_SIDE_AFTER];
  g_autoptr (TbMix) league = tb_mix_new_league ();
  g_autoptr (TbMix) seeded = tb_mix_with_seed (league, 12345);
  g_autoptr (TbMix) mix = tb_mix_with_bowler (seeded, "Mine", &setup->shot.delivery, &setup->shot.ball, 2);
  g_autoptr (TbSetup) mixed = tb_setup_with_mix (setup, mix);
  g_autoptr (TbSetup) worn
      = tb_setup_with_field (mixed, tb_field_find (TB_GROUP_LANE, "games_played"), 0.5, NULL);
  g_autoptr (TbStudy) study = tb_study_with_side (start, TB_SIDE_AFTER, worn);
  g_autofree char *text = tb_study_to_text (study);
  g_autoptr (GError) error = NULL;
  g_autoptr (TbStudy) read = tb_study_from_text (library, text, strlen (text), &error);

  g_assert_no_error (error);
  g_assert_true (tb_study_equal (study, read));
  g_assert_nonnull (read->side[TB_SIDE_AFTER]->worn);
  g_assert_cmpmem (&read->side[TB_SIDE_AFTER]->worn->oil, sizeof (TbOil), &worn->worn->oil, sizeof (TbOil));
}

static void
check_mix_damage (const char *from, const char *to, const char *want)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (TbStudy) start = tb_library_start_study ();
  g_autoptr (TbMix) mix = tb_mix_new_league ();
  g_autoptr (TbSetup) mixed = tb_setup_with_mix (start->side[TB_SIDE_AFTER], mix);
  g_autoptr (TbStudy) study = tb_study_with_side (start, TB_SIDE_AFTER, mixed);
  g_autofree char *text = tb_study_to_text (study);
  g_auto (GStrv) parts = g_strsplit (text, from, 2);
  g_autofree char *damaged = g_strjoinv (to, parts);
  g_autoptr (GError) error = NULL;

  g_assert_nonnull (parts[1]);
  g_assert_null (tb_study_from_text (library, damaged, strlen (damaged), &error));
  g_assert_error (error, TB_STORE_ERROR, (int)error->code);
  g_assert_cmpstr (error->message, ==, want);
}

static void
test_mix_damaged (void)
{
  check_mix_damage ("\"bowler\": \"track\"", "\"bowler\": \"nobody\"",
                    "after.lane.mix.bowlers[1].bowler: there is no typical bowler “nobody”");
  check_mix_damage ("\"count\": 2", "\"count\": 2.5",
                    "after.lane.mix.bowlers[1].count: a whole number from 0 to 12 was expected");
  check_mix_damage ("\"seed\": 1", "\"seed\": -1",
                    "after.lane.mix.seed: a whole number from 0 to 9007199254740991 was expected");
  check_mix_damage ("\"moves\": true", "\"moves\": 1", "after.lane.mix.moves: true or false was expected");
}

/* Drift and offset, there and back; left out of the file where they are the usual ones. */
static void
test_feet (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  TbLibraryEntry *entry = tb_library_find (library, TB_DOCUMENT_BOWLER, "league-right", NULL);
  g_autoptr (TbBowler) bowler = tb_bowler_new (tb_library_entry_get_bowler (entry));
  g_autofree char *usual = tb_bowler_to_text (bowler);
  g_autofree char *text = NULL, *damaged = NULL;
  g_auto (GStrv) parts = NULL;
  g_autoptr (TbBowler) read = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_null (strstr (usual, "drift"));
  bowler->drift = -2.5;
  bowler->foot_offset = 7;
  text = tb_bowler_to_text (bowler);
  read = tb_bowler_from_text (text, strlen (text), &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (read->drift, ==, -2.5);
  g_assert_cmpfloat (read->foot_offset, ==, 7);
  parts = g_strsplit (text, "-2.5", 2);
  damaged = g_strjoinv ("-25", parts);
  g_assert_null (tb_bowler_from_text (damaged, strlen (damaged), &error));
  g_assert_error (error, TB_STORE_ERROR, TB_STORE_ERROR_VALUE);
  g_assert_cmpstr (error->message, ==,
                   "drift_boards: -25 is out of range; a number from -15 to 15 was expected");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  g_test_add_func ("/film-csv/round-trip", test_round_trip);
  g_test_add_func ("/film-csv/file", test_file);
  g_test_add_func ("/film-csv/by-hand", test_by_hand);
  g_test_add_func ("/film-csv/damaged", test_damaged);
  g_test_add_func ("/film-csv/values", test_values);
  g_test_add_func ("/film-csv/hostile", test_hostile);
  g_test_add_func ("/film-csv/mix", test_mix);
  g_test_add_func ("/film-csv/mix-damaged", test_mix_damaged);
  g_test_add_func ("/film-csv/feet", test_feet);
  return g_test_run ();
}
