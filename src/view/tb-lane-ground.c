/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include "tb-draw.h"
#include "tb-lane-film.h"
#include "tb-lane-ground.h"

/* Every fifth board has a number, every tenth foot too. */
#define NUMBERED_BOARDS 5
#define NUMBERED_FEET 10
#define TICKED_FEET 5
/* Boards narrower than this, px, get no seams. */
#define SEAMS_FROM 4.0
/* How strong seams, numbered boards and cross lines are drawn. */
#define SEAM_OPACITY 0.10
#define GUIDE_OPACITY 0.22
/* Sizes in the plans, em. */
#define ARROW_LENGTH 1.15
#define ARROW_HALF 0.27
#define DOT_RADIUS 0.17
#define FOUL_LINE 0.26
/* Sizes in the perspective, m (typical). */
#define TRUE_ARROW_LENGTH 0.152
#define TRUE_ARROW_HALF 0.016
#define TRUE_DOT_RADIUS 0.0095
#define TRUE_FOUL_LINE 0.025
/* Where the perspective writes the boards' numbers, m before the foul line. */
#define NUMBERS_BEFORE 0.16
#define DOT_CORNERS 16

typedef struct TbMarkSizes
{
  double arrow_length, arrow_half; /* m along and across */
  double dot_across, dot_along;    /* m */
  double foul_line;                /* m along */
} TbMarkSizes;

static TbMarkSizes
mark_sizes (const TbLaneLayout *layout)
{
  double em = layout->mark_em;

  if (layout->projection == TB_LANE_FROM_APPROACH)
    return (TbMarkSizes){ TRUE_ARROW_LENGTH, TRUE_ARROW_HALF, TRUE_DOT_RADIUS, TRUE_DOT_RADIUS, TRUE_FOUL_LINE };
  return (TbMarkSizes){ tb_lane_layout_along_from_px (layout, ARROW_LENGTH * em),
                        tb_lane_layout_across_from_px (layout, ARROW_HALF * em),
                        tb_lane_layout_across_from_px (layout, DOT_RADIUS * em),
                        tb_lane_layout_along_from_px (layout, DOT_RADIUS * em),
                        tb_lane_layout_along_from_px (layout, ceil (FOUL_LINE * layout->em)) };
}

static void
move_to (cairo_t *cr, const TbLaneLayout *layout, double x, double y)
{
  TbPoint point = tb_lane_layout_point (layout, x, y, 0);

  cairo_move_to (cr, point.x, point.y);
}

static void
line_to (cairo_t *cr, const TbLaneLayout *layout, double x, double y)
{
  TbPoint point = tb_lane_layout_point (layout, x, y, 0);

  cairo_line_to (cr, point.x, point.y);
}

void
tb_lane_quad (cairo_t *cr, const TbLaneLayout *layout, TbLaneArea area)
{
  move_to (cr, layout, area.left, area.near);
  line_to (cr, layout, area.right, area.near);
  line_to (cr, layout, area.right, area.far);
  line_to (cr, layout, area.left, area.far);
  cairo_close_path (cr);
}

void
tb_lane_clip (cairo_t *cr, const TbLaneLayout *layout)
{
  double half = TB_LANE_HALF_WIDTH + layout->gutter_width;

  tb_lane_quad (cr, layout, (TbLaneArea){ -half, half, -layout->approach_depth, TB_PIT_Y });
  cairo_clip (cr);
}

/* The middle of a pixel, in doubt the one further from the middle of the lane: left and right stay mirror images. */
static double
crisp_from (double position, double middle)
{
  const double rounding = 1e-6;

  return position < middle ? ceil (position - rounding) - 0.5 : floor (position + rounding) + 0.5;
}

/* Adds a line on the floor to the path; upright and level ones on whole pixels. */
static void
floor_line (cairo_t *cr, const TbLaneLayout *layout, TbMark from, TbMark to)
{
  TbPoint a = tb_lane_layout_point (layout, from.x, from.y, 0), b = tb_lane_layout_point (layout, to.x, to.y, 0);
  TbPoint middle = tb_lane_layout_point (layout, 0, 0.5 * (from.y + to.y), 0);

  if (fabs (a.x - b.x) < 1e-6)
    a.x = b.x = crisp_from (a.x, middle.x);
  if (fabs (a.y - b.y) < 1e-6)
    a.y = b.y = crisp_from (a.y, middle.y);
  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
}

