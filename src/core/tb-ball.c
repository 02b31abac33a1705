/* From a ball's numbers to a rigid body.
 *
 * Everything is built in the grip's frame: x over (towards the PAP), y up (away from the thumb), z out through the
 * grip's centre; the ball's centre is the origin. The body's own frame is then that of the principal axes.
 *
 * Static weights are told as a scale tells them: m d / R, with d the offset of the centre of mass and the ball's
 * radius R taken as the scale's lever arm (assumed; scales differ).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-ball.h"

#include "tb-fields.h"

TbBall
tb_ball_default (void)
{
  TbBall ball;
  tb_field_reset_group (TB_GROUP_BALL, &ball);
  return ball;
}

/* Place on the unit sphere `over` along the midline and then `up` along the great circle square to it, and the two
 * directions there. */
typedef struct SurfacePlace
{
  TbVec3 out, over, up;
} SurfacePlace;

static SurfacePlace
surface_place (double over, double up)
{
  TbVec3 on_midline = { sin (over), 0, cos (over) };
  SurfacePlace place = {
    .out = { cos (up) * on_midline.x, sin (up), cos (up) * on_midline.z },
    .over = { cos (over), 0, -sin (over) },
    .up = { -sin (up) * on_midline.x, cos (up), -sin (up) * on_midline.z },
  };
  return place;
}

/* Where the layout puts the core: three unit vectors in the grip's frame. */
typedef struct CorePlace
{
  TbVec3 pap, pin, mass_bias;
} CorePlace;

static CorePlace
place_core (const TbBall *ball)
{
  double radius = 0.5 * ball->diameter;
  SurfacePlace pap = surface_place (ball->pap_over / radius, ball->pap_up / radius);
  TbVec3 to_grip = tb_vec3_scale (pap.over, -1);
  TbVec3 to_pin = tb_vec3_add_scaled (tb_vec3_scale (pap.up, cos (ball->val_angle)), sin (ball->val_angle), to_grip);
  double distance = ball->pin_to_pap / radius;
  CorePlace core = { .pap = pap.out };
  core.pin = tb_vec3_add_scaled (tb_vec3_scale (pap.out, cos (distance)), sin (distance), to_pin);
  /* With the pin on the PAP every direction leads there; continue the one the pin came from. */
  TbVec3 back = tb_vec3_add_scaled (tb_vec3_scale (pap.out, sin (distance)), -cos (distance), to_pin);
  TbVec3 clockwise = tb_vec3_cross (back, core.pin); /* seen from outside: towards the thumb */
  core.mass_bias = tb_vec3_add_scaled (tb_vec3_scale (back, cos (ball->drilling_angle)), sin (ball->drilling_angle),
                                       clockwise);
  return core;
}

/* Mass, first moment and inertia about the sphere's centre, grip's frame. */
typedef struct MassSum
{
  double mass;
  TbVec3 first;
  TbMat3 inertia;
} MassSum;

/* scale · (v² 1 − v vᵀ): the inertia of a point mass `scale` at v. */
static void
add_point_inertia (TbMat3 *inertia, double scale, TbVec3 v)
{
  double square = tb_vec3_dot (v, v);
  const double component[3] = { v.x, v.y, v.z };
  for (int i = 0; i < 3; i++)
    {
      inertia->row[i].x -= scale * component[i] * v.x;
      inertia->row[i].y -= scale * component[i] * v.y;
      inertia->row[i].z -= scale * component[i] * v.z;
    }
  inertia->row[0].x += scale * square;
  inertia->row[1].y += scale * square;
  inertia->row[2].z += scale * square;
}

/* moment · a aᵀ */
static void
add_axis_inertia (TbMat3 *inertia, double moment, TbVec3 a)
{
  const double component[3] = { a.x, a.y, a.z };
  for (int i = 0; i < 3; i++)
    inertia->row[i] = tb_vec3_add_scaled (inertia->row[i], moment * component[i], a);
}

