/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lane-snapshot.h"

cairo_t *
tb_snapshot_append_box (GtkSnapshot *snapshot, const cairo_rectangle_t *place)
{
  graphene_rect_t bounds;

  graphene_rect_init (&bounds, (float) place->x, (float) place->y, (float) place->width,
                      (float) place->height);
  graphene_rect_round_extents (&bounds, &bounds);
  return gtk_snapshot_append_cairo (snapshot, &bounds);
}

void
tb_snapshot_append_ball (GtkSnapshot *snapshot,
                         TbPicture *picture,
                         const TbLaneScene *scene,
                         const TbPath *path)
{
  double time = tb_session_get_time (tb_picture_get_session (picture)), width, height;
  cairo_rectangle_t place;
  cairo_t *cr;

  if (path == NULL)
    return;
  tb_picture_get_size (picture, &width, &height);
  tb_lane_view_ball_extents (width, height, scene, path, time, &place);
  cr = tb_snapshot_append_box (snapshot, &place);
  tb_lane_view_draw_ball (cr, width, height, scene, path, time);
  cairo_destroy (cr);
}
