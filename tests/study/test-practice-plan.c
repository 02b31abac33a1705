/* The practice plan: every kind of change has its step, with the numbers of the runs.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "study-support.h"
#include "tb-fill.h"
#include "tb-handout-facts.h"
#include "tb-line-move.h"
#include "tb-measure-text.h"
#include "tb-room.h"

typedef struct Plan
{
  TbRun *before, *after;
  TbPractice *practice;
} Plan;

static Plan
plan_between (TbSetup *before, TbSetup *after, gboolean metric)
{
  Plan plan = { tb_run_new (before), tb_run_new (after), NULL };

  plan.practice = tb_practice_new (plan.before, plan.after, metric, NULL);
  g_assert_nonnull (plan.practice);
  return plan;
}

static Plan
plan_for (const char *before_changes, const char *after_changes)
{
  g_autoptr (TbSetup) before = setup_with (before_changes);
  g_autoptr (TbSetup) after = setup_with (after_changes);

  return plan_between (before, after, FALSE);
}

static void
plan_clear (Plan *plan)
{
  tb_run_unref (plan->before);
  tb_run_unref (plan->after);
  tb_practice_free (plan->practice);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Plan, plan_clear)

static const TbPracticeStep *
step_at (const Plan *plan, guint index)
{
  g_assert_cmpuint (plan->practice->steps->len, >, index);
  return g_ptr_array_index (plan->practice->steps, index);
}

static void
assert_says (const char *text, const char *part)
{
  if (text == NULL || strstr (text, part) == NULL)
    g_test_message ("“%s” is not in “%s”", part, text);
  g_assert_nonnull (text);
  g_assert_nonnull (strstr (text, part));
}

static void
assert_tells (const char *text, const TbRun *run, const char *measure)
{
  g_autofree char *number = tb_measure_text (tb_measure_find (measure), &run->path.measures, FALSE);

  assert_says (text, number);
}

typedef struct Case
{
  const char *before, *after;
  TbPracticeKind kind;
  const char *title;   /* all of it */
  const char *measure; /* told before and after in the target; NULL for none */
} Case;

static const Case cases[] = {
  { "", "speed_mph=19", TB_PRACTICE_DELIVERY, "Speed: from 17.0 to 19.0 mph", "time_s" },
  { "speed_mph=19", "", TB_PRACTICE_DELIVERY, "Speed: from 19.0 to 17.0 mph", "time_s" },
  { "", "speed_mph=17.25", TB_PRACTICE_DELIVERY, "Speed: from 17.00 to 17.25 mph", "time_s" },
  { "", "rev_rate_rpm=360", TB_PRACTICE_DELIVERY, "Rev rate: from 300 to 360 rpm", "revolutions" },
  { "", "axis_rotation_deg=30", TB_PRACTICE_DELIVERY, "Axis rotation: from 50° to 30°", "angle_at_pins_deg" },
  { "", "axis_tilt_deg=14", TB_PRACTICE_DELIVERY, "Axis tilt: from 12° to 14°", "hook_start_ft" },
  { "", "loft_reach_in=20", TB_PRACTICE_DELIVERY, "Loft reach: from 6 to 20 in", "landing_ft" },
  { "", "loft_angle_deg=4", TB_PRACTICE_DELIVERY, "Loft angle: from 0.0° to 4.0°", "landing_ft" },
  { "", "release_height_in=8", TB_PRACTICE_DELIVERY, "Release height: from 2.0 to 8.0 in", "landing_ft" },
  { "", "grip_pressure=8", TB_PRACTICE_DELIVERY, "Grip pressure: from 5.0 to 8.0", "actual_rev_rate_rpm" },
  { "", "hand=1", TB_PRACTICE_DELIVERY, "The other hand", NULL },
  { "", "aim_board=15.1", TB_PRACTICE_LINE, NULL, NULL },
  { "", "laydown_board=26", TB_PRACTICE_LINE, "Feet 2.0 boards to the left", NULL },
  { "", "grit=500", TB_PRACTICE_SURFACE, "A rougher surface (500 grit instead of 2000 grit)",
    "breakpoint_ft" },
  /* Past the finest pad there is no grit: 0.13 µm and 0.23 µm on a straight line of logarithms: 0.170 µm, 6.7
     µin. */
  { "", "grit=4500", TB_PRACTICE_SURFACE, "A smoother surface (Ra 6.7 µin instead of 2000 grit)", NULL },
  { "", "pin_to_pap_in=2", TB_PRACTICE_DRILLING, "A pin 2.0 in nearer to the PAP", NULL },
  { "", "cover=0", TB_PRACTICE_BALL, "The other ball", "breakpoint_ft" },
  { "", "pattern_scale=0.5", TB_PRACTICE_LANE, "50 % less oil", "breakpoint_ft" },
};

