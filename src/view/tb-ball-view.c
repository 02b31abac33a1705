/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include "tb-ball-figure.h"
#include "tb-draw.h"

/* Distances, em. */
#define PAD 0.9
#define ROW 1.45
#define TITLE_SIZE 1.1
#define FLOOR_GAP 1.0   /* under the ball, for the lane */
#define KEY_GAP 1.4     /* between one of the key's words and the next mark, at most */
#define KEY_SPACE 0.45  /* between a mark and its word */
#define KEY_MARK 1.3    /* width of a mark in the key */
/* Room that the ball is given, of its radius: for its arrow on either side, and above it. */
#define ARROW_ROOM 1.36
#define ABOVE 0.12
/* Where labels in the corners are: so far from the ball's centre, of its radius, and a gap, em. */
#define CORNER_ACROSS 0.62
#define CORNER_DOWN 0.86
#define CORNER_GAP 0.5
#define MAX_CALLOUTS 2

TbBallScene
tb_ball_scene_default (void)
{
  return (TbBallScene){ .theme = tb_theme_light (1), .eye = TB_BALL_FROM_BEHIND, .show_rings = true };
}

/* A label in one of the corners that a round ball leaves free, with a line to what it names. */
typedef struct TbCallout
{
  const char *text;
  TbPoint at;     /* px, what it names */
  double side;    /* corner: −1 on the left, 1 on the right … */
  double level;   /* … −1 above, 1 below */
} TbCallout;

static double
callouts_width (TbCanvas *canvas)
{
  TbLabel axis = { .text = _("spin axis") }, pap = { .text = _("PAP") };

  return MAX (tb_canvas_measure (canvas, &axis).width, tb_canvas_measure (canvas, &pap).width);
}

/* As large as the height lets it, with room for the arrow on either side and for a label in every corner. Returns
 * where what is written below it begins: what height is left over goes above and below the whole. */
static double
lay_ball (TbBallFigure *figure, TbCanvas *canvas, double top, double bottom)
{
  double em = canvas->em, half = 0.5 * canvas->width - PAD * em;
  double height = bottom - top - FLOOR_GAP * em;
  double corner = (half - callouts_width (canvas) - CORNER_GAP * em) / CORNER_ACROSS;

  double spare;

  figure->radius = MAX (MIN (0.5 * height / (1 + 0.5 * ABOVE), MIN (half / ARROW_ROOM, corner)), 1);
  spare = 0.5 * (height - (2 + ABOVE) * figure->radius);
  figure->centre = (TbPoint){ 0.5 * canvas->width, top + spare + (1 + ABOVE) * figure->radius };
  return bottom - spare;
}

static void
draw_floor (const TbBallFigure *figure, TbCanvas *canvas)
{
  cairo_t *cr = canvas->cr;
  double y = tb_draw_crisp (figure->centre.y + figure->radius + 0.5 * canvas->theme.line_width);
  double half = 1.25 * figure->radius;
  TbPoint left = { figure->centre.x - half, y }, right = { figure->centre.x + half, y };

  if (figure->now.phase == TB_PHASE_FLIGHT)
    return;
  tb_draw_color (cr, canvas->theme.rule);
  cairo_set_line_width (cr, MAX (1, 0.6 * canvas->theme.line_width));
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  tb_draw_line (cr, left, right);
}

