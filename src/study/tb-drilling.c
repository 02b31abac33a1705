/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-drilling.h"

#include <string.h>

#define INCH TB_METRES_PER_INCH
/* Typical of a grown hand's fingertip grip (common practice). */
#define TYPICAL_SPAN (4.25 * INCH)
#define TYPICAL_BRIDGE (0.25 * INCH)
#define TYPICAL_FINGER_DIAMETER (31.0 / 32 * INCH) /* drilled for an insert */
#define TYPICAL_FINGER_DEPTH (2.0 * INCH)
#define TYPICAL_THUMB_DIAMETER (1.0 * INCH)
#define TYPICAL_THUMB_DEPTH (2.75 * INCH)
/* Finding where two holes of a latitude stand a bridge apart converges by two digits a round. */
#define BRIDGE_ROUNDS 8

TbGrip
tb_grip_default (void)
{
  TbGripHole finger = { .diameter = TYPICAL_FINGER_DIAMETER, .depth = TYPICAL_FINGER_DEPTH };

  return (TbGrip){ .span = { TYPICAL_SPAN, TYPICAL_SPAN },
                   .bridge = TYPICAL_BRIDGE,
                   .finger = { finger, finger },
                   .thumb = { .diameter = TYPICAL_THUMB_DIAMETER, .depth = TYPICAL_THUMB_DEPTH } };
}

TbVec3
tb_layout_place (double radius, double over, double up)
{
  double a = over / radius, b = up / radius;

  return tb_vec3 (cos (b) * sin (a), sin (b), cos (b) * cos (a));
}

void
tb_layout_over_up (double radius, TbVec3 place, double *over, double *up)
{
  *over = radius * atan2 (place.x, place.z);
  *up = radius * atan2 (place.y, hypot (place.x, place.z));
}

static TbHole
make_hole (TbHoleKind kind, const TbGripHole *hole, double over, double up)
{
  return (TbHole){ .kind = kind,
                   .over = over,
                   .up = up,
                   .diameter = hole->diameter,
                   .depth = hole->depth,
                   .pitch_over = hole->pitch_over,
                   .pitch_up = hole->pitch_up };
}

/* Latitude of a place of that longitude at an angle from a place of latitude `from` on the middle meridian,
 * above it; NAN if there is none. */
static double
latitude_above (double from, double longitude, double angle)
{
  double a = cos (longitude) * cos (from), b = sin (from), c = cos (angle) / hypot (a, b);

  return fabs (c) > 1 ? (double)NAN : atan2 (b, a) + acos (c);
}

/* Where the two finger holes go, rad; the thumb hole's centre is at latitude `thumb`. */
static void
place_fingers (const TbGrip *grip, double radius, double thumb, double over[], double up[])
{
  double apart = (grip->bridge + 0.5 * (grip->finger[0].diameter + grip->finger[1].diameter)) / radius;

  over[TB_GRIP_MIDDLE] = -0.5 * apart;
  over[TB_GRIP_RING] = 0.5 * apart;
  for (int round = 0; round < BRIDGE_ROUNDS; round++)
    {
      for (int i = 0; i < TB_GRIP_N_FINGERS; i++)
        up[i] = latitude_above (thumb, over[i],
                                (0.5 * grip->thumb.diameter + grip->span[i] + 0.5 * grip->finger[i].diameter)
                                    / radius);
      TbVec3 a = tb_layout_place (1, over[0], up[0]), b = tb_layout_place (1, over[1], up[1]);
      double now = tb_vec3_angle (a, b);

      for (int i = 0; i < TB_GRIP_N_FINGERS && now > 0; i++)
        over[i] *= apart / now;
    }
}

TbStatus
tb_grip_drill (const TbGrip *grip, TbBall *ball)
{
  double radius = 0.5 * ball->diameter, half = 0.25 * (grip->span[0] + grip->span[1]);
  double thumb = -(half + 0.5 * grip->thumb.diameter) / radius, over[TB_GRIP_N_FINGERS],
         up[TB_GRIP_N_FINGERS];
  TbBall drilled = *ball;
  TbBody body;
  TbStatus status;

  if (!(half > 0) || !(grip->bridge >= 0))
    return TB_ERROR_HOLES;
  place_fingers (grip, radius, thumb, over, up);
  drilled.n_holes = 0;
  memset (drilled.hole, 0, sizeof drilled.hole);
  for (int i = 0; i < TB_GRIP_N_FINGERS; i++)
    {
      if (!isfinite (over[i]) || !isfinite (up[i]))
        return TB_ERROR_HOLES;
      drilled.hole[drilled.n_holes++]
          = make_hole (TB_HOLE_FINGER, &grip->finger[i], over[i] * radius, up[i] * radius);
    }
  if (!grip->no_thumb)
    drilled.hole[drilled.n_holes++] = make_hole (TB_HOLE_THUMB, &grip->thumb, 0, thumb * radius);
  status = tb_ball_body (&drilled, &body);
  if (status == TB_OK)
    *ball = drilled;
  return status;
}

