/* One option: a knob turned until the wish is met.
 *
 * The knob is thrown at some places on either side of where it stands, which is its curve; where the curve crosses what
 * is wished a solver finds the place, and the crossing that asks the smaller change is taken. Where it does not cross,
 * the place that comes nearest is offered for what it is. Every answer is thrown again, with gutters.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-next-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>
#include "tb-solve.h"

/* A root is sought to this part of what counts as met. */
#define ROOT_SHARE 0.3
/* A turning point is sought to this share of the knob's range. */
#define TURN_SHARE 0.01
/* A turning point is one if the curve comes back from it by this much at both ends, in the wish's unit. */
#define TURN_DEPTH 0.05
/* Places of a curve of room, which takes many throws each. */
#define ROOM_POINTS 7
/* Room gained that is worth a change, boards. */
#define ROOM_GAIN 0.1
/* Nearer means by this share of the way. */
#define NEARER_SHARE 0.1

typedef struct Solver
{
  const TbNext *next;
  TbThrower *thrower;
  GCancellable *cancellable;
  const TbKnob *knob;  /* a slide */
  TbShot base;         /* the throw it starts from: the ball may be another already */
  /* The best place so far. */
  double closest_at, closest_by, closest_aim; /* knob, distance from the wish, m */
  double warm_aim;     /* m, where the last re-aim ended: the next is not far from it; NAN if there was none */
  /* Of the last place that was thrown. */
  TbShot shot;
  TbMeasures measures;
} Solver;

/* Throws a shot, re-aimed if the wish asks for it, and says what came of the wish. NAN if the real ball would not get to
 * the pins, or has no pocket line. */
static double
throw_for_wish (Solver *self)
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

static gboolean
wants_most (const Solver *self)
{
  return self->next->wish.kind == TB_WISH_FORGIVING;
}

/* How far from the wish a value is: less is better. */
static double
distance (const Solver *self, double value)
{
  if (isnan (value))
    return INFINITY;
  return wants_most (self) ? -value : fabs (value - self->next->target);
}

static double
value_at (double at, gpointer data)
{
  Solver *self = data;
  double value;

  self->shot = self->base;
  if (g_cancellable_is_cancelled (self->cancellable) || !tb_knob_turn (self->knob, &self->shot, at))
    return NAN;
  value = throw_for_wish (self);
  if (distance (self, value) < self->closest_by)
    {
      self->closest_at = at;
      self->closest_by = distance (self, value);
      self->closest_aim = self->shot.delivery.aim;
    }
  return value;
}

static double
miss_at (double at, gpointer data)
{
  Solver *self = data;

  return value_at (at, data) - self->next->target;
}

/* Lets the next re-aim begin where one place of the curve ended, so that it stays on that pocket line. */
static void
warm_up (Solver *self, const TbNextPoint *point)
{
  if (isfinite (point->aim_board))
    self->warm_aim = tb_x_from_board (point->aim_board);
}

static void
set_point (const Solver *self, TbNextPoint *point, double at, double wished)
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

/* Places of the curve: from one end of the knob's range to the other, where it stands now among them. Its index is
 * returned, −1 if there is nowhere to go. */
static int
spread_places (const Solver *self, TbNextPoint *points, int count)
{
  double low, high, here = tb_knob_value (self->knob, &self->base);
  int below;

  tb_knob_range (self->knob, &self->base, &low, &high);
  if (!(high > low))
    return -1;
  below = CLAMP ((int) round ((count - 1) * (here - low) / (high - low)), here > low ? 1 : 0, count - (here < high ? 2 : 1));
  for (int i = 0; i < count; i++)
    points[i].at = i < below   ? low + (here - low) * i / below
                   : i > below ? here + (high - here) * (i - below) / (count - 1 - below)
                               : here;
  return below;
}

