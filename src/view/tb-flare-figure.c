/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-flare-figure.h"

#include <glib/gi18n-lib.h>

/* Rings are so wide, of the ball's radius, and so much wider where they carry the most oil. */
#define RING_WIDTH 0.012
#define OIL_WIDTH 0.035
#define HIDDEN_RING 0.16
/* Steps of tint between a dry ring and the wettest. */
#define TINTS 8
/* Inches that the ruler spans. */
#define RULER_IN 1.0

char *
tb_flare_length_text (double metres, gboolean metric)
{
  return metric ? g_strdup_printf (_ ("%.0f mm"), metres * 1e3)
                : g_strdup_printf (_ ("%.2f in"), tb_in_from_metres (metres));
}

/* The side from which the rings lie furthest apart: along the way the axis went over the ball, square to the
 * axis. */
static void
look_at_rings (TbGlobe *globe, const TbRun *run)
{
  const TbPath *path = &run->path;
  TbVec3 first = tb_sample_axis_on_ball (&path->samples[0]), furthest = first;
  double most = 0;

  for (int i = 1; i < path->count; i++)
    {
      TbVec3 axis = tb_sample_axis_on_ball (&path->samples[i]);
      double angle = tb_vec3_angle (axis, first);

      if (angle <= most)
        continue;
      most = angle;
      furthest = axis;
    }
  TbVec3 middle = tb_vec3_unit (tb_vec3_add (first, furthest), first);
  TbVec3 way = tb_vec3_sub (furthest, first);
  TbVec3 aside = tb_vec3_unit (tb_vec3_cross (middle, path->body.pin), tb_vec3 (0, 1, 0));

  way = tb_vec3_add_scaled (way, -tb_vec3_dot (way, middle), middle);
  /* The axis points to the right: its own great circle's pole is up. */
  TbVec3 near = tb_vec3_unit (way, aside);

  tb_globe_look (globe, near, tb_vec3_cross (near, middle));
  globe->mirrored = path->mirrored;
}

static double
tint_of (const TbSample *sample, const TbRun *run)
{
  double film = tb_flare_film_left (sample, &run->setup->shot.assumed, run->path.body.radius);

  return fmin (sqrt (fmax (film, 0) / TB_FLARE_FULL_TINT), 1);
}

/* One piece of the track, in a colour and width that tell its oil. */
static void
stroke_piece (const TbGlobe *globe, TbCanvas *canvas, int tint, gboolean seen)
{
  double share = (double)tint / TINTS;
  TbColor color
      = tb_color_mix (canvas->theme.ball_mark, tb_color_with_alpha (canvas->theme.oil_thick, 1), share);

  cairo_set_line_width (canvas->cr, MAX (0.8, (RING_WIDTH + OIL_WIDTH * share) * globe->radius));
  tb_draw_color (canvas->cr, tb_color_with_alpha (color, seen ? 0.95 : HIDDEN_RING));
  cairo_stroke (canvas->cr);
}

/* Between two samples the contact runs along a piece of circle about the axis; so many degrees need a vertex.
 */
#define VERTEX_ANGLE 0.06

static TbVec3
contact_between (const TbPath *path, const TbSample *from, const TbSample *to, double share)
{
  TbSample sample;

  if (share <= 0)
    return tb_sample_contact_on_ball (from);
  if (share >= 1)
    return tb_sample_contact_on_ball (to);
  tb_path_at_time (path, from->time + share * (to->time - from->time), &sample);
  return tb_sample_contact_on_ball (&sample);
}

static void
add_piece (const TbGlobe *globe, cairo_t *cr, const TbPath *path, int i, gboolean seen)
{
  const TbSample *from = &path->samples[i], *to = &path->samples[i + 1];
  int steps = MAX (1, (int)ceil ((to->turned - from->turned) / VERTEX_ANGLE));
  gboolean joined = FALSE;

  for (int j = 0; j <= steps; j++)
    {
      TbVec3 place = contact_between (path, from, to, (double)j / steps);
      TbPoint at = tb_globe_point (globe, place);

      if (tb_globe_sees (globe, place) != seen)
        {
          joined = FALSE;
          continue;
        }
      (joined ? cairo_line_to : cairo_move_to) (cr, at.x, at.y);
      joined = TRUE;
    }
}

static void
draw_track (const TbGlobe *globe, TbCanvas *canvas, const TbRun *run, gboolean seen)
{
  const TbPath *path = &run->path;
  int tint = -1;

  cairo_set_line_cap (canvas->cr, CAIRO_LINE_CAP_BUTT);
  for (int i = 0; i + 1 < path->count; i++)
    {
      const TbSample *sample = &path->samples[i];
      int now = (int)lround (TINTS * 0.5 * (tint_of (sample, run) + tint_of (sample + 1, run)));

      if (sample->phase == TB_PHASE_FLIGHT)
        continue;
      if (tint >= 0 && now != tint)
        stroke_piece (globe, canvas, tint, seen);
      tint = now;
      add_piece (globe, canvas->cr, path, i, seen);
    }
  if (tint >= 0)
    stroke_piece (globe, canvas, tint, seen);
}

/* An inch in the middle of the ball, along the way the rings are apart. */
void
tb_flare_figure_draw_ruler (const TbGlobe *globe, TbCanvas *canvas, double radius_m)
{
  cairo_t *cr = canvas->cr;
  double half = globe->radius * sin (0.5 * tb_metres_from_in (RULER_IN) / radius_m),
         y = globe->centre.y + globe->radius + 0.9 * canvas->em;
  double tick = 0.3 * canvas->em;
  TbPoint left = { globe->centre.x - half, y }, right = { globe->centre.x + half, y };
  TbLabel label = { .text = _ ("1 in"), .x = right.x + 0.5 * canvas->em, .y = y, .down = TB_ALIGN_MIDDLE };

  label.color = canvas->theme.quiet;
  tb_draw_color (cr, canvas->theme.quiet);
  cairo_set_line_width (cr, MAX (1, 0.5 * canvas->theme.line_width));
  tb_draw_line (cr, left, right);
  tb_draw_line (cr, (TbPoint){ left.x, y - tick }, (TbPoint){ left.x, y + tick });
  tb_draw_line (cr, (TbPoint){ right.x, y - tick }, (TbPoint){ right.x, y + tick });
  tb_canvas_try_label (canvas, &label);
}

void
tb_flare_figure_draw (TbGlobe *globe, TbCanvas *canvas, const TbRun *run)
{
  look_at_rings (globe, run);
  tb_globe_draw (globe, canvas);
  cairo_save (canvas->cr);
  tb_draw_circle (canvas->cr, globe->centre, globe->radius);
  cairo_clip (canvas->cr);
  draw_track (globe, canvas, run, FALSE);
  draw_track (globe, canvas, run, TRUE);
  cairo_restore (canvas->cr);
}
