/* Why: parts that add up, mirror and mean what they say.
 *
 * Everything here is classical: the Shapley value's own axioms (efficiency, symmetry under exchange of the
 * two ends, nothing for an input that does nothing) and integration by parts.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "study-support.h"
#include "tb-batch.h"
#include "tb-why.h"

/* The promise; measured: 4e-9 boards at worst. */
#define SUM_BOARDS 1e-3
#define SUM_EXACT 1e-7

static TbWhy *
why_between (const char *before, const char *after)
{
  g_autoptr (TbSetup) a = setup_with (before);
  g_autoptr (TbSetup) b = setup_with (after);

  return tb_why_new (a, b, NULL, NULL);
}

static double
sum_of_inputs (const TbWhy *why, TbWhyMeasure measure)
{
  double sum = 0;

  for (guint i = 0; i < why->n_inputs; i++)
    sum += why->input[i].part[measure];
  return sum;
}

static double
sum_of_stretches (const TbWhy *why, TbWhyMeasure measure)
{
  double sum = why->launch_part[measure];

  for (guint i = 0; i < why->n_stretches; i++)
    sum += why->stretch[i].part[measure];
  return sum;
}

static void
assert_sums (const TbWhy *why)
{
  g_assert_cmpint (why->status, ==, TB_OK);
  for (int m = 0; m < TB_WHY_N_SPLITS; m++)
    if (isfinite (why->difference[m]))
      g_assert_cmpfloat_with_epsilon (sum_of_inputs (why, m), why->difference[m], SUM_EXACT);
  g_assert_cmpfloat_with_epsilon (sum_of_stretches (why, TB_WHY_BOARD), why->difference[TB_WHY_BOARD],
                                  SUM_BOARDS);
  g_assert_cmpfloat_with_epsilon (sum_of_stretches (why, TB_WHY_ANGLE), why->difference[TB_WHY_ANGLE],
                                  SUM_EXACT);
}

static const char *const pairs[][2] = {
  { "speed_mph=17", "speed_mph=19" },
  { "", "rev_rate_rpm=420 axis_rotation_deg=70" },
  { "aim_board=16.6", "aim_board=14 laydown_board=27" },
  { "grit=500", "grit=4000 speed_mph=16" },
  { "cover=0", "cover=4 grit=1000" },
  { "loft_angle_deg=8 loft_reach_in=24", "release_height_in=6" },
  { "pattern_scale=0.3", "pattern_scale=1.5 cross_tilt_in=0.04" },
  { "pin_to_pap_in=1",
    "pin_to_pap_in=5 differential_in=0.06 rg_in=2.6 weight_lb=12 grip_pressure=8 axis_tilt_deg=30" },
};

static void
test_sums (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (pairs); i++)
    {
      g_autoptr (TbWhy) why = why_between (pairs[i][0], pairs[i][1]);

      assert_sums (why);
      g_assert_cmpuint (why->orders, ==, 0);
    }
}

/* Finer stretches add up to the coarse ones they cover. */
static void
test_stretches (void)
{
  const TbWhyOptions fine = { .stretch_ft = 2.5 };
  g_autoptr (TbSetup) before = setup_with ("");
  g_autoptr (TbSetup) after = setup_with ("speed_mph=15 loft_angle_deg=6 aim_board=15");
  g_autoptr (TbWhy) coarse = tb_why_new (before, after, NULL, NULL);
  g_autoptr (TbWhy) why = tb_why_new (before, after, &fine, NULL);

  g_assert_cmpuint (coarse->n_stretches, ==, 3);
  g_assert_cmpuint (why->n_stretches, ==, 24);
  assert_sums (why);
  for (guint third = 0; third < 3; third++)
    for (int m = 0; m < 2; m++)
      {
        double sum = 0;

        for (guint i = 0; i < 8; i++)
          sum += why->stretch[8 * third + i].part[m];
        g_assert_cmpfloat_with_epsilon (sum, coarse->stretch[third].part[m], SUM_EXACT);
      }
}

