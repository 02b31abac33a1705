/* Every kind of document, written and read again, says the same to the last bit.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "tb-study-document.h"

#define N_RANDOM 60

static TbSetup *
start_setup (void)
{
  g_autoptr (TbStudy) study = tb_library_start_study ();

  return tb_setup_ref (study->side[TB_SIDE_BEFORE]);
}

/* Writes, reads, compares, and writes again: the second text is the first. */
static void
check_study (const TbStudy *study)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *text = tb_study_to_text (study);
  g_autoptr (TbStudy) back = tb_study_from_text (library, text, strlen (text), &error);
  g_autofree char *again = NULL;

  g_assert_no_error (error);
  g_assert_true (tb_study_equal (study, back));
  again = tb_study_to_text (back);
  g_assert_cmpstr (text, ==, again);
}

static void
check_setup (TbSetup *setup)
{
  g_autoptr (TbSetup) other = start_setup ();
  g_autoptr (TbStudy) study = tb_study_new (setup, other, "Title", "Notes");

  check_study (study);
}

static void
test_builtin_bowlers (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  GListModel *entries = tb_library_get_entries (library, TB_DOCUMENT_BOWLER);

  for (guint i = 0; i < g_list_model_get_n_items (entries); i++)
    {
      g_autoptr (TbLibraryEntry) entry = g_list_model_get_item (entries, i);
      TbBowler *bowler = tb_library_entry_get_bowler (entry);
      g_autofree char *text = tb_bowler_to_text (bowler);
      g_autoptr (TbBowler) back = tb_bowler_from_text (text, strlen (text), NULL);
      g_autofree char *again = tb_bowler_to_text (back);

      g_assert_cmpstr (text, ==, again);
      g_assert_cmpstr (back->id, ==, bowler->id);
      g_assert_cmpstr (back->name, ==, bowler->name);
      g_assert_cmpstr (back->note, ==, bowler->note);
      g_assert_cmpstr (back->ball_id, ==, bowler->ball_id);
      g_assert_cmpfloat (back->pap_over, ==, bowler->pap_over);
      g_assert_cmpfloat (back->pap_up, ==, bowler->pap_up);
      g_assert_cmpmem (&back->delivery, sizeof back->delivery, &bowler->delivery, sizeof bowler->delivery);
    }
}

static void
test_builtin_balls (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (TbSetup) setup = start_setup ();
  GListModel *entries = tb_library_get_entries (library, TB_DOCUMENT_BALL);

  for (guint i = 0; i < g_list_model_get_n_items (entries); i++)
    {
      g_autoptr (TbLibraryEntry) entry = g_list_model_get_item (entries, i);
      TbBallDocument *ball = tb_library_entry_get_ball (entry);
      g_autofree char *text = tb_ball_document_to_text (ball);
      g_autoptr (TbBallDocument) back = tb_ball_document_from_text (text, strlen (text), NULL);
      g_autoptr (TbSetup) one = tb_setup_with_ball (setup, &ball->ball, ball->id, ball->name);
      g_autoptr (TbSetup) two = tb_setup_with_ball (setup, &back->ball, back->id, back->name);

      g_assert_true (tb_setup_equal (one, two));
      g_assert_cmpstr (ball->note, ==, back->note);
    }
}

static void
check_pattern (const TbPattern *pattern)
{
  g_autofree char *text = tb_pattern_to_text (pattern);
  g_autoptr (GError) error = NULL;
  g_autoptr (TbPattern) back = tb_pattern_from_text (text, strlen (text), &error);
  g_autofree char *again = NULL;

  g_assert_no_error (error);
  again = tb_pattern_to_text (back);
  g_assert_cmpstr (text, ==, again);
  g_assert_cmpint (back->kind, ==, pattern->kind);
  g_assert_cmpstr (back->id, ==, pattern->id);
  g_assert_cmpstr (back->name, ==, pattern->name);
  g_assert_cmpmem (&back->oil, sizeof back->oil, &pattern->oil, sizeof pattern->oil);
}