static void
add_blank (MassSum *sum, const TbBall *ball, const CorePlace *core)
{
  double high = ball->rg + ball->differential, middle = high - ball->intermediate_differential;
  TbVec3 second = tb_vec3_cross (core->mass_bias, core->pin);
  sum->mass = ball->mass;
  add_axis_inertia (&sum->inertia, ball->mass * ball->rg * ball->rg, core->pin);
  add_axis_inertia (&sum->inertia, ball->mass * middle * middle, second);
  add_axis_inertia (&sum->inertia, ball->mass * high * high, core->mass_bias);
  /* The blank's centre of mass lies towards the pin (assumed). */
  TbVec3 offset = tb_vec3_scale (core->pin, ball->top_weight / ball->mass * 0.5 * ball->diameter);
  sum->first = tb_vec3_scale (offset, ball->mass);
  add_point_inertia (&sum->inertia, ball->mass, offset);
}

/* Takes away a drilled hole: a cylinder of the blank's mean density (assumed). Its mouth is curved like the ball; a
 * flat start r²/(4R) further down has the same volume. */
static void
remove_hole (MassSum *sum, const TbHole *hole, double radius, double density)
{
  SurfacePlace mouth = surface_place (hole->over / radius, hole->up / radius);
  TbVec3 start = tb_vec3_scale (mouth.out, radius);
  /* The hole's line misses the centre by the pitch. */
  double pitch = hypot (hole->pitch_over, hole->pitch_up), sine = pitch / radius;
  TbVec3 aside = tb_vec3_add_scaled (tb_vec3_scale (mouth.over, hole->pitch_over), hole->pitch_up, mouth.up);
  TbVec3 inwards = tb_vec3_scale (mouth.out, -sqrt (1 - sine * sine));
  if (pitch > 0)
    inwards = tb_vec3_add_scaled (inwards, sine / pitch, aside);
  double r = 0.5 * hole->diameter, missing = r * r / (4 * radius), length = hole->depth - missing;
  double mass = density * TB_PI * r * r * length;
  TbVec3 centre = tb_vec3_add_scaled (start, missing + 0.5 * length, inwards);
  double axial = 0.5 * mass * r * r, crosswise = mass * (3 * r * r + length * length) / 12;

  sum->mass -= mass;
  sum->first = tb_vec3_add_scaled (sum->first, -mass, centre);
  add_point_inertia (&sum->inertia, -mass, centre);
  add_axis_inertia (&sum->inertia, -(axial - crosswise), inwards);
  add_axis_inertia (&sum->inertia, -crosswise, tb_vec3 (1, 0, 0));
  add_axis_inertia (&sum->inertia, -crosswise, tb_vec3 (0, 1, 0));
  add_axis_inertia (&sum->inertia, -crosswise, tb_vec3 (0, 0, 1));
}

/* A hole may leave this share of the ball's diameter under it at the least. */
#define HOLE_MAX_DEPTH_SHARE 0.8
/* Holes stay on the grip's half of the ball and are no wider than this, m. */
#define HOLE_MAX_DIAMETER (1.5 * TB_METRES_PER_INCH)

static TbStatus
check_hole (const TbHole *hole, double diameter)
{
  const double numbers[]
      = { hole->over, hole->up, hole->diameter, hole->depth, hole->pitch_over, hole->pitch_up };
  for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++)
    if (!isfinite (numbers[i]))
      return TB_ERROR_NOT_FINITE;
  double quarter = 0.25 * TB_PI * diameter;
  if (fabs (hole->over) > quarter || fabs (hole->up) > quarter || hole->diameter <= 0
      || hole->diameter > HOLE_MAX_DIAMETER || hole->depth < hole->diameter * hole->diameter / (8 * diameter)
      || hole->depth > HOLE_MAX_DEPTH_SHARE * diameter
      || hypot (hole->pitch_over, hole->pitch_up) > 0.25 * diameter)
    return TB_ERROR_HOLES;
  return TB_OK;
}