/* From where the knob stands to either end, so that each throw begins near the one before. */
static gboolean
draw_curve (Solver *self, TbNextOption *option)
{
  int count = wants_most (self) ? ROOM_POINTS : TB_NEXT_POINTS, here = spread_places (self, option->point, count);
  double aim_here = NAN;

  for (int step = 0; here >= 0 && step < count; step++)
    {
      int index = step <= here ? here - step : step;

      if (step == here + 1)
        self->warm_aim = aim_here;
      set_point (self, &option->point[index], option->point[index].at, value_at (option->point[index].at, self));
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
wished_curve (Solver *self)
{
  return (TbCurve){ value_at, self };
}

/* Whether a place of the curve, neither of its ends, is above (sign 1) or below (−1) all the others, and above both ends
 * by more than nothing. */
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
is_smooth (Solver *self, double at, double value, double step)
{
  return fabs (value_at (at - step, self) - value) < TURN_DEPTH && fabs (value_at (at + step, self) - value) < TURN_DEPTH;
}

static void
find_turning_point (Solver *self, TbNextOption *option)
{
  const TbCurve curve = wished_curve (self);
  const TbNextPoint *point = option->point;
  double tolerance = TURN_SHARE * (point[option->n_points - 1].at - point[0].at), at, value;

  for (guint i = 1; i + 1 < option->n_points && !option->turns; i++)
    if (stands_out (option, i, 1) || stands_out (option, i, -1))
      {
        TbTriple triple = { point[i - 1].at,     point[i].at,     point[i + 1].at,
                            point[i - 1].wished, point[i].wished, point[i + 1].wished };

        warm_up (self, &point[i]);
        if (!tb_solve_turning_point (&curve, &triple, tolerance, &at, &value) || !is_smooth (self, at, value, tolerance))
          continue;
        option->turns = TRUE;
        option->turns_at = at;
        option->turns_wished = value;
        option->turns_aim_board = point[i].aim_board;
      }
}

/* Where the curve crosses the wish between two of its places; NAN if it does not. */
static double
root_between (Solver *self, const TbNextPoint *a, const TbNextPoint *b)
{
  const TbCurve curve = { miss_at, self };
  double target = self->next->target, root;
  TbBracket bracket = { a->at, b->at, a->wished - target, b->wished - target };

  if (!(bracket.at_low * bracket.at_high <= 0))
    return NAN;
  warm_up (self, a);
  if (!tb_solve_root (&curve, &bracket, ROOT_SHARE * TB_WISH_TOLERANCE, &root))
    return NAN;
  return root;
}

/* The places of the curve and its turning point, in order. */
static guint
gather_places (const TbNextOption *option, TbNextPoint places[TB_NEXT_POINTS + 1])
{
  guint count = 0;

  for (guint i = 0; i < option->n_points; i++)
    {
      if (option->turns && i > 0 && option->turns_at > option->point[i - 1].at && option->turns_at < option->point[i].at)
        places[count++] = (TbNextPoint){ .at = option->turns_at,
                                            .wished = option->turns_wished,
                                            .aim_board = option->turns_aim_board };
      places[count++] = option->point[i];
    }
  return count;
}

static double
nearest_root (Solver *self, const TbNextPoint *places, guint count)
{
  double here = tb_knob_value (self->knob, &self->base), best = NAN;

  for (guint i = 1; i < count; i++)
    {
      /* Nothing in this stretch can beat what has been found. */
      double nearest = CLAMP (here, places[i - 1].at, places[i].at), root;

      if (isfinite (best) && fabs (nearest - here) >= fabs (best - here))
        continue;
      root = root_between (self, &places[i - 1], &places[i]);
      if (isfinite (root) && !(fabs (root - here) >= fabs (best - here)))
        best = root;
    }
  return best;
}

/* Turns the solver's knob for the best there is and leaves the shot there. NAN if there is nothing. */
static double
turn_for_wish (Solver *self, TbNextOption *option)
{
  TbNextPoint places[TB_NEXT_POINTS + 1];
  guint count;
  double at = NAN;

  option->n_points = 0;
  option->turns = FALSE;
  self->closest_at = NAN;
  self->closest_by = INFINITY;
  if (!draw_curve (self, option))
    return NAN;
  find_turning_point (self, option);
  count = gather_places (option, places);
  if (!wants_most (self))
    at = nearest_root (self, places, count);
  if (isnan (at))
    {
      at = self->closest_at;
      self->warm_aim = self->closest_aim;
    }
  return isnan (at) ? at : value_at (at, self);
}

static void
note_changes (TbNextOption *option, const TbSetup *start)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    {
      const void *a = tb_shot_group_const (&start->shot, field->group);
      const void *b = tb_shot_group_const (&option->setup->shot, field->group);
      double from = tb_field_get (field, a), to = tb_field_get (field, b);

      /* A surface is told by its grit, which is what people know. */
      if (from != to && !(field->group == TB_GROUP_BALL && g_str_equal (field->name, "roughness_uin"))
          && option->n_changes < TB_NEXT_MAX_CHANGES)
        option->change[option->n_changes++] = (TbNextChange){ field, from, to };
    }
}

/* Effort of what changed on the line besides the knob itself. */
static double
line_effort (const TbShot *a, const TbShot *b)
{
  const TbKnob *feet = tb_knob_find ("feet"), *target = tb_knob_find ("target"), *pair = tb_knob_find ("feet-and-target");
  double laid = tb_knob_value (feet, b) - tb_knob_value (feet, a);
  double aimed = tb_knob_value (target, b) - tb_knob_value (target, a);

  if (laid != 0 && fabs (aimed / laid - pair->ratio) < 1e-6)
    return tb_knob_effort (pair, laid);
  return tb_knob_effort (feet, laid) + tb_knob_effort (target, aimed);
}

static double
option_effort (const TbKnob *knob, const TbShot *a, const TbShot *b)
{
  double change = 0;

  if (knob->group == TB_KNOB_LINE && knob->second)
    return tb_knob_effort (knob, tb_knob_value (knob, b) - tb_knob_value (knob, a));
  if (knob->group == TB_KNOB_LINE)
    return line_effort (a, b);
  if (knob->kind == TB_KNOB_SLIDE)
    change = tb_knob_effort (knob, tb_knob_value (knob, b) - tb_knob_value (knob, a));
  else if (knob->kind == TB_KNOB_SURFACE_AND_LINE)
    change = tb_knob_effort (
        knob, tb_grit_from_roughness (b->ball.cover.roughness) - tb_grit_from_roughness (a->ball.cover.roughness));
  else
    change = knob->effort_fixed;
  return change + line_effort (a, b);
}

/* Where things stand without this knob: a re-aim alone may have come nearer already. */
static double
standing (const Solver *self)
{
  double now = self->next->now, reaimed = self->next->reaimed;

  return distance (self, reaimed) < distance (self, now) ? reaimed : now;
}

static TbReach
judge (const Solver *self, const TbNextOption *option)
{
  double now = option->wished == self->next->reaimed ? self->next->now : standing (self), far = fabs (now - self->next->target);

  if (option->run->status != TB_OK || option->run->path.result != TB_RESULT_PINS || isnan (option->wished))
    return TB_REACH_NOT;
  if (wants_most (self))
    return option->wished >= now + ROOM_GAIN ? TB_REACH_MET : TB_REACH_NOT;
  if (fabs (option->wished - self->next->target) <= TB_WISH_TOLERANCE)
    return TB_REACH_MET;
  return fabs (option->wished - self->next->target) < (1 - NEARER_SHARE) * far ? TB_REACH_NEARER : TB_REACH_NOT;
}

/* Throws the answer once more, as it will be thrown in the window. */
static void
finish (Solver *self, TbNextOption *option, TbSetup *setup)
{
  TbSetup *start = self->next->start;

  option->setup = setup;
  option->run = tb_run_new (setup);
  self->thrower->throws++;
  option->wished = option->run->status == TB_OK
                       ? tb_wish_value (&self->next->wish, self->thrower, &setup->shot, &option->run->path.measures)
                       : NAN;
  option->missing = wants_most (self) ? self->next->now - option->wished : self->next->target - option->wished;
  option->effort = option_effort (option->knob, &start->shot, &setup->shot);
  note_changes (option, start);
  tb_pocket_room (self->thrower, &setup->shot, &option->room_out, &option->room_in);
  option->reach = judge (self, option);
}

static TbNextOption *
option_new (const NextTask *task)
{
  TbNextOption *option = g_new0 (TbNextOption, 1);

  g_atomic_ref_count_init (&option->ref_count);
  option->knob = task->knob;
  option->title = g_strdup (task->ball ? task->ball->name : _(task->knob->label));
  return option;
}

static void
copy_curve (TbNextOption *to, const TbNextOption *from)
{
  to->curve_field = from->curve_field;
  to->n_points = from->n_points;
  memcpy (to->point, from->point, sizeof to->point);
  to->turns = from->turns;
  to->turns_at = from->turns_at;
  to->turns_wished = from->turns_wished;
  to->turns_aim_board = from->turns_aim_board;
}

/* A throw with another ball, surface or cover from which the line is moved. */
typedef struct Variant
{
  TbShot shot;
  TbNextOption *option; /* its curve */
  double distance, effort;
} Variant;

/* Turns one knob of the line for a throw; what came of it is kept if it is nearer than what there is. */
static gboolean
try_line (Solver *self, const char *knob, Variant *variant)
{
  TbNextOption curve = { 0 };
  double away;

  self->knob = tb_knob_find (knob);
  away = distance (self, turn_for_wish (self, &curve));
  if (!(away < variant->distance))
    return FALSE;
  variant->shot = self->shot;
  variant->distance = away;
  copy_curve (variant->option, &curve);
  return away <= TB_WISH_TOLERANCE;
}

/* Finds a line for a throw, or with re-aiming its pocket line. FALSE if there is none. */
static gboolean
solve_variant (Solver *self, Variant *variant, gboolean with_line)
{
  self->base = self->shot = variant->shot;
  self->warm_aim = NAN;
  variant->distance = INFINITY;
  if (with_line && !tb_wish_reaims (&self->next->wish))
    {
      if (!try_line (self, "feet-and-target", variant))
        try_line (self, "target", variant);
    }
  else
    {
      variant->distance = distance (self, throw_for_wish (self));
      variant->shot = self->shot;
    }
  variant->effort = option_effort (variant->option->knob, &self->next->start->shot, &variant->shot);
  return isfinite (variant->distance);
}

/* What meets the wish with less effort is better, or what comes nearer. */
static gboolean
variant_is_better (const Solver *self, const Variant *a, const Variant *b)
{
  gboolean a_meets = !wants_most (self) && a->distance <= TB_WISH_TOLERANCE;
  gboolean b_meets = !wants_most (self) && b->distance <= TB_WISH_TOLERANCE;

  if (a_meets && b_meets)
    return a->effort < b->effort;
  return a->distance < b->distance;
}

/* The shots of a knob that is no slide, one after the other. FALSE after the last. */
static gboolean
next_variant (const Solver *self, const NextTask *task, guint index, TbShot *shot)
{
  static const double finishes[] = { 500, 1000, 2000, 3000, 4000, TB_GRIT_POLISH };

  *shot = self->next->start->shot;
  switch (task->knob->kind)
    {
    case TB_KNOB_SURFACE_AND_LINE:
      if (index >= G_N_ELEMENTS (finishes))
        return FALSE;
      shot->ball.cover.roughness = tb_roughness_from_grit (finishes[index]);
      return TRUE;
    case TB_KNOB_COVER:
      if (index >= TB_N_COVER_KINDS)
        return FALSE;
      tb_field_set (tb_field_find (TB_GROUP_BALL, "cover"), &shot->ball, index);
      return TRUE;
    default:
      if (index > 0)
        return FALSE;
      shot->ball = task->ball->ball;
      return TRUE;
    }
}

static gboolean
is_same_ball (const TbBall *a, const TbBall *b)
{
  return a->cover.kind == b->cover.kind && fabs (a->cover.roughness - b->cover.roughness) <= 1e-3 * b->cover.roughness;
}

static TbSetup *
variant_setup (const TbSetup *start, const NextTask *task, const TbShot *shot)
{
  g_autoptr (TbSetup) named = NULL;

  if (!task->ball)
    return tb_setup_with_shot (start, shot);
  named = tb_setup_with_ball (start, &shot->ball, task->ball->id, task->ball->name);
  return tb_setup_with_shot (named, shot);
}

static TbNextOption *
solve_variants (Solver *self, const NextTask *task)
{
  g_autoptr (TbNextOption) best = NULL;
  Variant best_variant = { .distance = INFINITY };
  TbShot shot;

  for (guint i = 0; next_variant (self, task, i, &shot); i++)
    {
      g_autoptr (TbNextOption) option = option_new (task);
      Variant variant = { .shot = shot, .option = option };

      if (!task->ball && is_same_ball (&shot.ball, &self->next->start->shot.ball))
        continue;
      if (!solve_variant (self, &variant, task->knob->kind != TB_KNOB_COVER)
          || (best && !variant_is_better (self, &variant, &best_variant)))
        continue;
      best_variant = variant;
      g_clear_pointer (&best, tb_next_option_unref);
      best = g_steal_pointer (&option);
    }
  if (best)
    finish (self, best, variant_setup (self->next->start, task, &best_variant.shot));
  return g_steal_pointer (&best);
}

/* Where every change is re-aimed, the target alone is one option. */
static TbNextOption *
solve_reaim (Solver *self, const NextTask *task)
{
  g_autoptr (TbNextOption) option = option_new (task);

  self->shot = self->next->start->shot;
  if (isnan (throw_for_wish (self)))
    return NULL;
  finish (self, option, tb_setup_with_shot (self->next->start, &self->shot));
  return g_steal_pointer (&option);
}

static gboolean
is_reaim (const TbNext *next, const NextTask *task)
{
  return tb_wish_reaims (&next->wish) && g_str_equal (task->knob->name, "target");
}

static TbNextOption *
solve_slide (Solver *self, const NextTask *task)
{
  g_autoptr (TbNextOption) option = option_new (task);

  if (is_reaim (self->next, task))
    return solve_reaim (self, task);
  self->knob = task->knob;
  self->base = self->next->start->shot;
  if (isnan (turn_for_wish (self, option)))
    return NULL;
  finish (self, option, tb_setup_with_shot (self->next->start, &self->shot));
  return g_steal_pointer (&option);
}

gboolean
next_task_makes_sense (const TbNext *next, const NextTask *task)
{
  const TbKnob *knob = task->knob;
  const TbBall *ball = &next->start->shot.ball;

  /* A target that is moved to the pocket is no longer a knob, and a surface then has its line already. */
  if (tb_wish_reaims (&next->wish))
    {
      if (knob->kind == TB_KNOB_SURFACE_AND_LINE || (knob->group == TB_KNOB_LINE && knob->second))
        return FALSE;
    }
  if (knob->kind == TB_KNOB_OTHER_BALL && g_strcmp0 (task->ball->id, next->start->ball_id) == 0)
    return FALSE;
  if (g_str_equal (knob->name, "drilling-angle"))
    return ball->intermediate_differential > 0;
  if (g_str_equal (knob->name, "val-angle") || g_str_equal (knob->name, "pin-to-pap"))
    return ball->differential > 0;
  return TRUE;
}

TbNextOption *
next_task_solve (const TbNext *next, const NextTask *task, TbThrower *thrower, GCancellable *cancellable)
{
  Solver solver = { .next = next, .thrower = thrower, .cancellable = cancellable, .warm_aim = NAN };
  g_autoptr (TbNextOption) option
      = task->knob->kind == TB_KNOB_SLIDE ? solve_slide (&solver, task) : solve_variants (&solver, task);

  if (!option || option->reach == TB_REACH_NOT || g_cancellable_is_cancelled (cancellable))
    return NULL;
  return g_steal_pointer (&option);
}