static void
test_builtin_patterns (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  GListModel *entries = tb_library_get_entries (library, TB_DOCUMENT_PATTERN);

  for (guint i = 0; i < g_list_model_get_n_items (entries); i++)
    {
      g_autoptr (TbLibraryEntry) entry = g_list_model_get_item (entries, i);

      check_pattern (tb_library_entry_get_pattern (entry));
    }
}

/* A film as a worn lane has it: any number of metres in any cell. */
static void
test_table_pattern (void)
{
  g_autofree TbOil *oil = g_new0 (TbOil, 1);
  g_autoptr (TbPattern) pattern = NULL;

  for (int row = 0; row < 90; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      tb_oil_set_cell (oil, row, column, g_test_rand_double_range (0, 2e-5));
  tb_oil_reflect (oil);
  pattern = tb_pattern_new_table ("worn", "Worn", oil, NULL);
  check_pattern (pattern);
}

static void
test_strips_pattern (void)
{
  const TbStrip strips[] = {
    { .way = TB_STRIP_OUT,
      .right_board = 3,
      .left_board = 37,
      .start = 0,
      .end = tb_metres_from_ft (22),
      .volume = tb_cubic_metres_from_ml (0.1),
      .taper = tb_metres_from_ft (2) },
    { .way = TB_STRIP_BACK,
      .right_board = 10,
      .left_board = 30,
      .start = tb_metres_from_ft (40),
      .end = tb_metres_from_ft (8.5),
      .volume = tb_cubic_metres_from_ml (0.075),
      .taper = 0 },
  };
  TbStatus status;
  g_autoptr (TbPattern) pattern
      = tb_pattern_new_strips ("mine", "Mine", strips, G_N_ELEMENTS (strips), &status);

  g_assert_cmpint (status, ==, TB_OK);
  check_pattern (pattern);
}

/* One row of a coarse table stands for several of the grid. */
static void
test_coarse_table (void)
{
  g_autoptr (GString) text = g_string_new ("{\"tenboard\": \"pattern\", \"version\": 1, \"id\": \"t\", "
                                           "\"name\": \"T\", \"table\": {\"spacing_ft\": 10, "
                                           "\"rows\": [[");
  g_autoptr (TbPattern) pattern = NULL;

  for (int column = 0; column < TB_OIL_COLUMNS; column++)
    g_string_append_printf (text, "%s%d", column ? "," : "", column);
  g_string_append (text, "]]}}");
  pattern = tb_pattern_from_text (text->str, text->len, NULL);
  g_assert_nonnull (pattern);
  g_assert_cmpfloat (tb_oil_cell (&pattern->oil, 0, 5), ==, tb_film_from_units (5));
  g_assert_cmpfloat (tb_oil_cell (&pattern->oil, 19, 5), ==, tb_film_from_units (5));
  g_assert_cmpfloat (tb_oil_cell (&pattern->oil, 20, 5), ==, 0);
  check_pattern (pattern);
}

static double
random_value (const TbField *field)
{
  if (field->kind == TB_FIELD_CHOICE)
    return g_test_rand_int_range (0, (gint32) field->max + 1);
  return g_test_rand_double_range (field->min, field->max);
}

/* Random values of every field, in the order of the table, then the other names of some. */
static void
randomize (TbShot *shot)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    if (!field->alias_of || g_test_rand_bit ())
      g_assert_cmpint (tb_field_set (field, tb_shot_group (shot, field->group), random_value (field)), ==,
                       TB_OK);
  shot->ball.intermediate_differential = MIN (shot->ball.intermediate_differential, shot->ball.differential);
  /* Games are bowled shot by shot: a few hundredths of one will do. */
  shot->lane.games_played /= 1000;
}

static void
test_random_studies (void)
{
  g_autoptr (TbSetup) start = start_setup ();

  for (int i = 0; i < N_RANDOM; i++)
    {
      TbShot shot = start->shot;
      TbProblem problem = { 0 };
      g_autoptr (TbSetup) setup = NULL;

      randomize (&shot);
      setup = tb_setup_with_shot (start, &shot);
      g_assert_cmpint (tb_shot_check (&setup->shot, &problem), ==, TB_OK);
      check_setup (setup);
    }
}

