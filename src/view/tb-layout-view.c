/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-layout-view.h"

#include <glib/gi18n-lib.h>

#include "tb-ball-figure.h"
#include "tb-drilling.h"

/* Of the ball's radius. */
#define MARK_SIZE 0.045
#define HELD_SIZE 1.5
#define GRAB_SIZE 0.11
#define ANGLE_AT 0.20 /* rad, from its corner */
#define LABEL_AT 0.34
#define LINE 0.012
#define LEAST_FLAT 0.08
/* Room around the ball, em, and for the line of numbers. */
#define PAD 1.2
#define ROW 2.2
/* Hidden lines and marks. */
#define HIDDEN 0.35
#define GUIDE 0.45

TbLayoutScene
tb_layout_scene_for (const TbBall *ball)
{
  return (TbLayoutScene){
    .theme = tb_theme_light (1), .ball = ball, .eye_over = 0.5 * ball->pap_over, .eye_up = 0.5 * ball->pap_up
  };
}

/* Everything of one picture. */
typedef struct Figure
{
  const TbLayoutScene *scene;
  TbGlobe globe;
  TbLayoutPlaces places;
  double em;
} Figure;

static gboolean
lay_out (Figure *self, double width, double height, const TbLayoutScene *scene)
{
  double radius_m = 0.5 * scene->ball->diameter, em = tb_canvas_text_size (width, height, &scene->theme);
  double bottom = scene->plain ? 0 : ROW * em;

  *self = (Figure){ .scene = scene, .em = em };
  self->globe.radius = MIN (0.5 * width, 0.5 * (height - bottom)) - PAD * em;
  self->globe.centre = (TbPoint){ 0.5 * width, 0.5 * (height - bottom) };
  self->globe.mirrored = scene->mirrored;
  tb_globe_look (&self->globe, tb_layout_place (radius_m, scene->eye_over, scene->eye_up), tb_vec3 (0, 1, 0));
  return self->globe.radius > 0 && tb_layout_places (scene->ball, &self->places) == TB_OK;
}

