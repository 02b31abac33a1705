/* What is told of random studies: by Why, the practice plan, the handout's facts, Next and the loft lab. No text may
 * hold what is no number, tell a change that cannot be read, or say of a left-hander what it does not say of the
 * mirrored right-hander. With -m slow a thousand studies instead of a few.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "study-support.h"
#include "tb-fill.h"
#include "tb-handout-facts.h"
#include "tb-loft-trial.h"
#include "tb-measure-text.h"

#define FEW 8
#define MANY 1000
/* What to try next takes longest: every so many studies. */
#define NEXT_EVERY 4

/* Fields that are drawn, over all of their range; half of the draws change one of them a little. */
static const char *const drawn[] = {
  "speed_mph",       "rev_rate_rpm",       "axis_rotation_deg",
  "axis_tilt_deg",   "laydown_board",      "aim_board",
  "grip_pressure",   "release_height_in",  "loft_angle_deg",
  "loft_reach_in",   "weight_lb",          "diameter_in",
  "rg_in",           "differential_in",    "intermediate_differential_in",
  "roughness_uin",   "dry_friction",       "film_scale",
  "absorption",      "drilling_angle_deg", "pin_to_pap_in",
  "val_angle_deg",   "pap_over_in",        "pap_up_in",
  "top_weight_oz",   "pattern_scale",      "cross_tilt_in",
};

static double
draw_value (guint64 *state, const TbField *field, double now)
{
  double kind = uniform (state, 0, 1), far = uniform (state, field->min, field->max);

  if (kind < 0.1)
    return field->min;
  if (kind < 0.2)
    return field->max;
  if (kind < 0.5)
    return far;
  /* A little, down to what no text has the digits for. */
  return CLAMP (now + field->step * pow (10, uniform (state, -4, 1)) * (far > now ? 1 : -1), field->min, field->max);
}

/* Values that no ball can have together with the others are left. */
static void
change (TbSetup **setup, const TbField *field, double value)
{
  TbSetup *changed = tb_setup_with_field (*setup, field, value, NULL);

  if (!changed)
    return;
  tb_setup_unref (*setup);
  *setup = changed;
}

static void
draw (guint64 *state, TbSetup **setup, double chance)
{
  for (gsize i = 0; i < G_N_ELEMENTS (drawn); i++)
    {
      const TbField *field = any_field (drawn[i]);
      double now = tb_field_get (field, tb_shot_group_const (&(*setup)->shot, field->group));

      if (uniform (state, 0, 1) < chance)
        change (setup, field, draw_value (state, field, now));
    }
  if (uniform (state, 0, 1) < chance)
    put (setup, "cover", floor (uniform (state, 0, TB_N_COVER_KINDS)));
}

/* The same throw by the other hand, on the mirrored lane. */
static TbSetup *
mirrored (const TbSetup *setup)
{
  const TbField *tilt = any_field ("cross_tilt_in");
  TbSetup *other = tb_setup_with_field (setup, any_field ("hand"), TB_HAND_LEFT, NULL);

  put (&other, "cross_tilt_in", -tb_field_get (tilt, &setup->shot.lane));
  return other;
}

static gboolean
swap_sides (const GMatchInfo *match, GString *result, gpointer data)
{
  g_autofree char *word = g_match_info_fetch (match, 0);

  g_string_append (result, g_str_equal (word, "left") ? "right" : "left");
  return FALSE;
}

/* Left for right, in words. */
static char *
mirrored_text (const char *text)
{
  g_autoptr (GRegex) sides = g_regex_new ("(left|right)(?= gutter)|(?<=to the )(left|right)", 0, 0, NULL);

  return g_regex_replace_eval (sides, text, -1, 0, 0, swap_sides, NULL, NULL);
}

/* Everything that is told, a line each. */
static void
add (GPtrArray *told, char *text)
{
  if (text)
    g_ptr_array_add (told, text);
}

static void
add_plan (GPtrArray *told, const TbPractice *practice)
{
  for (guint i = 0; i < practice->steps->len; i++)
    {
      const TbPracticeStep *step = g_ptr_array_index (practice->steps, i);

      add (told, g_strdup (step->title));
      add (told, g_strdup (step->how));
      add (told, g_strdup (step->target));
    }
  add (told, g_strdup (practice->nothing));
  add (told, g_strdup (practice->right));
  add (told, g_strdup (practice->wrong));
  add (told, g_strdup (practice->score));
}

static void
add_next (GPtrArray *told, const TbNext *next, gboolean metric)
{
  add (told, tb_next_wish_text (next, metric));
  add (told, tb_next_turn_text (next, metric));
  for (guint i = 0; i < next->options->len; i++)
    {
      const TbNextOption *option = g_ptr_array_index (next->options, i);

      add (told, tb_next_change_text (option, metric));
      add (told, tb_next_effect_text (next, option, metric));
      add (told, tb_next_reach_text (next, option, metric));
      add (told, tb_next_curve_text (next, option, metric));
    }
}

static void
add_run (GPtrArray *told, const TbRun *run, gboolean metric)
{
  add (told, tb_run_end_text (run, metric));
  for (const TbMeasureInfo *info = tb_measure_table; info->name; info++)
    add (told, tb_measure_text (info, &run->path.measures, metric));
}

