/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-fields.h"

#include <math.h>
#include <string.h>

#define DELIVERY(member) TB_FIELD_REAL, offsetof (TbDelivery, member)
#define BALL(member) TB_FIELD_REAL, offsetof (TbBall, member)
#define LANE(member) TB_FIELD_REAL, offsetof (TbLane, member)
#define SAME tb_same, tb_same
#define MPH tb_metres_per_second_from_mph, tb_mph_from_metres_per_second
#define RPM tb_radians_per_second_from_rpm, tb_rpm_from_radians_per_second
#define DEG tb_radians_from_deg, tb_deg_from_radians
#define BOARDS tb_x_from_board, tb_board_from_x
#define INCHES tb_metres_from_in, tb_in_from_metres
#define POUNDS tb_kilograms_from_lb, tb_lb_from_kilograms
#define OUNCES tb_kilograms_from_oz, tb_oz_from_kilograms
#define MICROINCHES tb_metres_from_uin, tb_uin_from_metres
#define GRIT tb_roughness_from_grit, tb_grit_from_roughness
#define PLAIN NULL, NULL, NULL

static const TbChoice hands[] = { { "right", N_ ("Right") }, { "left", N_ ("Left") }, { NULL, NULL } };
static const TbChoice covers[] = { { "plastic", N_ ("Plastic") },
                                   { "urethane", N_ ("Urethane") },
                                   { "reactive-pearl", N_ ("Reactive, pearl") },
                                   { "reactive-hybrid", N_ ("Reactive, hybrid") },
                                   { "reactive-solid", N_ ("Reactive, solid") },
                                   { NULL, NULL } };
static const TbWord grit_words[] = { { "polish", N_ ("Polish"), TB_GRIT_POLISH }, { NULL, NULL, 0 } };

