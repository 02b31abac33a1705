/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-canvas.h"
#include "tb-contour.h"
#include "tb-draw.h"
#include "tb-room-tint.h"
#include "tb-room-view.h"

/* Distances, em. */
#define PAD 0.8
#define GAP 1.6 /* between two maps */
#define ROW 1.5 /* a line of text */
#define TICK 0.35
#define NUMBERS 2.4 /* for the numbers of the upward axis */
#define SWATCH 2.4
#define BAR_END 0.45
#define LEGEND_BAR 0.75
/* Two maps stand beside each other in a picture at least so wide for its height. */
#define BESIDE 0.95
/* Boards between the lines beyond the pocket. */
#define LINE_SPACING 2.0
#define LINES_BEYOND 4
/* Ticks of an axis: about so many. */
#define TICKS 5
/* Every so many pieces of a line its label is tried, from the middle on. */
#define LABEL_TRIES 9

typedef struct View
{
  TbCanvas *canvas;
  const TbRoomScene *scene;
  const TbRoomAxis *axis;    /* of either map; they have the same */
  cairo_rectangle_t plot[2]; /* before, after; of no size where there is none */
  cairo_rectangle_t legend;
} View;

TbRoomScene
tb_room_scene_default (void)
{
  return (TbRoomScene){ .theme = tb_theme_light (1), .show_legend = TRUE };
}

static const TbRoomPanel *
panel_of (const TbRoomScene *scene, int side)
{
  return side == 0 ? &scene->before : &scene->after;
}

/* A cell of the picture turned into what the map itself takes of it. */
static cairo_rectangle_t
plot_in (const TbCanvas *canvas, cairo_rectangle_t cell)
{
  double em = canvas->em;

  cell.x += (ROW + NUMBERS) * em;
  cell.width -= (ROW + NUMBERS + PAD) * em;
  cell.y += (ROW + 0.4) * em;
  cell.height -= (ROW + 0.4 + 2 * ROW + TICK) * em;
  return cell;
}

static void
lay_out_pair (View *self, const cairo_rectangle_t *room)
{
  double gap = GAP * self->canvas->em;
  gboolean beside = room->width > BESIDE * room->height;

  for (int side = 0; side < 2; side++)
    {
      cairo_rectangle_t cell = *room;

      if (beside)
        {
          cell.width = 0.5 * (room->width - gap);
          cell.x += side * (cell.width + gap);
        }
      else
        {
          cell.height = 0.5 * (room->height - gap);
          cell.y += side * (cell.height + gap);
        }
      self->plot[side] = plot_in (self->canvas, cell);
    }
}

static void
lay_out (View *self)
{
  const TbRoomScene *scene = self->scene;
  double em = self->canvas->em;
  cairo_rectangle_t room
      = { PAD * em, PAD * em, self->canvas->width - 2 * PAD * em, self->canvas->height - 2 * PAD * em };

  self->axis = scene->after.map ? scene->after.map->axis : scene->before.map->axis;
  if (scene->show_legend)
    {
      double height = (LEGEND_BAR + ROW + 0.3) * em;

      room.height -= height + 0.5 * em;
      self->legend = (cairo_rectangle_t){ room.x + NUMBERS * em, room.y + room.height + 0.5 * em,
                                          room.width - (NUMBERS + PAD) * em, height };
    }
  if (scene->before.map && scene->after.map)
    lay_out_pair (self, &room);
  else
    self->plot[scene->after.map ? 1 : 0] = plot_in (self->canvas, room);
}

/* A place of the map, in columns and rows, in the picture. */
static TbPoint
place (const View *self, const cairo_rectangle_t *plot, TbPoint at)
{
  return (TbPoint){ plot->x + at.x / (self->axis[0].count - 1) * plot->width,
                    plot->y + plot->height - at.y / (self->axis[1].count - 1) * plot->height };
}

/* The share of an axis at which a miss lies. */
static double
share_at (const TbRoomAxis *axis, double miss)
{
  return (miss - axis->low) / (axis->high - axis->low);
}

/* 1, 2 or 5 times a power of ten. */
static double
tick_step (double span)
{
  static const double steps[] = { 1, 2, 5, 10 };
  double power = pow (10, floor (log10 (span / TICKS)));

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    if (span / (steps[i] * power) <= TICKS + 0.5)
      return steps[i] * power;
  return 10 * power;
}