/* Friction only: a run's stretch against the impulse summed from its samples. Measured: 0.002 boards. */
static void
test_stretch_is_impulse (void)
{
  g_autoptr (TbSetup) setup = setup_with ("release_height_in=0 loft_reach_in=0");
  g_autoptr (TbRun) run = tb_run_new_edgeless (setup);
  const TbPath *path = &run->path;
  double heading = tb_delivery_launch_heading (&setup->shot.delivery), sum = 0, part[2];
  const int steps = 20000;
  TbSample end;

  g_assert_true (tb_path_at_distance (path, tb_metres_from_ft (40), &end));
  for (int i = 0; i < steps; i++)
    {
      TbSample sample;
      double time = end.time * (i + 0.5) / steps;

      g_assert_true (tb_path_at_time (path, time, &sample));
      /* Acceleration across the launch line, towards higher boards. */
      sum += -(sample.acceleration.x * cos (heading) + sample.acceleration.y * sin (heading))
             * (tb_path_duration (path) - time) * end.time / steps;
    }
  tb_run_stretch (run, 0, 40, part);
  g_assert_cmpfloat_with_epsilon (part[TB_WHY_BOARD], sum / cos (heading) / TB_BOARD_WIDTH, 0.01);
}

static void
test_symmetry (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (pairs); i++)
    {
      g_autoptr (TbWhy) there = why_between (pairs[i][0], pairs[i][1]);
      g_autoptr (TbWhy) back = why_between (pairs[i][1], pairs[i][0]);

      g_assert_cmpuint (there->n_inputs, ==, back->n_inputs);
      for (guint k = 0; k < there->n_inputs; k++)
        for (int m = 0; m < TB_WHY_N_SPLITS; m++)
          if (isfinite (there->input[k].part[m]))
            g_assert_cmpfloat_with_epsilon (there->input[k].part[m], -back->input[k].part[m], 1e-9);
      for (guint k = 0; k < there->n_stretches; k++)
        g_assert_cmpfloat_with_epsilon (there->stretch[k].part[0], -back->stretch[k].part[0], 1e-9);
    }
}

static void
test_nothing (void)
{
  g_autoptr (TbWhy) why = why_between ("grit=1000", "grit=1000");
  g_auto (GStrv) sentences = tb_why_sentences (why, TB_WHY_BOARD, FALSE);

  g_assert_cmpuint (why->n_inputs, ==, 0);
  g_assert_cmpfloat (why->difference[TB_WHY_BOARD], ==, 0);
  g_assert_cmpfloat (sum_of_stretches (why, TB_WHY_BOARD), ==, 0);
  g_assert_cmpuint (g_strv_length (sentences), ==, 1);
  g_assert_cmpstr (sentences[0], ==, "Nothing has changed: both throws are the same.");
}

/* An input that does next to nothing explains next to nothing: the drilling angle of a symmetric ball without
 * holes only turns it about its own axis of symmetry. Measured: 0.0008 boards, from the cells of oil on the
 * ball. */
static void
test_idle_input (void)
{
  g_autoptr (TbWhy) why = why_between ("", "drilling_angle_deg=80 speed_mph=18");

  g_assert_cmpuint (why->n_inputs, ==, 2);
  for (guint i = 0; i < why->n_inputs; i++)
    if (g_str_equal (tb_change_name (&why->input[i].change), "drilling_angle_deg"))
      g_assert_cmpfloat_with_epsilon (why->input[i].part[TB_WHY_BOARD], 0, 0.004);
    else
      g_assert_cmpfloat_with_epsilon (why->input[i].part[TB_WHY_BOARD], why->difference[TB_WHY_BOARD], 0.004);
}

/* Another kind of cover is one input with the friction that comes with it; its surface is another. */
static void
test_cover (void)
{
  g_autoptr (TbWhy) why = why_between ("cover=0 grit=4000", "cover=4 grit=1000");

  g_assert_cmpuint (why->n_inputs, ==, 2);
  g_assert_cmpstr (tb_change_name (&why->input[0].change), ==, "cover");
  g_assert_cmpstr (tb_change_name (&why->input[1].change), ==, "roughness_uin");
  assert_sums (why);
}

/* A big intermediate differential does not fit a ball with a small differential: the ball is taken as one. */
static void
test_unmixable (void)
{
  g_autoptr (TbWhy) why = why_between ("differential_in=0.02 intermediate_differential_in=0.01 speed_mph=16",
                                       "differential_in=0.06 intermediate_differential_in=0.04 speed_mph=18");

  g_assert_cmpuint (why->n_inputs, ==, 2);
  g_assert_cmpstr (tb_change_name (&why->input[0].change), ==, "speed_mph");
  g_assert_cmpstr (tb_change_name (&why->input[1].change), ==, "ball");
  assert_sums (why);
}

