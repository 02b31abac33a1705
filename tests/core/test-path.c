/* The path as it is kept: samples, phases, interpolation, and measures that do not depend on how much is
 * kept.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>
#include "support.h"

static TbShot
lofted_shot (void)
{
  TbShot shot = check_house_shot ();

  shot.delivery.release_height = tb_metres_from_in (4.0);
  shot.delivery.loft_angle = tb_radians_from_deg (2.0);
  return shot;
}

static void
test_samples_in_order (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = lofted_shot ();

  check_run_shot (run, &shot);
  for (int i = 1; i < run->path.count; i++)
    {
      const TbSample *a = &run->path.samples[i - 1], *b = &run->path.samples[i];

      g_assert_cmpfloat (b->time, >=, a->time);
      g_assert_cmpfloat (b->position.y, >=, a->position.y);
      g_assert_cmpfloat (b->turned, >=, a->turned);
      /* A step's friction along a very small slip is set for the whole step, and may push it along at its end: 8e-6 J seen. */
      g_assert_cmpfloat (b->slip_loss, >=, a->slip_loss - 1e-4);
      if (b->phase != a->phase)
        g_assert_cmpfloat (b->time, ==, a->time);
    }
  check_near ("ends at the pins, m", check_last (run)->position.y, TB_HEAD_PIN_Y, 1e-9);
  check_near ("as long as it says, s", tb_path_duration (&run->path), check_last (run)->time, 0.0);
}

/* Published: skid, then hook, then roll, in that order (USBC, "Ball Motion Study", 2008). */
static void
test_phases_in_order (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = lofted_shot ();
  const TbMeasures *m = &run->path.measures;

  check_run_shot (run, &shot);
  check_above ("lands past the release, m", m->landing_y - shot.delivery.loft_reach, 0.0);
  check_above ("hooks after it lands, m", m->hook_start_y - m->landing_y, 0.0);
  check_above ("rolls after it hooks, m", m->roll_start_y - m->hook_start_y, 0.0);
  check_above ("rolls before the pins, m", TB_HEAD_PIN_Y - m->roll_start_y, 0.0);
}

static void
test_stretches (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = lofted_shot ();
  const TbPath *path = &run->path;

  check_run_shot (run, &shot);
  g_assert_cmpint (path->n_stretches, >=, 3);
  g_assert_cmpint (path->stretches[0].phase, ==, TB_PHASE_FLIGHT);
  g_assert_cmpfloat (path->stretches[0].start_time, ==, 0.0);
  for (int i = 0; i < path->n_stretches; i++)
    {
      const TbStretch *stretch = &path->stretches[i];

      g_assert_cmpfloat (stretch->end_time, >=, stretch->start_time);
      g_assert_cmpfloat (stretch->end_y, >=, stretch->start_y);
      if (i > 0)
        {
          g_assert_cmpfloat (stretch->start_time, ==, path->stretches[i - 1].end_time);
          /* One bounce follows another; else the phase changes. */
          if (stretch->phase != TB_PHASE_FLIGHT)
            g_assert_cmpint (stretch->phase, !=, path->stretches[i - 1].phase);
        }
    }
  g_assert_cmpfloat (path->stretches[path->n_stretches - 1].end_time, ==, tb_path_duration (path));
}

/* Samples agree with the names of their phases. Without oil on the ball: with it the coefficient is that of
 * the spot, while a step goes by the mean of the spots that it rolls over. */
static void
check_sample (const TbSample *s, double radius)
{
  double slip = tb_vec3_length (check_slip (s, radius));

  if (fabs (s->slip - slip) > 1e-9)
    g_test_fail_printf ("slip at %g s is told as %g, is %g", s->time, s->slip, slip);
  if (s->phase == TB_PHASE_FLIGHT ? s->normal != 0.0 || s->friction != 0.0 || s->coefficient != 0.0
                                  : s->normal <= 0.0)
    g_test_fail_printf ("forces at %g s", s->time);
  if (s->phase == TB_PHASE_SLIDE && fabs (s->friction - s->coefficient * s->normal) > 1e-9)
    g_test_fail_printf ("friction while sliding at %g s", s->time);
  if (s->phase == TB_PHASE_ROLL && (slip > 1e-9 || s->friction > s->coefficient * s->normal * (1 + 1e-6)))
    g_test_fail_printf ("slip %g or friction %g N while rolling at %g s", slip, s->friction, s->time);
}

static void
test_samples_agree (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = lofted_shot ();

  shot.options.no_film_on_ball = true;
  check_run_shot (run, &shot);
  for (int i = 0; i < run->path.count; i++)
    check_sample (&run->path.samples[i], run->path.body.radius);
}

