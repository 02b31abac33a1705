/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-recorder.h"

#include "tb-interpolate.h"

/* A path turns into a hook when its heading has left the launch line by one degree; its tangent. */
#define HOOK_START_TANGENT 0.017455064928217585
/* A rolling ball that flares may slip a little now and then where friction is short; slower than this it still counts as
 * rolling, m/s. Assumed: an eye does not see it. */
#define UNSEEN_SLIP 0.05
/* Samples are at least this far apart, s, however small the steps are. */
#define LEAST_INTERVAL 0.005
/* Halvings that find a film's edge to a hundredth of a millimetre. */
#define EDGE_HALVINGS 30

static void
clear_measures (TbMeasures *measures)
{
  double *number = (double *) measures;
  for (size_t i = 0; i < sizeof *measures / sizeof *number; i++)
    number[i] = NAN;
}

void
recorder_init (Recorder *self, TbPath *path, const Dynamics *dynamics)
{
  const TbMotion *motion = dynamics->motion;
  *self = (Recorder){ .path = path,
                      .dynamics = dynamics,
                      .interval = LEAST_INTERVAL,
                      .greatest_x = -INFINITY,
                      .rolls_from = NAN,
                      .launch = tb_vec3_unit (tb_vec3 (motion->launch_slope, 1, 0), tb_vec3 (0, 1, 0)),
                      .least_cosine = 1 };
  path->count = 0;
  path->n_stretches = 0;
  path->result = TB_RESULT_PINS;
  path->body = motion->body;
  path->mirrored = motion->friction->mirrored;
  path->evaluations = 0;
  clear_measures (&path->measures);
  path->measures.time_in_oil = 0;
}

static void
make_sample (const Recorder *self, TbPhase phase, const Point *point, const Rates *rates, TbSample *sample)
{
  TbVec3 angular;
  dynamics_accelerations (self->dynamics, phase, point, rates, &sample->acceleration, &angular);
  sample->time = point->time;
  sample->position = point->position;
  sample->velocity = rates->velocity;
  sample->attitude = point->attitude;
  sample->spin = rates->spin;
  sample->slip = sqrt (rates->slip.x * rates->slip.x + rates->slip.y * rates->slip.y);
  sample->normal = rates->force.z;
  sample->friction = sqrt (rates->force.x * rates->force.x + rates->force.y * rates->force.y);
  sample->coefficient = rates->coefficient;
  sample->film_on_lane = rates->film_on_lane;
  sample->film_on_ball = 0;
  const BallFilm *ball = self->dynamics->ball;
  for (int i = 0; ball && ball->wet && phase != TB_PHASE_FLIGHT && i < ball->looks; i++)
    sample->film_on_ball += ball->films[i] / ball->looks;
  sample->turned = point->turned;
  sample->slip_loss = point->rubbed;
  sample->phase = phase;
}

/* Drops every second sample but those at the ends of stretches. */
static void
thin_out (Recorder *self)
{
  TbPath *path = self->path;
  int kept = 0;
  bool drop = false;
  for (int i = 0; i < path->count; i++)
    {
      bool at_end = i == 0 || i == path->count - 1 || path->samples[i].time == path->samples[i - 1].time
                    || path->samples[i].time == path->samples[i + 1].time;
      drop = !at_end && !drop;
      if (!drop)
        path->samples[kept++] = path->samples[i];
    }
  path->count = kept;
  self->interval *= 2;
}

static void
keep (Recorder *self, const TbSample *sample)
{
  TbPath *path = self->path;
  if (path->capacity == 0)
    return;
  if (path->count == path->capacity)
    thin_out (self);
  /* Nothing left to thin: the newest takes the last place. */
  if (path->count == path->capacity)
    path->count--;
  path->samples[path->count++] = *sample;
  self->last_kept = sample->time;
}

/* First sight of the ball: what is known before it has moved. */
static void
see_release (Recorder *self, const TbSample *sample)
{
  const TbMotion *motion = self->dynamics->motion;
  TbMeasures *measures = &self->path->measures;
  self->release_axis = self->furthest = tb_sample_axis_on_ball (sample);
  for (; self->next_mark < TB_N_BOARD_MARKS; self->next_mark++)
    {
      double y = self->next_mark * TB_BOARD_MARK_FT * TB_METRES_PER_FOOT;
      if (y > sample->position.y)
        break;
      measures->x_at_mark[self->next_mark] = motion->launch_x + motion->launch_slope * y;
    }
  if (sample->position.y >= TB_ARROWS_Y)
    {
      self->passed_arrows = true;
      measures->x_at_arrows = motion->launch_x + motion->launch_slope * TB_ARROWS_Y;
    }
}