/* The perspective is near enough for a gutter to be round: the deeper, the darker. */
static void
draw_channels (TbCanvas *canvas, const TbLaneLayout *layout)
{
  static const struct { double from, to, shade; } parts[] = { { 0, 1, 0.10 }, { 0.18, 0.86, 0.10 }, { 0.36, 0.70, 0.10 } };

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      double inner = TB_LANE_HALF_WIDTH + parts[i].from * layout->gutter_width;
      double outer = TB_LANE_HALF_WIDTH + parts[i].to * layout->gutter_width;

      tb_lane_quad (canvas->cr, layout, (TbLaneArea){ -outer, -inner, 0, TB_PIT_Y });
      tb_lane_quad (canvas->cr, layout, (TbLaneArea){ inner, outer, 0, TB_PIT_Y });
      tb_draw_color (canvas->cr, tb_color_with_alpha (canvas->theme.pit, parts[i].shade));
      cairo_fill (canvas->cr);
    }
}

static void
draw_floor (TbCanvas *canvas, const TbLaneLayout *layout)
{
  cairo_t *cr = canvas->cr;
  double half = TB_LANE_HALF_WIDTH, outer = half + layout->gutter_width;

  tb_draw_color (cr, canvas->theme.approach);
  tb_lane_quad (cr, layout, (TbLaneArea){ -outer, outer, -layout->approach_depth, 0 });
  cairo_fill (cr);
  tb_draw_color (cr, canvas->theme.gutter);
  tb_lane_quad (cr, layout, (TbLaneArea){ -outer, outer, 0, TB_PIT_Y });
  cairo_fill (cr);
  if (layout->projection == TB_LANE_FROM_APPROACH)
    draw_channels (canvas, layout);
  tb_draw_color (cr, canvas->theme.wood);
  tb_lane_quad (cr, layout, (TbLaneArea){ -half, half, 0, TB_PIT_Y });
  cairo_fill (cr);
}

static void
draw_pit (TbCanvas *canvas, const TbLaneLayout *layout)
{
  double outer = TB_LANE_HALF_WIDTH + layout->gutter_width;

  tb_draw_color (canvas->cr, canvas->theme.pit);
  if (layout->projection == TB_LANE_FROM_APPROACH)
    {
      TbPoint low = tb_lane_layout_point (layout, -outer, TB_PIT_Y, 0);
      TbPoint high = tb_lane_layout_point (layout, outer, TB_PIT_Y, TB_PIT_HEIGHT);

      cairo_rectangle (canvas->cr, low.x, high.y, high.x - low.x, low.y - high.y);
    }
  else
    tb_lane_quad (canvas->cr, layout, (TbLaneArea){ -outer, outer, TB_PIT_Y, TB_PIT_Y + layout->pit_depth });
  cairo_fill (canvas->cr);
}

/* The joints between the boards, and the middle of every fifth. */
static void
draw_boards (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  cairo_t *cr = canvas->cr;
  double board = tb_lane_layout_scale (layout, 0) * TB_BOARD_WIDTH;

  cairo_set_line_width (cr, 1);
  if (board >= SEAMS_FROM && layout->projection != TB_LANE_FROM_APPROACH)
    {
      for (int seam = 1; seam < TB_LANE_BOARDS; seam++)
        floor_line (cr,
                    layout,
                    (TbMark){ tb_x_from_board (seam + 0.5), 0 },
                    (TbMark){ tb_x_from_board (seam + 0.5), TB_PIT_Y });
      tb_draw_color (cr, tb_color_with_alpha (canvas->theme.mark, SEAM_OPACITY));
      cairo_stroke (cr);
    }
  for (int n = NUMBERED_BOARDS; n < TB_LANE_BOARDS; n += NUMBERED_BOARDS)
    floor_line (cr, layout, (TbMark){ tb_x_from_board (n), 0 }, (TbMark){ tb_x_from_board (n), TB_PIT_Y });
  for (int ft = NUMBERED_FEET; ft <= (int) TB_HEAD_PIN_FT; ft += NUMBERED_FEET)
    floor_line (cr,
                layout,
                (TbMark){ -TB_LANE_HALF_WIDTH, tb_metres_from_ft (ft) },
                (TbMark){ TB_LANE_HALF_WIDTH, tb_metres_from_ft (ft) });
  tb_draw_color (cr, tb_color_with_alpha (canvas->theme.mark, GUIDE_OPACITY));
  cairo_stroke (cr);
}