static void
test_grit_is_kept (void)
{
  g_autoptr (TbSetup) start = start_setup ();
  const TbField *grit = tb_field_find (TB_GROUP_BALL, "grit");

  for (int value = 500; value <= 5000; value += 50)
    {
      g_autoptr (TbSetup) setup = tb_setup_with_field (start, grit, value, NULL);

      check_setup (setup);
    }
}

static void
test_holes (void)
{
  g_autoptr (TbSetup) start = start_setup ();
  TbShot shot = start->shot;
  g_autoptr (TbSetup) setup = NULL;

  shot.ball.n_holes = 2;
  shot.ball.hole[0] = (TbHole){ .kind = TB_HOLE_THUMB,
                                .over = 0,
                                .up = tb_metres_from_in (-2.1),
                                .diameter = tb_metres_from_in (0.95),
                                .depth = tb_metres_from_in (2.7) };
  shot.ball.hole[1] = (TbHole){ .kind = TB_HOLE_FINGER,
                                .over = tb_metres_from_in (-0.6),
                                .up = tb_metres_from_in (2),
                                .diameter = tb_metres_from_in (0.8),
                                .depth = tb_metres_from_in (1.3),
                                .pitch_over = tb_metres_from_in (0.125),
                                .pitch_up = tb_metres_from_in (-0.25) };
  setup = tb_setup_with_shot (start, &shot);
  check_setup (setup);
}

static void
test_model (void)
{
  g_autoptr (TbSetup) start = start_setup ();
  TbShot shot = start->shot;
  g_autoptr (TbSetup) setup = NULL;

  shot.assumed.film_friction = 0.012;
  shot.assumed.pocket_low = tb_x_from_board (16);
  shot.options.no_air_drag = true;
  shot.options.edgeless = true;
  setup = tb_setup_with_shot (start, &shot);
  check_setup (setup);
}

/* Names and notes in every script, with everything that JSON must escape. */
static void
test_texts (void)
{
  g_autoptr (TbSetup) setup = start_setup ();
  g_autoptr (TbSetup) named
      = tb_setup_with_ball (setup, &setup->shot.ball, NULL, "Ball “äß” 球 \\ \"/\" \U0001F3B3");
  g_autoptr (TbSetup) nameless = tb_setup_with_bowler (setup, &setup->shot.delivery, NULL, NULL);
  g_autoptr (TbStudy) study = tb_study_new (named, nameless, "T \"1\"", "a\nb\tc\r\n\\d \u2028 €");

  check_study (study);
}

static TbBallDocument *
read_ball (const char *keys)
{
  g_autofree char *text = g_strdup_printf (
      "{\"tenboard\": \"ball\", \"version\": 1, \"id\": \"b\", \"name\": \"B\", %s, \"weight_lb\": 15, "
      "\"diameter_in\": 8.55, \"rg_in\": 2.5, \"differential_in\": 0.045, \"intermediate_differential_in\": "
      "0, "
      "\"drilling_angle_deg\": 50, \"pin_to_pap_in\": 4, \"val_angle_deg\": 40, \"pap_over_in\": 5, "
      "\"pap_up_in\": 0.5, \"top_weight_oz\": 0}",
      keys);
  g_autoptr (GError) error = NULL;
  TbBallDocument *ball = tb_ball_document_from_text (text, strlen (text), &error);

  g_assert_no_error (error);
  return ball;
}

/* A cover brings its numbers, a grit its roughness, and what is said outright wins, in whatever order it
 * stands. */