/* What a step's field starts from is the field table's default: see "standard" in tb-fields.c. */
static void
test_kinds (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const Case *this = &cases[i];
      g_auto (Plan) plan = plan_for (this->before, this->after);
      const TbPracticeStep *step = step_at (&plan, 0);

      g_test_message ("%s: %s | %s | %s", this->after, step->title, step->how, step->target);
      g_assert_cmpuint (plan.practice->steps->len, ==, 1);
      g_assert_cmpint (step->kind, ==, this->kind);
      if (this->title)
        g_assert_cmpstr (step->title, ==, this->title);
      g_assert_true (step->how && step->how[0]);
      if (this->measure)
        {
          assert_tells (step->target, plan.before, this->measure);
          assert_tells (step->target, plan.after, this->measure);
        }
      g_assert_null (plan.practice->nothing);
    }
}

/* More and less of the same thing are practised differently. */
static void
test_directions (void)
{
  static const char *const fields[]
      = { "speed_mph=18",     "rev_rate_rpm=330", "axis_rotation_deg=60", "axis_tilt_deg=16",
          "loft_reach_in=12", "loft_angle_deg=3", "grip_pressure=7",      "release_height_in=6" };

  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      g_auto (Plan) more = plan_for ("", fields[i]), less = plan_for (fields[i], "");

      g_assert_cmpstr (step_at (&more, 0)->how, !=, step_at (&less, 0)->how);
    }
}

/* The tolerance is the room of the throw: a ball at its ends is in the pocket, one a little beyond is not. */
static void
test_tolerance (void)
{
  g_auto (Plan) plan = plan_for ("speed_mph=16.5", "speed_mph=17.25");
  TbRoomAxis axis = tb_room_axis (TB_MISS_SPEED, 2);
  TbRoomWidth width;
  g_autofree char *low = NULL, *high = NULL, *range = NULL;

  g_assert_true (tb_room_width (plan.after->setup, &axis, 0, &width, NULL));
  g_assert_true (width.in_pocket);
  low = tb_number_text (17.25 + width.low, 1);
  high = tb_number_text (17.25 + width.high, 1);
  range = g_strdup_printf ("From %s to %s mph still finds the pocket.", low, high);
  assert_says (step_at (&plan, 0)->target, range);
}

/* A throw that misses the pocket has no room in it. */
static void
test_no_tolerance (void)
{
  g_auto (Plan) plan = plan_for ("", "speed_mph=20");

  g_assert_null (strstr (step_at (&plan, 0)->target, "finds the pocket"));
  assert_says (plan.practice->right, "light");
}

static void
test_nothing (void)
{
  g_auto (Plan) plan = plan_for ("speed_mph=17.25", "speed_mph=17.25");

  g_assert_cmpuint (plan.practice->steps->len, ==, 0);
  g_assert_cmpstr (plan.practice->nothing, ==,
                   "Nothing differs between before and after: throw this one until it repeats.");
  g_assert_null (plan.practice->wrong);
  assert_says (plan.practice->right, "in the pocket");
}

static void
test_order (void)
{
  g_auto (Plan) plan = plan_for ("", "grit=500 pattern_scale=0.9 speed_mph=18 laydown_board=26 aim_board=17");

  g_assert_cmpuint (plan.practice->steps->len, ==, 4);
  for (guint i = 1; i < plan.practice->steps->len; i++)
    g_assert_cmpint (step_at (&plan, i - 1)->kind, <, step_at (&plan, i)->kind);
}

/* Directions are the bowler's own eyes': a left-hander's higher boards are to the right. */
static void
test_left_hand (void)
{
  g_auto (Plan) plan = plan_for ("hand=1", "hand=1 laydown_board=26");

  g_assert_cmpstr (step_at (&plan, 0)->title, ==, "Feet 2.0 boards to the right");
}

