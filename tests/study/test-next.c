/* Next: options that do what they say when they are thrown again.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "study-support.h"
#include "tb-next.h"

static TbNext *
ask (const char *changes, const char *wish_text)
{
  g_autoptr (TbSetup) setup = setup_with (changes);
  g_autofree char *problem = NULL;
  TbWish wish;

  g_assert_true (tb_wish_parse (wish_text, &wish, &problem));
  return tb_next_find (&(TbNextQuestion){ .start = setup, .wish = &wish }, NULL);
}

/* The same, each change judged on the line as it is. */
static TbNext *
ask_as_aimed (const char *changes, const char *wish_text)
{
  g_autoptr (TbSetup) setup = setup_with (changes);
  g_autofree char *problem = NULL;
  TbWish wish;

  g_assert_true (tb_wish_parse (wish_text, &wish, &problem));
  wish.reaim = FALSE;
  return tb_next_find (&(TbNextQuestion){ .start = setup, .wish = &wish }, NULL);
}

#define WALK_STEPS 100

/* Whether a knob turned in small steps over its range passes the wish, the ball on the lane on both sides of
 * it. */
static gboolean
walk_passes (const TbNext *next, const TbKnob *knob)
{
  g_autoptr (TbThrower) thrower = tb_thrower_new ();
  double low, high, last = NAN;

  tb_knob_range (knob, &next->start->shot, &low, &high);
  for (int i = 0; i <= WALK_STEPS; i++)
    {
      TbShot shot = next->start->shot;
      TbMeasures measures;
      double miss = NAN;

      if (tb_knob_turn (knob, &shot, low + (high - low) * i / WALK_STEPS)
          && tb_thrower_throw (thrower, &shot, &measures) == TB_OK && isnan (measures.gutter_y))
        miss = tb_wish_value (&next->wish, thrower, &shot, &measures) - next->target;
      if (miss * last <= 0)
        return TRUE;
      last = miss;
    }
  return FALSE;
}

static const TbNextOption *
option_of (const TbNext *next, const char *knob)
{
  for (guint i = 0; i < next->options->len; i++)
    {
      const TbNextOption *option = g_ptr_array_index (next->options, i);

      if (g_str_equal (option->knob->name, knob))
        return option;
    }
  return NULL;
}

/* The wished measure of an option's setup, thrown here. */
static double
thrown (const TbNext *next, const TbNextOption *option)
{
  g_autoptr (TbRun) run = tb_run_new (option->setup);
  g_autoptr (TbThrower) thrower = tb_thrower_new ();

  g_assert_cmpint (run->status, ==, TB_OK);
  g_assert_cmpint (run->path.result, ==, TB_RESULT_PINS);
  return tb_wish_value (&next->wish, thrower, &option->setup->shot, &run->path.measures);
}

static void
check_option (const TbNext *next, const TbNextOption *option)
{
  double value = thrown (next, option);
  g_autofree char *change = tb_next_change_text (option, FALSE);
  g_autofree char *effect = tb_next_effect_text (next, option, FALSE);
  g_autofree char *reach = tb_next_reach_text (next, option, FALSE);

  g_test_message ("%s: %s; %s; effort %.1f; %.3f", option->title, change, effect, option->effort, value);
  g_assert_cmpfloat (value, ==, option->wished);
  if (option->reach == TB_REACH_MET && next->wish.kind != TB_WISH_FORGIVING)
    g_assert_cmpfloat_with_epsilon (value, next->target, TB_WISH_TOLERANCE);
  if (option->reach == TB_REACH_NEARER)
    g_assert_cmpfloat (fabs (value - next->target), <, fabs (next->now - next->target));
  if (tb_wish_reaims (&next->wish))
    g_assert_true (tb_pocket_contains (&option->setup->shot.assumed, &option->run->path.measures));
  g_assert_true ((reach == NULL) == (option->reach == TB_REACH_MET));
  g_assert_cmpfloat (option->effort, >, 0);
  g_assert_cmpuint (option->n_changes, >, 0);
  g_assert_true (*change != '\0');
}

