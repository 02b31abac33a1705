/* Turning one knob: its curve, the turning point of it, and the place that meets the wish.
 *
 * The knob is thrown at some places on either side of where it stands, which is its curve; where the curve
 * crosses what is wished (tb-next-places.c) the crossing that asks the smaller change is taken. Where it does
 * not cross, the place that comes nearest is taken for what it is.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-next-private.h"

#include <math.h>
#include "tb-solve.h"

/* A turning point is sought to this share of the knob's range. */
#define TURN_SHARE 0.01
/* A turning point is one if the curve comes back from it by this much at both ends, in the wish's unit. */
#define TURN_DEPTH 0.05
/* Places of a curve of room, which takes many throws each. */
#define ROOM_POINTS 7

/* Throws a shot, re-aimed if the wish asks for it, and says what came of the wish. NAN if the real ball would
 * not get to the pins, or has no pocket line. */
double
next_throw (NextSolver *self)
{
  const TbWish *wish = &self->next->wish;

  if (tb_wish_reaims (wish))
    {
      if (isfinite (self->warm_aim))
        self->shot.delivery.aim = self->warm_aim;
      if (!tb_pocket_reaim (self->thrower, &self->shot, &self->measures))
        return NAN;
      self->warm_aim = self->shot.delivery.aim;
    }
  else if (tb_thrower_throw (self->thrower, &self->shot, &self->measures) != TB_OK)
    return NAN;
  if (isfinite (self->measures.gutter_y))
    return NAN;
  return tb_wish_value (wish, self->thrower, &self->shot, &self->measures);
}

gboolean
next_wants_most (const NextSolver *self)
{
  return self->next->wish.kind == TB_WISH_FORGIVING;
}

/* How far from the wish a value is: less is better. */
double
next_distance (const NextSolver *self, double value)
{
  if (isnan (value))
    return INFINITY;
  return next_wants_most (self) ? -value : fabs (value - self->next->target);
}

double
next_value_at (double at, gpointer data)
{
  NextSolver *self = data;
  double value;

  self->shot = self->base;
  if (g_cancellable_is_cancelled (self->cancellable) || !tb_knob_turn (self->knob, &self->shot, at))
    return NAN;
  value = next_throw (self);
  if (next_distance (self, value) < self->closest_by)
    {
      self->closest_at = at;
      self->closest_by = next_distance (self, value);
      self->closest_aim = self->shot.delivery.aim;
    }
  return value;
}

/* Lets the next re-aim begin where one place of the curve ended, so that it stays on that pocket line. */
void
next_warm_up (NextSolver *self, const TbNextPoint *point)
{
  if (isfinite (point->aim_board))
    self->warm_aim = tb_x_from_board (point->aim_board);
}

static void
set_point (const NextSolver *self, TbNextPoint *point, double at, double wished)
{
  const TbMeasures *measures = &self->measures;
  gboolean there = isfinite (wished);

  *point = (TbNextPoint){
    .at = at,
    .wished = wished,
    .board = there ? tb_board_from_x (measures->x_at_pins) : (double) NAN,
    .angle_deg = there ? tb_deg_from_radians (measures->angle_at_pins) : (double) NAN,
    .breakpoint_ft = there ? tb_ft_from_metres (measures->breakpoint_y) : (double) NAN,
    .roll_ft = there ? tb_ft_from_metres (measures->roll_start_y) : (double) NAN,
    .aim_board = there ? tb_board_from_x (self->shot.delivery.aim) : (double) NAN,
  };
}

/* Places of the curve: from one end of the knob's range to the other, where it stands now among them. Its
 * index is returned, −1 if there is nowhere to go. */