static void
test_right_and_wrong (void)
{
  g_auto (Plan) plan = plan_for ("", "speed_mph=19");

  g_autofree char *board
      = tb_measure_number_text (tb_measure_find ("board_at_pins"), &plan.after->path.measures, FALSE);

  assert_says (plan.practice->right, board);
  assert_tells (plan.practice->right, plan.after, "breakpoint_ft");
  assert_tells (plan.practice->wrong, plan.before, "breakpoint_ft");
  assert_says (plan.practice->wrong, "earlier");
}

static void
test_gutter (void)
{
  g_auto (Plan) plan = plan_for ("aim_board=3", "");
  g_auto (Plan) back = plan_for ("", "aim_board=3");

  g_assert_cmpint (plan.before->path.result, ==, TB_RESULT_RIGHT_GUTTER);
  assert_says (plan.practice->wrong, "gutter");
  assert_says (back.practice->right, "gutter");
}

/* Two throws that end in the same gutter at the same place: there is nothing to tell them by. */
static void
test_same_gutter (void)
{
  g_auto (Plan) plan = plan_for ("aim_board=3", "aim_board=3 absorption=0.5");

  g_assert_cmpint (plan.before->path.result, ==, TB_RESULT_RIGHT_GUTTER);
  g_assert_cmpuint (plan.practice->steps->len, ==, 1);
  g_assert_null (plan.practice->wrong);
}

/* What is less than the usual digits is told with as many as it takes. */
static void
test_little (void)
{
  g_auto (Plan) plan = plan_for ("", "axis_tilt_deg=12.004");
  g_autofree char *feet = tb_line_move_text (0.02, 0, TB_HAND_RIGHT);
  g_autofree char *both = tb_line_move_text (-2, 0.04, TB_HAND_RIGHT);

  g_assert_cmpstr (step_at (&plan, 0)->title, ==, "Axis tilt: from 12.000° to 12.004°");
  g_assert_cmpstr (feet, ==, "Feet 0.02 boards to the left");
  g_assert_cmpstr (both, ==, "Feet 2.0 boards to the right, target 0.04 to the left");
}

/* A ball just outside of the pocket is not "0.0 boards" outside. */
static void
test_beside_the_pocket (void)
{
  g_autoptr (TbSetup) setup = setup_with ("");
  g_autoptr (TbRun) run = tb_run_new (setup);
  const TbAssumed *assumed = &setup->shot.assumed;
  double high = MIN (assumed->pocket_low, assumed->pocket_high);

  for (int i = 0; i < 2; i++)
    {
      g_autofree char *text = NULL;

      run->path.measures.x_at_pins = high - (i ? 1e-9 : 0.04 * TB_BOARD_WIDTH);
      text = tb_run_end_text (run, FALSE);
      g_assert_cmpstr (text, ==, i ? "0.001 boards high" : "0.04 boards high");
    }
}

/* One and a half games are not "1.5 game". */
static void
test_games (void)
{
  static const struct
  {
    double from, to;
    const char *text;
  } worn[] = { { 0, 1, "1 game more on the lane" },
               { 0, 1.5, "1.5 games more on the lane" },
               { 2.5, 1, "1.5 games less on the lane" },
               { 2, 1, "1 game less on the lane" } };
  const TbChange change = { TB_CHANGE_WEAR, NULL };
  g_autoptr (TbSetup) setup = setup_with ("");

  for (gsize i = 0; i < G_N_ELEMENTS (worn); i++)
    {
      TbSetup before = *setup, after = *setup;
      g_autofree char *text = NULL;

      before.shot.lane.games_played = worn[i].from;
      after.shot.lane.games_played = worn[i].to;
      text = tb_change_phrase (&change, &before, &after, FALSE);
      g_assert_cmpstr (text, ==, worn[i].text);
    }
}

static void
test_metric (void)
{
  g_autoptr (TbSetup) before = setup_with ("");
  g_autoptr (TbSetup) after = setup_with ("speed_mph=19");
  g_auto (Plan) plan = plan_between (before, after, TRUE);

  /* 1 mph is 1.609344 km/h. */
  g_assert_cmpstr (step_at (&plan, 0)->title, ==, "Speed: from 27.4 to 30.6 km/h");
  assert_says (plan.practice->right, " m,");
}

