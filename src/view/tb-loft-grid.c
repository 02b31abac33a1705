/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-loft-grid.h"

#include <glib/gi18n-lib.h>
#include "tb-canvas.h"
#include "tb-draw.h"
#include "tb-fill.h"
#include "tb-path-line.h"
#include "tb-unit-pair.h"

/* Distances, em. */
#define PAD 0.8
#define GAP 1.4
#define ROW 1.5
#define MARK 0.42
/* Share of a cell's height that the lane takes; below it stand the words of its marks. */
#define LEAST_LANE 2.0

typedef struct Cell
{
  TbCanvas *canvas;
  const TbLoftGridCell *data;
  TbRunStyle style;
  gboolean metric;
  cairo_rectangle_t lane; /* px, foul line on the left, pins on the right */
} Cell;

/* Bowler's frame to the picture, whose right-hand side of the lane is below. */
static TbPoint
cell_point (const Cell *self, double x, double y)
{
  double side = self->data->path && self->data->path->mirrored ? -1 : 1;

  return (TbPoint){ self->lane.x + self->lane.width * y / TB_HEAD_PIN_Y,
                    self->lane.y + self->lane.height * (0.5 + side * x / (2 * TB_LANE_HALF_WIDTH)) };
}

static TbPoint
sample_point (const TbPath *path, const TbSample *sample, const void *data)
{
  return cell_point (data, sample->position.x, sample->position.y);
}

static void
draw_ground (const Cell *self)
{
  cairo_t *cr = self->canvas->cr;
  const TbTheme *theme = &self->canvas->theme;

  tb_draw_color (cr, theme->wood);
  tb_draw_rectangle (cr, &self->lane);
  cairo_fill (cr);
  tb_draw_color (cr, theme->mark);
  cairo_set_line_width (cr, 1);
  for (int edge = 0; edge < 2; edge++)
    {
      double y = tb_draw_crisp (self->lane.y + edge * self->lane.height);

      tb_draw_line (cr, (TbPoint){ self->lane.x, y }, (TbPoint){ self->lane.x + self->lane.width, y });
    }
  tb_draw_color (cr, theme->text);
  cairo_set_line_width (cr, 2);
  tb_draw_line (cr, (TbPoint){ self->lane.x, self->lane.y },
                (TbPoint){ self->lane.x, self->lane.y + self->lane.height });
}

static void
trace (const Cell *self, gboolean flight)
{
  g_autoptr (TbPolyline) line = tb_path_line (self->data->path, flight, TB_HEAD_PIN_Y, sample_point, self);

  if (flight)
    tb_draw_set_flight (self->canvas->cr, &self->style);
  else
    tb_draw_set_run (self->canvas->cr, &self->style);
  tb_draw_color (self->canvas->cr, self->style.color);
  tb_polyline_trace (line, self->canvas->cr);
  cairo_stroke (self->canvas->cr);
  cairo_set_dash (self->canvas->cr, NULL, 0, 0);
}

/* A tick across the lane, with its words under it where there is room. Frees the words. */
static void
mark_place (const Cell *self, double y, char *words)
{
  g_autofree char *text = words;
  TbLabel label = { .text = text, .across = TB_ALIGN_MIDDLE };
  TbSample sample;
  TbPoint at;
  double half;

  if (isnan (y) || !tb_path_at_distance (self->data->path, y, &sample))
    return;
  at = cell_point (self, sample.position.x, y);
  half = 0.5 * tb_canvas_measure (self->canvas, &label).width;
  label.x = CLAMP (at.x, self->lane.x + half, self->lane.x + self->lane.width - half);
  label.y = self->lane.y + self->lane.height + 0.15 * self->canvas->em;
  label.color = self->canvas->theme.text;
  tb_draw_color (self->canvas->cr, self->canvas->theme.text);
  cairo_set_line_width (self->canvas->cr, 1);
  tb_draw_line (self->canvas->cr, (TbPoint){ tb_draw_crisp (at.x), at.y },
                (TbPoint){ tb_draw_crisp (at.x), self->lane.y + self->lane.height });
  tb_canvas_try_label (self->canvas, &label);
}