static char *
miss_text (double miss, double step)
{
  int digits = step < 0.1 ? 2 : step < 1 ? 1 : 0;

  if (fabs (miss) < 0.5 * pow (10, -digits))
    return g_strdup ("0");
  /* A true minus, as wide as a plus. */
  return miss > 0 ? g_strdup_printf ("+%.*f", digits, miss) : g_strdup_printf ("−%.*f", digits, -miss);
}

static void
draw_tick (View *self, const cairo_rectangle_t *plot, int axis, double miss, double step)
{
  TbCanvas *canvas = self->canvas;
  double em = canvas->em, share = share_at (&self->axis[axis], miss);
  g_autofree char *text = miss_text (miss, step);
  TbLabel label = { .text = text, .color = canvas->theme.quiet, .size = 0.92 * em };
  TbPoint foot, tip;

  if (axis == 0)
    {
      foot = (TbPoint){ tb_draw_crisp (plot->x + share * plot->width), plot->y + plot->height };
      tip = (TbPoint){ foot.x, foot.y + TICK * em };
      label.across = TB_ALIGN_MIDDLE;
    }
  else
    {
      foot = (TbPoint){ plot->x, tb_draw_crisp (plot->y + plot->height - share * plot->height) };
      tip = (TbPoint){ foot.x - TICK * em, foot.y };
      label.across = TB_ALIGN_END;
      label.down = TB_ALIGN_MIDDLE;
    }
  label.x = tip.x - (axis == 1 ? 0.2 * em : 0);
  label.y = tip.y;
  if (!tb_canvas_try_label (canvas, &label))
    return;
  tb_draw_color (canvas->cr, canvas->theme.quiet);
  cairo_set_line_width (canvas->cr, 1);
  tb_draw_line (canvas->cr, foot, tip);
}

static gboolean
is_board (const TbRoomAxis *axis)
{
  return g_str_equal (axis->field->unit, "board");
}

/* What is missed, and what the plan is. */
static char *
axis_text (const TbRoomMap *map, const TbRoomAxis *axis)
{
  const TbField *field = axis->field;
  double plan = tb_field_get (field, tb_shot_group_const (&map->setup->shot, field->group));

  if (axis->with)
    return g_strdup_printf (_ ("Whole line: boards off %.*f at the foul line"), field->digits, plan);
  /* Translators: what is missed, and the board that was planned. */
  if (is_board (axis))
    return g_strdup_printf (_ ("%s: boards off %.*f"), _ (field->label), field->digits, plan);
  /* Translators: what is missed, the value that was planned, and its unit: "Speed: off 17.0 mph". */
  return g_strdup_printf (_ ("%s: off %.*f %s"), _ (field->label), field->digits, plan,
                          field->unit[0] ? _ (field->unit) : "");
}

static void
draw_axis_title (View *self, const cairo_rectangle_t *plot, const TbRoomMap *map, int axis)
{
  TbCanvas *canvas = self->canvas;
  double em = canvas->em;
  g_autofree char *text = axis_text (map, &self->axis[axis]);
  TbLabel label = { .text = text, .color = canvas->theme.text, .size = 0.95 * em, .across = TB_ALIGN_MIDDLE };

  label.x = plot->x + 0.5 * plot->width;
  label.y = plot->y + plot->height + (TICK + ROW) * em;
  if (axis == 1)
    {
      label.upwards = TRUE;
      label.down = TB_ALIGN_MIDDLE;
      label.across = TB_ALIGN_START;
      label.x = plot->x - (NUMBERS + ROW) * em;
      label.y = plot->y + 0.5 * plot->height;
    }
  tb_canvas_label (canvas, &label);
}

static void
draw_axes (View *self, const cairo_rectangle_t *plot, const TbRoomMap *map)
{
  for (int axis = 0; axis < TB_ROOM_AXES; axis++)
    {
      const TbRoomAxis *a = &self->axis[axis];
      double step = tick_step (a->high - a->low);

      draw_axis_title (self, plot, map, axis);
      for (double miss = ceil (a->low / step - 1e-9) * step; miss <= a->high + 1e-9 * step; miss += step)
        draw_tick (self, plot, axis, miss, step);
    }
}

static double
contour_value (int column, int row, gconstpointer data)
{
  const TbRoomMap *map = data;

  return tb_room_board_at (map, column * map->stride, row * map->stride);
}

