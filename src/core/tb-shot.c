/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-shot.h"

#include <string.h>
#include "tb-fields.h"
#include "tb-workspace.h"

TbOptions
tb_options_bare (void)
{
  return (TbOptions){ .no_landing_squeeze = true,
                      .no_film_on_ball = true,
                      .no_rolling_resistance = true,
                      .no_air_drag = true,
                      .no_pivot_friction = true,
                      .no_cross_tilt = true };
}

TbLane
tb_lane_default (void)
{
  TbLane lane;
  tb_field_reset_group (TB_GROUP_LANE, &lane);
  return lane;
}

TbShot
tb_shot_default (void)
{
  return (TbShot){ .delivery = tb_delivery_default (),
                   .ball = tb_ball_default (),
                   .lane = tb_lane_default (),
                   .assumed = tb_assumed_default () };
}

size_t
tb_workspace_size (void)
{
  return sizeof (TbWorkspace);
}

static TbStatus
report (TbProblem *problem, TbStatus status, const TbField *field, double value)
{
  if (problem)
    *problem = (TbProblem){ status, field, value };
  return status;
}

/* Compares in SI, so that a value that came from the end of a range is in it. */
static TbStatus
check_field (const TbField *field, const void *object)
{
  double value = tb_field_get (field, object);
  if (field->kind == TB_FIELD_CHOICE)
    return tb_field_check (field, value);
  double si = *(const double *) ((const char *) object + field->offset);
  if (!isfinite (si))
    return TB_ERROR_NOT_FINITE;
  double a = field->to_si (field->min), b = field->to_si (field->max);
  if (si < fmin (a, b) || si > fmax (a, b))
    {
      TbStatus status = tb_field_check (field, value);
      return status == TB_OK ? TB_ERROR_OUT_OF_RANGE : status;
    }
  return TB_OK;
}

static TbStatus
check_assumed (const TbAssumed *assumed)
{
  for (const TbAssumedInfo *info = tb_assumed_table; info->name; info++)
    {
      double value = *(const double *) ((const char *) assumed + info->offset);
      if (!isfinite (value))
        return TB_ERROR_NOT_FINITE;
    }
  return TB_OK;
}

TbStatus
tb_shot_check (const TbShot *shot, TbProblem *problem)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    {
      const void *object = tb_shot_group_const (shot, field->group);
      TbStatus status = field->alias_of ? TB_OK : check_field (field, object);
      if (status != TB_OK)
        return report (problem, status, field, tb_field_get (field, object));
    }
  TbBody body;
  TbStatus status = tb_ball_body (&shot->ball, &body);
  if (status == TB_OK)
    status = check_assumed (&shot->assumed);
  if (status == TB_OK)
    status = shot->lane.oil ? tb_oil_check (shot->lane.oil) : TB_ERROR_NO_PATTERN;
  return report (problem, status, NULL, 0);
}

/* The part of a shot that needs no look at the whole film. */
static TbStatus
make_motion (const TbShot *shot, TbFriction *friction, TbMotion *motion)
{
  const TbDelivery *delivery = &shot->delivery;
  *motion = (TbMotion){ .friction = friction,
                        .assumed = shot->assumed,
                        .options = shot->options,
                        .end_y = TB_HEAD_PIN_Y,
                        .launch_x = delivery->laydown,
                        .launch_slope = (delivery->aim - delivery->laydown) / TB_ARROWS_Y };
  TbStatus status = tb_ball_body (&shot->ball, &motion->body);
  if (status != TB_OK)
    return status;
  motion->state = tb_delivery_release (delivery, &motion->body, &shot->assumed);
  /* Rise per metre towards the bowler's own side. */
  double slope = shot->lane.cross_tilt / (2 * TB_LANE_HALF_WIDTH);
  motion->cross_slope = delivery->hand == TB_HAND_LEFT ? -slope : slope;
  *friction = (TbFriction){ .kind = TB_FRICTION_FILM,
                            .oil = shot->lane.oil,
                            .mirrored = delivery->hand == TB_HAND_LEFT,
                            .oil_scale = shot->lane.pattern_scale,
                            .cover = shot->ball.cover,
                            .law = { .film_friction = shot->assumed.film_friction } };
  return TB_OK;
}

TbStatus
tb_shot_motion (const TbShot *shot, TbFriction *friction, TbMotion *motion, TbProblem *problem)
{
  TbStatus status = tb_shot_check (shot, problem);
  return status == TB_OK ? report (problem, make_motion (shot, friction, motion), NULL, 0) : status;
}

static void
clear_path (TbPath *path)
{
  TbSample *samples = path->samples;
  int capacity = path->capacity;
  memset (path, 0, sizeof *path);
  path->samples = samples;
  path->capacity = samples ? capacity : 0;
}

TbStatus
tb_shot_run_and_wear (const TbShot *shot,
                      TbWorkspace *workspace,
                      TbPath *path,
                      TbOil *wear,
                      double *carried,
                      TbProblem *problem)
{
  TbFriction friction;
  TbMotion motion;
  clear_path (path);
  TbStatus status = tb_shot_motion (shot, &friction, &motion, problem);
  if (status != TB_OK)
    return status;
  double away = 0;
  bool wears = wear && !shot->options.no_film_on_ball;
  status = motion_begin (&motion, workspace, path, wears ? &workspace->change : NULL);
  if (status == TB_OK)
    {
      tb_motion_continue (workspace, INFINITY);
      status = motion_end (workspace, &away);
    }
  if (status != TB_OK)
    {
      clear_path (path);
      return report (problem, status, NULL, 0);
    }
  path->measures.actual_speed = tb_delivery_actual_speed (&shot->delivery, &shot->assumed);
  path->measures.actual_rev_rate = tb_delivery_actual_rev_rate (&shot->delivery, &shot->assumed);
  if (wears)
    tb_oil_apply (wear, &workspace->change);
  if (carried)
    *carried = away;
  return TB_OK;
}

TbStatus
tb_shot_run (const TbShot *shot, TbWorkspace *workspace, TbPath *path, TbProblem *problem)
{
  return tb_shot_run_and_wear (shot, workspace, path, NULL, NULL, problem);
}
