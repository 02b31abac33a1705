/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-ball-figure.h"
#include "tb-ball-rings.h"
#include "tb-draw.h"

/* The light comes from the upper left: where its spot is, and how large, of the radius. */
#define LIGHT_RIGHT -0.38
#define LIGHT_UP 0.42
#define LIGHT_SIZE 0.06
#define SHADE_REACH 1.25
/* The grid that makes the spin visible: half-circles through the PAP, and circles around it, rad. */
#define MERIDIANS 12
static const double parallels[] = { G_PI / 6, G_PI / 3, G_PI / 2, 2 * G_PI / 3, 5 * G_PI / 6 };
/* A round line is drawn in straight pieces that leave it by at most so much, px; in steps of at least and at most, rad. */
#define ROUND_WITHIN 0.1
#define SMALLEST_STEP 0.02
#define LARGEST_STEP 0.2
#define MOST_STEPS 320 /* round the ball: over 2 pi by the smallest step, and even */
#define GRID_OPACITY 0.18
/* How strong a mark on the hidden side is drawn. */
#define HIDDEN_MARK 0.28
/* Marks, of the ball's radius. */
#define PAP_SIZE 0.055
#define PIN_SIZE 0.042
#define HOLE_SIZE 0.095
/* Holes lie so far from the grip's centre, rad: half a typical span; and the fingers so far to the sides. */
#define HALF_SPAN (2.2 / 4.3)
#define FINGER_ASIDE (0.55 / 4.3)
/* The axis' arrow leaves the ball and goes on to this many radii; the curved arrow lies this far from it, rad. */
#define ARROW_REACH 1.32
#define ARROW_HEAD 0.085
#define TURN_ANGLE 0.36
#define TURN_FROM (0.15 * G_PI)
#define TURN_TO (1.65 * G_PI)
#define TURN_STEPS 48

gboolean
tb_ball_figure_init (TbBallFigure *self, const TbBallScene *scene)
{
  *self = (TbBallFigure){ .scene = scene };
  if (scene->path == NULL || !tb_path_at_time (scene->path, scene->time, &self->now))
    return FALSE;
  self->attitude = tb_quat_to_mat3 (self->now.attitude);
  return TRUE;
}

TbSeen
tb_ball_figure_see (const TbBallFigure *self, TbVec3 direction)
{
  double side = self->scene->path->mirrored ? -1 : 1;

  if (self->scene->eye == TB_BALL_FROM_SIDE)
    return (TbSeen){ side * direction.y, direction.z, direction.x };
  return (TbSeen){ side * direction.x, direction.z, -direction.y };
}

TbSeen
tb_ball_figure_see_on_ball (const TbBallFigure *self, TbVec3 on_ball)
{
  return tb_ball_figure_see (self, tb_mat3_apply (&self->attitude, on_ball));
}

TbPoint
tb_ball_figure_point (const TbBallFigure *self, TbSeen seen, double distance)
{
  return (TbPoint){ self->centre.x + distance * self->radius * seen.right,
                    self->centre.y - distance * self->radius * seen.up };
}

double
tb_ball_figure_step (const TbBallFigure *self)
{
  double flat = CLAMP (1 - ROUND_WITHIN / self->radius, 0, 1);

  return CLAMP (2 * acos (flat), SMALLEST_STEP, LARGEST_STEP);
}

static void
draw_sphere (const TbBallFigure *self, TbCanvas *canvas)
{
  cairo_t *cr = canvas->cr;
  const TbTheme *theme = &canvas->theme;
  TbColor rim = tb_color_mix (theme->ball, (TbColor){ 0, 0, 0, 1 }, 0.35);
  double x = self->centre.x + LIGHT_RIGHT * self->radius, y = self->centre.y - LIGHT_UP * self->radius;
  cairo_pattern_t *shading = cairo_pattern_create_radial (x,
                                                          y,
                                                          LIGHT_SIZE * self->radius,
                                                          self->centre.x,
                                                          self->centre.y,
                                                          SHADE_REACH * self->radius);

  cairo_pattern_add_color_stop_rgb (shading, 0, theme->ball_light.red, theme->ball_light.green, theme->ball_light.blue);
  cairo_pattern_add_color_stop_rgb (shading, 0.6, theme->ball.red, theme->ball.green, theme->ball.blue);
  cairo_pattern_add_color_stop_rgb (shading, 1, rim.red, rim.green, rim.blue);
  cairo_set_source (cr, shading);
  tb_draw_circle (cr, self->centre, self->radius);
  cairo_fill (cr);
  cairo_pattern_destroy (shading);
}

/* Two unit vectors that stand on a third and on each other, right-handed. */
static void
stand_on (TbVec3 axis, TbVec3 *first, TbVec3 *second)
{
  TbVec3 aside = fabs (axis.z) < 0.9 ? tb_vec3 (0, 0, 1) : tb_vec3 (1, 0, 0);

  *first = tb_vec3_unit (tb_vec3_cross (aside, axis), tb_vec3 (1, 0, 0));
  *second = tb_vec3_cross (axis, *first);
}