static bool
wet (const Recorder *self, const TbSample *sample)
{
  return sample->phase != TB_PHASE_FLIGHT && sample->film_on_lane > self->dynamics->motion->assumed.oil_exit_film;
}

/* Into the oil, or out of it; the last way out is the one that is told. */
static void
touch_oil (Recorder *self, bool now, TbVec3 position)
{
  if (now == self->in_oil)
    return;
  self->in_oil = now;
  self->path->measures.oil_exit_x = now ? NAN : position.x;
  self->path->measures.oil_exit_y = now ? NAN : position.y;
}

void
recorder_begin (Recorder *self, TbPhase phase, const Point *point, const Rates *rates)
{
  TbPath *path = self->path;
  bool release = path->n_stretches == 0;
  TbSample *last = &self->sample[self->last];
  make_sample (self, phase, point, rates, last);
  if (release)
    see_release (self, last);
  /* Whatever follows the release begins with a touch. */
  if ((phase != TB_PHASE_FLIGHT || !release) && isnan (path->measures.landing_y))
    path->measures.landing_y = point->position.y;
  if (phase != TB_PHASE_FLIGHT)
    touch_oil (self, wet (self, last), point->position);
  if (phase == TB_PHASE_ROLL && isnan (self->rolls_from))
    self->rolls_from = point->position.y;
  if (path->n_stretches < TB_PATH_MAX_STRETCHES)
    path->n_stretches++;
  path->stretches[path->n_stretches - 1] = (TbStretch){ phase, point->time, point->time, point->position.y, point->position.y };
  keep (self, last);
  self->fresh = true;
}

void
recorder_land (Recorder *self, const Landing *landing)
{
  TbMeasures *measures = &self->path->measures;
  if (isnan (measures->landing_speed))
    {
      measures->landing_speed = landing->fall;
      measures->landing_load = landing->load;
      measures->landing_slowed = measures->landing_loss = 0;
    }
  measures->landing_slowed += landing->slowed;
  measures->landing_loss += landing->loss;
}

/* A step as it is looked at: its ends, and the course between, which is worked out only if something is to be found. */
typedef struct Leg
{
  const TbSample *from, *to;
  Course course;
  bool fitted;
} Leg;

static const Course *
course_of (Leg *leg)
{
  if (!leg->fitted)
    leg->course = course_fit (leg->from, leg->to);
  leg->fitted = true;
  return &leg->course;
}

static void
see_marks (Recorder *self, Leg *leg)
{
  TbMeasures *measures = &self->path->measures;
  for (; self->next_mark < TB_N_BOARD_MARKS; self->next_mark++)
    {
      double y = self->next_mark * TB_BOARD_MARK_FT * TB_METRES_PER_FOOT;
      if (y > leg->to->position.y)
        return;
      const Course *course = course_of (leg);
      measures->x_at_mark[self->next_mark] = quintic_value (&course->x, quintic_find (&course->y, y, false));
      if (y == TB_ARROWS_Y)
        measures->x_at_arrows = measures->x_at_mark[self->next_mark];
    }
}

static void
see_breakpoint (Recorder *self, Leg *leg)
{
  if (!(leg->from->velocity.x > 0 && leg->to->velocity.x <= 0))
    return;
  const Course *course = course_of (leg);
  double s = quintic_find (&course->x, 0, true), x = quintic_value (&course->x, s);
  if (x > self->greatest_x)
    {
      self->greatest_x = x;
      self->path->measures.breakpoint_x = x;
      self->path->measures.breakpoint_y = quintic_value (&course->y, s);
    }
}

/* Positive once the heading has left the launch line by one degree. */
static double
turn_past (const Recorder *self, TbVec3 velocity)
{
  double ahead = velocity.x * self->launch.x + velocity.y * self->launch.y;
  double aside = velocity.x * self->launch.y - velocity.y * self->launch.x;
  return fabs (aside) - HOOK_START_TANGENT * ahead;
}

static void
see_hook (Recorder *self, Leg *leg)
{
  if (self->hooking || turn_past (self, leg->to->velocity) < 0)
    return;
  const Course *course = course_of (leg);
  double low = 0, high = 1;
  for (int i = 0; i < EDGE_HALVINGS; i++)
    {
      double middle = 0.5 * (low + high);
      if (turn_past (self, course_velocity (course, middle)) < 0)
        low = middle;
      else
        high = middle;
    }
  self->hooking = true;
  self->path->measures.hook_start_y = quintic_value (&course->y, high);
}

static double
film_at (const Recorder *self, TbVec3 position)
{
  return tb_friction_film (self->dynamics->motion->friction, position.x, position.y);
}