static gboolean
label_inside (View *self, const cairo_rectangle_t *plot, const TbLabel *label)
{
  cairo_rectangle_t box = tb_canvas_measure (self->canvas, label);

  return tb_rectangle_contains (plot, &box) && tb_canvas_try_label (self->canvas, label);
}

/* The line's number, at a piece where there is room. */
static void
label_line (View *self, const cairo_rectangle_t *plot, const GArray *places, double board)
{
  g_autofree char *text = g_strdup_printf ("%.4g", board);
  guint pieces = places->len / 2;

  for (guint i = 0; i < LABEL_TRIES && pieces > 0; i++)
    {
      guint piece = (pieces / 3 + i * MAX (pieces / LABEL_TRIES, 1)) % pieces;
      TbPoint a = g_array_index (places, TbPoint, 2 * piece),
              b = g_array_index (places, TbPoint, 2 * piece + 1);
      TbLabel label = { .text = text,
                        .x = 0.5 * (a.x + b.x),
                        .y = 0.5 * (a.y + b.y),
                        .across = TB_ALIGN_MIDDLE,
                        .down = TB_ALIGN_MIDDLE,
                        .color = self->canvas->theme.text,
                        .size = 0.88 * self->canvas->em,
                        .plate = TRUE };

      if (label_inside (self, plot, &label))
        return;
    }
}

/* The pieces of a line, in the picture. */
static GArray *
line_pieces (View *self, const cairo_rectangle_t *plot, const TbRoomMap *map, double board)
{
  GArray *pieces = g_array_new (FALSE, FALSE, sizeof (TbPoint));
  TbContourGrid grid = { (map->axis[0].count - 1) / map->stride + 1,
                         (map->axis[1].count - 1) / map->stride + 1, contour_value, map };

  tb_contour_trace (&grid, board, pieces);
  for (guint i = 0; i < pieces->len; i++)
    {
      TbPoint *point = &g_array_index (pieces, TbPoint, i);

      *point = place (self, plot, (TbPoint){ point->x * map->stride, point->y * map->stride });
    }
  return pieces;
}

/* The pocket's edges run along the palest part of the tint: they are dark on any ground. */
static void
stroke_line (View *self, const GArray *pieces, gboolean edge)
{
  const TbTheme *theme = &self->canvas->theme;
  cairo_t *cr = self->canvas->cr;

  for (guint i = 0; i < pieces->len; i++)
    {
      TbPoint point = g_array_index (pieces, TbPoint, i);

      if (i % 2 == 0)
        cairo_move_to (cr, point.x, point.y);
      else
        cairo_line_to (cr, point.x, point.y);
    }
  tb_draw_color (cr, edge ? tb_room_edge_color (theme) : tb_color_with_alpha (theme->text, 0.5));
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_width (cr, theme->line_width * (edge ? 0.8 : 0.35));
  cairo_stroke (cr);
}

typedef enum LineWork
{
  LINE_STROKE,
  LINE_LABEL
} LineWork;

static void
work_on_line (View *self, const cairo_rectangle_t *plot, const TbRoomMap *map, double board, LineWork work)
{
  TbPocketBoards pocket = tb_pocket_boards (&map->setup->shot.assumed);
  g_autoptr (GArray) pieces = line_pieces (self, plot, map, board);

  if (work == LINE_STROKE)
    stroke_line (self, pieces, board == pocket.low || board == pocket.high);
  else
    label_line (self, plot, pieces, board);
}

static char *
bar_text (const TbRoomAxis *axis, const TbRoomWidth *width)
{
  gboolean open = width->low_is_end || width->high_is_end;
  double size = width->high - width->low;

  if (is_board (axis))
    return g_strdup_printf (open ? _ ("≥ %.1f boards") : _ ("%.1f boards"), size);
  /* Translators: a width with its unit, such as "0.7 mph"; the first form: at least as much. */
  return g_strdup_printf (open ? _ ("≥ %.2g %s") : _ ("%.2g %s"), size,
                          axis->field->unit[0] ? _ (axis->field->unit) : "");
}