/* A circle on the ball: so far from its pole. */
static TbVec3
around (TbVec3 pole, double distance, double turn)
{
  TbVec3 first, second, out;

  stand_on (pole, &first, &second);
  out = tb_vec3_add_scaled (tb_vec3_scale (first, cos (turn)), sin (turn), second);
  return tb_vec3_add_scaled (tb_vec3_scale (pole, cos (distance)), sin (distance), out);
}

/* Adds the part that is seen of a line on the ball to the path. */
static void
add_seen (const TbBallFigure *self, cairo_t *cr, const TbSeen *seen, int count)
{
  for (int i = 0; i < count; i++)
    {
      TbPoint at = tb_ball_figure_point (self, seen[i], 1);

      if (seen[i].near < 0)
        continue;
      (i > 0 && seen[i - 1].near >= 0 ? cairo_line_to : cairo_move_to) (cr, at.x, at.y);
    }
}

static void
draw_grid (const TbBallFigure *self, TbCanvas *canvas)
{
  TbVec3 pap = self->scene->path->body.pap;
  TbSeen line[MOST_STEPS + 1];
  int half = (int) ceil (G_PI / tb_ball_figure_step (self)), round = 2 * half;

  for (guint i = 0; i < G_N_ELEMENTS (parallels); i++)
    {
      for (int j = 0; j <= round; j++)
        line[j] = tb_ball_figure_see_on_ball (self, around (pap, parallels[i], 2 * G_PI * j / round));
      add_seen (self, canvas->cr, line, round + 1);
    }
  for (int i = 0; i < MERIDIANS; i++)
    {
      for (int j = 0; j <= half; j++)
        line[j] = tb_ball_figure_see_on_ball (self, around (pap, G_PI * j / half, 2 * G_PI * i / MERIDIANS));
      add_seen (self, canvas->cr, line, half + 1);
    }
  tb_draw_color (canvas->cr, tb_color_with_alpha (canvas->theme.ball_mark, GRID_OPACITY));
  cairo_set_line_width (canvas->cr, MAX (0.7, 0.3 * canvas->theme.line_width));
  cairo_stroke (canvas->cr);
}

void
tb_ball_mark_pap (cairo_t *cr, TbPoint at, double size)
{
  cairo_set_line_width (cr, 0.35 * size);
  tb_draw_circle (cr, at, size);
  cairo_stroke (cr);
  cairo_move_to (cr, at.x - 1.5 * size, at.y);
  cairo_line_to (cr, at.x + 1.5 * size, at.y);
  cairo_move_to (cr, at.x, at.y - 1.5 * size);
  cairo_line_to (cr, at.x, at.y + 1.5 * size);
  cairo_stroke (cr);
}

void
tb_ball_mark_pin (cairo_t *cr, TbPoint at, double size)
{
  tb_draw_circle (cr, at, size);
  cairo_fill (cr);
}

void
tb_ball_mark_hole (cairo_t *cr, TbPoint at, double size)
{
  cairo_set_line_width (cr, 0.3 * size);
  tb_draw_circle (cr, at, size);
  cairo_stroke (cr);
}

static void
set_mark_color (TbCanvas *canvas, TbSeen seen)
{
  tb_draw_color (canvas->cr,
                 tb_color_with_alpha (canvas->theme.ball_mark, seen.near >= 0 ? 1 : HIDDEN_MARK));
}

/* A hole's mouth lies flat on the ball: towards the rim it is seen as an ellipse. */
static void
draw_hole (const TbBallFigure *self, TbCanvas *canvas, TbVec3 on_ball, double size)
{
  cairo_t *cr = canvas->cr;
  TbSeen seen = tb_ball_figure_see_on_ball (self, on_ball);
  TbPoint at = tb_ball_figure_point (self, seen, 1);

  cairo_save (cr);
  cairo_translate (cr, at.x, at.y);
  cairo_rotate (cr, atan2 (-seen.up, seen.right));
  cairo_scale (cr, MAX (fabs (seen.near), 0.08), 1);
  tb_draw_circle (cr, (TbPoint){ 0, 0 }, size);
  cairo_restore (cr);
  if (seen.near >= 0)
    {
      tb_draw_color (cr, (TbColor){ 0, 0, 0, 0.55 });
      cairo_fill_preserve (cr);
    }
  set_mark_color (canvas, seen);
  cairo_set_line_width (cr, 0.22 * size);
  cairo_stroke (cr);
}

/* Two fingers and a thumb, at the ends of a typical span: the path keeps where the grip is, not its measures. */
static void
draw_grip (const TbBallFigure *self, TbCanvas *canvas)
{
  const TbBody *body = &self->scene->path->body;
  TbVec3 over = tb_vec3_cross (body->up, body->grip);
  TbVec3 fingers = tb_vec3_add_scaled (tb_vec3_scale (body->grip, cos (HALF_SPAN)), sin (HALF_SPAN), body->up);
  TbVec3 thumb = tb_vec3_add_scaled (tb_vec3_scale (body->grip, cos (HALF_SPAN)), -sin (HALF_SPAN), body->up);
  double size = HOLE_SIZE * self->radius;

  for (int side = -1; side <= 1; side += 2)
    draw_hole (self,
               canvas,
               tb_vec3_unit (tb_vec3_add_scaled (fingers, side * FINGER_ASIDE, over), fingers),
               0.82 * size);
  draw_hole (self, canvas, thumb, size);
}