/* A place on the lane, in words with a place for it. digits are those of feet. */
static char *
place_text (const Cell *self, const char *words, double y, int digits)
{
  TbToldUnit told = tb_told_unit ("ft", digits, self->metric);
  g_autofree char *place
      = g_strdup_printf ("%.*f %s", told.digits, tb_ft_from_metres (y) * told.factor, told.unit);

  return tb_fill_with (words, place, NULL);
}

static void
draw_run (const Cell *self)
{
  const TbMeasures *measures = &self->data->path->measures;
  const TbSample *last = &self->data->path->samples[self->data->path->count - 1];
  TbPoint end = cell_point (self, last->position.x, last->position.y);

  trace (self, FALSE);
  trace (self, TRUE);
  tb_draw_run_mark (self->canvas->cr, &self->canvas->theme, &self->style, &end, MARK * self->canvas->em);
  /* What differs most is said first: there may not be room for all. */
  /* Translators: %s is a distance such as "25 ft". */
  mark_place (self, measures->hook_start_y, place_text (self, _ ("hooks %s"), measures->hook_start_y, 0));
  mark_place (self, measures->roll_start_y, place_text (self, _ ("rolls %s"), measures->roll_start_y, 0));
  mark_place (self, measures->landing_y, place_text (self, _ ("lands %s"), measures->landing_y, 1));
}

/* How it ended, or why there is nothing, above the lane on the right. */
static void
write_words (const Cell *self)
{
  TbLabel label = { .text = self->data->words, .x = self->lane.x + self->lane.width, .across = TB_ALIGN_END };

  if (self->data->words == NULL)
    return;
  label.y = self->lane.y - 0.15 * self->canvas->em;
  label.down = TB_ALIGN_END;
  label.bold = TRUE;
  label.color = self->style.color;
  tb_canvas_try_label (self->canvas, &label);
}

/* Above the lane on the left: which throw on which lane. */
static void
write_name (const Cell *self, const char *throw_name, const char *lane_name)
{
  /* Translators: a throw, such as "Flat", on a lane, such as "fresh". */
  g_autofree char *text = g_strdup_printf (_ ("%s, %s"), throw_name, lane_name);
  TbLabel label = { .text = text, .x = self->lane.x, .down = TB_ALIGN_END };

  label.y = self->lane.y - 0.15 * self->canvas->em;
  label.color = self->canvas->theme.text;
  tb_canvas_label (self->canvas, &label);
}

static void
draw_cell (TbCanvas *canvas, const TbLoftGridScene *scene, int row, int column)
{
  double em = canvas->em, cell_width = (canvas->width - (2 * PAD + GAP) * em) / TB_LOFT_GRID_LANES;
  double cell_height = (canvas->height - 2 * PAD * em) / TB_LOFT_GRID_THROWS;
  Cell self = { .canvas = canvas,
                .data = &scene->cell[row][column],
                .style = tb_run_style (&canvas->theme, row == 0),
                .metric = scene->metric };

  self.lane = (cairo_rectangle_t){ PAD * em + column * (cell_width + GAP * em),
                                   PAD * em + row * cell_height + ROW * em, cell_width,
                                   cell_height - (2 * ROW + 0.3) * em };
  if (self.lane.height < LEAST_LANE * em)
    return;
  draw_ground (&self);
  write_name (&self, scene->throw_name[row], scene->lane_name[column]);
  write_words (&self);
  if (self.data->path != NULL && self.data->path->count > 0)
    draw_run (&self);
}

void
tb_loft_grid_draw (cairo_t *cr, double width, double height, const TbLoftGridScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };

  cairo_save (cr);
  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  for (int row = 0; row < TB_LOFT_GRID_THROWS && tb_canvas_has_room (&canvas); row++)
    for (int column = 0; column < TB_LOFT_GRID_LANES; column++)
      draw_cell (&canvas, scene, row, column);
  cairo_restore (cr);
}