/* At the bar's far end if that is free, else at the near one. */
static void
label_bar (View *self, const cairo_rectangle_t *plot, int axis, const TbRoomWidth *width)
{
  g_autofree char *text = bar_text (&self->axis[axis], width);
  const double ends[2] = { width->high, width->low };
  double em = self->canvas->em;

  for (int i = 0; i < 2; i++)
    {
      double sign = i == 0 ? 1 : -1;
      TbLabel label = { .text = text, .color = self->canvas->theme.text, .bold = TRUE, .plate = TRUE };

      label.x = plot->x + plot->width * share_at (&self->axis[0], axis == 0 ? ends[i] : 0);
      label.y = plot->y + plot->height * (1 - share_at (&self->axis[1], axis == 1 ? ends[i] : 0));
      label.across = axis == 1 ? TB_ALIGN_MIDDLE : i == 0 ? TB_ALIGN_START : TB_ALIGN_END;
      label.down = axis == 0 ? TB_ALIGN_MIDDLE : i == 0 ? TB_ALIGN_END : TB_ALIGN_START;
      label.x += axis == 0 ? sign * 1.5 * em : 0;
      label.y -= axis == 1 ? sign * 1.2 * em : 0;
      if (tb_canvas_try_label (self->canvas, &label))
        return;
    }
}

/* The bars' numbers, and room for the bars: before the lines' numbers, which then keep off them. */
static void
take_bars (View *self, const cairo_rectangle_t *plot, const TbRoomPanel *panel)
{
  double em = self->canvas->em;
  TbPoint plan = { plot->x + plot->width * share_at (&self->axis[0], 0),
                   plot->y + plot->height * (1 - share_at (&self->axis[1], 0)) };

  for (int axis = 0; axis < TB_ROOM_AXES; axis++)
    {
      const TbRoomWidth *width = panel->width[axis];
      double low = width ? share_at (&self->axis[axis], width->low) : 0;
      double high = width ? share_at (&self->axis[axis], width->high) : 0;
      cairo_rectangle_t box = { plan.x - em, plan.y - em, 2 * em, 2 * em };

      if (axis == 0 && width)
        box = (cairo_rectangle_t){ plot->x + low * plot->width - em, box.y,
                                   (high - low) * plot->width + 2 * em, 2 * em };
      if (axis == 1 && width)
        box = (cairo_rectangle_t){ box.x, plot->y + (1 - high) * plot->height - em, 2 * em,
                                   (high - low) * plot->height + 2 * em };
      tb_label_space_take (&self->canvas->labels, &box);
    }
  for (int axis = 0; axis < TB_ROOM_AXES; axis++)
    if (panel->width[axis] && panel->width[axis]->in_pocket)
      label_bar (self, plot, axis, panel->width[axis]);
}

/* The pocket's edges first, so that their numbers find room first. */
static void
work_on_lines (View *self, const cairo_rectangle_t *plot, const TbRoomMap *map, LineWork work)
{
  TbPocketBoards pocket = tb_pocket_boards (&map->setup->shot.assumed);

  cairo_save (self->canvas->cr);
  tb_draw_rectangle (self->canvas->cr, plot);
  cairo_clip (self->canvas->cr);
  work_on_line (self, plot, map, pocket.low, work);
  work_on_line (self, plot, map, pocket.high, work);
  for (int i = 1; i <= LINES_BEYOND; i++)
    {
      work_on_line (self, plot, map, pocket.low - i * LINE_SPACING, work);
      work_on_line (self, plot, map, pocket.high + i * LINE_SPACING, work);
    }
  cairo_restore (self->canvas->cr);
}

static void
stroke_bar (TbCanvas *canvas, TbPoint a, TbPoint b, gboolean upwards)
{
  double end = BAR_END * canvas->em;

  cairo_move_to (canvas->cr, a.x, a.y);
  cairo_line_to (canvas->cr, b.x, b.y);
  for (int i = 0; i < 2; i++)
    {
      TbPoint tip = i == 0 ? a : b;

      cairo_move_to (canvas->cr, tip.x - (upwards ? end : 0), tip.y - (upwards ? 0 : end));
      cairo_line_to (canvas->cr, tip.x + (upwards ? end : 0), tip.y + (upwards ? 0 : end));
    }
}

