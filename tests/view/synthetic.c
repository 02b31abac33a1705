/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "synthetic.h"

#include <glib.h>

#define RADIUS (4.27 * TB_METRES_PER_INCH)
#define RPM 320.0
#define ROTATION_DEG 45.0
#define TILT_DEG 12.0
/* Turn of the ball about a second axis, rad/s: the rings lie side by side. */
#define FLARE_RATE 0.4

const SyntheticShape synthetic_pocket = { 24, 0.47, 26, 21.4, 52, 17, 2, 0.5, false };
const SyntheticShape synthetic_faster = { 24, 0.47, 30, 16.0, 57, 19, 2, 0.6, false };
const SyntheticShape synthetic_gutter = { 12, 0.47, 32, 12.0, NAN, 18, 0, 0.4, false };
const SyntheticShape synthetic_lofted = { 22, 0.42, 27, 19.0, 50, 16, 14, 1.2, false };

typedef struct Curve
{
  const SyntheticShape *shape;
  double start_x, slope, hook_y, hook, speed;
} Curve;

static Curve
new_curve (const SyntheticShape *shape)
{
  return (Curve){ shape,
                  tb_x_from_board (shape->laydown_board),
                  shape->slope * TB_BOARD_WIDTH / TB_METRES_PER_FOOT,
                  tb_metres_from_ft (shape->hook_ft),
                  shape->hook_boards * TB_BOARD_WIDTH,
                  tb_metres_per_second_from_mph (shape->speed_mph) };
}

/* Place across, its slope and its bend at a distance down the lane: straight, then u² (3 − u) / 2. */
static void
curve_at (const Curve *curve, double y, double value[3])
{
  double length = TB_HEAD_PIN_Y - curve->hook_y, u = MAX (y - curve->hook_y, 0) / length;

  value[0] = curve->start_x + curve->slope * y - curve->hook * u * u * (3 - u) / 2;
  value[1] = curve->slope - curve->hook * (6 * u - 3 * u * u) / 2 / length;
  value[2] = y < curve->hook_y ? 0 : -curve->hook * (6 - 6 * u) / 2 / length / length;
}

static TbVec3
spin_axis (void)
{
  double rotation = tb_radians_from_deg (ROTATION_DEG), tilt = tb_radians_from_deg (TILT_DEG);

  return tb_vec3 (-cos (tilt) * cos (rotation), -cos (tilt) * sin (rotation), sin (tilt));
}

/* A turn about the spin axis after a slow one about another: both known at every time. */
static void
turn_ball (TbSample *sample, double time)
{
  TbVec3 spin = tb_vec3_scale (spin_axis (), tb_radians_per_second_from_rpm (RPM));
  TbVec3 flare = tb_vec3 (0, 0, FLARE_RATE);
  TbQuat turned = tb_quat_from_rotation (tb_vec3_scale (spin, time));
  TbQuat leaned = tb_quat_from_rotation (tb_vec3_scale (flare, time));

  sample->attitude = tb_quat_multiply (turned, leaned);
  sample->spin = tb_vec3_add (spin, tb_quat_rotate (turned, flare));
  sample->turned = time * tb_vec3_length (spin);
}

/* Height of the lowest point, and how it changes: falls freely until it touches. */
static double
fall (const SyntheticShape *shape, double time)
{
  return MAX (tb_metres_from_in (shape->release_in) - 0.5 * TB_STANDARD_GRAVITY * time * time, 0);
}

static void
fill_sample (const Curve *curve, double time, TbSample *sample)
{
  double y = tb_metres_from_ft (curve->shape->reach_ft) + curve->speed * time, x[3];
  double height = fall (curve->shape, time);

  curve_at (curve, y, x);
  *sample = (TbSample){ .time = time };
  sample->position = tb_vec3 (x[0], y, RADIUS + height);
  sample->velocity = tb_vec3 (x[1] * curve->speed, curve->speed, height > 0 ? -TB_STANDARD_GRAVITY * time : 0);
  sample->acceleration = tb_vec3 (x[2] * curve->speed * curve->speed, 0, height > 0 ? -TB_STANDARD_GRAVITY : 0);
  turn_ball (sample, time);
  sample->phase = height > 0                                    ? TB_PHASE_FLIGHT
                  : y >= tb_metres_from_ft (curve->shape->roll_ft) ? TB_PHASE_ROLL
                                                                : TB_PHASE_SLIDE;
  sample->film_on_ball = sample->phase == TB_PHASE_FLIGHT ? 0 : tb_film_from_units (MIN (6 * time, 8));
}