static void
test_order_does_not_matter (void)
{
  g_autoptr (TbBallDocument) plain = read_ball ("\"cover\": \"urethane\", \"grit\": 1000");
  g_autoptr (TbBallDocument) first
      = read_ball ("\"dry_friction\": 0.2, \"grit\": 1000, \"cover\": \"urethane\"");
  g_autoptr (TbBallDocument) last
      = read_ball ("\"cover\": \"urethane\", \"grit\": 1000, \"dry_friction\": 0.2");
  g_autoptr (TbBallDocument) rough
      = read_ball ("\"roughness_uin\": 20, \"cover\": \"urethane\", \"grit\": \"polish\"");
  TbCover urethane = tb_cover_typical (TB_COVER_URETHANE);

  g_assert_cmpfloat (plain->ball.cover.dry_friction, ==, urethane.dry_friction);
  g_assert_cmpfloat (plain->ball.cover.film_scale, ==, urethane.film_scale);
  g_assert_cmpfloat (plain->ball.cover.absorption, ==, urethane.absorption);
  g_assert_cmpfloat (plain->ball.cover.roughness, ==, tb_roughness_from_grit (1000));
  g_assert_cmpfloat (first->ball.cover.dry_friction, ==, 0.2);
  g_assert_cmpfloat (last->ball.cover.dry_friction, ==, 0.2);
  g_assert_cmpfloat (last->ball.cover.film_scale, ==, urethane.film_scale);
  g_assert_cmpfloat (rough->ball.cover.roughness, ==, tb_metres_from_uin (20));
}

/* A document pasted whole into a study is taken as well. */
static void
test_document_in_study (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (TbStudy) study = tb_library_start_study ();
  g_autofree char *text = tb_study_to_text (study);
  g_autoptr (GString) pasted = g_string_new (text);
  g_autoptr (TbStudy) back = NULL;

  g_string_replace (pasted, "\"ball\": {",
                    "\"ball\": {\"tenboard\": \"ball\", \"version\": 1, \"note\": \"mine\",", 0);
  back = tb_study_from_text (library, pasted->str, pasted->len, NULL);
  g_assert_nonnull (back);
  g_assert_true (tb_study_equal (study, back));
}

/* A study that was sent to someone by the first version: later versions must read it, and get the same out of
 * it. */
static void
test_version_1 (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "data", "study-version-1.json", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (TbStudy) study = tb_study_load (library, path, &error);
  const TbSetup *before, *after;

  g_assert_no_error (error);
  before = study->side[TB_SIDE_BEFORE];
  after = study->side[TB_SIDE_AFTER];
  g_assert_cmpstr (study->title, ==, "Fresh and worn");
  g_assert_cmpstr (before->bowler_name, ==, "Somebody");
  g_assert_cmpstr (before->pattern->id, ==, "house-evening");
  g_assert_cmpint (before->pattern->kind, ==, TB_PATTERN_PROFILE);
  g_assert_cmpint (after->pattern->kind, ==, TB_PATTERN_TABLE);
  g_assert_cmpint (after->shot.ball.n_holes, ==, 3);
  g_assert_cmpint (after->shot.ball.hole[2].kind, ==, TB_HOLE_THUMB);
  g_assert_cmpfloat (after->shot.delivery.speed, ==, tb_metres_per_second_from_mph (19));
  g_assert_cmpfloat (after->shot.assumed.film_friction, ==, 0.01);
  g_assert_true (after->shot.options.no_air_drag);
  check_study (study);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  g_test_add_func ("/documents/bowlers", test_builtin_bowlers);
  g_test_add_func ("/documents/balls", test_builtin_balls);
  g_test_add_func ("/documents/patterns", test_builtin_patterns);
  g_test_add_func ("/documents/table-pattern", test_table_pattern);
  g_test_add_func ("/documents/strips-pattern", test_strips_pattern);
  g_test_add_func ("/documents/coarse-table", test_coarse_table);
  g_test_add_func ("/documents/random-studies", test_random_studies);
  g_test_add_func ("/documents/grit-is-kept", test_grit_is_kept);
  g_test_add_func ("/documents/holes", test_holes);
  g_test_add_func ("/documents/model", test_model);
  g_test_add_func ("/documents/texts", test_texts);
  g_test_add_func ("/documents/order-does-not-matter", test_order_does_not_matter);
  g_test_add_func ("/documents/document-in-study", test_document_in_study);
  g_test_add_func ("/documents/version-1", test_version_1);
  return g_test_run ();
}