#define MANY                                                                                           \
  "speed_mph=18 rev_rate_rpm=340 axis_rotation_deg=60 axis_tilt_deg=16 laydown_board=25 aim_board=16 " \
  "grit=3000 rg_in=2.53 grip_pressure=6"

typedef struct Mixer
{
  TbSetup *before, *after;
  TbChange changes[TB_MAX_CHANGES];
  guint count;
} Mixer;

static void
mix (TbShot *shot, guint index, gpointer data)
{
  const Mixer *mixer = data;

  *shot = mixer->before->shot;
  for (guint i = 0; i < mixer->count; i++)
    if (index >> i & 1)
      tb_change_apply (&mixer->changes[i], mixer->after, shot);
  shot->options.edgeless = true;
}

/* The Shapley value from its definition, over every order's coalition. */
static double
exact_part (const TbBatchItem *items, guint count, guint input)
{
  double part = 0;

  for (guint set = 0; set < 1u << count; set++)
    {
      double weight = 1.0 / count;
      guint size = 0;

      if (set >> input & 1)
        continue;
      for (guint i = 0; i < count; i++)
        size += set >> i & 1;
      for (guint i = 1; i <= size; i++)
        weight *= (double) i / (count - i);
      part -= weight * (items[set | 1u << input].measures.x_at_pins - items[set].measures.x_at_pins)
              / TB_BOARD_WIDTH;
    }
  return part;
}

/* Nine inputs are sampled: the parts still add up, still mirror, and are as near to the exact ones as is
 * said. */
static void
test_sampled (void)
{
  g_autoptr (TbWhy) why = why_between ("", MANY);
  g_autoptr (TbWhy) back = why_between (MANY, "");
  Mixer mixer = { .before = why->setup[TB_SIDE_BEFORE], .after = why->setup[TB_SIDE_AFTER] };
  g_autofree TbBatchItem *items = NULL;

  mixer.count = tb_changes_find (mixer.before, mixer.after, mixer.changes);
  items = g_new (TbBatchItem, 1 << mixer.count);
  g_assert_true (tb_batch_run (1u << mixer.count, mix, &mixer, items, 0, NULL));
  g_assert_cmpuint (why->n_inputs, ==, 9);
  g_assert_cmpuint (why->orders, >, 0);
  assert_sums (why);
  for (guint i = 0; i < why->n_inputs; i++)
    {
      double exact = exact_part (items, mixer.count, i), got = why->input[i].part[TB_WHY_BOARD];

      g_test_message ("%s: %.3f ± %.3f, exact %.3f", tb_change_name (&why->input[i].change), got,
                      why->input[i].error[TB_WHY_BOARD], exact);
      g_assert_cmpfloat_with_epsilon (got, exact, 2 * why->input[i].error[TB_WHY_BOARD] + 0.01);
      g_assert_cmpfloat_with_epsilon (got, -back->input[i].part[TB_WHY_BOARD], 1e-9);
    }
}

/* Bit for bit, field by field: what lies between the fields is nobody's. */
static void
assert_same_inputs (const TbWhy *a, const TbWhy *b)
{
  g_assert_cmpuint (a->n_inputs, ==, b->n_inputs);
  for (guint i = 0; i < a->n_inputs; i++)
    {
      const TbWhyInput *x = &a->input[i], *y = &b->input[i];

      g_assert_cmpint (x->change.kind, ==, y->change.kind);
      g_assert_true (x->change.field == y->change.field);
      g_assert_cmpmem (x->part, sizeof x->part, y->part, sizeof y->part);
      g_assert_cmpmem (x->error, sizeof x->error, y->error, sizeof y->error);
    }
}

static void
test_threads (void)
{
  g_autoptr (TbSetup) before = setup_with ("");
  g_autoptr (TbSetup) after = setup_with (MANY);
  g_autoptr (TbWhy) one = tb_why_new (before, after, &(TbWhyOptions){ .threads = 1 }, NULL);
  g_autoptr (TbWhy) four = tb_why_new (before, after, &(TbWhyOptions){ .threads = 4 }, NULL);

  g_assert_cmpuint (one->n_inputs, >, 1);
  assert_same_inputs (one, four);
}

static gboolean
mentions (GStrv sentences, const char *words)
{
  for (char **sentence = sentences; *sentence; sentence++)
    if (strstr (*sentence, words))
      return TRUE;
  return FALSE;
}