static const char *const asked[][2] = {
  { "", "boards=-3" },      { "", "boards=2" },        { "aim_board=15", "pocket" },
  { "grit=500", "pocket" }, { "", "angle=4.5" },       { "speed_mph=15", "angle=2" },
  { "", "turn=2" },         { "", "turn=-3" },         { "", "roll=48" },
  { "", "forgiving" },      { "hand=1", "boards=-2" }, { "cover=0 grit=4000", "pocket" },
};

static void
test_reaches (void)
{
  guint met = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (asked); i++)
    {
      g_autoptr (TbNext) next = ask (asked[i][0], asked[i][1]);
      g_autofree char *wish = tb_next_wish_text (next, FALSE);

      g_test_message ("%s: %s %u options, %u throws", asked[i][1], wish, next->options->len, next->throws);
      g_assert_cmpint (next->status, ==, TB_OK);
      for (guint k = 0; k < next->options->len; k++)
        {
          const TbNextOption *option = g_ptr_array_index (next->options, k);

          check_option (next, option);
          met += option->reach == TB_REACH_MET;
          if (k > 0)
            g_assert_cmpint (tb_next_option_compare (g_ptr_array_index (next->options, k - 1), option), <, 0);
        }
    }
  /* Measured: 75. */
  g_assert_cmpuint (met, >, 40);
}

/* An option changes what its knob turns, the target where it is re-aimed, and nothing else. */
static void
test_changes_only (void)
{
  g_autoptr (TbNext) next = ask ("", "boards=-3");

  for (guint i = 0; i < next->options->len; i++)
    {
      const TbNextOption *option = g_ptr_array_index (next->options, i);

      for (guint k = 0; k < option->n_changes; k++)
        {
          const char *name = option->change[k].field->name;
          gboolean own = option->knob->kind != TB_KNOB_SLIDE || g_str_equal (name, option->knob->field)
                         || g_strcmp0 (name, option->knob->second) == 0;

          g_assert_true (own);
        }
    }
}

static double
change_of (const TbNext *next, const char *knob)
{
  const TbNextOption *option = option_of (next, knob);

  g_assert_nonnull (option);
  return option->change[0].to - option->change[0].from;
}

/* Common practice on a house shot: less hook by more speed, fewer revs, less axis rotation, a smoother
 * surface, feet inside, target outside; and a move on the approach is less of a change than one in the hand
 * or on the ball. */
static void
test_practice (void)
{
  g_autoptr (TbNext) next = ask ("", "boards=-3");
  const TbNextOption *feet = option_of (next, "feet"), *surface = option_of (next, "surface");

  g_assert_cmpfloat (change_of (next, "speed"), >, 0);
  g_assert_cmpfloat (change_of (next, "rev-rate"), <, 0);
  g_assert_cmpfloat (change_of (next, "axis-rotation"), <, 0);
  g_assert_cmpfloat (change_of (next, "speed-and-rotation"), >, 0);
  g_assert_cmpfloat (change_of (next, "surface"), >, 0);
  g_assert_cmpfloat (change_of (next, "feet"), >, 0);
  g_assert_cmpfloat (change_of (next, "target"), <, 0);
  g_assert_cmpfloat (change_of (next, "feet-and-target"), >, 0);
  g_assert_cmpfloat (feet->effort, <, option_of (next, "speed")->effort);
  g_assert_cmpfloat (feet->effort, <, surface->effort);
  g_assert_cmpint (surface->knob->cost->rule[TB_IN_COMPETITION], ==, TB_RULE_NOT_ALLOWED);
  g_assert_cmpint (surface->knob->cost->rule[TB_IN_PRACTICE], ==, TB_RULE_ALLOWED);
  g_assert_nonnull (surface->knob->caution);
}