/* Interpolated between the samples of an ordinary run, against a run of very small steps. */
static void
test_interpolation (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  g_autoptr (CheckRun) fine = check_run_new ();
  TbShot shot = lofted_shot (), small;
  double x = 0.0, v = 0.0, w = 0.0;

  shot.options.no_film_on_ball = true;
  small = shot;
  small.options.step = TB_SHOT_STEP / 8.0;
  check_run_shot (run, &shot);
  check_run_shot (fine, &small);
  for (double t = 0.003; t < tb_path_duration (&run->path); t += 0.0031)
    {
      TbSample a, b;

      g_assert_true (tb_path_at_time (&run->path, t, &a) && tb_path_at_time (&fine->path, t, &b));
      /* Where one is already in the next phase and the other not yet, the spin and speed have a corner. */
      if (a.phase != b.phase)
        continue;
      x = fmax (x, tb_vec3_length (tb_vec3_sub (a.position, b.position)));
      v = fmax (v, tb_vec3_length (tb_vec3_sub (a.velocity, b.velocity)));
      w = fmax (w, tb_vec3_length (tb_vec3_sub (a.spin, b.spin)));
    }
  /* A hundredth of a board is 0.27 mm. */
  check_below ("position, m", x, 2.7e-4);
  check_below ("velocity, m/s", v, 2e-3);
  /* An uneven ball's spin swings with its own turning, half a radian a step: this is for pictures. Measured:
   * 0.2. */
  check_below ("spin, rad/s", w, 0.3);
}

static void
test_at_distance (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = lofted_shot ();
  TbSample by_distance, by_time;

  check_run_shot (run, &shot);
  for (double y = 0.3; y < TB_HEAD_PIN_Y; y += 0.37)
    {
      g_assert_true (tb_path_at_distance (&run->path, y, &by_distance));
      check_near ("y, m", by_distance.position.y, y, 1e-9);
      g_assert_true (tb_path_at_time (&run->path, by_distance.time, &by_time));
      check_near ("x by time, m", by_time.position.x, by_distance.position.x, 1e-9);
    }
  for (int i = 1; i < TB_N_BOARD_MARKS; i++)
    {
      g_assert_true (
          tb_path_at_distance (&run->path, tb_metres_from_ft (TB_BOARD_MARK_FT * i), &by_distance));
      check_near ("x at a mark, m", run->path.measures.x_at_mark[i], by_distance.position.x, 1e-6);
    }
}

static void
test_held_to_its_ends (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = lofted_shot ();
  TbPath measures_only;
  TbSample sample;

  check_run_shot (run, &shot);
  g_assert_true (tb_path_at_time (&run->path, -1.0, &sample));
  g_assert_cmpfloat (sample.time, ==, 0.0);
  g_assert_true (tb_path_at_time (&run->path, 100.0, &sample));
  g_assert_cmpfloat (sample.time, ==, tb_path_duration (&run->path));
  measures_only = run->path;
  measures_only.samples = NULL;
  measures_only.count = measures_only.capacity = 0;
  g_assert_false (tb_path_at_time (&measures_only, 0.5, &sample));
  g_assert_false (tb_path_at_distance (&measures_only, 0.5, &sample));
}

/* The measures are the same bits whether all, some or no samples are kept. */
static void
test_capacity (void)
{
  g_autoptr (CheckRun) all = check_run_new ();
  TbShot shot = lofted_shot ();

  check_run_shot (all, &shot);
  for (int capacity = 0; capacity <= 64; capacity += 8)
    {
      g_autoptr (CheckRun) some = check_run_new ();

      some->path.capacity = capacity;
      check_status ("run", tb_shot_run (&shot, some->workspace, &some->path, NULL), TB_OK);
      g_assert_cmpint (some->path.count, <=, capacity);
      g_assert_cmpint (memcmp (&some->path.measures, &all->path.measures, sizeof (TbMeasures)), ==, 0);
      if (some->path.count >= 2)
        check_near ("ends at the pins all the same, m", check_last (some)->position.y, TB_HEAD_PIN_Y, 1e-9);
    }
}

static void
test_on_the_ball (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = lofted_shot ();

  check_run_shot (run, &shot);
  for (int i = 0; i < run->path.count; i += 7)
    {
      const TbSample *s = &run->path.samples[i];
      TbVec3 axis = tb_quat_rotate (s->attitude, tb_sample_axis_on_ball (s));
      TbVec3 contact = tb_quat_rotate (s->attitude, tb_sample_contact_on_ball (s));

      check_near ("axis along the spin, rad", tb_vec3_angle (axis, s->spin), 0.0, 1e-9);
      check_near ("contact straight down, rad", tb_vec3_angle (contact, tb_vec3 (0, 0, -1)), 0.0, 1e-9);
    }
  check_near ("the PAP is on the axis at release, rad",
              tb_vec3_angle (tb_sample_axis_on_ball (check_first (run)), run->path.body.pap), 0.0, 1e-9);
}

/* Slip that nobody would see, m/s: a roll that lets go by no more still lasts. */
#define UNSEEN_SLIP 0.05