const TbField tb_field_table[] = {
  { TB_GROUP_DELIVERY, "hand", N_ ("Hand"), "", N_ ("The hand that bowls; a left-hander is the exact mirror image."),
    TB_FIELD_CHOICE, offsetof (TbDelivery, hand), SAME, 0, TB_N_HANDS - 1, 1, 1, TB_HAND_RIGHT, 0, hands, NULL, NULL },
  { TB_GROUP_DELIVERY, "speed_mph", N_ ("Speed"), N_ ("mph"),
    N_ ("Speed of the ball's centre at release, at neutral grip."), DELIVERY (speed), MPH, 5, 28, 0.1, 1, 17, 1, PLAIN },
  { TB_GROUP_DELIVERY, "rev_rate_rpm", N_ ("Rev rate"), N_ ("rpm"),
    N_ ("How fast the ball turns at release, at neutral grip."), DELIVERY (rev_rate), RPM, 0, 700, 5, 50, 300, 0, PLAIN },
  { TB_GROUP_DELIVERY, "axis_rotation_deg", N_ ("Axis rotation"), N_ ("°"),
    N_ ("0 is end over end, 90 is full side turn, negative is a back-up ball."), DELIVERY (axis_rotation), DEG, -90, 120,
    1, 10, 50, 0, PLAIN },
  { TB_GROUP_DELIVERY, "axis_tilt_deg", N_ ("Axis tilt"), N_ ("°"),
    N_ ("How far the spin axis stands up from the lane; a spinner has much of it."), DELIVERY (axis_tilt), DEG, -20, 80,
    1, 5, 12, 0, PLAIN },
  { TB_GROUP_DELIVERY, "laydown_board", N_ ("Laid down at"), N_ ("board"),
    N_ ("Board on which the launch line crosses the foul line."), DELIVERY (laydown), BOARDS, 1, 39, 0.5, 5, 24, 1,
    PLAIN },
  { TB_GROUP_DELIVERY, "aim_board", N_ ("Aimed at the arrows"), N_ ("board"),
    N_ ("Board on which the launch line crosses 15 ft."), DELIVERY (aim), BOARDS, 1, 39, 0.1, 1, 16.6, 1, PLAIN },
  { TB_GROUP_DELIVERY, "release_height_in", N_ ("Release height"), N_ ("in"),
    N_ ("Lowest point of the ball over the lane at release; 0 touches the lane."), DELIVERY (release_height), INCHES, 0,
    36, 0.5, 2, 2, 1, PLAIN },
  { TB_GROUP_DELIVERY, "loft_angle_deg", N_ ("Loft angle"), N_ ("°"), N_ ("Upward angle of the flight at release."),
    DELIVERY (loft_angle), DEG, -5, 30, 0.5, 2, 0, 1, PLAIN },
  { TB_GROUP_DELIVERY, "loft_reach_in", N_ ("Loft reach"), N_ ("in"), N_ ("How far past the foul line the hand lets go."),
    DELIVERY (loft_reach), INCHES, 0, 36, 1, 6, 6, 0, PLAIN },
  { TB_GROUP_DELIVERY, "grip_pressure", N_ ("Grip pressure"), "",
    N_ ("0 is loose, 5 neutral, 10 tight: tighter takes speed and adds revs. How much is assumed."),
    DELIVERY (grip_pressure), SAME, 0, 10, 0.5, 1, TB_GRIP_NEUTRAL, 1, PLAIN },

  { TB_GROUP_BALL, "weight_lb", N_ ("Weight"), N_ ("lb"), N_ ("Weight before drilling; at most 16 lb."), BALL (mass),
    POUNDS, 6, TB_BALL_MAX_WEIGHT_LB, 0.5, 1, 15, 1, PLAIN },
  { TB_GROUP_BALL, "diameter_in", N_ ("Diameter"), N_ ("in"), N_ ("Between 8.500 and 8.595 in."), BALL (diameter), INCHES,
    TB_BALL_MIN_DIAMETER_IN, TB_BALL_MAX_DIAMETER_IN, 0.005, 0.02, 8.55, 3, PLAIN },
  { TB_GROUP_BALL, "rg_in", N_ ("RG"), N_ ("in"), N_ ("Radius of gyration about the pin axis."), BALL (rg), INCHES,
    TB_BALL_MIN_RG_IN, TB_BALL_MAX_RG_IN, 0.01, 0.05, 2.50, 3, PLAIN },
  { TB_GROUP_BALL, "differential_in", N_ ("Differential"), N_ ("in"),
    N_ ("Largest minus smallest radius of gyration; it makes the ball flare."), BALL (differential), INCHES, 0,
    TB_BALL_MAX_DIFFERENTIAL_IN, 0.001, 0.01, 0.045, 3, PLAIN },
  { TB_GROUP_BALL, "intermediate_differential_in", N_ ("Intermediate differential"), N_ ("in"),
    N_ ("Largest minus middle radius of gyration; 0 for a symmetric core."), BALL (intermediate_differential), INCHES, 0,
    TB_BALL_MAX_DIFFERENTIAL_IN, 0.001, 0.01, 0, 3, PLAIN },
  { TB_GROUP_BALL, "cover", N_ ("Cover"), "", N_ ("What the cover is made of; choosing it sets its typical friction."),
    TB_FIELD_CHOICE, offsetof (TbBall, cover.kind), SAME, 0, TB_N_COVER_KINDS - 1, 1, 1, TB_COVER_REACTIVE_HYBRID, 0,
    covers, NULL, NULL },
  { TB_GROUP_BALL, "grit", N_ ("Surface"), N_ ("grit"),
    N_ ("Finish by the pad that made it; sets a typical roughness."), TB_FIELD_REAL, offsetof (TbBall, cover.roughness),
    GRIT, TB_GRIT_COARSEST, TB_GRIT_POLISH, 100, 500, 2000, 0, NULL, grit_words, "roughness_uin" },
  { TB_GROUP_BALL, "roughness_uin", N_ ("Roughness Ra"), N_ ("µin"),
    N_ ("Arithmetic mean roughness of the surface, as a gauge reads it."), BALL (cover.roughness), MICROINCHES, 1,
    TB_BALL_MAX_ROUGHNESS_UIN, 0.5, 5, 18.897637795275593, 1, PLAIN },
  { TB_GROUP_BALL, "dry_friction", N_ ("Friction on a dry lane"), "", N_ ("Coefficient of friction without oil; assumed."),
    BALL (cover.dry_friction), SAME, 0.02, 0.32, 0.005, 0.02, 0.17, 3, PLAIN },
  { TB_GROUP_BALL, "film_scale", N_ ("Grip through oil"), "",
    N_ ("Film, in roughnesses, at which three quarters of the dry friction is gone; assumed."), BALL (cover.film_scale),
    SAME, 0.5, 8, 0.1, 0.5, 2.8, 1, PLAIN },
  { TB_GROUP_BALL, "absorption", N_ ("Oil absorption"), N_ ("1/s"),
    N_ ("Rate at which oil on the surface soaks into the cover; assumed."), BALL (cover.absorption), SAME, 0, 2, 0.01, 0.1,
    0.2, 2, PLAIN },
  { TB_GROUP_BALL, "drilling_angle_deg", N_ ("Drilling angle"), N_ ("°"),
    N_ ("Angle at the pin between the lines to the PAP and to the mass bias."), BALL (drilling_angle), DEG, 0, 180, 1, 10,
    50, 0, PLAIN },
  { TB_GROUP_BALL, "pin_to_pap_in", N_ ("Pin to PAP"), N_ ("in"),
    N_ ("Distance along the surface from the pin to the positive axis point."), BALL (pin_to_pap), INCHES, 0, 6.75, 0.125,
    0.5, 4, 3, PLAIN },
  { TB_GROUP_BALL, "val_angle_deg", N_ ("VAL angle"), N_ ("°"),
    N_ ("Angle at the PAP between the vertical axis line and the line to the pin."), BALL (val_angle), DEG, 0, 180, 1, 10,
    40, 0, PLAIN },
  { TB_GROUP_BALL, "pap_over_in", N_ ("PAP, over"), N_ ("in"),
    N_ ("From the grip centre along the midline to the vertical axis line."), BALL (pap_over), INCHES, 0, 6.75, 0.125, 0.5,
    5, 3, PLAIN },
  { TB_GROUP_BALL, "pap_up_in", N_ ("PAP, up"), N_ ("in"), N_ ("Along the vertical axis line, away from the thumb."),
    BALL (pap_up), INCHES, -3, 3, 0.125, 0.5, 0.5, 3, PLAIN },
  { TB_GROUP_BALL, "top_weight_oz", N_ ("Top weight"), N_ ("oz"),
    N_ ("What the scale shows before drilling: pin half heavier than the other."), BALL (top_weight), OUNCES, 0, 6, 0.1,
    0.5, 0, 2, PLAIN },

  { TB_GROUP_LANE, "pattern_scale", N_ ("Amount of oil"), N_ ("×"), N_ ("The pattern's film is multiplied by this."),
    LANE (pattern_scale), SAME, 0, 3, 0.05, 0.25, 1, 2, PLAIN },
  { TB_GROUP_LANE, "cross_tilt_in", N_ ("Cross-tilt"), N_ ("in"), N_ ("How much higher the right edge lies than the left."),
    LANE (cross_tilt), INCHES, -0.25, 0.25, 0.005, 0.02, 0, 3, PLAIN },
  { TB_GROUP_LANE, "games_played", N_ ("Games played"), N_ ("games"),
    N_ ("Games bowled since the lane was oiled, by the mix of bowlers; 0 is fresh."), LANE (games_played), SAME, 0, 30, 0.5,
    3, 0, 1, PLAIN, true },
  { TB_N_GROUPS, NULL, NULL, NULL, NULL, TB_FIELD_REAL, 0, NULL, NULL, 0, 0, 0, 0, 0, 0, NULL, NULL, NULL },
};