/* How many boards a knob moves the ball at the pins over the whole of its usual range, all else as it is. */
static double
boards_over_range (const char *knob_name)
{
  const TbKnob *knob = tb_knob_find (knob_name);
  g_autoptr (TbSetup) setup = setup_with ("");
  g_autoptr (TbThrower) thrower = tb_thrower_new ();
  double low, high, least = INFINITY, most = -INFINITY;

  tb_knob_range (knob, &setup->shot, &low, &high);
  for (int i = 0; i <= 16; i++)
    {
      TbShot shot = setup->shot;
      TbMeasures measures;

      g_assert_true (tb_knob_turn (knob, &shot, low + (high - low) * i / 16));
      g_assert_cmpint (tb_thrower_throw (thrower, &shot, &measures), ==, TB_OK);
      least = MIN (least, tb_board_from_x (measures.x_at_pins));
      most = MAX (most, tb_board_from_x (measures.x_at_pins));
    }
  g_test_message ("%s: %.1f boards over its usual range", knob_name, most - least);
  return most - least;
}

/* Of what can be done to a ball the surface leads (USBC, Ball Motion Study, 2008), core and layout come after
 * it; loft is useful in inches and moves little (common practice). Measured, in boards: surface 15.8,
 * differential 5.4, pin to PAP 1.4, RG 1.3, VAL angle 0.1, loft forward 0.1; speed 19.3, rev rate 14.4,
 * rotation 12.0, grip 5.7, tilt 2.1. */
static void
test_ranking (void)
{
  static const char *const weaker[] = { "rg", "differential", "pin-to-pap", "val-angle", "loft-reach" };
  double surface = boards_over_range ("surface");

  for (gsize i = 0; i < G_N_ELEMENTS (weaker); i++)
    g_assert_cmpfloat (surface, >, 1.5 * boards_over_range (weaker[i]));
  g_assert_cmpfloat (boards_over_range ("speed"), >, boards_over_range ("grip"));
  g_assert_cmpfloat (boards_over_range ("rev-rate"), >, boards_over_range ("axis-tilt"));
  g_assert_cmpfloat (boards_over_range ("axis-rotation"), >, boards_over_range ("axis-tilt"));
}

/* The same options, told in the other system of units. */
static void
test_metric (void)
{
  g_autoptr (TbNext) next = ask ("", "turn=2");
  const TbNextOption *speed = option_of (next, "speed");
  g_autofree char *wish = tb_next_wish_text (next, TRUE);
  g_autofree char *change = tb_next_change_text (speed, TRUE);
  g_autofree char *effect = tb_next_effect_text (next, speed, TRUE);

  g_assert_true (g_str_has_prefix (wish, "Turn 0.61 m later: "));
  g_assert_true (g_str_has_prefix (change, "Speed: 27.36 → "));
  g_assert_nonnull (strstr (change, " km/h"));
  g_assert_nonnull (strstr (effect, " km/h at the pins"));
  g_assert_null (strstr (effect, " ft"));
  g_assert_null (strstr (effect, " mph"));
}

static void
assert_same (const TbNext *a, const TbNext *b)
{
  g_assert_cmpuint (a->options->len, ==, b->options->len);
  for (guint i = 0; i < a->options->len; i++)
    {
      const TbNextOption *p = g_ptr_array_index (a->options, i), *q = g_ptr_array_index (b->options, i);

      g_assert_true (p->knob == q->knob);
      g_assert_true (p->wished == q->wished && p->effort == q->effort && p->room_in == q->room_in);
      g_assert_true (tb_setup_equal (p->setup, q->setup));
      g_assert_cmpmem (p->point, sizeof p->point, q->point, sizeof q->point);
    }
}

static void
test_threads (void)
{
  g_autoptr (TbSetup) setup = setup_with ("");
  TbWish wish = tb_wish_default (TB_WISH_TURN);
  g_autoptr (TbNext) one
      = tb_next_find (&(TbNextQuestion){ .start = setup, .wish = &wish, .threads = 1 }, NULL);
  g_autoptr (TbNext) four
      = tb_next_find (&(TbNextQuestion){ .start = setup, .wish = &wish, .threads = 4 }, NULL);

  assert_same (one, four);
}

