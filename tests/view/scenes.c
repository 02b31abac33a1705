/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "scenes.h"

#include <glib.h>

static Synthetic *
new_left (const SyntheticShape *shape)
{
  SyntheticShape left = *shape;

  left.mirrored = true;
  return synthetic_new (&left);
}

void
scenes_init (Scenes *self)
{
  synthetic_oil (&self->house, false);
  synthetic_oil (&self->lopsided, true);
  self->pocket = synthetic_new (&synthetic_pocket);
  self->faster = synthetic_new (&synthetic_faster);
  self->gutter = synthetic_new (&synthetic_gutter);
  self->lofted = synthetic_new (&synthetic_lofted);
  self->left_pocket = new_left (&synthetic_pocket);
  self->left_faster = new_left (&synthetic_faster);
}

void
scenes_clear (Scenes *self)
{
  g_free (self->pocket);
  g_free (self->faster);
  g_free (self->gutter);
  g_free (self->lofted);
  g_free (self->left_pocket);
  g_free (self->left_faster);
}

TbLaneScene
scenes_lane (const Scenes *self, TbLaneProjection projection)
{
  TbLaneScene scene = tb_lane_scene_default ();

  scene.projection = projection;
  scene.oil = &self->house;
  scene.before = &self->pocket->path;
  scene.after = &self->faster->path;
  /* Their own, so that a calibration does not move a stored picture. */
  scene.pocket_low = tb_x_from_board (18.5);
  scene.pocket_high = tb_x_from_board (16.5);
  return scene;
}

TbLaneScene
scenes_left_lane (const Scenes *self, TbLaneProjection projection)
{
  TbLaneScene scene = scenes_lane (self, projection);

  scene.before = &self->left_pocket->path;
  scene.after = &self->left_faster->path;
  scene.mirrored = true;
  return scene;
}

TbBallScene
scenes_ball (const Scenes *self, TbBallEye eye, double time)
{
  TbBallScene scene = tb_ball_scene_default ();

  scene.path = &self->pocket->path;
  scene.eye = eye;
  scene.time = time;
  scene.title = "before";
  return scene;
}

TbLoftScene
scenes_loft (const Scenes *self)
{
  TbLoftScene scene = tb_loft_scene_default ();

  scene.before = &self->pocket->path;
  scene.after = &self->lofted->path;
  return scene;
}

TbPageScene
scenes_page (const Scenes *self)
{
  TbPageScene scene = tb_page_scene_default ();

  scene.lane = scenes_lane (self, TB_LANE_PLAN);
  scene.ball = scenes_ball (self, TB_BALL_FROM_BEHIND, 1.5);
  scene.loft = scenes_loft (self);
  scene.title = "More speed, less hook";
  scene.time = 1.5;
  return scene;
}