/* In the view from the side: which way the pins are. */
static void
draw_way (const TbBallFigure *figure, TbCanvas *canvas)
{
  double em = canvas->em, side = figure->scene->path->mirrored ? -1 : 1;
  double y = figure->centre.y + figure->radius + 0.5 * FLOOR_GAP * em + 0.3 * em;
  TbPoint from = { figure->centre.x + side * 0.55 * figure->radius, y };
  TbPoint tip = { figure->centre.x + side * 0.95 * figure->radius, y };
  TbLabel label = { .text = _("to the pins"), .color = canvas->theme.quiet, .y = y, .down = TB_ALIGN_MIDDLE };

  if (figure->scene->eye != TB_BALL_FROM_SIDE)
    return;
  label.x = from.x - side * 0.5 * em;
  label.across = side > 0 ? TB_ALIGN_END : TB_ALIGN_START;
  if (!tb_canvas_try_label (canvas, &label))
    return;
  tb_draw_color (canvas->cr, canvas->theme.quiet);
  cairo_set_line_width (canvas->cr, MAX (1, 0.4 * canvas->theme.line_width));
  tb_draw_line (canvas->cr, from, tip);
  tb_draw_arrow_head (canvas->cr, tip, from, 0.6 * em);
}

/* A line that is dark outside of the ball and light on it. */
static void
draw_leader (TbCanvas *canvas, const TbBallFigure *figure, TbPoint from, TbPoint to)
{
  cairo_t *cr = canvas->cr;

  cairo_set_line_width (cr, MAX (1, 0.35 * canvas->theme.line_width));
  tb_draw_color (cr, canvas->theme.quiet);
  tb_draw_line (cr, from, to);
  cairo_save (cr);
  tb_draw_circle (cr, figure->centre, figure->radius);
  cairo_clip (cr);
  tb_draw_color (cr, canvas->theme.ball_mark);
  tb_draw_line (cr, from, to);
  cairo_restore (cr);
}

static void
draw_callout (TbCanvas *canvas, const TbBallFigure *figure, const TbCallout *callout)
{
  double em = canvas->em, away = CORNER_DOWN * figure->radius;
  TbLabel label = { .text = callout->text, .color = canvas->theme.text, .down = TB_ALIGN_MIDDLE };
  cairo_rectangle_t box;
  TbPoint start;

  label.x = figure->centre.x + callout->side * (CORNER_ACROSS * figure->radius + CORNER_GAP * em);
  label.y = figure->centre.y + callout->level * away;
  label.across = callout->side < 0 ? TB_ALIGN_END : TB_ALIGN_START;
  box = tb_canvas_measure (canvas, &label);
  if (!tb_canvas_try_label (canvas, &label))
    return;
  start.x = CLAMP (callout->at.x, box.x + 0.5 * em, box.x + box.width - 0.5 * em);
  start.y = callout->level < 0 ? box.y + box.height : box.y;
  draw_leader (canvas, figure, start, callout->at);
}

/* Squared distance, in radii, from a corner to what a callout names. */
static double
corner_distance (const TbBallFigure *figure, const TbCallout *callout, double side, double level)
{
  double across = (callout->at.x - figure->centre.x) / figure->radius - side;
  double down = (callout->at.y - figure->centre.y) / figure->radius - level;

  return across * across + down * down;
}

/* Each takes the nearest corner that is left. */
static void
choose_corners (const TbBallFigure *figure, TbCallout callouts[MAX_CALLOUTS])
{
  gboolean taken[4] = { FALSE };

  for (int i = 0; i < MAX_CALLOUTS; i++)
    {
      int best = -1;
      double least = INFINITY;

      for (int corner = 0; corner < 4; corner++)
        {
          double distance
            = corner_distance (figure, &callouts[i], corner % 2 == 0 ? -1 : 1, corner / 2 == 0 ? -1 : 1);

          if (!taken[corner] && distance < least)
            {
              least = distance;
              best = corner;
            }
        }
      taken[best] = TRUE;
      callouts[i].side = best % 2 == 0 ? -1 : 1;
      callouts[i].level = best / 2 == 0 ? -1 : 1;
    }
}

typedef enum TbKeyMark
{
  TB_KEY_PIN,
  TB_KEY_GRIP,
  TB_KEY_TRACK,
  TB_KEY_OIL,
  TB_N_KEYS
} TbKeyMark;