static void
test_curves (void)
{
  g_autoptr (TbNext) next = ask ("", "boards=-3");
  const TbNextOption *rotation = option_of (next, "axis-rotation");
  g_autofree char *text = NULL;

  for (guint i = 0; i < next->options->len; i++)
    {
      const TbNextOption *option = g_ptr_array_index (next->options, i);
      g_autofree char *turning = tb_next_curve_text (next, option, FALSE);

      for (guint k = 1; k < option->n_points; k++)
        g_assert_cmpfloat (option->point[k].at, >, option->point[k - 1].at);
      g_assert_true ((turning != NULL) == option->turns);
      /* A turning point beats every place of the curve. */
      for (guint k = 0; option->turns && k < option->n_points; k++)
        g_assert_true ((option->turns_wished - option->point[k].wished)
                           * (option->turns_wished - option->point[0].wished)
                       >= -1e-9);
    }
  /* Common practice: the most boards come with much, not with all of the rotation. Measured: 68°. */
  g_assert_true (rotation->turns);
  g_assert_cmpfloat (rotation->turns_at, >, 55);
  g_assert_cmpfloat (rotation->turns_at, <, 80);
  text = tb_next_curve_text (next, rotation, FALSE);
  g_assert_nonnull (strstr (text, "the most is in the middle"));
}

/* A steep angle is not to be had from surface and oil by a ball that rolls: only what is said to change it
 * does. */
static void
test_turn_is_used_up (void)
{
  g_autoptr (TbNext) next = ask ("grit=1000", "angle=6.5");
  g_autofree char *text = tb_next_turn_text (next, FALSE);
  g_autoptr (TbNext) less = ask ("grit=1000", "angle=1");
  g_autofree char *silent = tb_next_turn_text (less, FALSE);

  g_assert_true (isfinite (next->start_measures.roll_start_y));
  g_assert_nonnull (text);
  g_test_message ("%s", text);
  g_assert_nonnull (strstr (text, "used up"));
  g_assert_null (silent);
  for (guint i = 0; i < next->options->len; i++)
    {
      const TbNextOption *option = g_ptr_array_index (next->options, i);

      if (option->reach == TB_REACH_MET)
        g_assert_cmpint (option->knob->group, ==, TB_KNOB_DELIVERY);
    }
}

/* Another ball is a step of its own size: it can pass what is asked, and then is neither short of it nor
 * nothing. */
static void
test_goes_too_far (void)
{
  g_autoptr (TbNext) asked_for = ask ("speed_mph=15", "angle=5");
  TbNextOption ball = { .knob = tb_knob_find ("other-ball"), .reach = TB_REACH_NEARER, .wished = 5.1 };
  g_autoptr (GPtrArray) only_ball = g_ptr_array_new ();
  TbNext next = *asked_for;
  g_autofree char *far = tb_next_reach_text (&next, &ball, FALSE), *near = NULL, *turn = NULL;

  g_assert_cmpfloat (next.now, <, next.target);
  g_assert_cmpstr (far, ==, "Goes too far: 5.1° instead of 5.0°.");
  ball.wished = 4.9;
  near = tb_next_reach_text (&next, &ball, FALSE);
  g_assert_cmpstr (near, ==, "Gets as far as 4.9°; 5.0° is out of its reach.");
  g_ptr_array_add (only_ball, &ball);
  next.options = only_ball;
  turn = tb_next_turn_text (&next, FALSE);
  g_assert_nonnull (strstr (turn, "used up"));
  g_assert_null (strstr (turn, "Nothing within the usual limits"));
}

/* Of all groups the least effort, and only what meets the wish. */
static void
test_smallest (void)
{
  g_autoptr (TbNext) next = ask ("", "boards=-3"), out = ask ("grit=1000", "angle=6.5"),
                     room = ask ("", "forgiving");
  const TbNextOption *smallest = tb_next_smallest (next);

  g_assert_nonnull (smallest);
  g_assert_cmpint (smallest->reach, ==, TB_REACH_MET);
  for (guint i = 0; i < next->options->len; i++)
    {
      const TbNextOption *option = g_ptr_array_index (next->options, i);

      g_assert_true (option->reach != TB_REACH_MET || option->effort >= smallest->effort);
    }
  /* Common practice: moving is easier than changing the release. */
  g_assert_cmpint (smallest->knob->group, ==, TB_KNOB_LINE);
  g_assert_null (tb_next_smallest (room));
  smallest = tb_next_smallest (out);
  g_assert_true (smallest == NULL || smallest->reach == TB_REACH_MET);
}

