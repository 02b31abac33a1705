/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-bag-view.h"

#include <glib/gi18n-lib.h>

#include "tb-lane-film.h"
#include "tb-lane-ground.h"
#include "tb-lane-runs.h"
#include "tb-path-line.h"

/* Of the general colour-blind-safe palette of M. Okabe and K. Ito (2008), without its yellows: on wood they
 * drown. */
static const TbColor palette[] = {
  { 0.000, 0.447, 0.698, 1 }, { 0.835, 0.369, 0.000, 1 }, { 0.000, 0.620, 0.451, 1 },
  { 0.800, 0.475, 0.655, 1 }, { 0.337, 0.706, 0.914, 1 }, { 0.250, 0.250, 0.250, 1 },
};
/* Dashes, em: on and off; the first is solid. A colour comes back with other dashes. */
static const double dashes[][4]
    = { { 0 }, { 1.0, 0.5, 1.0, 0.5 }, { 0.25, 0.4, 0.25, 0.4 }, { 1.0, 0.4, 0.2, 0.4 } };
/* Distances, em. */
#define PAD 0.8
#define LADDER_SHARE 0.45 /* of the picture at most */
#define SPINE 2.0         /* from the ladder's left to its spine */
#define LABEL_AT 2.6      /* from the spine to the numbers */
#define NUMBER 0.75       /* radius of a number's disc */
#define CASING 0.22
#define STRONG 1.6
#define FAINT 0.35
#define LADDER_STEP 5
/* A disc lighter than this has a dark number. */
#define LIGHT_DISC 0.5

/* How light a colour is, 0 to 1 (ITU-R BT.709 weights). */
static double
lightness (TbColor color)
{
  return 0.2126 * color.red + 0.7152 * color.green + 0.0722 * color.blue;
}

/* On a dark ground everything is lighter. */
#define DARK_LIFT 0.3

static TbColor
ball_color (const TbTheme *theme, guint index)
{
  TbColor color = palette[index % G_N_ELEMENTS (palette)];

  if (lightness (theme->background) > 0.5)
    return color;
  /* The grey would drown. */
  return index % G_N_ELEMENTS (palette) == G_N_ELEMENTS (palette) - 1
             ? theme->text
             : tb_color_mix (color, (TbColor){ 1, 1, 1, 1 }, DARK_LIFT);
}

static void
set_ball_line (cairo_t *cr, guint index, double em)
{
  const double *pattern = dashes[(index / G_N_ELEMENTS (palette) + index) % G_N_ELEMENTS (dashes)];
  double scaled[4];

  for (int i = 0; i < 4; i++)
    scaled[i] = pattern[i] * em;
  cairo_set_dash (cr, scaled, pattern[0] > 0 ? 4 : 0, 0);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
}

/* Lane. */

static TbPoint
point_of (const TbPath *path, const TbSample *sample, const void *layout)
{
  return tb_lane_run_point (layout, path, sample);
}

static void
draw_path (TbCanvas *canvas, const TbLaneLayout *layout, const TbBagScene *scene, guint i)
{
  cairo_t *cr = canvas->cr;
  const TbPath *path = scene->paths[i].path;
  double width = canvas->theme.line_width * (scene->chosen == i ? STRONG : 1);

  for (int flight = 0; flight < 2; flight++)
    {
      g_autoptr (TbPolyline) line = tb_path_line (path, flight != 0, TB_PIT_Y, point_of, layout);

      tb_polyline_trace (line, cr);
      cairo_set_dash (cr, NULL, 0, 0);
      cairo_set_line_width (cr, width + CASING * canvas->em);
      tb_draw_color (cr, tb_color_with_alpha (canvas->theme.wood, 0.75));
      cairo_stroke_preserve (cr);
      set_ball_line (cr, i, canvas->em);
      cairo_set_line_width (cr, width);
      tb_draw_color (cr, ball_color (&canvas->theme, i));
      cairo_stroke (cr);
      cairo_set_dash (cr, NULL, 0, 0);
    }
}