static TbStatus
check_ball (const TbBall *ball)
{
  const double numbers[] = { ball->mass, ball->diameter, ball->rg, ball->differential, ball->intermediate_differential,
                             ball->drilling_angle, ball->pin_to_pap, ball->val_angle, ball->pap_over, ball->pap_up,
                             ball->top_weight };
  for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++)
    if (!isfinite (numbers[i]))
      return TB_ERROR_NOT_FINITE;
  if (ball->mass <= 0 || ball->diameter <= 0 || ball->rg <= 0)
    return TB_ERROR_OUT_OF_RANGE;
  if (ball->intermediate_differential > ball->differential)
    return TB_ERROR_DIFFERENTIALS;
  if (ball->n_holes < 0 || ball->n_holes > TB_MAX_HOLES)
    return TB_ERROR_HOLES;
  for (int i = 0; i < ball->n_holes; i++)
    {
      TbStatus status = check_hole (&ball->hole[i], ball->diameter);
      if (status != TB_OK)
        return status;
    }
  return TB_OK;
}

/* Fills in everything that is told in body axes; `axes` has them as rows in the grip's frame. */
static void
set_frame (TbBody *body, const TbMat3 *axes, const CorePlace *core, TbVec3 offset)
{
  body->pap = tb_mat3_apply (axes, core->pap);
  body->pin = tb_mat3_apply (axes, core->pin);
  body->mass_bias = tb_mat3_apply (axes, core->mass_bias);
  body->grip = tb_mat3_apply (axes, tb_vec3 (0, 0, 1));
  body->up = tb_mat3_apply (axes, tb_vec3 (0, 1, 0));
  body->offset = tb_mat3_apply (axes, offset);
  double on_scale = body->mass / body->radius;
  body->static_weights = (TbStaticWeights){ .top = offset.z * on_scale, .side = offset.x * on_scale,
                                            .finger = offset.y * on_scale };
}

/* Nothing drilled and nothing heavy: the core's own axes are the principal axes, exactly. */
static void
balanced_body (const TbBall *ball, const CorePlace *core, TbBody *body)
{
  double high = ball->rg + ball->differential, middle = high - ball->intermediate_differential;
  TbMat3 axes = { { core->pin, tb_vec3_cross (core->mass_bias, core->pin), core->mass_bias } };
  body->mass = ball->mass;
  body->moment = tb_vec3 (ball->mass * ball->rg * ball->rg, ball->mass * middle * middle, ball->mass * high * high);
  set_frame (body, &axes, core, tb_vec3 (0, 0, 0));
}

static void
drilled_body (const TbBall *ball, const CorePlace *core, TbBody *body)
{
  MassSum sum = { 0 };
  double density = ball->mass / (TB_PI / 6 * ball->diameter * ball->diameter * ball->diameter);
  add_blank (&sum, ball, core);
  for (int i = 0; i < ball->n_holes; i++)
    remove_hole (&sum, &ball->hole[i], body->radius, density);
  TbVec3 offset = tb_vec3_scale (sum.first, 1 / sum.mass);
  add_point_inertia (&sum.inertia, -sum.mass, offset);

  double moments[3];
  TbMat3 axes;
  tb_mat3_eigen (&sum.inertia, moments, &axes);
  body->mass = sum.mass;
  body->moment = tb_vec3 (moments[0], moments[1], moments[2]);
  set_frame (body, &axes, core, offset);
}

TbStatus
tb_ball_body (const TbBall *ball, TbBody *body)
{
  TbStatus status = check_ball (ball);
  if (status != TB_OK)
    return status;
  CorePlace core = place_core (ball);
  TbBody made = { .radius = 0.5 * ball->diameter };
  if (ball->n_holes == 0 && ball->top_weight == 0)
    balanced_body (ball, &core, &made);
  else
    drilled_body (ball, &core, &made);
  *body = made;
  return TB_OK;
}

TbBody
tb_body_sphere (double mass, double radius, double k)
{
  double moment = k * mass * radius * radius;
  return (TbBody){ .mass = mass,
                   .radius = radius,
                   .moment = { moment, moment, moment },
                   .pap = { 1, 0, 0 },
                   .pin = { 0, 1, 0 },
                   .mass_bias = { 0, 0, 1 },
                   .grip = { 0, 0, 1 },
                   .up = { 0, 1, 0 } };
}

TbVec3
tb_body_rg (const TbBody *body)
{
  return tb_vec3 (sqrt (body->moment.x / body->mass), sqrt (body->moment.y / body->mass),
                  sqrt (body->moment.z / body->mass));
}