static TbGripHole
grip_hole (const TbHole *hole)
{
  return (TbGripHole){ .diameter = hole->diameter,
                       .depth = hole->depth,
                       .pitch_over = hole->pitch_over,
                       .pitch_up = hole->pitch_up };
}

static double
between_edges (double radius, const TbHole *a, const TbHole *b)
{
  double centres
      = radius
        * tb_vec3_angle (tb_layout_place (radius, a->over, a->up), tb_layout_place (radius, b->over, b->up));

  return centres - 0.5 * (a->diameter + b->diameter);
}

/* Rounds that bring the place of a missing thumb within a millionth of an inch; each halves what is left. */
#define THUMB_ROUNDS 40

/* Where a thumb hole would be, had the ball one: half the mean span below the grip centre, as everywhere. */
static const TbHole *
place_missing_thumb (double radius, const TbHole *const finger[], const TbGripHole *thumb, TbHole *hole)
{
  double edge = 0;

  for (int round = 0; round < THUMB_ROUNDS; round++)
    {
      *hole = make_hole (TB_HOLE_THUMB, thumb, 0, -(edge + 0.5 * thumb->diameter));
      edge = 0.25 * (between_edges (radius, hole, finger[0]) + between_edges (radius, hole, finger[1]));
    }
  return hole;
}

gboolean
tb_grip_from_ball (const TbBall *ball, TbGrip *grip)
{
  double radius = 0.5 * ball->diameter;
  const TbHole *finger[TB_GRIP_N_FINGERS] = { NULL }, *thumb = NULL;
  int fingers = 0;
  TbHole missing;

  for (int i = 0; i < ball->n_holes; i++)
    if (ball->hole[i].kind == TB_HOLE_THUMB && thumb == NULL)
      thumb = &ball->hole[i];
    else if (ball->hole[i].kind == TB_HOLE_FINGER && fingers < TB_GRIP_N_FINGERS)
      finger[fingers++] = &ball->hole[i];
    else
      return FALSE;
  if (fingers != TB_GRIP_N_FINGERS)
    return FALSE;
  if (finger[TB_GRIP_MIDDLE]->over > finger[TB_GRIP_RING]->over)
    {
      const TbHole *swap = finger[TB_GRIP_MIDDLE];

      finger[TB_GRIP_MIDDLE] = finger[TB_GRIP_RING];
      finger[TB_GRIP_RING] = swap;
    }
  *grip = tb_grip_default ();
  grip->no_thumb = thumb == NULL;
  if (thumb != NULL)
    grip->thumb = grip_hole (thumb);
  else
    thumb = place_missing_thumb (radius, finger, &grip->thumb, &missing);
  for (int i = 0; i < TB_GRIP_N_FINGERS; i++)
    {
      grip->finger[i] = grip_hole (finger[i]);
      grip->span[i] = between_edges (radius, thumb, finger[i]);
    }
  grip->bridge = between_edges (radius, finger[0], finger[1]);
  return TRUE;
}

/* Angle between a line through the centre (an axis has no sense) and a place. */
static double
angle_to_axis (TbVec3 axis, TbVec3 place)
{
  double angle = tb_vec3_angle (axis, place);

  return fmin (angle, TB_PI - angle);
}

static void
set_figures (const TbBody *body, TbBallFigures *figures)
{
  TbVec3 rg = tb_body_rg (body), low = tb_vec3 (1, 0, 0);

  figures->mass = body->mass;
  figures->rg = rg.x;
  figures->differential = rg.z - rg.x;
  figures->intermediate_differential = rg.z - rg.y;
  figures->offset = tb_vec3_length (body->offset);
  figures->pin_to_low_axis = angle_to_axis (low, body->pin);
  figures->low_axis_to_pap = body->radius * angle_to_axis (low, body->pap);
  figures->static_weights = body->static_weights;
}

TbStatus
tb_drilling_figures (const TbBall *ball, TbBallFigures *before, TbBallFigures *after)
{
  TbBall blank = *ball;
  TbBody whole, drilled;
  TbStatus status;

  blank.n_holes = 0;
  status = tb_ball_body (&blank, &whole);
  if (status == TB_OK)
    status = tb_ball_body (ball, &drilled);
  if (status != TB_OK)
    return status;
  set_figures (&whole, before);
  set_figures (&drilled, after);
  return TB_OK;
}