static GPtrArray *
all_told (TbSetup *before, TbSetup *after, const TbWish *wish, gboolean metric) /* wish: NULL for none */
{
  GPtrArray *told = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (TbStudy) study = tb_study_new (before, after, "", "");
  g_autoptr (TbHandoutFacts) facts = tb_handout_facts_new (study, metric, NULL);
  g_autoptr (TbNext) next
      = wish ? tb_next_find (&(TbNextQuestion){ .start = after, .wish = wish }, NULL) : NULL;
  g_auto (GStrv) why = tb_why_all_sentences (facts->why, metric);

  for (char **sentence = why; *sentence; sentence++)
    add (told, g_strdup (*sentence));
  add_plan (told, facts->practice);
  if (next)
    add_next (told, next, metric);
  for (int side = 0; side < TB_N_SIDES; side++)
    add_run (told, facts->run[side], metric);
  return told;
}

/* Texts that must not be there. */
static const char *const wrong[] = {
  /* What is no number, and gaps that stayed open. */
  "\\bnan\\b|\\binf\\b|%[0-9s$]|\\(null\\)",
  /* Nothing with a sign, and nothing as the size of something. */
  "−0(\\.0+)?(?![0-9.])",
  "(?<![0-9.])0(\\.0+)?( (boards|rpm|mph|km/h|in|ft|cm|mm|m|%)|°)? (more|less|further|nearer|higher|lower|high|light)\\b",
  "(?<![0-9.])0(\\.0+)?( (boards|ft|m)|°)? (to the|later|earlier|steeper|flatter)\\b",
  /* A change from something to itself. */
  "([0-9.−]+) → \\g{1}(?![0-9.])",
  "\\bfrom ([0-9.−]+)(°?) to \\g{1}(?![0-9.])",
  "([0-9.−]+ [a-zµ]+),? instead of \\g{1}(?![0-9.])",
  /* One and a half of anything. */
  "[0-9]\\.[0-9]+ game ",
};

static gboolean
is_wrong (const char *text)
{
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    if (g_regex_match_simple (wrong[i], text, 0, 0))
      return TRUE;
  return FALSE;
}

static void
check_told (const GPtrArray *told, int number)
{
  for (guint i = 0; i < told->len; i++)
    if (!g_utf8_validate (told->pdata[i], -1, NULL) || is_wrong (told->pdata[i]))
      {
        g_test_message ("study %d: “%s”", number, (char *) told->pdata[i]);
        g_test_fail ();
      }
}

static void
check_mirrored (const GPtrArray *right, const GPtrArray *left, int number)
{
  g_assert_cmpuint (right->len, ==, left->len);
  for (guint i = 0; i < right->len; i++)
    {
      g_autofree char *wanted = mirrored_text (right->pdata[i]);

      if (g_str_equal (wanted, left->pdata[i]))
        continue;
      g_test_message ("study %d: right-handed “%s”, left-handed “%s”", number, (char *) right->pdata[i],
                      (char *) left->pdata[i]);
      g_test_fail ();
    }
}

/* A landing takes some of the motion, and neither all of it nor less than nothing. A ball that is in the gutter before it
 * lands has none. */
static void
check_landing (const TbSetup *setup, int number)
{
  g_autoptr (TbRun) run = tb_run_new ((TbSetup *) setup);
  double share = tb_run_landing_share (run);

  if (run->status != TB_OK || (share >= -1e-12 && share < 1) || isnan (run->path.measures.landing_y))
    return;
  g_test_message ("study %d: the landing takes %g of the motion", number, share);
  g_test_fail ();
}

static TbWish
draw_wish (guint64 *state)
{
  TbWish wish = tb_wish_default ((TbWishKind) floor (uniform (state, 0, TB_N_WISHES)));
  const TbWishInfo *info = tb_wish_info (wish.kind);

  wish.amount = uniform (state, info->min, info->max);
  wish.reaim = uniform (state, 0, 1) < 0.5;
  return wish;
}

static void
check_study (guint64 *state, int number)
{
  g_autoptr (TbSetup) before = house_setup ();
  g_autoptr (TbSetup) after = NULL;
  g_autoptr (TbSetup) other_before = NULL;
  g_autoptr (TbSetup) other_after = NULL;
  g_autoptr (GPtrArray) right = NULL;
  g_autoptr (GPtrArray) left = NULL;
  TbWish wish = draw_wish (state);
  gboolean metric = uniform (state, 0, 1) < 0.5;

  draw (state, &before, number % 2 ? 0.05 : 0.3);
  after = tb_setup_ref (before);
  draw (state, &after, number % 3 ? 0.05 : 0.2);
  other_before = mirrored (before);
  other_after = mirrored (after);
  right = all_told (before, after, number % NEXT_EVERY == 0 ? &wish : NULL, metric);
  left = all_told (other_before, other_after, number % NEXT_EVERY == 0 ? &wish : NULL, metric);
  check_told (right, number);
  check_mirrored (right, left, number);
  check_landing (after, number);
}

static void
test_random (void)
{
  guint64 state = 20261128;
  const char *count = g_getenv ("TOLD");
  int studies = count ? atoi (count) : g_test_slow () ? MANY : FEW;

  for (int i = 0; i < studies; i++)
    check_study (&state, i);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/told/random", test_random);
  return g_test_run ();
}