static void
draw_number (TbCanvas *canvas, guint index, TbPoint at, double radius)
{
  g_autofree char *text = g_strdup_printf ("%u", index + 1);
  TbColor color = ball_color (&canvas->theme, index);
  TbLabel label = { .text = text, .x = at.x, .y = at.y, .bold = TRUE, .size = 1.15 * radius };

  label.color = lightness (color) > LIGHT_DISC ? (TbColor){ 0, 0, 0, 1 } : (TbColor){ 1, 1, 1, 1 };
  label.across = label.down = TB_ALIGN_MIDDLE;
  tb_draw_circle (canvas->cr, at, radius);
  tb_draw_color (canvas->cr, color);
  cairo_fill_preserve (canvas->cr);
  tb_draw_color (canvas->cr, (TbColor){ 1, 1, 1, 0.9 });
  cairo_set_line_width (canvas->cr, MAX (0.8, 0.1 * radius));
  cairo_stroke (canvas->cr);
  tb_canvas_label (canvas, &label);
}

static void
draw_lane (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *lane, const TbBagScene *scene)
{
  tb_lane_ground_draw (canvas, layout, lane);
  tb_lane_scales_draw (canvas, layout, lane);
  tb_lane_pins_draw (canvas, layout);
  for (guint i = 0; i < scene->n_paths; i++)
    if (scene->paths[i].path != NULL && scene->paths[i].path->count > 0 && i != scene->chosen)
      draw_path (canvas, layout, scene, i);
  if (scene->chosen < scene->n_paths && scene->paths[scene->chosen].path != NULL)
    draw_path (canvas, layout, scene, scene->chosen);
}

/* Ladder. */

/* Where a ball stands on the ladder. */
typedef struct Rung
{
  guint index;
  double at;  /* px, its true height */
  double put; /* px, its label's height */
  char *text;
} Rung;

static int
compare_rungs (const void *a, const void *b)
{
  const Rung *x = a, *y = b;

  return x->at != y->at ? (x->at < y->at ? -1 : 1) : x->index < y->index ? -1 : 1;
}

static void
clear_rung (gpointer rung)
{
  g_free (((Rung *)rung)->text);
}

/* FALSE if the ball has no such board. */
static gboolean
set_rung (Rung *rung,
          const TbLaneLayout *layout,
          const TbLaneScene *lane,
          const TbBagScene *scene,
          const TbBagPath *ball)
{
  const TbPath *path = ball->path;
  TbSample sample = path->samples[path->count - 1];
  double board;

  if (scene->at_arrows && !tb_path_at_distance (path, TB_ARROWS_Y, &sample))
    return FALSE;
  rung->at = rung->put = tb_lane_run_point (layout, path, &sample).y;
  board = tb_scene_board (lane, tb_lane_x (path->mirrored, sample.position.x));
  rung->text
      = scene->at_arrows || path->result == TB_RESULT_PINS
            ? g_strdup_printf ("%.1f  %s", board, ball->label)
            /* Translators: a distance from the foul line, a ball. */
            : g_strdup_printf (_ ("gutter, %.0f ft  %s"), tb_ft_from_metres (sample.position.y), ball->label);
  return TRUE;
}

static GArray *
find_rungs (const TbLaneLayout *layout, const TbLaneScene *lane, const TbBagScene *scene)
{
  GArray *rungs = g_array_new (FALSE, FALSE, sizeof (Rung));

  g_array_set_clear_func (rungs, clear_rung);
  for (guint i = 0; i < scene->n_paths; i++)
    {
      Rung rung = { .index = i };

      if (scene->paths[i].path != NULL && scene->paths[i].path->count > 0
          && set_rung (&rung, layout, lane, scene, &scene->paths[i]))
        g_array_append_val (rungs, rung);
    }
  g_array_sort (rungs, compare_rungs);
  return rungs;
}

