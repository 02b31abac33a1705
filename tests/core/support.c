/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

void
check_near (const char *what, double got, double want, double bound)
{
  g_test_message ("%s: %.12g, wanted %.12g, off by %.3g (bound %.3g)", what, got, want, got - want, bound);
  if (!(fabs (got - want) <= bound))
    g_test_fail_printf ("%s: %.12g is not within %.3g of %.12g", what, got, bound, want);
}

void
check_below (const char *what, double got, double bound)
{
  g_test_message ("%s: %.6g (bound %.6g)", what, got, bound);
  if (!(got <= bound))
    g_test_fail_printf ("%s: %.6g is over %.6g", what, got, bound);
}

void
check_above (const char *what, double got, double bound)
{
  g_test_message ("%s: %.6g (at least %.6g)", what, got, bound);
  if (!(got >= bound))
    g_test_fail_printf ("%s: %.6g is under %.6g", what, got, bound);
}

void
check_true (const char *what, gboolean got)
{
  if (!got)
    g_test_fail_printf ("%s: does not hold", what);
}

void
check_status (const char *what, TbStatus got, TbStatus want)
{
  if (got != want)
    g_test_fail_printf ("%s: \"%s\" instead of \"%s\"", what, tb_status_sentence (got),
                        tb_status_sentence (want));
}

TbVec3
check_vector (double down, double left, double up)
{
  return tb_vec3 (-left, down, up);
}

CheckRun *
check_run_new (void)
{
  CheckRun *run = g_new0 (CheckRun, 1);

  run->path.samples = g_new0 (TbSample, TB_PATH_CAPACITY);
  run->path.capacity = TB_PATH_CAPACITY;
  run->workspace = g_malloc (tb_workspace_size ());
  return run;
}

void
check_run_free (CheckRun *run)
{
  g_free (run->path.samples);
  g_free (run->workspace);
  g_free (run);
}

void
check_run_motion (CheckRun *run, const TbMotion *motion)
{
  TbStatus status = tb_motion_run (motion, run->workspace, &run->path);

  if (status != TB_OK)
    g_error ("%s", tb_status_sentence (status));
  g_assert_cmpint (run->path.count, >=, 2);
}

void
check_run_shot (CheckRun *run, const TbShot *shot)
{
  TbProblem problem = { 0 };
  TbStatus status = tb_shot_run (shot, run->workspace, &run->path, &problem);

  if (status != TB_OK)
    g_error ("%s (%s)", tb_status_sentence (status),
             problem.field != NULL ? problem.field->name : "no field");
  g_assert_cmpint (run->path.count, >=, 2);
}

const TbSample *
check_first (const CheckRun *run)
{
  return &run->path.samples[0];
}

const TbSample *
check_last (const CheckRun *run)
{
  return &run->path.samples[run->path.count - 1];
}

const TbSample *
check_start_of (const CheckRun *run, TbPhase phase)
{
  const TbSample *found = NULL;
  TbPhase previous = TB_N_PHASES;

  for (int i = 0; i < run->path.count; i++)
    {
      const TbSample *sample = &run->path.samples[i];

      if (sample->phase == phase && previous != phase)
        found = sample;
      previous = sample->phase;
    }
  return found;
}

const TbSample *
check_at (const CheckRun *run, double time)
{
  for (int i = 0; i < run->path.count; i++)
    if (run->path.samples[i].time >= time)
      return &run->path.samples[i];
  return check_last (run);
}

const TbOil *
check_house_oil (void)
{
  static TbOil oil;
  static gsize ready;

  if (g_once_init_enter (&ready))
    {
      const TbOilProfile profile = { .length = tb_metres_from_ft (40.0),
                                     .fade = tb_metres_from_ft (2.0),
                                     .front = tb_film_from_units (45.0),
                                     .back = tb_film_from_units (5.0),
                                     .outside_share = 1.0 / 8.0,
                                     .outside_x = TB_LANE_HALF_WIDTH - tb_x_from_board (6.0),
                                     .inside_x = TB_LANE_HALF_WIDTH - tb_x_from_board (14.0) };

      g_assert_cmpint (tb_oil_fill_profile (&oil, &profile), ==, TB_OK);
      g_once_init_leave (&ready, 1);
    }
  return &oil;
}