static void
test_gutter (void)
{
  g_autoptr (TbWhy) why = why_between ("", "aim_board=6");
  g_auto (GStrv) sentences = tb_why_sentences (why, TB_WHY_BOARD, FALSE);

  g_assert_true (isnan (why->gutter_ft[TB_SIDE_BEFORE]));
  g_assert_true (isfinite (why->gutter_ft[TB_SIDE_AFTER]));
  assert_sums (why);
  g_assert_true (mentions (sentences, "in the gutter"));
}

static void
test_never_hooks (void)
{
  g_autoptr (TbWhy) why = why_between ("rev_rate_rpm=0 aim_board=20.5 laydown_board=22",
                                       "rev_rate_rpm=0 aim_board=20.5 laydown_board=23");
  g_auto (GStrv) boards = tb_why_sentences (why, TB_WHY_BOARD, FALSE);
  g_auto (GStrv) breakpoint = tb_why_sentences (why, TB_WHY_BREAKPOINT, FALSE);

  assert_sums (why);
  g_assert_true (mentions (boards, "Neither ball hooks"));
  g_assert_true (isnan (why->difference[TB_WHY_BREAKPOINT]));
  g_assert_cmpstr (breakpoint[0], ==, "Neither ball turns back on its way.");
}

static void
test_too_slow (void)
{
  g_autoptr (TbSetup) before = setup_with ("");
  TbShot shot = before->shot;
  g_autoptr (TbSetup) after = NULL;
  g_autoptr (TbWhy) why = NULL;
  g_auto (GStrv) sentences = NULL;

  shot.ball.differential = 0;
  shot.ball.intermediate_differential = tb_metres_from_in (0.02);
  after = tb_setup_with_shot (before, &shot);
  why = tb_why_new (before, after, NULL, NULL);
  sentences = tb_why_sentences (why, TB_WHY_BOARD, FALSE);
  g_assert_cmpint (why->status, ==, TB_ERROR_DIFFERENTIALS);
  g_assert_cmpstr (sentences[0], ==, tb_status_sentence (TB_ERROR_DIFFERENTIALS));
}

static void
test_cancel (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (TbSetup) before = setup_with ("");
  g_autoptr (TbSetup) after = setup_with (MANY);

  g_cancellable_cancel (cancellable);
  g_assert_null (tb_why_new (before, after, NULL, cancellable));
}

static void
got_why (GObject *source, GAsyncResult *result, gpointer data)
{
  *(TbWhy **) data = tb_why_new_finish (result, NULL);
}

static void
test_async (void)
{
  g_autoptr (TbSetup) before = setup_with ("");
  g_autoptr (TbSetup) after = setup_with ("speed_mph=18");
  g_autoptr (TbWhy) here = tb_why_new (before, after, NULL, NULL);
  g_autoptr (TbWhy) there = NULL;

  tb_why_new_async (before, after, NULL, NULL, got_why, &there);
  while (!there)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (here->n_inputs, ==, 1);
  assert_same_inputs (here, there);
}

/* A left-hander's throw is explained as the right-hander's. */
static void
test_left (void)
{
  g_autoptr (TbWhy) right = why_between ("", "speed_mph=18.5 grit=1000");
  g_autoptr (TbWhy) left = why_between ("hand=1", "hand=1 speed_mph=18.5 grit=1000");

  for (guint i = 0; i < right->n_inputs; i++)
    g_assert_cmpfloat_with_epsilon (right->input[i].part[TB_WHY_BOARD], left->input[i].part[TB_WHY_BOARD],
                                    1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/why/sums", test_sums);
  g_test_add_func ("/why/stretches", test_stretches);
  g_test_add_func ("/why/stretch-is-impulse", test_stretch_is_impulse);
  g_test_add_func ("/why/symmetry", test_symmetry);
  g_test_add_func ("/why/nothing", test_nothing);
  g_test_add_func ("/why/idle-input", test_idle_input);
  g_test_add_func ("/why/cover", test_cover);
  g_test_add_func ("/why/unmixable", test_unmixable);
  g_test_add_func ("/why/sampled", test_sampled);
  g_test_add_func ("/why/threads", test_threads);
  g_test_add_func ("/why/gutter", test_gutter);
  g_test_add_func ("/why/never-hooks", test_never_hooks);
  g_test_add_func ("/why/not-a-throw", test_too_slow);
  g_test_add_func ("/why/cancel", test_cancel);
  g_test_add_func ("/why/async", test_async);
  g_test_add_func ("/why/left", test_left);
  return g_test_run ();
}