static int
spread_places (const NextSolver *self, TbNextPoint *points, int count)
{
  double low, high, here = tb_knob_value (self->knob, &self->base);
  int below;

  tb_knob_range (self->knob, &self->base, &low, &high);
  if (!(high > low))
    return -1;
  below = CLAMP ((int) round ((count - 1) * (here - low) / (high - low)), here > low ? 1 : 0,
                 count - (here < high ? 2 : 1));
  for (int i = 0; i < count; i++)
    points[i].at = i < below   ? low + (here - low) * i / below
                   : i > below ? here + (high - here) * (i - below) / (count - 1 - below)
                               : here;
  return below;
}

/* From where the knob stands to either end, so that each throw begins near the one before. */
static gboolean
draw_curve (NextSolver *self, TbNextOption *option)
{
  int count = next_wants_most (self) ? ROOM_POINTS : TB_NEXT_POINTS,
      here = spread_places (self, option->point, count);
  double aim_here = NAN;

  for (int step = 0; here >= 0 && step < count; step++)
    {
      int index = step <= here ? here - step : step;

      if (step == here + 1)
        self->warm_aim = aim_here;
      set_point (self, &option->point[index], option->point[index].at,
                 next_value_at (option->point[index].at, self));
      if (step == 0)
        aim_here = self->warm_aim;
      if (g_cancellable_is_cancelled (self->cancellable))
        return FALSE;
    }
  option->n_points = here < 0 ? 0 : (guint) count;
  option->curve_field = tb_knob_field (self->knob);
  return here >= 0;
}

static TbCurve
wished_curve (NextSolver *self)
{
  return (TbCurve){ next_value_at, self };
}

/* Whether a place of the curve, neither of its ends, is above (sign 1) or below (−1) all the others, and
 * above both ends by more than nothing. */
static gboolean
stands_out (const TbNextOption *option, guint index, int sign)
{
  double value = sign * option->point[index].wished;

  for (guint i = 0; i < option->n_points; i++)
    {
      double other = sign * option->point[i].wished;
      gboolean end = i == 0 || i + 1 == option->n_points;

      if (i != index && !(other < value - (end ? TURN_DEPTH : 0)))
        return FALSE;
    }
  return TRUE;
}

/* A curve that jumps, from one pocket line to another, does not turn there. */
static gboolean
is_smooth (NextSolver *self, double at, double value, double step)
{
  return fabs (next_value_at (at - step, self) - value) < TURN_DEPTH
         && fabs (next_value_at (at + step, self) - value) < TURN_DEPTH;
}

static void
find_turning_point (NextSolver *self, TbNextOption *option)
{
  const TbCurve curve = wished_curve (self);
  const TbNextPoint *point = option->point;
  double tolerance = TURN_SHARE * (point[option->n_points - 1].at - point[0].at), at, value;

  for (guint i = 1; i + 1 < option->n_points && !option->turns; i++)
    if (stands_out (option, i, 1) || stands_out (option, i, -1))
      {
        TbTriple triple = { point[i - 1].at,     point[i].at,     point[i + 1].at,
                            point[i - 1].wished, point[i].wished, point[i + 1].wished };

        next_warm_up (self, &point[i]);
        if (!tb_solve_turning_point (&curve, &triple, tolerance, &at, &value)
            || !is_smooth (self, at, value, tolerance))
          continue;
        option->turns = TRUE;
        option->turns_at = at;
        option->turns_wished = value;
        option->turns_aim_board = point[i].aim_board;
      }
}

/* Turns the solver's knob for the best there is and leaves the shot there. NAN if there is nothing. */
double
next_turn (NextSolver *self, TbNextOption *option)
{
  double at = NAN;

  option->n_points = 0;
  option->turns = FALSE;
  self->closest_at = NAN;
  self->closest_by = INFINITY;
  if (!draw_curve (self, option))
    return NAN;
  find_turning_point (self, option);
  if (!next_wants_most (self))
    at = next_meet (self, option);
  if (isnan (at))
    {
      at = self->closest_at;
      self->warm_aim = self->closest_aim;
    }
  return isnan (at) ? at : next_value_at (at, self);
}
