/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-globe.h"

/* The light comes from the upper left, as on every ball. */
#define LIGHT_RIGHT -0.38
#define LIGHT_UP 0.42
#define LIGHT_SIZE 0.06
#define SHADE_REACH 1.25
#define RIM_SHADE 0.35
/* Vertices of a whole circle. */
#define CIRCLE_STEPS 144

void
tb_globe_look (TbGlobe *self, TbVec3 near, TbVec3 up)
{
  TbVec3 aside = fabs (near.y) < 0.9 ? tb_vec3 (0, 1, 0) : tb_vec3 (1, 0, 0);

  self->near = tb_vec3_unit (near, tb_vec3 (0, 0, 1));
  self->up = tb_vec3_unit (tb_vec3_add_scaled (up, -tb_vec3_dot (up, self->near), self->near), aside);
  self->right = tb_vec3_cross (self->up, self->near);
}

TbPoint
tb_globe_point (const TbGlobe *self, TbVec3 place)
{
  double side = self->mirrored ? -1 : 1;

  return (TbPoint){ self->centre.x + side * self->radius * tb_vec3_dot (place, self->right),
                    self->centre.y - self->radius * tb_vec3_dot (place, self->up) };
}

gboolean
tb_globe_sees (const TbGlobe *self, TbVec3 place)
{
  return tb_vec3_dot (place, self->near) >= 0;
}

gboolean
tb_globe_place (const TbGlobe *self, TbPoint point, TbVec3 *place)
{
  double side = self->mirrored ? -1 : 1, across, up, length;

  if (!(self->radius > 0))
    return FALSE;
  across = side * (point.x - self->centre.x) / self->radius;
  up = (self->centre.y - point.y) / self->radius;
  length = hypot (across, up);
  if (length > 1)
    {
      across /= length;
      up /= length;
    }
  *place = tb_vec3_add_scaled (tb_vec3_add_scaled (tb_vec3_scale (self->right, across), up, self->up),
                               sqrt (fmax (1 - across * across - up * up, 0)), self->near);
  return TRUE;
}

void
tb_globe_draw (const TbGlobe *self, TbCanvas *canvas)
{
  cairo_t *cr = canvas->cr;
  const TbTheme *theme = &canvas->theme;
  TbColor rim = tb_color_mix (theme->ball, (TbColor){ 0, 0, 0, 1 }, RIM_SHADE);
  double x = self->centre.x + LIGHT_RIGHT * self->radius, y = self->centre.y - LIGHT_UP * self->radius;
  cairo_pattern_t *shading = cairo_pattern_create_radial (x, y, LIGHT_SIZE * self->radius, self->centre.x,
                                                          self->centre.y, SHADE_REACH * self->radius);

  cairo_pattern_add_color_stop_rgb (shading, 0, theme->ball_light.red, theme->ball_light.green,
                                    theme->ball_light.blue);
  cairo_pattern_add_color_stop_rgb (shading, 0.6, theme->ball.red, theme->ball.green, theme->ball.blue);
  cairo_pattern_add_color_stop_rgb (shading, 1, rim.red, rim.green, rim.blue);
  cairo_set_source (cr, shading);
  tb_draw_circle (cr, self->centre, self->radius);
  cairo_fill (cr);
  cairo_pattern_destroy (shading);
}

/* Adds one more place of a line; `joined` tells whether the one before was added. */
static void
add_place (const TbGlobe *self, cairo_t *cr, TbVec3 place, gboolean seen, gboolean *joined)
{
  TbPoint at = tb_globe_point (self, place);

  if (tb_globe_sees (self, place) != seen)
    {
      *joined = FALSE;
      return;
    }
  (*joined ? cairo_line_to : cairo_move_to) (cr, at.x, at.y);
  *joined = TRUE;
}

/* A unit vector square to another, towards a third. */
static TbVec3
square_to (TbVec3 pole, TbVec3 towards)
{
  TbVec3 aside = fabs (pole.y) < 0.9 ? tb_vec3 (0, 1, 0) : tb_vec3 (1, 0, 0);

  aside = tb_vec3_unit (tb_vec3_add_scaled (aside, -tb_vec3_dot (aside, pole), pole), aside);
  return tb_vec3_unit (tb_vec3_add_scaled (towards, -tb_vec3_dot (towards, pole), pole), aside);
}

void
tb_globe_add_arc (const TbGlobe *self, cairo_t *cr, TbVec3 from, TbVec3 to, gboolean seen)
{
  double angle = tb_vec3_angle (from, to);
  int steps = MAX (2, (int)ceil (CIRCLE_STEPS * angle / (2 * TB_PI)));
  TbVec3 direction = square_to (from, to);
  gboolean joined = FALSE;

  for (int i = 0; i <= steps; i++)
    {
      double at = angle * i / steps;

      add_place (self, cr, tb_vec3_add_scaled (tb_vec3_scale (from, cos (at)), sin (at), direction), seen,
                 &joined);
    }
}

/* The place an angle from a pole, turned about it from a direction. */
static TbVec3
around (TbVec3 pole, double angle, TbVec3 start, double turn)
{
  TbVec3 across = tb_vec3_cross (pole, start);
  TbVec3 out = tb_vec3_add_scaled (tb_vec3_scale (start, cos (turn)), sin (turn), across);

  return tb_vec3_add_scaled (tb_vec3_scale (pole, cos (angle)), sin (angle), out);
}

void
tb_globe_add_circle (const TbGlobe *self, cairo_t *cr, TbVec3 pole, double angle, gboolean seen)
{
  TbVec3 start = square_to (pole, self->near);
  gboolean joined = FALSE;

  for (int i = 0; i <= CIRCLE_STEPS; i++)
    add_place (self, cr, around (pole, angle, start, TB_PI + 2 * TB_PI * i / CIRCLE_STEPS), seen, &joined);
}

/* The turn about a pole from one place to another, −π to π. */
static double
turn_between (TbVec3 pole, TbVec3 start, TbVec3 to)
{
  TbVec3 direction = square_to (pole, to);

  return atan2 (tb_vec3_dot (tb_vec3_cross (start, direction), pole), tb_vec3_dot (start, direction));
}

void
tb_globe_add_angle (const TbGlobe *self, cairo_t *cr, TbVec3 pole, double angle, const TbVec3 between[2])
{
  TbVec3 start = square_to (pole, between[0]);
  double turn = turn_between (pole, start, between[1]);
  int steps = MAX (2, (int)ceil (CIRCLE_STEPS * fabs (turn) / (2 * TB_PI)));
  gboolean joined = FALSE;

  for (int i = 0; i <= steps; i++)
    add_place (self, cr, around (pole, angle, start, turn * i / steps), TRUE, &joined);
}

TbVec3
tb_globe_angle_middle (TbVec3 pole, double angle, const TbVec3 between[2])
{
  TbVec3 start = square_to (pole, between[0]);

  return around (pole, angle, start, 0.5 * turn_between (pole, start, between[1]));
}