static const char *
key_text (TbKeyMark mark)
{
  switch (mark)
    {
    case TB_KEY_PIN:
      return _("pin");
    case TB_KEY_GRIP:
      return _("grip");
    case TB_KEY_TRACK:
      return _("track");
    case TB_KEY_OIL:
    default:
      return _("oil on it");
    }
}

/* Every mark of the key is drawn on a piece of ball. */
static void
draw_key_mark (TbCanvas *canvas, TbKeyMark mark, TbPoint at)
{
  cairo_t *cr = canvas->cr;
  double em = canvas->em, half = 0.5 * KEY_MARK * em;
  cairo_rectangle_t chip = { at.x - half, at.y - 0.55 * em, 2 * half, 1.1 * em };

  tb_draw_color (cr, canvas->theme.ball);
  tb_draw_rounded (cr, &chip, 0.3 * em);
  cairo_fill (cr);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  if (mark == TB_KEY_OIL)
    {
      tb_draw_color (cr, tb_color_with_alpha (canvas->theme.oil_thick, 1));
      cairo_set_line_width (cr, 0.55 * em);
      tb_draw_line (cr, (TbPoint){ chip.x, at.y }, (TbPoint){ chip.x + chip.width, at.y });
    }
  tb_draw_color (cr, canvas->theme.ball_mark);
  if (mark == TB_KEY_PIN)
    tb_ball_mark_pin (cr, at, 0.26 * em);
  else if (mark == TB_KEY_GRIP)
    tb_ball_mark_hole (cr, at, 0.32 * em);
  else
    {
      cairo_set_line_width (cr, 0.13 * em);
      tb_draw_line (cr, (TbPoint){ chip.x, at.y }, (TbPoint){ chip.x + chip.width, at.y });
    }
}

/* Width of the marks and words shown, and how many, without what is between them. */
static double
key_width (TbCanvas *canvas, const gboolean shown[TB_N_KEYS], int *count)
{
  double width = 0;

  *count = 0;
  for (int i = 0; i < TB_N_KEYS; i++)
    if (shown[i])
      {
        TbLabel label = { .text = key_text ((TbKeyMark) i) };

        width += tb_canvas_measure (canvas, &label).width + (KEY_MARK + KEY_SPACE) * canvas->em;
        (*count)++;
      }
  return width;
}

static void
draw_key (TbCanvas *canvas, const gboolean shown[TB_N_KEYS], double y)
{
  int count;
  double em = canvas->em, width = key_width (canvas, shown, &count);
  double gap = CLAMP ((canvas->width - 2 * PAD * em - width) / MAX (count - 1, 1), 0.3 * em, KEY_GAP * em);
  double x = 0.5 * (canvas->width - width - (count - 1) * gap);

  for (int i = 0; i < TB_N_KEYS; i++)
    if (shown[i])
      {
        TbLabel label = { .text = key_text ((TbKeyMark) i), .y = y, .down = TB_ALIGN_MIDDLE };
        cairo_rectangle_t box;

        label.color = canvas->theme.quiet;
        label.x = x + (KEY_MARK + KEY_SPACE) * em;
        box = tb_canvas_measure (canvas, &label);
        if (tb_canvas_try_label (canvas, &label))
          draw_key_mark (canvas, (TbKeyMark) i, (TbPoint){ x + 0.5 * KEY_MARK * em, y });
        x = box.x + box.width + gap;
      }
}

/* How far down the lane the ball is. */
static char *
distance_text (const TbBallFigure *figure)
{
  double metres = figure->now.position.y;

  if (figure->scene->metric)
    return g_strdup_printf (_("%.1f m"), metres);
  return g_strdup_printf (_("%.0f ft"), tb_ft_from_metres (metres));
}

