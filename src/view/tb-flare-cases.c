/* The pin elsewhere: small balls side by side.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-flare-view.h"

#include <glib/gi18n-lib.h>

#include "tb-flare-figure.h"

/* Distances, em. */
#define PAD 0.9
#define ROW 1.45

/* A case that is nearer than this to the ball as it is, m, stands for it: a sixteenth of an inch. */
#define PRESENT_SLACK (0.0625 * TB_METRES_PER_INCH)

static guint
present_case (const TbFlareCasesScene *scene)
{
  guint nearest = G_MAXUINT;
  double least = (double)INFINITY;

  for (guint i = 0; i < scene->cases->len; i++)
    {
      const TbFlareCase *one = scene->cases->pdata[i];
      double off = fabs (one->pin_to_pap - scene->present);

      if (off < least && off <= PRESENT_SLACK)
        {
          least = off;
          nearest = i;
        }
    }
  return nearest;
}

static void
draw_case (TbCanvas *canvas, const cairo_rectangle_t *cell, const TbFlareCasesScene *scene, guint i)
{
  const TbFlareCase *one = scene->cases->pdata[i];
  double em = canvas->em, text = 4 * ROW * em;
  TbGlobe globe
      = { .radius = fmin (0.5 * cell->width - PAD * em, 0.5 * (cell->height - text - 1.2 * PAD * em)) };
  g_autofree char *pin = tb_flare_length_text (one->pin_to_pap, scene->metric);
  g_autofree char *widest = tb_flare_length_text (one->flare->widest_spacing, scene->metric);
  g_autofree char *total = tb_flare_length_text (one->flare->total, scene->metric);
  g_autofree char *title = g_strdup_printf (_ ("pin to PAP %s"), pin);
  g_autofree char *figures = g_strdup_printf (_ ("up to %s apart\ntotal %s\nown oil met %.2f µm"), widest,
                                              total, tb_um_from_metres (one->flare->film_met));
  TbLabel head = { .text = title,
                   .x = cell->x + 0.5 * cell->width,
                   .y = cell->y + 0.5 * PAD * em,
                   .color = canvas->theme.text };
  TbLabel foot = { .text = figures, .x = head.x, .color = canvas->theme.quiet, .across = TB_ALIGN_MIDDLE };

  head.across = TB_ALIGN_MIDDLE;
  head.bold = i == present_case (scene);
  foot.wrap = cell->width;
  if (globe.radius < 1.5 * em || one->run->status != TB_OK)
    return;
  globe.centre = (TbPoint){ head.x, cell->y + (0.5 * PAD + ROW) * em + globe.radius };
  foot.y = globe.centre.y + globe.radius + 0.4 * em;
  tb_flare_figure_draw (&globe, canvas, one->run);
  tb_canvas_try_label (canvas, &head);
  tb_canvas_try_label (canvas, &foot);
}

/* Columns that make the largest balls. */
static guint
best_columns (const TbCanvas *canvas, guint count)
{
  guint best = 1;
  double largest = 0;

  for (guint columns = 1; columns <= count; columns++)
    {
      guint rows = (count + columns - 1) / columns;
      double size = fmin (canvas->width / columns - 2 * PAD * canvas->em,
                          canvas->height / rows - (4 * ROW + 1.2 * PAD) * canvas->em);

      if (size <= largest)
        continue;
      largest = size;
      best = columns;
    }
  return best;
}

void
tb_flare_cases_draw (cairo_t *cr, double width, double height, const TbFlareCasesScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  guint count = scene->cases->len, columns, rows;

  cairo_save (cr);
  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  columns = best_columns (&canvas, MAX (count, 1));
  rows = (count + columns - 1) / columns;
  for (guint i = 0; i < count; i++)
    {
      cairo_rectangle_t cell = { width / columns * (i % columns), height / rows * (i / columns),
                                 width / columns, height / rows };

      if (i == present_case (scene))
        {
          cairo_rectangle_t frame = tb_rectangle_grown (&cell, -0.25 * canvas.em);

          tb_draw_rounded (cr, &frame, 0.6 * canvas.em);
          tb_draw_color (cr, canvas.theme.after);
          cairo_set_line_width (cr, MAX (1, 0.5 * canvas.theme.line_width));
          cairo_stroke (cr);
        }
      draw_case (&canvas, &cell, scene, i);
    }
  cairo_restore (cr);
}