static void
stroke (const Figure *self, TbCanvas *canvas, double opacity, gboolean dashed)
{
  cairo_t *cr = canvas->cr;
  double width = MAX (1, LINE * self->globe.radius);
  const double dashes[] = { 3 * width, 2.5 * width };

  tb_draw_color (cr, tb_color_with_alpha (canvas->theme.ball_mark, opacity));
  cairo_set_line_width (cr, width);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_dash (cr, dashes, dashed ? G_N_ELEMENTS (dashes) : 0, 0);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

/* Midline and centreline of the grip; the vertical axis line. */
static void
draw_guides (const Figure *self, TbCanvas *canvas)
{
  const TbGlobe *globe = &self->globe;
  double over = self->scene->ball->pap_over / (0.5 * self->scene->ball->diameter);

  tb_globe_add_circle (globe, canvas->cr, tb_vec3 (0, 1, 0), 0.5 * TB_PI, TRUE);
  tb_globe_add_circle (globe, canvas->cr, tb_vec3 (1, 0, 0), 0.5 * TB_PI, TRUE);
  stroke (self, canvas, GUIDE, TRUE);
  /* The great circle through the PAP's foot on the midline, square to it. */
  tb_globe_add_circle (globe, canvas->cr, tb_vec3 (cos (over), 0, -sin (over)), 0.5 * TB_PI, TRUE);
  stroke (self, canvas, 0.8, FALSE);
}

static void
draw_layout_lines (const Figure *self, TbCanvas *canvas)
{
  const TbLayoutPlaces *places = &self->places;
  const TbGlobe *globe = &self->globe;
  const TbVec3 at_pap[] = { tb_vec3 (0, 1, 0), places->pin };
  const TbVec3 at_pin[] = { places->pap, places->mass_bias };

  tb_globe_add_arc (globe, canvas->cr, places->pin, places->pap, TRUE);
  tb_globe_add_arc (globe, canvas->cr, places->pin, places->mass_bias, TRUE);
  stroke (self, canvas, 1, FALSE);
  tb_globe_add_arc (globe, canvas->cr, places->pin, places->pap, FALSE);
  tb_globe_add_arc (globe, canvas->cr, places->pin, places->mass_bias, FALSE);
  stroke (self, canvas, HIDDEN, TRUE);
  tb_globe_add_angle (globe, canvas->cr, places->pap, ANGLE_AT, at_pap);
  tb_globe_add_angle (globe, canvas->cr, places->pin, ANGLE_AT, at_pin);
  stroke (self, canvas, 1, FALSE);
}

/* A hole's mouth in its true size. */
static void
draw_holes (const Figure *self, TbCanvas *canvas)
{
  const TbBall *ball = self->scene->ball;

  for (int i = 0; i < self->places.n_holes; i++)
    {
      double angle = ball->hole[i].diameter / ball->diameter;
      gboolean seen = tb_globe_sees (&self->globe, self->places.hole[i]);

      if (!seen)
        continue;
      tb_globe_add_circle (&self->globe, canvas->cr, self->places.hole[i], angle, TRUE);
      tb_draw_color (canvas->cr, (TbColor){ 0, 0, 0, 0.6 });
      cairo_fill_preserve (canvas->cr);
      stroke (self, canvas, 0.9, FALSE);
    }
}

static void
draw_grip_centre (const Figure *self, TbCanvas *canvas)
{
  TbVec3 grip = tb_vec3 (0, 0, 1);
  TbPoint at = tb_globe_point (&self->globe, grip);
  double size = 0.6 * MARK_SIZE * self->globe.radius;

  if (!tb_globe_sees (&self->globe, grip))
    return;
  cairo_move_to (canvas->cr, at.x - size, at.y - size);
  cairo_line_to (canvas->cr, at.x + size, at.y + size);
  cairo_move_to (canvas->cr, at.x - size, at.y + size);
  cairo_line_to (canvas->cr, at.x + size, at.y - size);
  stroke (self, canvas, 1, FALSE);
}

static TbVec3
mark_place (const Figure *self, TbLayoutMark mark)
{
  return mark == TB_LAYOUT_PIN   ? self->places.pin
         : mark == TB_LAYOUT_PAP ? self->places.pap
                                 : self->places.mass_bias;
}

/* A diamond, so that it is not taken for the pin. */
static void
draw_diamond (cairo_t *cr, TbPoint at, double size)
{
  cairo_move_to (cr, at.x, at.y - size);
  cairo_line_to (cr, at.x + size, at.y);
  cairo_line_to (cr, at.x, at.y + size);
  cairo_line_to (cr, at.x - size, at.y);
  cairo_close_path (cr);
}

static gboolean
is_asymmetric (const TbBall *ball)
{
  return ball->intermediate_differential > 0;
}

static void
draw_mark (const Figure *self, TbCanvas *canvas, TbLayoutMark mark)
{
  cairo_t *cr = canvas->cr;
  TbVec3 place = mark_place (self, mark);
  TbPoint at = tb_globe_point (&self->globe, place);
  double size = MARK_SIZE * self->globe.radius * (self->scene->held == mark ? HELD_SIZE : 1);
  gboolean seen = tb_globe_sees (&self->globe, place);

  tb_draw_color (cr, tb_color_with_alpha (canvas->theme.ball_mark, seen ? 1 : HIDDEN));
  switch (mark)
    {
    case TB_LAYOUT_PIN:
      tb_ball_mark_pin (cr, at, size);
      break;
    case TB_LAYOUT_PAP:
      tb_ball_mark_pap (cr, at, size);
      break;
    default:
      draw_diamond (cr, at, 1.2 * size);
      if (is_asymmetric (self->scene->ball))
        cairo_fill (cr);
      else
        {
          cairo_set_line_width (cr, 0.35 * size);
          cairo_stroke (cr);
        }
    }
}

/* Tries the label on the four sides of a mark, the outer ones first. */
static void
label_place (const Figure *self, TbCanvas *canvas, TbVec3 place, const char *text)
{
  TbPoint at = tb_globe_point (&self->globe, place);
  double gap = 1.9 * MARK_SIZE * self->globe.radius + 0.2 * canvas->em;
  double side = at.x < self->globe.centre.x ? -1 : 1, level = at.y < self->globe.centre.y ? -1 : 1;
  const double offsets[][2] = { { side, 0 },     { 0, level },     { 0, -level },    { -side, 0 },
                                { side, level }, { side, -level }, { -side, level }, { -side, -level } };

  for (gsize i = 0; i < G_N_ELEMENTS (offsets); i++)
    {
      TbLabel label = { .text = text, .color = canvas->theme.text, .plate = TRUE };

      label.x = at.x + offsets[i][0] * gap;
      label.y = at.y + offsets[i][1] * gap;
      label.across = offsets[i][0] < 0 ? TB_ALIGN_END : offsets[i][0] > 0 ? TB_ALIGN_START : TB_ALIGN_MIDDLE;
      label.down = offsets[i][1] < 0 ? TB_ALIGN_END : offsets[i][1] > 0 ? TB_ALIGN_START : TB_ALIGN_MIDDLE;
      if (tb_canvas_try_label (canvas, &label))
        return;
    }
}

static void
label_angle (const Figure *self, TbCanvas *canvas, TbVec3 pole, const TbVec3 between[2], double value)
{
  TbVec3 place = tb_globe_angle_middle (pole, LABEL_AT, between);
  TbPoint at = tb_globe_point (&self->globe, place);
  g_autofree char *text = g_strdup_printf (_ ("%.0f°"), tb_deg_from_radians (value));
  TbLabel label = { .text = text, .x = at.x, .y = at.y, .color = canvas->theme.text, .plate = TRUE };

  label.across = label.down = TB_ALIGN_MIDDLE;
  if (tb_globe_sees (&self->globe, place))
    tb_canvas_try_label (canvas, &label);
}

/* Eighths of an inch are how a layout is measured. */
static char *
inches_text (double metres)
{
  double inches = tb_in_from_metres (metres);
  int eighths = (int)lround (inches * 8);
  static const char *const parts[] = { "", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞" };

  if (fabs (inches * 8 - eighths) > 1e-3 || eighths < 0)
    return g_strdup_printf (_ ("%.2f in"), inches);
  if (eighths < 8 && eighths > 0)
    return g_strdup_printf (_ ("%s in"), parts[eighths]);
  return g_strdup_printf (_ ("%d%s in"), eighths / 8, parts[eighths % 8]);
}

/* Above the middle of the line, or where there is room beside it. */
static void
label_distance (const Figure *self, TbCanvas *canvas)
{
  static const double shifts[] = { 0, -1.3, 1.3, -2.6, 2.6 };
  const TbLayoutPlaces *places = &self->places;
  TbVec3 middle = tb_vec3_unit (tb_vec3_add (places->pin, places->pap), places->pap);
  TbPoint at = tb_globe_point (&self->globe, middle);
  g_autofree char *text = inches_text (self->scene->ball->pin_to_pap);

  for (gsize i = 0; i < G_N_ELEMENTS (shifts) && tb_globe_sees (&self->globe, middle); i++)
    {
      TbLabel label = { .text = text, .x = at.x, .y = at.y + shifts[i] * self->em, .plate = TRUE };

      label.color = canvas->theme.text;
      label.across = label.down = TB_ALIGN_MIDDLE;
      if (tb_canvas_try_label (canvas, &label))
        return;
    }
}

static void
take_mark (const Figure *self, TbCanvas *canvas, TbVec3 place)
{
  TbPoint at = tb_globe_point (&self->globe, place);
  double size = 1.5 * MARK_SIZE * self->globe.radius;
  cairo_rectangle_t box = { at.x - size, at.y - size, 2 * size, 2 * size };

  tb_label_space_take (&canvas->labels, &box);
}

static void
draw_labels (const Figure *self, TbCanvas *canvas)
{
  const TbBall *ball = self->scene->ball;
  const TbLayoutPlaces *places = &self->places;
  const TbVec3 at_pap[] = { tb_vec3 (0, 1, 0), places->pin };
  const TbVec3 at_pin[] = { places->pap, places->mass_bias };

  take_mark (self, canvas, places->pap);
  take_mark (self, canvas, places->pin);
  take_mark (self, canvas, places->mass_bias);
  label_place (self, canvas, places->pap, _ ("PAP"));
  label_place (self, canvas, places->pin, _ ("pin"));
  label_angle (self, canvas, places->pin, at_pin, ball->drilling_angle);
  label_angle (self, canvas, places->pap, at_pap, ball->val_angle);
  label_distance (self, canvas);
  if (tb_globe_sees (&self->globe, places->mass_bias))
    label_place (self, canvas, places->mass_bias,
                 is_asymmetric (ball) ? _ ("mass bias") : _ ("where a mass bias would be"));
  label_place (self, canvas, tb_vec3 (0, 0, 1), _ ("grip"));
}

char *
tb_layout_text (const TbBall *ball)
{
  g_autofree char *distance = inches_text (ball->pin_to_pap);

  /* Translators: drilling angle, pin-to-PAP distance with its unit, VAL angle. */
  return g_strdup_printf (_ ("%.0f° × %s × %.0f°"), tb_deg_from_radians (ball->drilling_angle), distance,
                          tb_deg_from_radians (ball->val_angle));
}

static void
write_numbers (const Figure *self, TbCanvas *canvas)
{
  g_autofree char *layout = tb_layout_text (self->scene->ball);
  g_autofree char *text = g_strdup_printf (_ ("%s (drilling angle × pin to PAP × VAL angle)"), layout);
  TbLabel full = { .text = text, .color = canvas->theme.text },
          brief = { .text = layout, .color = canvas->theme.text };

  full.x = brief.x = 0.5 * canvas->width;
  full.y = brief.y = canvas->height - 0.5 * ROW * canvas->em;
  full.across = brief.across = full.down = brief.down = TB_ALIGN_MIDDLE;
  if (!tb_canvas_try_label (canvas, &full))
    tb_canvas_try_label (canvas, &brief);
}

static void
draw_figure (const Figure *self, TbCanvas *canvas)
{
  tb_globe_draw (&self->globe, canvas);
  draw_guides (self, canvas);
  draw_holes (self, canvas);
  draw_layout_lines (self, canvas);
  draw_grip_centre (self, canvas);
  for (int mark = TB_LAYOUT_PIN; mark <= TB_LAYOUT_MASS_BIAS; mark++)
    draw_mark (self, canvas, (TbLayoutMark)mark);
  if (!self->scene->plain)
    write_numbers (self, canvas);
  draw_labels (self, canvas);
}

void
tb_layout_view_draw (cairo_t *cr, double width, double height, const TbLayoutScene *scene)
{
  g_auto (TbCanvas) canvas = { 0 };
  Figure figure;

  cairo_save (cr);
  tb_canvas_init (&canvas, cr, width, height, &scene->theme);
  tb_canvas_fill_background (&canvas);
  if (lay_out (&figure, width, height, scene))
    draw_figure (&figure, &canvas);
  else
    {
      TbLabel label = { .text = _ ("A ball with these numbers cannot be."), .color = canvas.theme.warning };

      label.x = 0.5 * width;
      label.y = 0.5 * height;
      label.across = label.down = TB_ALIGN_MIDDLE;
      label.wrap = 0.9 * width;
      tb_canvas_label (&canvas, &label);
    }
  cairo_restore (cr);
}

TbLayoutMark
tb_layout_view_mark_at (double width, double height, const TbLayoutScene *scene, TbPoint point)
{
  TbLayoutMark nearest = TB_LAYOUT_NONE;
  Figure figure;

  if (!lay_out (&figure, width, height, scene))
    return TB_LAYOUT_NONE;
  double least = GRAB_SIZE * figure.globe.radius;

  for (int mark = TB_LAYOUT_PIN; mark <= TB_LAYOUT_MASS_BIAS; mark++)
    {
      TbVec3 place = mark_place (&figure, (TbLayoutMark)mark);
      TbPoint at = tb_globe_point (&figure.globe, place);
      double distance = hypot (at.x - point.x, at.y - point.y);

      if (!tb_globe_sees (&figure.globe, place) || distance > least)
        continue;
      least = distance;
      nearest = (TbLayoutMark)mark;
    }
  return nearest;
}

gboolean
tb_layout_view_place (double width, double height, const TbLayoutScene *scene, TbPoint point, TbVec3 *place)
{
  Figure figure;

  return lay_out (&figure, width, height, scene) && tb_globe_place (&figure.globe, point, place);
}