static void
draw_marks (TbCanvas *canvas, const TbLaneLayout *layout)
{
  cairo_t *cr = canvas->cr;
  TbMarkSizes size = mark_sizes (layout);

  tb_draw_color (cr, canvas->theme.mark);
  for (int i = 0; i < TB_N_ARROWS; i++)
    {
      const TbMark *at = &tb_lane_arrows[i];

      move_to (cr, layout, at->x - size.arrow_half, at->y - 0.5 * size.arrow_length);
      line_to (cr, layout, at->x + size.arrow_half, at->y - 0.5 * size.arrow_length);
      line_to (cr, layout, at->x, at->y + 0.5 * size.arrow_length);
      cairo_close_path (cr);
    }
  cairo_fill (cr);
  for (int i = 0; i < TB_N_DOTS; i++)
    for (int j = 0; j < DOT_CORNERS; j++)
      {
        double angle = 2 * G_PI * j / DOT_CORNERS;
        double x = tb_lane_dots[i].x + size.dot_across * cos (angle);
        double y = tb_lane_dots[i].y + size.dot_along * sin (angle);

        (j == 0 ? move_to : line_to) (cr, layout, x, y);
      }
  cairo_fill (cr);
}

static void
draw_foul_line (TbCanvas *canvas, const TbLaneLayout *layout)
{
  double outer = TB_LANE_HALF_WIDTH + layout->gutter_width;

  tb_draw_color (canvas->cr, canvas->theme.text);
  tb_lane_quad (canvas->cr, layout, (TbLaneArea){ -outer, outer, -mark_sizes (layout).foul_line, 0 });
  cairo_fill (canvas->cr);
}

void
tb_lane_ground_draw (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  draw_pit (canvas, layout);
  draw_floor (canvas, layout);
  if (scene->oil != NULL)
    tb_lane_film_draw (canvas, layout, scene);
  draw_boards (canvas, layout, scene);
  draw_marks (canvas, layout);
  draw_foul_line (canvas, layout);
}

/* The label of a board's number, without its text. */
static TbLabel
board_label (TbCanvas *canvas, const TbLaneLayout *layout, double x)
{
  gboolean perspective = layout->projection == TB_LANE_FROM_APPROACH;
  TbPoint at = tb_lane_layout_point (layout, x, perspective ? -NUMBERS_BEFORE : 0, 0);
  TbLabel label = { .x = at.x, .y = at.y, .across = TB_ALIGN_MIDDLE, .down = TB_ALIGN_MIDDLE };

  label.color = perspective ? canvas->theme.text : canvas->theme.quiet;
  if (layout->projection == TB_LANE_PLAN_SIDEWAYS)
    {
      label.x = layout->boards.x + layout->boards.width;
      label.across = TB_ALIGN_END;
    }
  else
    label.clearance = 0.3 * canvas->em;
  if (layout->projection == TB_LANE_PLAN)
    label.y = layout->boards.y + 0.5 * layout->boards.height;
  return label;
}

/* Whether numbers so many boards apart leave room between them. */
static gboolean
numbers_fit (TbCanvas *canvas, const TbLaneLayout *layout, int apart)
{
  TbLabel a = board_label (canvas, layout, 0), b = board_label (canvas, layout, apart * TB_BOARD_WIDTH);
  cairo_rectangle_t box;

  a.text = "35";
  box = tb_canvas_measure (canvas, &a);
  if (layout->projection == TB_LANE_PLAN_SIDEWAYS)
    return fabs (b.y - a.y) > box.height;
  return fabs (b.x - a.x) > box.width + 2 * a.clearance;
}

/* Where every fifth board has no room for its number, every tenth has one, or only the middle one. */
static void
number_boards (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  int apart = NUMBERED_BOARDS;

  while (apart < (int) TB_MIDDLE_BOARD && !numbers_fit (canvas, layout, apart))
    apart *= 2;
  for (int n = apart; n < TB_LANE_BOARDS; n += apart)
    {
      double x = tb_lane_x (scene->mirrored, tb_x_from_board (n));
      g_autofree char *text = g_strdup_printf ("%d", n);
      TbLabel label = board_label (canvas, layout, x);

      label.text = text;
      tb_canvas_try_label (canvas, &label);
    }
}