/* Who is in the pocket does not get there. */
static void
test_in_the_pocket (void)
{
  g_autoptr (TbNext) in = ask ("laydown_board=24.3", "pocket"), beside = ask ("speed_mph=15", "pocket");
  g_autofree char *words = tb_next_wish_text (in, FALSE), *far = tb_next_wish_text (beside, FALSE);

  g_assert_false (in->met);
  g_assert_true (g_str_has_prefix (words, "To the middle of the pocket: "));
  g_assert_true (g_str_has_prefix (far, "Into the pocket: "));
}

static void
test_met_already (void)
{
  g_autoptr (TbSetup) setup = setup_with ("");
  g_autoptr (TbThrower) thrower = tb_thrower_new ();
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) aimed = NULL;
  g_autoptr (TbNext) next = NULL;
  TbWish wish = tb_wish_default (TB_WISH_POCKET);

  g_assert_true (tb_pocket_reaim (thrower, &shot, NULL));
  aimed = tb_setup_with_shot (setup, &shot);
  next = tb_next_find (&(TbNextQuestion){ .start = aimed, .wish = &wish }, NULL);
  g_assert_true (next->met);
  g_assert_cmpuint (next->options->len, ==, 0);
}

/* A ball of the library, on a line of its own. */
static void
test_balls (void)
{
  g_autoptr (TbSetup) setup = setup_with ("");
  TbNextBall ball = { "pearl", "Mild pearl", setup->shot.ball };
  TbWish wish = tb_wish_default (TB_WISH_BOARDS);
  g_autoptr (TbNext) next = NULL;
  const TbNextOption *option;
  g_autofree char *change = NULL;

  g_assert_cmpint (tb_field_set (any_field ("cover"), &ball.ball, TB_COVER_REACTIVE_PEARL), ==, TB_OK);
  g_assert_cmpint (tb_field_set (any_field ("grit"), &ball.ball, 4000), ==, TB_OK);
  next
      = tb_next_find (&(TbNextQuestion){ .start = setup, .wish = &wish, .balls = &ball, .n_balls = 1 }, NULL);
  option = option_of (next, "other-ball");
  g_assert_nonnull (option);
  g_assert_cmpstr (option->setup->ball_id, ==, "pearl");
  g_assert_cmpint (option->reach, ==, TB_REACH_MET);
  check_option (next, option);
  change = tb_next_change_text (option, FALSE);
  g_assert_true (g_str_has_prefix (change, "Throw “Mild pearl”; "));
}

static gboolean
offers_ball_of (double weight_lb)
{
  g_autoptr (TbSetup) setup = setup_with ("weight_lb=8 cover=0 grit=4000");
  TbNextBall ball = { "other", "Another", setup->shot.ball };
  TbWish wish = tb_wish_default (TB_WISH_BOARDS);
  g_autoptr (TbNext) next = NULL;

  g_assert_cmpint (tb_field_set (any_field ("cover"), &ball.ball, TB_COVER_URETHANE), ==, TB_OK);
  g_assert_cmpint (tb_field_set (any_field ("weight_lb"), &ball.ball, weight_lb), ==, TB_OK);
  next
      = tb_next_find (&(TbNextQuestion){ .start = setup, .wish = &wish, .balls = &ball, .n_balls = 1 }, NULL);
  return option_of (next, "other-ball") != NULL;
}

/* Nobody is told to throw a ball that may be too heavy for the hand, least of all a child; nor one of far
 * less weight. */
static void
test_balls_of_like_weight (void)
{
  g_assert_true (offers_ball_of (8));
  g_assert_true (offers_ball_of (9));
  g_assert_true (offers_ball_of (7));
  g_assert_false (offers_ball_of (10));
  g_assert_false (offers_ball_of (15));
  g_assert_false (offers_ball_of (6));
}

/* What the main context is told while the search runs elsewhere. */
typedef struct Told
{
  guint options;
  TbNext *next;
  gboolean done, cancelled;
  GThread *thread;
} Told;

static void
told (TbNext *next, TbNextOption *option, gpointer data)
{
  Told *self = data;

  g_assert_true (g_thread_self () == self->thread);
  g_assert_false (self->done);
  g_assert_nonnull (option->setup);
  self->options++;
}