/* Twice: the wider stroke in the ground's colour parts the bar from the tint. */
static void
draw_bar (View *self,
          const cairo_rectangle_t *plot,
          int axis,
          const TbRoomWidth *width,
          const TbRunStyle *style)
{
  TbCanvas *canvas = self->canvas;
  double low = share_at (&self->axis[axis], width->low), high = share_at (&self->axis[axis], width->high);
  double middle[TB_ROOM_AXES] = { share_at (&self->axis[0], 0), share_at (&self->axis[1], 0) };
  TbPoint a, b;

  a = axis == 0 ? (TbPoint){ low, middle[1] } : (TbPoint){ middle[0], low };
  b = axis == 0 ? (TbPoint){ high, middle[1] } : (TbPoint){ middle[0], high };
  a = (TbPoint){ plot->x + a.x * plot->width, plot->y + plot->height * (1 - a.y) };
  b = (TbPoint){ plot->x + b.x * plot->width, plot->y + plot->height * (1 - b.y) };
  for (int pass = 0; pass < 2; pass++)
    {
      tb_draw_color (canvas->cr, pass == 0 ? canvas->theme.background : style->color);
      cairo_set_line_width (canvas->cr, style->width * (pass == 0 ? 2 : 1));
      stroke_bar (canvas, a, b, axis == 1);
      cairo_stroke (canvas->cr);
    }
}

static void
draw_plan (View *self, const cairo_rectangle_t *plot, const TbRoomPanel *panel, gboolean before)
{
  TbRunStyle style = tb_run_style (&self->canvas->theme, before);
  TbPoint plan = { plot->x + plot->width * share_at (&self->axis[0], 0),
                   plot->y + plot->height * (1 - share_at (&self->axis[1], 0)) };

  for (int axis = 0; axis < TB_ROOM_AXES; axis++)
    if (panel->width[axis] && panel->width[axis]->in_pocket)
      draw_bar (self, plot, axis, panel->width[axis], &style);
  tb_draw_run_mark (self->canvas->cr, &self->canvas->theme, &style, &plan, 0.42 * self->canvas->em);
}

static void
draw_heading (View *self, const cairo_rectangle_t *plot, const TbRoomPanel *panel, gboolean before)
{
  TbCanvas *canvas = self->canvas;
  double em = canvas->em, y = plot->y - 0.95 * em;
  TbRunStyle style = tb_run_style (&canvas->theme, before);
  TbLabel label
      = { .text = panel->label, .color = canvas->theme.text, .bold = TRUE, .down = TB_ALIGN_MIDDLE };

  cairo_save (canvas->cr);
  tb_draw_color (canvas->cr, style.color);
  tb_draw_set_run (canvas->cr, &style);
  tb_draw_line (canvas->cr, (TbPoint){ plot->x, y }, (TbPoint){ plot->x + SWATCH * em, y });
  cairo_restore (canvas->cr);
  label.x = plot->x + (SWATCH + 0.6) * em;
  label.y = y;
  tb_canvas_label (canvas, &label);
}

static void
draw_panel (View *self, int side)
{
  const TbRoomPanel *panel = panel_of (self->scene, side);
  const cairo_rectangle_t *plot = &self->plot[side];
  cairo_t *cr = self->canvas->cr;

  if (!panel->map || plot->width <= 0 || plot->height <= 0)
    return;
  tb_room_tint_draw (cr, plot, &self->canvas->theme, panel->map);
  tb_room_gutter_draw (cr, plot, &self->canvas->theme, panel->map);
  if (panel->label)
    draw_heading (self, plot, panel, side == 0);
  draw_axes (self, plot, panel->map);
  work_on_lines (self, plot, panel->map, LINE_STROKE);
  take_bars (self, plot, panel);
  work_on_lines (self, plot, panel->map, LINE_LABEL);
  draw_plan (self, plot, panel, side == 0);
  tb_draw_color (cr, self->canvas->theme.quiet);
  cairo_set_line_width (cr, 1);
  cairo_rectangle (cr, floor (plot->x) + 0.5, floor (plot->y) + 0.5, floor (plot->width),
                   floor (plot->height));
  cairo_stroke (cr);
}

static void
draw_legend_bar (View *self, const cairo_rectangle_t *bar, const TbPocketBoards *pocket)
{
  double low = pocket->low - TB_ROOM_TINT_REACH, high = pocket->high + TB_ROOM_TINT_REACH;
  int columns = (int)ceil (bar->width);

  for (int i = 0; i < columns; i++)
    {
      tb_draw_color (self->canvas->cr,
                     tb_room_color (&self->canvas->theme, pocket, low + (high - low) * (i + 0.5) / columns));
      cairo_rectangle (self->canvas->cr, bar->x + i, bar->y, MIN (1.0, bar->width - i), bar->height);
      cairo_fill (self->canvas->cr);
    }
  for (int i = -3; i <= 3; i++)
    {
      double board = i < 0 ? pocket->low + (i + 1) * LINE_SPACING : pocket->high + i * LINE_SPACING;
      g_autofree char *text = g_strdup_printf ("%.4g", board);
      TbLabel label = { .text = text,
                        .x = bar->x + bar->width * (board - low) / (high - low),
                        .y = bar->y + bar->height + 0.15 * self->canvas->em,
                        .across = TB_ALIGN_MIDDLE,
                        .color = self->canvas->theme.quiet,
                        .size = 0.92 * self->canvas->em };

      tb_canvas_try_label (self->canvas, &label);
    }
}

