/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-ball-rings.h"
#include "tb-draw.h"

/* How strong a ring is drawn: the part that has been rolled, the part to come; and on the hidden side. */
#define ROLLED 0.92
#define TO_COME 0.30
#define HIDDEN 0.16
#define RING_WIDTH 0.5  /* line widths */
#define OIL_WIDTH 2.6   /* line widths */
/* Oil is drawn in so many strengths; less than the first is not drawn. */
#define OIL_LEVELS 4
#define OIL_OPACITY 0.75
/* The film on the ball, m, that is drawn strongest. */
#define OIL_FULL 3e-6

/* What a stretch of ring is drawn with. */
typedef struct TbRingLook
{
  gboolean rolled;
  gboolean hidden;
  int oil;
} TbRingLook;

typedef struct TbRingPoint
{
  TbPoint at;
  TbRingLook look;
} TbRingPoint;

static int
oil_level (double film)
{
  return (int) (OIL_LEVELS * sqrt (CLAMP (film / OIL_FULL, 0, 1)));
}

gboolean
tb_ball_figure_has_oil (const TbPath *path)
{
  for (int i = 0; i < path->count; i++)
    if (path->samples[i].phase != TB_PHASE_FLIGHT && oil_level (path->samples[i].film_on_ball) > 0)
      return TRUE;
  return FALSE;
}

static TbRingPoint
ring_point (const TbBallFigure *figure, const TbSample *sample)
{
  TbSeen seen = tb_ball_figure_see_on_ball (figure, tb_sample_contact_on_ball (sample));

  return (TbRingPoint){ tb_ball_figure_point (figure, seen, 1),
                        { sample->time <= figure->scene->time, seen.near < 0, oil_level (sample->film_on_ball) } };
}

/* Every point of the track, close enough together. Breaks where the ball is in the air are points that are not
 * numbers. */
GArray *
tb_ball_rings_find (const TbBallFigure *figure)
{
  const TbPath *path = figure->scene->path;
  GArray *ring = g_array_new (FALSE, FALSE, sizeof (TbRingPoint));
  double step = tb_ball_figure_step (figure);

  for (int i = 0; i + 1 < path->count; i++)
    {
      const TbSample *from = &path->samples[i], *to = &path->samples[i + 1];
      int steps = MAX ((int) ceil ((to->turned - from->turned) / step), 1);

      if (to->time <= from->time)
        continue;
      if (from->phase == TB_PHASE_FLIGHT)
        {
          TbRingPoint gap = { .at = { NAN, NAN } };

          g_array_append_val (ring, gap);
          continue;
        }
      for (int j = 0; j < steps; j++)
        {
          TbSample sample;
          TbRingPoint point;

          tb_path_at_time (path, from->time + j * (to->time - from->time) / steps, &sample);
          point = ring_point (figure, &sample);
          g_array_append_val (ring, point);
        }
    }
  return ring;
}

static gboolean
same_look (TbRingLook a, TbRingLook b)
{
  return a.rolled == b.rolled && a.hidden == b.hidden && a.oil == b.oil;
}

static void
stroke_oil (TbCanvas *canvas, TbRingLook look)
{
  const TbTheme *theme = &canvas->theme;

  cairo_set_line_width (canvas->cr, OIL_WIDTH * theme->line_width);
  tb_draw_color (canvas->cr, tb_color_with_alpha (theme->oil_thick, OIL_OPACITY * look.oil / OIL_LEVELS));
  cairo_stroke_preserve (canvas->cr);
}

static void
stroke_ring (TbCanvas *canvas, TbRingLook look)
{
  const TbTheme *theme = &canvas->theme;
  double opacity = look.hidden ? HIDDEN : ROLLED;

  if (!look.rolled)
    opacity *= TO_COME;
  if (look.oil > 0 && look.rolled && !look.hidden)
    stroke_oil (canvas, look);
  cairo_set_line_width (canvas->cr, RING_WIDTH * theme->line_width);
  tb_draw_color (canvas->cr, tb_color_with_alpha (theme->ball_mark, opacity));
  cairo_stroke (canvas->cr);
}

void
tb_ball_rings_draw (const GArray *rings, TbCanvas *canvas, gboolean hidden)
{
  const TbRingPoint *point = (const TbRingPoint *) (gpointer) rings->data;

  cairo_set_line_cap (canvas->cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (canvas->cr, CAIRO_LINE_JOIN_ROUND);
  for (guint i = 0; i + 1 < rings->len;)
    {
      TbRingLook look = point[i].look;
      guint end = i + 1;

      if (isnan (point[i].at.x) || look.hidden != hidden)
        {
          i++;
          continue;
        }
      cairo_move_to (canvas->cr, point[i].at.x, point[i].at.y);
      /* The first point with another look still belongs to the stretch, so that stretches join. */
      for (; end < rings->len && !isnan (point[end].at.x); end++)
        {
          cairo_line_to (canvas->cr, point[end].at.x, point[end].at.y);
          if (!same_look (point[end].look, look))
            break;
        }
      stroke_ring (canvas, look);
      i = end;
    }
}