TbShot
check_house_shot (void)
{
  TbShot shot = tb_shot_default ();

  shot.lane.oil = check_house_oil ();
  return shot;
}

void
check_lane_uniform (CheckLane *lane, double coefficient)
{
  *lane = (CheckLane){ 0 };
  lane->friction.kind = TB_FRICTION_ZONES;
  lane->friction.zones = &lane->zones;
  check_lane_add (lane, INFINITY, coefficient, coefficient);
}

void
check_lane_add (CheckLane *lane, double end, double at_start, double at_end)
{
  TbZones *zones = &lane->zones;
  int i = zones->count;

  /* The endless zone of a lane that begins uniform is replaced by the first one that ends. */
  if (i == 1 && isinf (zones->end[0]))
    i = 0;
  zones->end[i] = end;
  zones->at_start[i] = at_start;
  zones->at_end[i] = at_end;
  zones->split[i] = INFINITY;
  zones->count = i + 1;
}

TbMotion
check_motion (const TbBody *body, const TbFriction *friction)
{
  TbMotion motion = { 0 };

  motion.body = *body;
  motion.friction = friction;
  motion.assumed = tb_assumed_default ();
  motion.options = tb_options_bare ();
  motion.end_y = TB_HEAD_PIN_Y;
  motion.state.position.z = body->radius;
  motion.state.attitude.w = 1.0;
  return motion;
}

TbVec3
check_spin (const CheckThrow *release)
{
  double w = tb_radians_per_second_from_rpm (release->rpm);
  double a = tb_radians_from_deg (release->rotation), b = tb_radians_from_deg (release->tilt);

  return check_vector (-w * cos (b) * sin (a), w * cos (b) * cos (a), w * sin (b));
}

void
check_set_motion (TbState *state, const TbBody *body, TbVec3 centre_velocity, TbVec3 spin)
{
  TbVec3 in_body = tb_quat_rotate (tb_quat_conjugate (state->attitude), spin);
  TbVec3 momentum
      = tb_vec3 (body->moment.x * in_body.x, body->moment.y * in_body.y, body->moment.z * in_body.z);

  state->angular_momentum = tb_quat_rotate (state->attitude, momentum);
  state->velocity
      = tb_vec3_add (centre_velocity, tb_vec3_cross (spin, tb_quat_rotate (state->attitude, body->offset)));
}

void
check_throw (TbMotion *motion, const CheckThrow *release)
{
  double heading = tb_radians_from_deg (release->heading);
  TbVec3 velocity = check_vector (release->speed * cos (heading), release->speed * sin (heading), 0.0);

  check_set_motion (&motion->state, &motion->body, velocity, check_spin (release));
  motion->launch_slope = -tan (heading);
}

TbVec3
check_slip (const TbSample *sample, double radius)
{
  return tb_vec3 (sample->velocity.x - radius * sample->spin.y, sample->velocity.y + radius * sample->spin.x,
                  0.0);
}

TbState
check_state (const TbSample *sample, const TbBody *body)
{
  TbState state = { 0 };

  state.time = sample->time;
  state.position = sample->position;
  state.attitude = sample->attitude;
  check_set_motion (&state, body, sample->velocity, sample->spin);
  return state;
}

double
check_energy (const TbSample *sample, const TbBody *body)
{
  TbState state = check_state (sample, body);

  return tb_state_energy (&state, body, TB_STANDARD_GRAVITY);
}

TbBody
check_plain_ball (void)
{
  return tb_body_sphere (6.80388555, 0.10915, 0.35);
}

TbBody
check_odd_ball (void)
{
  TbBody body = check_plain_ball ();

  body.moment = tb_vec3 (0.026997763867, 0.027875682827, 0.028097357365);
  body.offset = tb_vec3 (0.7e-3, 0.5e-3, -0.5e-3);
  return body;
}

double
check_uniform (guint64 *state, double low, double high)
{
  guint64 z = (*state += G_GUINT64_CONSTANT (0x9e3779b97f4a7c15));

  /* SplitMix64: Steele, Lea and Flood, "Fast splittable pseudorandom number generators", 2014. */
  z = (z ^ (z >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  z ^= z >> 31;
  return low + (high - low) * ((double)(z >> 11) * 0x1p-53);
}