static void
see_oil (Recorder *self, Leg *leg)
{
  TbMeasures *measures = &self->path->measures;
  const TbSample *to = leg->to;
  double h = to->time - leg->from->time;
  if (to->phase == TB_PHASE_FLIGHT)
    return;
  bool now = wet (self, to);
  if (now == self->in_oil)
    {
      measures->time_in_oil += now ? h : 0;
      return;
    }
  const Course *course = course_of (leg);
  double threshold = self->dynamics->motion->assumed.oil_exit_film, low = 0, high = 1;
  for (int i = 0; i < EDGE_HALVINGS; i++)
    {
      double middle = 0.5 * (low + high);
      if ((film_at (self, course_position (course, middle)) > threshold) == self->in_oil)
        low = middle;
      else
        high = middle;
    }
  measures->time_in_oil += h * (now ? 1 - high : high);
  touch_oil (self, now, course_position (course, high));
}

/* Where the ball leaves the lane; an edgeless run goes on from there. */
static void
see_edge (Recorder *self, Leg *leg)
{
  TbMeasures *measures = &self->path->measures;
  if (!isnan (measures->gutter_y) || fabs (leg->to->position.x) <= TB_LANE_HALF_WIDTH)
    return;
  const Course *course = course_of (leg);
  double low = 0, high = 1;
  for (int i = 0; i < EDGE_HALVINGS; i++)
    {
      double middle = 0.5 * (low + high);
      if (fabs (course_position (course, middle).x) <= TB_LANE_HALF_WIDTH)
        low = middle;
      else
        high = middle;
    }
  measures->gutter_y = course_position (course, high).y;
}

static void
see_axis (Recorder *self, const TbSample *from, const TbSample *to)
{
  TbMeasures *measures = &self->path->measures;
  const double turn = 2 * TB_PI;
  TbVec3 axis = tb_sample_axis_on_ball (to);
  double cosine = tb_vec3_dot (axis, self->release_axis);
  if (cosine < self->least_cosine)
    {
      self->least_cosine = cosine;
      self->furthest = axis;
    }
  if (from->turned < turn && to->turned >= turn)
    {
      TbSample between = *from;
      attitude_between (from, to, (turn - from->turned) / (to->turned - from->turned), &between.attitude, &between.spin);
      measures->ring_spacing
          = self->dynamics->radius * tb_vec3_angle (tb_sample_axis_on_ball (&between), self->release_axis);
    }
}

void
recorder_step (Recorder *self, TbPhase phase, const Point *point, const Rates *rates)
{
  TbPath *path = self->path;
  const TbSample *from = &self->sample[self->last];
  TbSample *sample = &self->sample[1 - self->last];
  make_sample (self, phase, point, rates, sample);
  Leg leg;
  leg.from = from;
  leg.to = sample;
  leg.fitted = false;
  see_marks (self, &leg);
  see_breakpoint (self, &leg);
  see_hook (self, &leg);
  see_oil (self, &leg);
  see_edge (self, &leg);
  see_axis (self, from, sample);
  if (phase == TB_PHASE_FLIGHT || sample->slip > UNSEEN_SLIP)
    self->rolls_from = NAN;
  path->stretches[path->n_stretches - 1].end_time = point->time;
  path->stretches[path->n_stretches - 1].end_y = point->position.y;
  self->last = 1 - self->last;
  self->fresh = false;
  if (sample->time - self->last_kept >= self->interval)
    keep (self, sample);
}

void
recorder_end (Recorder *self)
{
  const TbSample *last = &self->sample[self->last];
  if (!self->fresh && self->last_kept < last->time)
    keep (self, last);
}

void
recorder_finish (Recorder *self, bool off_lane)
{
  TbPath *path = self->path;
  TbMeasures *measures = &path->measures;
  const TbSample *end = &self->sample[self->last];
  const TbMotion *motion = self->dynamics->motion;
  recorder_end (self);
  measures->flare = self->dynamics->radius * tb_vec3_angle (self->furthest, self->release_axis);
  path->evaluations = self->dynamics->evaluations;
  if (off_lane)
    {
      bool own_side = end->position.x > 0;
      if (isnan (measures->gutter_y))
        measures->gutter_y = end->position.y;
      path->result = own_side != path->mirrored ? TB_RESULT_RIGHT_GUTTER : TB_RESULT_LEFT_GUTTER;
      return;
    }
  measures->x_at_pins = end->position.x;
  measures->angle_at_pins = tb_sample_heading (end);
  measures->hook = end->position.x - (motion->launch_x + motion->launch_slope * end->position.y);
  measures->time = end->time;
  measures->turned = end->turned;
  measures->speed_at_pins = tb_vec3_length (end->velocity);
  measures->rev_rate_at_pins = tb_vec3_length (end->spin);
  measures->roll_start_y = self->rolls_from;
}