/* Where the roll starts that lasts to the end. */
static double
last_roll_start (const TbPath *path)
{
  double start = NAN;

  for (int i = 0; i < path->count; i++)
    {
      const TbSample *s = &path->samples[i];

      if (s->phase == TB_PHASE_FLIGHT || s->slip > UNSEEN_SLIP)
        start = NAN;
      else if (s->phase == TB_PHASE_ROLL && isnan (start))
        start = s->position.y;
    }
  return start;
}

/* The measures, worked out again from the samples. */
static void
test_measures (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = lofted_shot ();
  const TbMeasures *m = &run->path.measures;
  double turned = 0.0, right = -INFINITY;
  TbSample sample;

  shot.options.step = TB_SHOT_STEP / 4.0;
  check_run_shot (run, &shot);
  for (int i = 1; i < run->path.count; i++)
    {
      const TbSample *a = &run->path.samples[i - 1], *b = &run->path.samples[i];

      turned += 0.5 * (tb_vec3_length (a->spin) + tb_vec3_length (b->spin)) * (b->time - a->time);
      right = fmax (right, b->position.x);
    }
  g_assert_true (tb_path_at_distance (&run->path, TB_ARROWS_Y, &sample));
  check_near ("x at the arrows, m", m->x_at_arrows, sample.position.x, 1e-6);
  check_near ("x at the pins, m", m->x_at_pins, check_last (run)->position.x, 1e-12);
  check_near ("angle at the pins, rad", m->angle_at_pins, tb_sample_heading (check_last (run)), 1e-12);
  check_near ("breakpoint, m", m->breakpoint_x, right, 1e-5);
  check_near ("hook, boards", tb_measure_value (tb_measure_find ("hook_board"), m),
              tb_board_from_x (m->x_at_pins)
                  - tb_board_from_x (tb_delivery_launch_x (&shot.delivery, TB_HEAD_PIN_Y)),
              1e-9);
  check_near ("turned, rad", m->turned, turned, 2e-3);
  check_near ("speed at the pins, m/s", m->speed_at_pins, tb_vec3_length (check_last (run)->velocity), 1e-12);
  check_near ("rev rate at the pins, rad/s", m->rev_rate_at_pins, tb_vec3_length (check_last (run)->spin),
              1e-12);
  check_near ("time, s", m->time, check_last (run)->time, 0.0);
  check_near ("roll starts, m", m->roll_start_y, last_roll_start (&run->path), 1e-9);
  g_assert_true (tb_path_at_distance (&run->path, m->hook_start_y, &sample));
  check_near ("heading where the hook starts, °",
              tb_deg_from_radians (tb_sample_heading (&sample) - tb_delivery_launch_heading (&shot.delivery)),
              1.0, 1e-3);
}

static void
test_gutter (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = check_house_shot ();
  const TbMeasures *m = &run->path.measures;

  shot.delivery.laydown = tb_x_from_board (5.0);
  shot.delivery.aim = tb_x_from_board (2.0);
  shot.ball.cover = tb_cover_typical (TB_COVER_PLASTIC);
  shot.delivery.rev_rate = 0.0;
  check_run_shot (run, &shot);
  g_assert_cmpint (run->path.result, ==, TB_RESULT_RIGHT_GUTTER);
  g_assert_cmpstr (tb_result_name (run->path.result), ==, "right-gutter");
  check_near ("leaves at the edge, m", check_last (run)->position.x, TB_LANE_HALF_WIDTH, 1e-9);
  check_near ("told where, m", m->gutter_y, check_last (run)->position.y, 1e-9);
  g_assert_true (isnan (m->x_at_pins) && isnan (m->angle_at_pins) && isnan (m->speed_at_pins));

  shot.options.edgeless = true;
  check_run_shot (run, &shot);
  g_assert_cmpint (run->path.result, ==, TB_RESULT_PINS);
  g_assert_false (isnan (m->x_at_pins));
  g_assert_false (isnan (m->gutter_y));
  shot.delivery.hand = TB_HAND_LEFT;
  shot.options.edgeless = false;
  check_run_shot (run, &shot);
  g_assert_cmpint (run->path.result, ==, TB_RESULT_LEFT_GUTTER);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/path/samples-in-order", test_samples_in_order);
  g_test_add_func ("/path/phases-in-order", test_phases_in_order);
  g_test_add_func ("/path/stretches", test_stretches);
  g_test_add_func ("/path/samples-agree", test_samples_agree);
  g_test_add_func ("/path/interpolation", test_interpolation);
  g_test_add_func ("/path/at-distance", test_at_distance);
  g_test_add_func ("/path/held-to-its-ends", test_held_to_its_ends);
  g_test_add_func ("/path/capacity", test_capacity);
  g_test_add_func ("/path/on-the-ball", test_on_the_ball);
  g_test_add_func ("/path/measures", test_measures);
  g_test_add_func ("/path/gutter", test_gutter);
  return g_test_run ();
}
