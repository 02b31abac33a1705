/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-loft-picture.h"

#include <glib/gi18n-lib.h>

#include "tb-describe.h"

struct _TbLoftPicture
{
  TbPicture parent_instance;
  double shown; /* s, time of the ball as last drawn */
};

G_DEFINE_FINAL_TYPE (TbLoftPicture, tb_loft_picture, TB_TYPE_PICTURE)

/* How far down the lane the picture is worth drawing anew, m: a little past its edge. */
#define LAST_Y (TB_ARROWS_Y + 1.0)

/* The session's time, held to while a ball is in the picture. */
static double
time_in_picture (TbPicture *picture)
{
  TbSession *session = tb_picture_get_session (picture);
  double last = 0;

  for (int side = 0; side < TB_N_SIDES; side++)
    {
      const TbPath *path = tb_session_get_path (session, side);
      TbSample sample;

      if (path != NULL && tb_path_at_distance (path, LAST_Y, &sample))
        last = MAX (last, sample.time);
    }
  return MIN (tb_session_get_time (session), last);
}

static void
tb_loft_picture_draw_still (TbPicture *picture, cairo_t *cr, double width, double height)
{
  TbSession *session = tb_picture_get_session (picture);
  TbLoftScene scene = tb_loft_scene_default ();

  scene.theme = tb_picture_get_theme (picture);
  scene.before = tb_session_get_path (session, TB_SIDE_BEFORE);
  scene.after = tb_session_get_path (session, TB_SIDE_AFTER);
  scene.metric = tb_session_get_units (session) == TB_UNITS_METRIC;
  scene.time = TB_LOFT_PICTURE (picture)->shown = time_in_picture (picture);
  tb_loft_view_draw (cr, width, height, &scene);
}

static void
tb_loft_picture_time_changed (TbPicture *picture)
{
  if (time_in_picture (picture) != TB_LOFT_PICTURE (picture)->shown)
    tb_picture_invalidate (picture);
}

static char *
tb_loft_picture_describe (TbPicture *picture)
{
  TbSession *session = tb_picture_get_session (picture);
  TbUnits units = tb_session_get_units (session);
  TbRun *run = tb_session_get_run (session, TB_SIDE_AFTER);
  g_autofree char *landing = NULL;

  if (run->status != TB_OK)
    return tb_describe_problem (run);
  if (isnan (run->path.measures.landing_y))
    return g_strdup (_ ("The ball is laid down on the lane."));
  landing = tb_describe_measure (tb_measure_find ("landing_ft"), &run->path.measures, units);
  /* Translators: %s is a distance such as "2.4 ft". */
  return g_strdup_printf (_ ("The ball lands %s past the foul line."), landing);
}

static void
tb_loft_picture_class_init (TbLoftPictureClass *klass)
{
  TbPictureClass *picture_class = TB_PICTURE_CLASS (klass);

  picture_class->draw_still = tb_loft_picture_draw_still;
  picture_class->time_changed = tb_loft_picture_time_changed;
  picture_class->describe = tb_loft_picture_describe;
}

static void
tb_loft_picture_init (TbLoftPicture *self)
{
  tb_picture_set_name (TB_PICTURE (self), _ ("Release, from the side"));
}
