/* One option: a knob turned, or a ball, cover or surface taken and the line moved to suit, and the answer
 * thrown again.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-next-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Room gained that is worth a change, boards. */
#define ROOM_GAIN 0.1
/* Nearer means by this share of the way. */
#define NEARER_SHARE 0.1
/* A hand takes a ball this much lighter or heavier than its own without being told how, kg (assumed): one
 * pound, and a little for what the tables round. */
#define LIKE_MASS (1.05 * TB_KILOGRAMS_PER_POUND)

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
  const TbKnob *feet = tb_knob_find ("feet"), *target = tb_knob_find ("target"),
               *pair = tb_knob_find ("feet-and-target");
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
    change = tb_knob_effort (knob, tb_grit_from_roughness (b->ball.cover.roughness)
                                       - tb_grit_from_roughness (a->ball.cover.roughness));
  else
    change = knob->effort_fixed;
  return change + line_effort (a, b);
}

/* Where things stand without this knob: a re-aim alone may have come nearer already. */
static double
standing (const NextSolver *self)
{
  double now = self->next->now, reaimed = self->next->reaimed;

  return next_distance (self, reaimed) < next_distance (self, now) ? reaimed : now;
}

static TbReach
judge (const NextSolver *self, const TbNextOption *option)
{
  double now = option->wished == self->next->reaimed ? self->next->now : standing (self),
         far = fabs (now - self->next->target);

  if (option->run->status != TB_OK || option->run->path.result != TB_RESULT_PINS || isnan (option->wished))
    return TB_REACH_NOT;
  if (next_wants_most (self))
    return option->wished >= now + ROOM_GAIN ? TB_REACH_MET : TB_REACH_NOT;
  if (fabs (option->wished - self->next->target) <= TB_WISH_TOLERANCE)
    return TB_REACH_MET;
  return fabs (option->wished - self->next->target) < (1 - NEARER_SHARE) * far ? TB_REACH_NEARER
                                                                               : TB_REACH_NOT;
}

/* Throws the answer once more, as it will be thrown in the window. */
static void
finish (NextSolver *self, TbNextOption *option, TbSetup *setup)
{
  TbSetup *start = self->next->start;

  option->setup = setup;
  option->run = tb_run_new (setup);
  self->thrower->throws++;
  option->wished = option->run->status == TB_OK ? tb_wish_value (&self->next->wish, self->thrower,
                                                                 &setup->shot, &option->run->path.measures)
                                                : NAN;
  option->missing
      = next_wants_most (self) ? self->next->now - option->wished : self->next->target - option->wished;
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
  option->title = g_strdup (task->ball ? task->ball->name : _ (task->knob->label));
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
try_line (NextSolver *self, const char *knob, Variant *variant)
{
  TbNextOption curve = { 0 };
  double away;

  self->knob = tb_knob_find (knob);
  away = next_distance (self, next_turn (self, &curve));
  if (!(away < variant->distance))
    return FALSE;
  variant->shot = self->shot;
  variant->distance = away;
  copy_curve (variant->option, &curve);
  return away <= TB_WISH_TOLERANCE;
}

/* Finds a line for a throw, or with re-aiming its pocket line. FALSE if there is none. */
static gboolean
solve_variant (NextSolver *self, Variant *variant, gboolean with_line)
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
      variant->distance = next_distance (self, next_throw (self));
      variant->shot = self->shot;
    }
  variant->effort = option_effort (variant->option->knob, &self->next->start->shot, &variant->shot);
  return isfinite (variant->distance);
}

/* What meets the wish with less effort is better, or what comes nearer. */
static gboolean
variant_is_better (const NextSolver *self, const Variant *a, const Variant *b)
{
  gboolean a_meets = !next_wants_most (self) && a->distance <= TB_WISH_TOLERANCE;
  gboolean b_meets = !next_wants_most (self) && b->distance <= TB_WISH_TOLERANCE;

  if (a_meets && b_meets)
    return a->effort < b->effort;
  return a->distance < b->distance;
}

/* The shots of a knob that is no slide, one after the other. FALSE after the last. */
static gboolean
next_variant (const NextSolver *self, const NextTask *task, guint index, TbShot *shot)
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
  return a->cover.kind == b->cover.kind
         && fabs (a->cover.roughness - b->cover.roughness) <= 1e-3 * b->cover.roughness;
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
solve_variants (NextSolver *self, const NextTask *task)
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
solve_reaim (NextSolver *self, const NextTask *task)
{
  g_autoptr (TbNextOption) option = option_new (task);

  self->shot = self->next->start->shot;
  if (isnan (next_throw (self)))
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
solve_slide (NextSolver *self, const NextTask *task)
{
  g_autoptr (TbNextOption) option = option_new (task);

  if (is_reaim (self->next, task))
    return solve_reaim (self, task);
  self->knob = task->knob;
  self->base = self->next->start->shot;
  if (isnan (next_turn (self, option)))
    return NULL;
  finish (self, option, tb_setup_with_shot (self->next->start, &self->shot));
  return g_steal_pointer (&option);
}

/* A ball that is much heavier can hurt whoever throws it, and a child's is of no use to a grown bowler. */
static gboolean
can_be_thrown_instead (const TbNext *next, const TbNextBall *ball)
{
  return g_strcmp0 (ball->id, next->start->ball_id) != 0
         && fabs (ball->ball.mass - next->start->shot.ball.mass) <= LIKE_MASS;
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
  if (knob->kind == TB_KNOB_OTHER_BALL && !can_be_thrown_instead (next, task->ball))
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
  NextSolver solver = { .next = next, .thrower = thrower, .cancellable = cancellable, .warm_aim = NAN };
  g_autoptr (TbNextOption) option
      = task->knob->kind == TB_KNOB_SLIDE ? solve_slide (&solver, task) : solve_variants (&solver, task);

  if (!option || option->reach == TB_REACH_NOT || g_cancellable_is_cancelled (cancellable))
    return NULL;
  return g_steal_pointer (&option);
}