static void
draw_marks (const TbBallFigure *self, TbCanvas *canvas, gboolean hidden)
{
  const TbBody *body = &self->scene->path->body;
  TbSeen pap = tb_ball_figure_see_on_ball (self, body->pap), pin = tb_ball_figure_see_on_ball (self, body->pin);

  if ((pin.near < 0) == hidden)
    {
      set_mark_color (canvas, pin);
      tb_ball_mark_pin (canvas->cr, tb_ball_figure_point (self, pin, 1), PIN_SIZE * self->radius);
    }
  if ((pap.near < 0) == hidden)
    {
      set_mark_color (canvas, pap);
      tb_ball_mark_pap (canvas->cr, tb_ball_figure_point (self, pap, 1), PAP_SIZE * self->radius);
    }
}

/* Marks near the rim are cut off by it. */
static void
draw_marks_inside (const TbBallFigure *self, TbCanvas *canvas, gboolean hidden)
{
  cairo_save (canvas->cr);
  tb_draw_circle (canvas->cr, self->centre, self->radius);
  cairo_clip (canvas->cr);
  if (!hidden)
    draw_grip (self, canvas);
  draw_marks (self, canvas, hidden);
  cairo_restore (canvas->cr);
}

void
tb_ball_figure_draw (const TbBallFigure *self, TbCanvas *canvas)
{
  g_autoptr (GArray) rings = self->scene->show_rings ? tb_ball_rings_find (self) : NULL;

  /* All of it is drawn anew in every frame; cairo's finer steps at the edges are not seen, and cost half as much again. */
  cairo_save (canvas->cr);
  cairo_set_antialias (canvas->cr, CAIRO_ANTIALIAS_FAST);
  draw_sphere (self, canvas);
  draw_marks_inside (self, canvas, TRUE);
  if (rings != NULL)
    tb_ball_rings_draw (rings, canvas, TRUE);
  draw_grid (self, canvas);
  if (rings != NULL)
    tb_ball_rings_draw (rings, canvas, FALSE);
  draw_marks_inside (self, canvas, FALSE);
  cairo_restore (canvas->cr);
}

/* A curved arrow about the axis: which way the ball turns. */
static void
draw_turn (const TbBallFigure *self, TbCanvas *canvas, TbVec3 axis)
{
  cairo_t *cr = canvas->cr;
  TbSeen line[TURN_STEPS + 1];
  TbPoint tip, from;

  for (int i = 0; i <= TURN_STEPS; i++)
    line[i] = tb_ball_figure_see (self,
                                  around (axis, TURN_ANGLE, TURN_FROM + (TURN_TO - TURN_FROM) * i / TURN_STEPS));
  tb_draw_color (cr, canvas->theme.ball_mark);
  cairo_set_line_width (cr, 0.7 * canvas->theme.line_width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  add_seen (self, cr, line, TURN_STEPS + 1);
  cairo_stroke (cr);
  if (line[TURN_STEPS].near < 0)
    return;
  tip = tb_ball_figure_point (self, line[TURN_STEPS], 1);
  from = tb_ball_figure_point (self, line[TURN_STEPS - 3], 1);
  tb_draw_arrow_head (cr, tip, from, ARROW_HEAD * self->radius);
}

/* The arrow's own length that lies over the ball, from the surface on, in radii from the centre. */
static double
leaves_ball_at (TbSeen axis)
{
  double flat = hypot (axis.right, axis.up);

  return flat > 1 / ARROW_REACH ? 1 / flat : ARROW_REACH;
}

TbPoint
tb_ball_figure_draw_axis (const TbBallFigure *self, TbCanvas *canvas)
{
  cairo_t *cr = canvas->cr;
  TbVec3 axis = tb_vec3_unit (self->now.spin, tb_vec3 (-1, 0, 0));
  TbSeen seen = tb_ball_figure_see (self, axis);
  TbPoint root = tb_ball_figure_point (self, seen, 1), tip = tb_ball_figure_point (self, seen, ARROW_REACH);
  TbPoint edge = tb_ball_figure_point (self, seen, leaves_ball_at (seen));

  cairo_set_line_width (cr, canvas->theme.line_width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  if (seen.near >= 0)
    {
      draw_turn (self, canvas, axis);
      tb_draw_color (cr, canvas->theme.ball_mark);
      tb_draw_line (cr, root, edge);
    }
  if (leaves_ball_at (seen) < ARROW_REACH)
    {
      tb_draw_color (cr, canvas->theme.text);
      tb_draw_line (cr, edge, tip);
      tb_draw_arrow_head (cr, tip, edge, ARROW_HEAD * self->radius);
    }
  else if (seen.near >= 0)
    {
      tb_draw_color (cr, canvas->theme.ball_mark);
      tb_draw_arrow_head (cr, tip, root, ARROW_HEAD * self->radius);
    }
  return tip;
}