static void
finished (GObject *source, GAsyncResult *result, gpointer data)
{
  Told *self = data;
  g_autoptr (GError) error = NULL;

  self->next = tb_next_find_finish (result, &error);
  self->cancelled = g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  self->done = TRUE;
}

static void
test_async (void)
{
  g_autoptr (TbSetup) setup = setup_with ("");
  g_autoptr (TbNext) here = NULL;
  TbWish wish = tb_wish_default (TB_WISH_BOARDS);
  Told self = { .thread = g_thread_self () };

  tb_next_find_async (&(TbNextQuestion){ .start = setup, .wish = &wish, .progress = told }, NULL, finished,
                      &self);
  while (!self.done)
    g_main_context_iteration (NULL, TRUE);
  here = tb_next_find (&(TbNextQuestion){ .start = setup, .wish = &wish, .threads = 2 }, NULL);
  assert_same (here, self.next);
  g_assert_cmpuint (self.options, ==, here->options->len);
  tb_next_unref (self.next);
}

static void
test_cancel (void)
{
  g_autoptr (TbSetup) setup = setup_with ("");
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  TbWish wish = tb_wish_default (TB_WISH_TURN);
  Told self = { .thread = g_thread_self () };

  tb_next_find_async (&(TbNextQuestion){ .start = setup, .wish = &wish, .progress = told }, cancellable,
                      finished, &self);
  g_cancellable_cancel (cancellable);
  while (!self.done)
    g_main_context_iteration (NULL, TRUE);
  g_assert_null (self.next);
  g_assert_true (self.cancelled);
  g_assert_cmpuint (self.options, ==, 0);
  g_assert_null (
      tb_next_find (&(TbNextQuestion){ .start = setup, .wish = &wish, .threads = 2 }, cancellable));
}

static void
test_parse (void)
{
  static const char *const bad[]
      = { "", "board", "boards=", "boards=x", "boards=99", "boards=-3x", "pocket=3", "angle=nan" };
  TbWish wish;
  g_autofree char *problem = NULL;

  g_assert_true (tb_wish_parse ("boards=-2.5", &wish, &problem));
  g_assert_cmpint (wish.kind, ==, TB_WISH_BOARDS);
  g_assert_cmpfloat (wish.amount, ==, -2.5);
  g_assert_true (tb_wish_parse ("angle", &wish, &problem));
  g_assert_cmpfloat (wish.amount, ==, tb_wish_info (TB_WISH_ANGLE)->standard);
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autofree char *sentence = NULL;

      g_assert_false (tb_wish_parse (bad[i], &wish, &sentence));
      g_assert_nonnull (sentence);
      g_assert_true (g_str_has_suffix (sentence, "."));
    }
}

/* Every knob names fields that are there, and its limits are inside of theirs. */
static void
test_table (void)
{
  for (const TbKnob *knob = tb_knob_table; knob->name; knob++)
    {
      const TbField *field = tb_knob_field (knob);

      g_assert_true (tb_knob_find (knob->name) == knob);
      g_assert_true ((field != NULL) == (knob->kind == TB_KNOB_SLIDE));
      g_assert_true ((tb_knob_second (knob) != NULL) == (knob->second != NULL));
      g_assert_nonnull (knob->cost);
      if (!field)
        continue;
      g_assert_cmpfloat (knob->low, >=, field->min);
      g_assert_cmpfloat (knob->high, <=, field->max);
    }
}

/* Where a knob, turned on, first meets the wish and then throws the ball into the gutter, its curve has a
 * place on this side and none on the other. It meets the wish all the same: a walk in small steps passes it.
 */
static void
test_met_before_the_gutter (void)
{
  static const struct
  {
    const char *line, *wish, *knob;
  } cases[] = {
    { "laydown_board=14 aim_board=5", "boards=-3", "target" },
    { "laydown_board=14 aim_board=5", "turn=1", "target" },
    { "laydown_board=14 aim_board=5", "turn=3", "feet" },
    { "laydown_board=16 aim_board=7", "boards=-3", "target" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TbNext) next = ask_as_aimed (cases[i].line, cases[i].wish);
      const TbNextOption *option = option_of (next, cases[i].knob);

      g_test_message ("%s, %s: %s", cases[i].line, cases[i].wish, cases[i].knob);
      g_assert_true (walk_passes (next, tb_knob_find (cases[i].knob)));
      g_assert_nonnull (option);
      g_assert_cmpint (option->reach, ==, TB_REACH_MET);
      check_option (next, option);
    }
}