static char *
caption_text (const TbBallFigure *figure)
{
  g_autofree char *distance = distance_text (figure);
  const char *eye = figure->scene->eye == TB_BALL_FROM_SIDE ? _("from the side") : _("from behind");

  if (figure->now.phase == TB_PHASE_FLIGHT)
    /* Translators: the first is "from behind" or "from the side"; then seconds, and how far down the lane, such as
     * "12 ft". */
    return g_strdup_printf (_("%s, %.2f s, %s, in the air"), eye, figure->now.time, distance);
  return g_strdup_printf (_("%s, %.2f s, %s"), eye, figure->now.time, distance);
}

/* Rev rate, rotation and tilt at the scene's time, as they are told of a release. */
static char *
spin_text (const TbBallFigure *figure)
{
  TbVec3 spin = figure->now.spin;
  double rate = tb_vec3_length (spin), level = hypot (spin.x, spin.y);

  return g_strdup_printf (_("%.0f rpm, rotation %.0f°, tilt %.0f°"),
                          tb_rpm_from_radians_per_second (rate),
                          tb_deg_from_radians (level > 0 ? atan2 (-spin.y, -spin.x) : 0),
                          tb_deg_from_radians (rate > 0 ? asin (spin.z / rate) : 0));
}

/* A line of text in the middle, at the height of its middle. */
static void
write_line (TbCanvas *canvas, const char *text, double y, TbColor color)
{
  TbLabel label = { .text = text, .x = 0.5 * canvas->width, .y = y, .color = color };

  label.across = label.down = TB_ALIGN_MIDDLE;
  tb_canvas_try_label (canvas, &label);
}

static double
write_title (TbCanvas *canvas, const char *title)
{
  TbLabel label = { .text = title, .x = 0.5 * canvas->width, .y = 0.6 * PAD * canvas->em, .bold = TRUE };

  if (title == NULL)
    return 0.6 * PAD * canvas->em;
  label.across = TB_ALIGN_MIDDLE;
  label.color = canvas->theme.text;
  label.size = TITLE_SIZE * canvas->em;
  tb_canvas_try_label (canvas, &label);
  return (0.6 * PAD + ROW) * canvas->em;
}

static void
draw_figure (TbBallFigure *figure, TbCanvas *canvas)
{
  TbCallout callouts[MAX_CALLOUTS] = { { .text = _("spin axis") }, { .text = _("PAP") } };
  TbSeen pap = tb_ball_figure_see_on_ball (figure, figure->scene->path->body.pap);

  draw_floor (figure, canvas);
  tb_ball_figure_draw (figure, canvas);
  callouts[0].at = tb_ball_figure_draw_axis (figure, canvas);
  callouts[1].at = tb_ball_figure_point (figure, pap, 1);
  choose_corners (figure, callouts);
  for (int i = 0; i < MAX_CALLOUTS; i++)
    draw_callout (canvas, figure, &callouts[i]);
  draw_way (figure, canvas);
}

static void
draw_all (TbCanvas *canvas, const TbBallScene *scene)
{
  TbBallFigure figure;
  g_autofree char *caption = NULL, *spin = NULL;
  double row = ROW * canvas->em, top = write_title (canvas, scene->title), bottom;
  gboolean shown[TB_N_KEYS] = { TRUE, TRUE, scene->show_rings };

  if (!tb_ball_figure_init (&figure, scene))
    return;
  shown[TB_KEY_OIL] = scene->show_rings && tb_ball_figure_has_oil (scene->path);
  caption = caption_text (&figure);
  spin = spin_text (&figure);
  bottom = lay_ball (&figure, canvas, top, canvas->height - PAD * canvas->em - 3 * row);
  write_line (canvas, caption, bottom + 0.5 * row, canvas->theme.text);
  write_line (canvas, spin, bottom + 1.5 * row, canvas->theme.quiet);
  draw_key (canvas, shown, bottom + 2.5 * row);
  draw_figure (&figure, canvas);
}

void
tb_ball_view_draw (cairo_t *cr, double width, double height, const TbBallScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };

  cairo_save (cr);
  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  if (tb_canvas_has_room (&canvas))
    draw_all (&canvas, scene);
  cairo_restore (cr);
}