static void
spread_rungs (GArray *rungs, const TbCanvas *canvas, double top, double bottom)
{
  guint count = rungs->len;
  g_autofree double *centres = g_new (double, MAX (count, 1)), *sizes = g_new (double, MAX (count, 1));
  const double ends[2] = { top, bottom };

  for (guint i = 0; i < count; i++)
    {
      centres[i] = g_array_index (rungs, Rung, i).at;
      sizes[i] = 2 * NUMBER * canvas->em;
    }
  if (tb_spread (centres, sizes, (int)count, ends, 0.15 * canvas->em))
    for (guint i = 0; i < count; i++)
      g_array_index (rungs, Rung, i).put = centres[i];
}

static double
board_height (const TbLaneLayout *layout, const TbLaneScene *lane, double board)
{
  return tb_lane_layout_point (layout, tb_lane_x (lane->mirrored, tb_x_from_board (board)), TB_HEAD_PIN_Y, 0)
      .y;
}

static void
draw_spine (TbCanvas *canvas, const TbLaneLayout *layout, const TbLaneScene *lane, double x)
{
  cairo_t *cr = canvas->cr;
  double em = canvas->em, top = layout->lane.y, bottom = layout->lane.y + layout->lane.height;
  double low
      = tb_lane_layout_point (layout, tb_lane_x (lane->mirrored, lane->pocket_low), TB_HEAD_PIN_Y, 0).y;
  double high
      = tb_lane_layout_point (layout, tb_lane_x (lane->mirrored, lane->pocket_high), TB_HEAD_PIN_Y, 0).y;
  cairo_rectangle_t pocket = { x - 0.3 * em, MIN (low, high), 0.6 * em, fabs (high - low) };

  tb_draw_color (cr, canvas->theme.rule);
  cairo_set_line_width (cr, 1);
  tb_draw_line (cr, (TbPoint){ tb_draw_crisp (x), top }, (TbPoint){ tb_draw_crisp (x), bottom });
  if (pocket.height > 0)
    {
      tb_draw_rectangle (cr, &pocket);
      tb_draw_color (cr, tb_color_with_alpha (canvas->theme.text, 0.35));
      cairo_fill (cr);
    }
  for (int board = LADDER_STEP; board < TB_LANE_BOARDS; board += LADDER_STEP)
    {
      double y = board_height (layout, lane, board);
      g_autofree char *text = g_strdup_printf ("%d", board);
      TbLabel label
          = { .text = text, .x = x - 0.7 * em, .y = y, .across = TB_ALIGN_END, .down = TB_ALIGN_MIDDLE };

      label.color = canvas->theme.quiet;
      tb_draw_color (cr, canvas->theme.rule);
      tb_draw_line (cr, (TbPoint){ x - 0.4 * em, tb_draw_crisp (y) }, (TbPoint){ x, tb_draw_crisp (y) });
      tb_canvas_try_label (canvas, &label);
    }
}

/* A text that ends at the picture's edge; free it. */
static char *
fitting_text (TbCanvas *canvas, const char *text, double room)
{
  g_autofree char *cut = g_strdup (text);

  for (glong length = g_utf8_strlen (text, -1); length > 1; length--)
    {
      TbLabel label = { .text = cut };

      if (tb_canvas_measure (canvas, &label).width <= room)
        break;
      g_autofree char *head = g_utf8_substring (text, 0, length - 2);

      g_free (cut);
      cut = g_strconcat (g_strchomp (head), "…", NULL);
    }
  return g_steal_pointer (&cut);
}