static void
tick_feet (TbCanvas *canvas, const TbLaneLayout *layout)
{
  cairo_t *cr = canvas->cr;
  double outer = -TB_LANE_HALF_WIDTH - layout->gutter_width;

  for (int ft = 0; ft <= (int) TB_HEAD_PIN_FT; ft += TICKED_FEET)
    {
      TbPoint at = tb_lane_layout_point (layout, outer, tb_metres_from_ft (ft), 0);
      double length = (ft % NUMBERED_FEET == 0 ? 0.45 : 0.25) * canvas->em;
      TbPoint end = { at.x - length, at.y };

      if (layout->projection == TB_LANE_PLAN_SIDEWAYS)
        end = (TbPoint){ at.x, at.y - length };
      if (end.x == at.x)
        at.x = end.x = tb_draw_crisp (at.x);
      else
        at.y = end.y = tb_draw_crisp (at.y);
      cairo_move_to (cr, at.x, at.y);
      cairo_line_to (cr, end.x, end.y);
    }
  tb_draw_color (cr, canvas->theme.quiet);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
}

void
tb_lane_set_foot_place (TbLabel *label, const TbLaneLayout *layout, TbPoint at)
{
  if (layout->projection == TB_LANE_PLAN_SIDEWAYS)
    {
      label->x = at.x;
      label->y = at.y - 0.6 * layout->em;
      label->across = TB_ALIGN_MIDDLE;
      label->down = TB_ALIGN_END;
      label->clearance = 0.2 * layout->em;
    }
  else
    {
      label->x = at.x - 0.7 * layout->em;
      label->y = at.y;
      label->across = TB_ALIGN_END;
      label->down = TB_ALIGN_MIDDLE;
    }
}

/* From the foul line on; a number that has no room is left out, but never the pins'. */
static void
number_feet (TbCanvas *canvas, const TbLaneLayout *layout)
{
  static const int order[] = { 60, 0, 30, 20, 40, 10, 50 };
  double outer = -TB_LANE_HALF_WIDTH - layout->gutter_width;

  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    {
      TbPoint at = tb_lane_layout_point (layout, outer, tb_metres_from_ft (order[i]), 0);
      g_autofree char *text = NULL;
      TbLabel label = { .color = canvas->theme.quiet };

      tb_lane_set_foot_place (&label, layout, at);
      text = order[i] == (int) TB_HEAD_PIN_FT ? g_strdup_printf (_("%d ft"), order[i])
                                              : g_strdup_printf ("%d", order[i]);
      label.text = text;
      tb_canvas_try_label (canvas, &label);
    }
}

static void
name_foul_line (TbCanvas *canvas, const TbLaneLayout *layout)
{
  TbPoint at = tb_lane_layout_point (layout, TB_LANE_HALF_WIDTH + layout->gutter_width, 0, 0);
  TbLabel label = { .text = _("foul line"), .x = at.x + 0.6 * canvas->em, .y = at.y, .down = TB_ALIGN_MIDDLE };

  label.color = canvas->theme.quiet;
  if (layout->projection == TB_LANE_PLAN_SIDEWAYS)
    {
      /* In the row of the phases' names, or else right under the lane. */
      label.x = layout->lane.x;
      label.y = layout->phases.height > 0 ? layout->phases.y + TB_STRIP_NAMES * canvas->em : at.y + 0.4 * canvas->em;
      label.down = TB_ALIGN_START;
    }
  tb_canvas_try_label (canvas, &label);
}

static void
write_note (TbCanvas *canvas, const TbLaneLayout *layout)
{
  const cairo_rectangle_t *box = &layout->note;
  g_autofree char *text = tb_lane_layout_note (layout->projection, tb_lane_layout_stretch (layout));
  TbLabel label = { .text = text, .x = box->x + 0.5 * box->width, .y = box->y, .across = TB_ALIGN_MIDDLE };

  label.color = canvas->theme.quiet;
  label.wrap = box->width + 1;
  if (box->height > 0)
    tb_canvas_label (canvas, &label);
}

void
tb_lane_scales_draw (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *scene)
{
  tick_feet (canvas, layout);
  number_feet (canvas, layout);
  number_boards (canvas, layout, scene);
  write_note (canvas, layout);
  name_foul_line (canvas, layout);
}