const char *
tb_group_name (TbGroup group)
{
  static const char *const names[TB_N_GROUPS] = { "delivery", "ball", "lane" };
  return names[group];
}

int
tb_field_count (void)
{
  return (int) (sizeof tb_field_table / sizeof tb_field_table[0]) - 1;
}

const TbField *
tb_field_find (TbGroup group, const char *name)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    if (field->group == group && strcmp (field->name, name) == 0)
      return field;
  return NULL;
}

static double *
real_at (const TbField *field, void *object)
{
  return (double *) ((char *) object + field->offset);
}

double
tb_field_get (const TbField *field, const void *object)
{
  const void *at = (const char *) object + field->offset;
  return field->kind == TB_FIELD_CHOICE ? *(const int *) at : field->from_si (*(const double *) at);
}

TbStatus
tb_field_check (const TbField *field, double value)
{
  if (!isfinite (value))
    return TB_ERROR_NOT_FINITE;
  if (field->group == TB_GROUP_BALL && strcmp (field->name, "weight_lb") == 0 && value > field->max)
    return TB_ERROR_BALL_TOO_HEAVY;
  if (value < field->min || value > field->max)
    return TB_ERROR_OUT_OF_RANGE;
  if (field->kind == TB_FIELD_CHOICE && value != floor (value))
    return TB_ERROR_UNKNOWN_CHOICE;
  return TB_OK;
}