static void
draw_rung (TbCanvas *canvas, const TbBagScene *scene, const Rung *rung, double x)
{
  cairo_t *cr = canvas->cr;
  double em = canvas->em, strength = scene->chosen == G_MAXUINT || scene->chosen == rung->index ? 1 : FAINT;
  TbPoint disc = { x + LABEL_AT * em, rung->put };
  TbLabel label = { .x = disc.x + (NUMBER + 0.4) * em, .y = rung->put, .down = TB_ALIGN_MIDDLE };
  g_autofree char *text = fitting_text (canvas, rung->text, canvas->width - label.x - 0.3 * em);

  label.text = text;
  label.color = canvas->theme.text;
  label.bold = scene->chosen == rung->index;
  tb_draw_color (cr, tb_color_with_alpha (ball_color (&canvas->theme, rung->index), MAX (strength, 0.6)));
  cairo_set_line_width (cr, MAX (1, 0.6 * canvas->theme.line_width));
  cairo_move_to (cr, x - 0.35 * em, rung->at);
  cairo_line_to (cr, x + 0.35 * em, rung->at);
  cairo_line_to (cr, disc.x - NUMBER * em, rung->put);
  cairo_stroke (cr);
  draw_number (canvas, rung->index, disc, NUMBER * em);
  tb_canvas_label (canvas, &label);
}

static void
draw_ladder (TbCanvas *canvas,
             const TbLaneLayout *layout,
             const TbLaneScene *lane,
             const TbBagScene *scene,
             double left)
{
  g_autoptr (GArray) rungs = find_rungs (layout, lane, scene);
  double em = canvas->em, x = left + SPINE * em;
  TbLabel title = { .x = left, .y = 0.5 * PAD * em, .color = canvas->theme.quiet };

  title.text = scene->at_arrows ? _ ("board at the arrows") : _ ("board at the pins");
  tb_canvas_try_label (canvas, &title);
  draw_spine (canvas, layout, lane, x);
  spread_rungs (rungs, canvas, layout->lane.y, canvas->height - 0.5 * PAD * em);
  for (guint i = 0; i < rungs->len; i++)
    draw_rung (canvas, scene, &g_array_index (rungs, Rung, i), x);
}

/* Room for the longest name, where the picture has it. */
static double
ladder_width (TbCanvas *canvas, const TbBagScene *scene)
{
  double em = canvas->em, widest = 0;

  for (guint i = 0; i < scene->n_paths; i++)
    {
      g_autofree char *text = g_strdup_printf ("39.9  %s", scene->paths[i].label);
      TbLabel label = { .text = text, .bold = TRUE };

      widest = fmax (widest, tb_canvas_measure (canvas, &label).width);
    }
  return fmin ((SPINE + LABEL_AT + NUMBER + 0.4 + PAD) * em + widest, LADDER_SHARE * canvas->width);
}

static TbLaneScene
lane_scene (const TbBagScene *scene)
{
  TbLaneScene lane = tb_lane_scene_default ();

  lane.theme = scene->theme;
  lane.projection = TB_LANE_PLAN_SIDEWAYS;
  lane.oil = scene->oil;
  lane.oil_scale = scene->oil_scale;
  lane.pocket_low = scene->pocket_low;
  lane.pocket_high = scene->pocket_high;
  lane.mirrored = scene->mirrored;
  lane.show_phases = false;
  lane.show_legend = false;
  return lane;
}

void
tb_bag_view_draw (cairo_t *cr, double width, double height, const TbBagScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 }, side = { 0 };
  TbLaneScene lane = lane_scene (scene), bare = lane;
  TbLaneLayout layout;
  double ladder;

  cairo_save (cr);
  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  ladder = ladder_width (&canvas, scene);
  /* The lane's own picture ends where the ladder begins; what is told there of the ends is told by the
   * ladder. */
  bare.pocket_low = bare.pocket_high;
  if (scene->at_arrows)
    lane.pocket_low = lane.pocket_high;
  tb_canvas_init (&side, cr, width - ladder, height, &canvas.theme);
  tb_lane_layout_init (&layout, &side, &bare);
  draw_lane (&side, &layout, &bare, scene);
  draw_ladder (&canvas, &layout, &lane, scene, width - ladder);
  cairo_restore (cr);
}

void
tb_bag_view_draw_number (cairo_t *cr, double size, const TbTheme *theme, guint index)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbTheme whole = *theme;

  cairo_save (cr);
  tb_canvas_init (&canvas, cr, size, size, &whole);
  draw_number (&canvas, index, (TbPoint){ 0.5 * size, 0.5 * size }, 0.46 * size);
  cairo_restore (cr);
}