static void
test_cancelled (void)
{
  g_autoptr (TbSetup) before = setup_with (""), after = setup_with ("speed_mph=19");
  g_autoptr (TbStudy) study = tb_study_new (before, after, "", "");
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  g_cancellable_cancel (cancellable);
  g_assert_null (tb_handout_facts_new (study, FALSE, cancellable));
}

static gboolean
has_caution (const GPtrArray *cautions, const char *field)
{
  return g_ptr_array_find ((GPtrArray *) cautions, tb_caution_for_field (field), NULL);
}

/* Every change that can hurt somebody or something has its caution, once. */
static void
test_cautions (void)
{
  g_autoptr (TbSetup) before = setup_with ("");
  g_autoptr (TbSetup) after
      = setup_with ("loft_reach_in=20 loft_angle_deg=4 axis_rotation_deg=60 rev_rate_rpm=330 "
                    "grit=500 aim_board=15 pin_to_pap_in=2");
  g_autoptr (TbStudy) study = tb_study_new (before, after, "", "");
  g_autoptr (TbHandoutFacts) facts = tb_handout_facts_new (study, FALSE, NULL);
  g_autoptr (GPtrArray) cautions = tb_handout_facts_cautions (facts, NULL);
  static const char *const expected[]
      = { "rev_rate_rpm", "loft_angle_deg", "grit", "laydown_board", "pin_to_pap_in" };

  for (gsize i = 0; i < G_N_ELEMENTS (expected); i++)
    g_assert_true (has_caution (cautions, expected[i]));
  g_assert_cmpuint (cautions->len, ==, G_N_ELEMENTS (expected));
}

/* Options bring their own. */
static void
test_option_cautions (void)
{
  g_autoptr (TbSetup) setup = setup_with ("speed_mph=19");
  g_autoptr (TbStudy) study = tb_study_new (setup, setup, "", "");
  g_autoptr (TbHandoutFacts) facts = tb_handout_facts_new (study, FALSE, NULL);
  TbWish wish = tb_handout_wish (facts->run[TB_SIDE_AFTER]);
  g_autoptr (TbNext) next = tb_next_find (&(TbNextQuestion){ .start = setup, .wish = &wish }, NULL);
  g_autoptr (GPtrArray) options = tb_handout_best_options (next);
  g_autoptr (GPtrArray) none = tb_handout_facts_cautions (facts, NULL);
  g_autoptr (GPtrArray) some = tb_handout_facts_cautions (facts, options);

  g_assert_cmpint (wish.kind, ==, TB_WISH_POCKET);
  g_assert_cmpuint (options->len, >=, 2);
  for (guint i = 1; i < options->len; i++)
    g_assert_cmpint (((TbNextOption *) options->pdata[i - 1])->knob->group, <,
                     ((TbNextOption *) options->pdata[i])->knob->group);
  g_assert_cmpuint (none->len, ==, 0);
  g_assert_true (has_caution (some, "laydown_board"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/practice/kinds", test_kinds);
  g_test_add_func ("/practice/directions", test_directions);
  g_test_add_func ("/practice/tolerance", test_tolerance);
  g_test_add_func ("/practice/no-tolerance", test_no_tolerance);
  g_test_add_func ("/practice/nothing", test_nothing);
  g_test_add_func ("/practice/order", test_order);
  g_test_add_func ("/practice/left-hand", test_left_hand);
  g_test_add_func ("/practice/right-and-wrong", test_right_and_wrong);
  g_test_add_func ("/practice/gutter", test_gutter);
  g_test_add_func ("/practice/same-gutter", test_same_gutter);
  g_test_add_func ("/practice/little", test_little);
  g_test_add_func ("/practice/beside-the-pocket", test_beside_the_pocket);
  g_test_add_func ("/practice/games", test_games);
  g_test_add_func ("/practice/metric", test_metric);
  g_test_add_func ("/practice/cancelled", test_cancelled);
  g_test_add_func ("/handout-facts/cautions", test_cautions);
  g_test_add_func ("/handout-facts/option-cautions", test_option_cautions);
  return g_test_run ();
}