TbStatus
tb_layout_places (const TbBall *ball, TbLayoutPlaces *places)
{
  double radius = 0.5 * ball->diameter;
  TbBody body;
  TbStatus status = tb_ball_body (ball, &body);

  if (status != TB_OK)
    return status;
  TbMat3 frame = { { tb_vec3_cross (body.up, body.grip), body.up, body.grip } };

  *places = (TbLayoutPlaces){ .pap = tb_mat3_apply (&frame, body.pap),
                              .pin = tb_mat3_apply (&frame, body.pin),
                              .mass_bias = tb_mat3_apply (&frame, body.mass_bias),
                              .n_holes = ball->n_holes };
  for (int i = 0; i < ball->n_holes; i++)
    places->hole[i] = tb_layout_place (radius, ball->hole[i].over, ball->hole[i].up);
  return TB_OK;
}

/* Direction on the surface from one place to another, square to `from`; the fallback where there is none. */
static TbVec3
towards (TbVec3 from, TbVec3 to, TbVec3 fallback)
{
  return tb_vec3_unit (tb_vec3_add_scaled (to, -tb_vec3_dot (from, to), from), fallback);
}

/* The two directions along the surface at a PAP: up the vertical axis line, and towards the grip. */
static void
pap_directions (const TbBall *ball, TbVec3 *pap, TbVec3 *up, TbVec3 *to_grip)
{
  double radius = 0.5 * ball->diameter, over = ball->pap_over / radius, b = ball->pap_up / radius;

  *pap = tb_layout_place (radius, ball->pap_over, ball->pap_up);
  *up = tb_vec3 (-sin (b) * sin (over), cos (b), -sin (b) * cos (over));
  *to_grip = tb_vec3 (-cos (over), 0, sin (over));
}

#define QUARTER_ROUND (0.5 * TB_PI)
/* The field's greatest distance, m; a little less than a quarter of the way round the largest ball. */
#define GREATEST_DISTANCE (6.75 * INCH)

void
tb_layout_move_pin (TbBall *ball, TbVec3 place)
{
  double radius = 0.5 * ball->diameter;
  TbVec3 pap, up, to_grip;

  pap_directions (ball, &pap, &up, &to_grip);
  TbVec3 direction = towards (pap, place, up);

  ball->pin_to_pap = fmin (radius * fmin (tb_vec3_angle (pap, place), QUARTER_ROUND), GREATEST_DISTANCE);
  /* Past the VAL, on the side away from the grip, there is no angle: held to the nearer end. */
  double angle = atan2 (tb_vec3_dot (direction, to_grip), tb_vec3_dot (direction, up));

  ball->val_angle = angle >= 0 ? angle : angle > -QUARTER_ROUND ? 0 : TB_PI;
}

void
tb_layout_move_mass_bias (TbBall *ball, TbVec3 place)
{
  double distance = ball->pin_to_pap / (0.5 * ball->diameter);
  TbVec3 pap, up, to_grip;

  pap_directions (ball, &pap, &up, &to_grip);
  TbVec3 to_pin
      = tb_vec3_add_scaled (tb_vec3_scale (up, cos (ball->val_angle)), sin (ball->val_angle), to_grip);
  TbVec3 pin = tb_vec3_add_scaled (tb_vec3_scale (pap, cos (distance)), sin (distance), to_pin);
  TbVec3 back = tb_vec3_add_scaled (tb_vec3_scale (pap, sin (distance)), -cos (distance), to_pin);
  TbVec3 direction = towards (pin, place, back);
  double angle = atan2 (tb_vec3_dot (direction, tb_vec3_cross (back, pin)), tb_vec3_dot (direction, back));

  ball->drilling_angle = angle >= 0 ? angle : angle > -QUARTER_ROUND ? 0 : TB_PI;
}

void
tb_layout_move_pap (TbBall *ball, TbVec3 place)
{
  const TbField *over_field = tb_field_find (TB_GROUP_BALL, "pap_over_in");
  const TbField *up_field = tb_field_find (TB_GROUP_BALL, "pap_up_in");
  double over, up;

  tb_layout_over_up (0.5 * ball->diameter, place, &over, &up);
  ball->pap_over = CLAMP (over, over_field->to_si (over_field->min), over_field->to_si (over_field->max));
  ball->pap_up = CLAMP (up, up_field->to_si (up_field->min), up_field->to_si (up_field->max));
}
