/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-ball-picture.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "tb-describe.h"

struct _TbBallPicture
{
  TbPicture parent_instance;
  TbBallEye eye;
};

G_DEFINE_FINAL_TYPE (TbBallPicture, tb_ball_picture, TB_TYPE_PICTURE)

/* All of it turns: there is nothing still to keep. */
static void
tb_ball_picture_snapshot_moving (TbPicture *picture, GtkSnapshot *snapshot, double width, double height)
{
  TbSession *session = tb_picture_get_session (picture);
  TbBallScene scene = tb_ball_scene_default ();
  cairo_t *cr;

  scene.path = tb_session_get_path (session, TB_SIDE_AFTER);
  if (scene.path == NULL)
    return;
  scene.theme = tb_picture_get_theme (picture);
  scene.eye = TB_BALL_PICTURE (picture)->eye;
  scene.time = tb_session_get_time (session);
  scene.title = NULL;
  scene.metric = tb_session_get_units (session) == TB_UNITS_METRIC;
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  tb_ball_view_draw (cr, width, height, &scene);
  cairo_destroy (cr);
}

static char *
tb_ball_picture_describe (TbPicture *picture)
{
  TbSession *session = tb_picture_get_session (picture);
  TbUnits units = tb_session_get_units (session);
  TbRun *run = tb_session_get_run (session, TB_SIDE_AFTER);
  g_autofree char *turns = NULL, *flare = NULL;

  if (run->status != TB_OK)
    return tb_describe_problem (run);
  if (!isfinite (run->path.measures.turned))
    {
      g_autofree char *end = tb_describe_end (run, units);

      /* Translators: %s is where the run ended, such as "right gutter at 43.0 ft". */
      return g_strdup_printf (_ ("The ball does not come to the pins: %s."), end);
    }
  turns = tb_describe_measure (tb_measure_find ("revolutions"), &run->path.measures, units);
  flare = tb_describe_measure (tb_measure_find ("flare_in"), &run->path.measures, units);
  /* Translators: the first %s is a number of turns such as "12.3 turns", the second a length such as "2.1
   * in". */
  return g_strdup_printf (_ ("The ball makes %s on the way; its axis moves by %s (flare)."), turns, flare);
}

void
tb_ball_picture_set_eye (TbBallPicture *self, TbBallEye eye)
{
  self->eye = eye;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

TbBallEye
tb_ball_picture_get_eye (TbBallPicture *self)
{
  return self->eye;
}

static void
tb_ball_picture_class_init (TbBallPictureClass *klass)
{
  TB_PICTURE_CLASS (klass)->snapshot_moving = tb_ball_picture_snapshot_moving;
  TB_PICTURE_CLASS (klass)->describe = tb_ball_picture_describe;
}

static void
tb_ball_picture_init (TbBallPicture *self)
{
  tb_picture_set_name (TB_PICTURE (self), _ ("Ball"));
}