/* A cover brings its typical friction, film scale and absorption; the surface stays as it is. */
static void
set_cover_kind (TbBall *ball, TbCoverKind kind)
{
  double roughness = ball->cover.roughness;
  ball->cover = tb_cover_typical (kind);
  ball->cover.roughness = roughness;
}

TbStatus
tb_field_set (const TbField *field, void *object, double value)
{
  TbStatus status = tb_field_check (field, value);
  if (status != TB_OK)
    return status;
  if (field->kind == TB_FIELD_REAL)
    *real_at (field, object) = field->to_si (value);
  else if (field->choices == covers)
    set_cover_kind (object, (TbCoverKind) value);
  else
    *(int *) ((char *) object + field->offset) = (int) value;
  return TB_OK;
}

TbStatus
tb_field_set_word (const TbField *field, void *object, const char *word)
{
  if (field->kind == TB_FIELD_CHOICE)
    for (int i = 0; field->choices[i].name; i++)
      if (strcmp (field->choices[i].name, word) == 0)
        return tb_field_set (field, object, i);
  if (field->words)
    for (const TbWord *known = field->words; known->name; known++)
      if (strcmp (known->name, word) == 0)
        return tb_field_set (field, object, known->value);
  return TB_ERROR_UNKNOWN_CHOICE;
}

const char *
tb_field_word (const TbField *field, const void *object)
{
  double value = tb_field_get (field, object);
  if (field->kind == TB_FIELD_CHOICE)
    return field->choices[(int) value].name;
  if (field->words)
    for (const TbWord *known = field->words; known->name; known++)
      if (known->value == value)
        return known->name;
  return NULL;
}

void
tb_field_reset_group (TbGroup group, void *object)
{
  static const size_t sizes[TB_N_GROUPS] = { sizeof (TbDelivery), sizeof (TbBall), sizeof (TbLane) };
  memset (object, 0, sizes[group]);
  for (const TbField *field = tb_field_table; field->name; field++)
    if (field->group == group && !field->alias_of)
      tb_field_set (field, object, field->standard);
}

void *
tb_shot_group (TbShot *shot, TbGroup group)
{
  return (void *) tb_shot_group_const (shot, group);
}

const void *
tb_shot_group_const (const TbShot *shot, TbGroup group)
{
  switch (group)
    {
    case TB_GROUP_DELIVERY:
      return &shot->delivery;
    case TB_GROUP_BALL:
      return &shot->ball;
    default:
      return &shot->lane;
    }
}