/* Where the ball leaves the lane, or the pins. */
static double
end_of (const Curve *curve, TbResult *result)
{
  const double step = 0.01;
  double x[3];

  for (double y = 0; y < TB_HEAD_PIN_Y; y += step)
    {
      curve_at (curve, y, x);
      if (fabs (x[0]) > TB_LANE_HALF_WIDTH)
        {
          *result = (x[0] > 0) != curve->shape->mirrored ? TB_RESULT_RIGHT_GUTTER : TB_RESULT_LEFT_GUTTER;
          return y;
        }
    }
  *result = TB_RESULT_PINS;
  return TB_HEAD_PIN_Y;
}

static void
fill_measures (const Curve *curve, TbPath *path)
{
  const TbSample *last = &path->samples[path->count - 1];
  TbMeasures *m = &path->measures;
  double launch = atan (curve->slope), x[3];

  m->landing_y = m->hook_start_y = m->breakpoint_x = m->breakpoint_y = m->roll_start_y = NAN;
  for (int i = 1; i < path->count; i++)
    {
      const TbSample *s = &path->samples[i];

      if (isnan (m->landing_y) && s->phase != TB_PHASE_FLIGHT)
        m->landing_y = s->position.y;
      curve_at (curve, s->position.y, x);
      if (isnan (m->hook_start_y) && launch - atan (x[1]) > tb_radians_from_deg (1))
        m->hook_start_y = s->position.y;
      if (isnan (m->roll_start_y) && s->phase == TB_PHASE_ROLL)
        m->roll_start_y = s->position.y;
      if (isnan (m->breakpoint_y) && x[1] < 0)
        {
          m->breakpoint_y = s->position.y;
          m->breakpoint_x = s->position.x;
        }
    }
  m->x_at_pins = path->result == TB_RESULT_PINS ? last->position.x : NAN;
  m->gutter_y = path->result == TB_RESULT_PINS ? NAN : last->position.y;
  m->time = last->time;
}

Synthetic *
synthetic_new (const SyntheticShape *shape)
{
  Synthetic *self = g_new0 (Synthetic, 1);
  Curve curve = new_curve (shape);
  TbPath *path = &self->path;
  double end = end_of (&curve, &path->result);
  double duration = (end - tb_metres_from_ft (shape->reach_ft)) / curve.speed;

  path->samples = self->samples;
  path->capacity = path->count = SYNTHETIC_SAMPLES;
  path->mirrored = shape->mirrored;
  path->body = (TbBody){ .mass = 6.8, .radius = RADIUS, .up = { 0, 0, 1 }, .grip = { 0, -1, 0 } };
  path->body.pap = spin_axis ();
  path->body.pin = tb_vec3_unit (tb_vec3 (-0.2, -0.6, 0.75), tb_vec3 (0, 0, 1));
  for (int i = 0; i < SYNTHETIC_SAMPLES; i++)
    fill_sample (&curve, duration * i / (SYNTHETIC_SAMPLES - 1), &self->samples[i]);
  fill_measures (&curve, path);
  return self;
}

void
synthetic_oil (TbOil *oil, bool lopsided)
{
  tb_oil_clear (oil);
  for (int row = 0; row < TB_OIL_ROWS; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      {
        double ft = (row + 0.5) / TB_OIL_ROWS_PER_FOOT, board = column + 1;
        double along = ft < 40 ? 45 * exp (-ft / 18) : 0;
        double across = board < 7 || board > 33 ? 0.13 : board < 12 || board > 28 ? 0.5 : 1;

        if (lopsided && board > TB_MIDDLE_BOARD)
          across *= 0.5;
        tb_oil_set_cell (oil, row, column, tb_film_from_units (along * across));
      }
  tb_oil_reflect (oil);
}