/* How far a knob is turned in small steps, to either side, until it passes the wish without a jump. */
static double
first_crossing (const TbNext *next, const TbKnob *knob)
{
  g_autoptr (TbThrower) thrower = tb_thrower_new ();
  double here = tb_knob_value (knob, &next->start->shot), end[2], first = INFINITY;

  tb_knob_range (knob, &next->start->shot, &end[0], &end[1]);
  for (int side = 0; side < 2; side++)
    {
      double last = next->now - next->target;

      for (int i = 1; i <= 4 * WALK_STEPS; i++)
        {
          double by = (end[side] - here) * i / (4 * WALK_STEPS), miss = NAN;
          TbShot shot = next->start->shot;
          TbMeasures measures;

          if (fabs (by) >= first)
            break;
          if (tb_knob_turn (knob, &shot, here + by) && tb_thrower_throw (thrower, &shot, &measures) == TB_OK)
            miss = tb_wish_value (&next->wish, thrower, &shot, &measures) - next->target;
          if (miss * last <= 0 && fabs (miss - last) < 0.3)
            first = fabs (by);
          last = miss;
        }
    }
  return first;
}

/* The heading of a rolling ball sways as its core comes round, and a wish that lies within the sway is met
 * more than once: the smallest change is found among them. (Found by looking: all three asked at least twice
 * what was needed.) */
static void
test_smallest_of_a_sway (void)
{
  static const struct
  {
    const char *delivery, *wish, *knob;
  } cases[] = {
    { "rev_rate_rpm=340 axis_rotation_deg=50", "angle=4", "target" },
    { "rev_rate_rpm=260 axis_rotation_deg=65", "angle=3.5", "rev-rate" },
    { "rev_rate_rpm=300 axis_rotation_deg=35", "roll=50", "rev-rate" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TbNext) next = ask_as_aimed (cases[i].delivery, cases[i].wish);
      const TbNextOption *option = option_of (next, cases[i].knob);
      double first = first_crossing (next, tb_knob_find (cases[i].knob)), change;

      g_assert_nonnull (option);
      g_assert_cmpint (option->reach, ==, TB_REACH_MET);
      check_option (next, option);
      change = fabs (option->change[0].to - option->change[0].from);
      g_test_message ("%s by %.3f; in small steps %.3f", cases[i].knob, change, first);
      g_assert_cmpfloat (change, <, 1.1 * first);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/next/reaches", test_reaches);
  g_test_add_func ("/next/changes-only", test_changes_only);
  g_test_add_func ("/next/practice", test_practice);
  g_test_add_func ("/next/ranking", test_ranking);
  g_test_add_func ("/next/metric", test_metric);
  g_test_add_func ("/next/threads", test_threads);
  g_test_add_func ("/next/curves", test_curves);
  g_test_add_func ("/next/turn-is-used-up", test_turn_is_used_up);
  g_test_add_func ("/next/goes-too-far", test_goes_too_far);
  g_test_add_func ("/next/smallest", test_smallest);
  g_test_add_func ("/next/in-the-pocket", test_in_the_pocket);
  g_test_add_func ("/next/met-already", test_met_already);
  g_test_add_func ("/next/met-before-the-gutter", test_met_before_the_gutter);
  g_test_add_func ("/next/smallest-of-a-sway", test_smallest_of_a_sway);
  g_test_add_func ("/next/balls", test_balls);
  g_test_add_func ("/next/balls-of-like-weight", test_balls_of_like_weight);
  g_test_add_func ("/next/async", test_async);
  g_test_add_func ("/next/cancel", test_cancel);
  g_test_add_func ("/next/parse", test_parse);
  g_test_add_func ("/next/table", test_table);
  return g_test_run ();
}