/* After the bar: what hatching means. Returns the width it takes. */
static double
legend_hatch (View *self, const cairo_rectangle_t *legend, gboolean draw)
{
  TbCanvas *canvas = self->canvas;
  double em = canvas->em, bar = LEGEND_BAR * em;
  TbLabel label = { .text = _ ("in the gutter"), .color = canvas->theme.quiet, .down = TB_ALIGN_MIDDLE };
  double width = tb_canvas_measure (canvas, &label).width + 2.4 * em;
  cairo_rectangle_t swatch = { legend->x + legend->width - width, legend->y, 1.8 * em, bar };

  if (!draw)
    return width + em;
  cairo_save (canvas->cr);
  tb_draw_rectangle (canvas->cr, &swatch);
  cairo_clip_preserve (canvas->cr);
  tb_draw_color (canvas->cr, tb_color_with_alpha (canvas->theme.rule, 0.5));
  cairo_fill (canvas->cr);
  tb_room_hatch (canvas->cr, &swatch, &canvas->theme);
  cairo_restore (canvas->cr);
  label.x = swatch.x + swatch.width + 0.5 * em;
  label.y = swatch.y + 0.5 * bar;
  tb_canvas_label (canvas, &label);
  return width;
}

static void
draw_legend (View *self)
{
  TbCanvas *canvas = self->canvas;
  const TbRoomMap *map = self->scene->after.map ? self->scene->after.map : self->scene->before.map;
  TbPocketBoards pocket = tb_pocket_boards (&map->setup->shot.assumed);
  double em = canvas->em;
  TbLabel label = { .text = _ ("board at the pins"), .color = canvas->theme.quiet, .down = TB_ALIGN_MIDDLE };
  double title = tb_canvas_measure (canvas, &label).width + em,
         hatch = legend_hatch (self, &self->legend, FALSE);
  cairo_rectangle_t bar
      = { self->legend.x + title, self->legend.y, self->legend.width - title - hatch, LEGEND_BAR * em };

  if (bar.width < 8 * em)
    return;
  label.x = self->legend.x;
  label.y = bar.y + 0.5 * bar.height;
  tb_canvas_label (canvas, &label);
  draw_legend_bar (self, &bar, &pocket);
  legend_hatch (self, &self->legend, TRUE);
}

void
tb_room_view_draw (cairo_t *cr, double width, double height, const TbRoomScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  View self = { .canvas = &canvas, .scene = scene };

  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  if (!tb_canvas_has_room (&canvas) || (!scene->before.map && !scene->after.map))
    return;
  lay_out (&self);
  for (int side = 0; side < 2; side++)
    draw_panel (&self, side);
  if (scene->show_legend)
    draw_legend (&self);
}

gboolean
tb_room_view_to_miss (double width,
                      double height,
                      const TbRoomScene *scene,
                      const double at[2],
                      double miss[TB_ROOM_AXES],
                      gboolean *is_before)
{
  g_auto (TbCanvas) canvas = { 0 };
  View self = { .canvas = &canvas, .scene = scene };

  tb_canvas_init (&canvas, NULL, width, height, &scene->theme);
  if (!tb_canvas_has_room (&canvas) || (!scene->before.map && !scene->after.map))
    return FALSE;
  lay_out (&self);
  for (int side = 0; side < 2; side++)
    {
      const cairo_rectangle_t *plot = &self.plot[side];
      double across = (at[0] - plot->x) / plot->width, up = 1 - (at[1] - plot->y) / plot->height;

      if (!(plot->width > 0) || !(across >= 0 && across <= 1 && up >= 0 && up <= 1))
        continue;
      miss[0] = self.axis[0].low + across * (self.axis[0].high - self.axis[0].low);
      miss[1] = self.axis[1].low + up * (self.axis[1].high - self.axis[1].low);
      *is_before = side == 0;
      return TRUE;
    }
  return FALSE;
}
