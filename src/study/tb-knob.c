/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-knob.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Common practice, but for the rule on surfaces (USBC rule 18: no abrasive and no liquid once scoring has
 * begun). */
static const TbKnobCost next_shot = { N_ ("At once; undone on the next shot."),
                                      { TB_RULE_ALLOWED, TB_RULE_ALLOWED, TB_RULE_ALLOWED },
                                      NULL };
static const TbKnobCost with_practice
    = { N_ ("Some shots of practice before it repeats; undone by going back."),
        { TB_RULE_ALLOWED, TB_RULE_ALLOWED, TB_RULE_ALLOWED },
        NULL };
static const TbKnobCost lofted = { N_ ("At once; undone on the next shot. A dent in the lane is not."),
                                   { TB_RULE_ASK, TB_RULE_ASK, TB_RULE_ASK },
                                   N_ ("Many houses forbid high loft; ask the staff.") };
static const TbKnobCost sanded = { N_ ("Some minutes with pads, the whole ball; undone by sanding or "
                                       "polishing again, and it wears off with play."),
                                   { TB_RULE_ALLOWED, TB_RULE_ASK, TB_RULE_NOT_ALLOWED },
                                   N_ ("In competition no abrasive and no liquid once scoring has begun, a "
                                       "dry towel only (USBC rule 18). The local "
                                       "rulebook decides.") };
static const TbKnobCost ball_change
    = { N_ ("Half a minute if the ball is there; undone by changing back."),
        { TB_RULE_ALLOWED, TB_RULE_ALLOWED, TB_RULE_ASK },
        N_ ("In competition the ball has to be an approved one; some events count or list "
            "the balls.") };
static const TbKnobCost drilled
    = { N_ ("Days at a pro shop, on a new ball or after plugging; it cannot be undone."),
        { TB_RULE_ALLOWED, TB_RULE_ASK, TB_RULE_ASK },
        N_ ("The rulebook limits holes and static weights; a pro shop knows them.") };

#define WRIST                                                                                             \
  N_ ("Revs come from timing and a loose swing. Twisting by force strains wrist and elbow; a numb thumb " \
      "means stop.")
#define SPEED                                                                                               \
  N_ ("Speed comes from the swing's height and the feet, not from muscling the ball. Stay behind the foul " \
      "line.")
#define ROTATION \
  N_ ("The hand turns around the ball, the elbow does not twist. Stop when wrist or elbow hurts.")
#define GRIP \
  N_ ("A squeezed grip tires the hand and may hurt the thumb. What grip pressure does here is assumed.")
#define LOFT N_ ("Inches do it: a high loft dents lanes. On fresh oil a low loft changes little.")
#define FOUL N_ ("Keep to the approach and behind the foul line: the lane is oiled.")
#define SHINE                                                                                               \
  N_ ("A smoother surface skids longer and turns more sharply: that is not always less hook. Both ends of " \
      "the scale can "                                                                                      \
      "mislead. Wet sanding, fresh air, eyes and lungs protected.")
#define LAYOUT \
  N_ ("Plugging and drilling are a pro shop's work. Its effect is small beside surface and line.")
#define CORE \
  N_ ("Numbers of a core differ from ball to ball; what a real one does depends on its cover first of all.")
#define COVER N_ ("Typical covers with assumed friction: a real ball may differ from its kind.")

#define SLIDE TB_KNOB_SLIDE
#define NO_SECOND NULL, 0

const TbKnob tb_knob_table[] = {
  { "speed", N_ ("Speed"), TB_KNOB_DELIVERY, SLIDE, "speed_mph", NO_SECOND, 8, 24, 3, 1.5, 0, &with_practice,
    SPEED },
  { "rev-rate", N_ ("Rev rate"), TB_KNOB_DELIVERY, SLIDE, "rev_rate_rpm", NO_SECOND, 50, 600, 100, 0.05, 0,
    &with_practice, WRIST },
  { "axis-rotation", N_ ("Axis rotation"), TB_KNOB_DELIVERY, SLIDE, "axis_rotation_deg", NO_SECOND, 0, 90, 30,
    0.12, 0, &with_practice, ROTATION },
  { "axis-tilt", N_ ("Axis tilt"), TB_KNOB_DELIVERY, SLIDE, "axis_tilt_deg", NO_SECOND, 0, 35, 12, 0.3, 0,
    &with_practice, ROTATION },
  { "speed-and-rotation", N_ ("Speed and axis rotation"), TB_KNOB_DELIVERY, SLIDE, "speed_mph",
    "axis_rotation_deg", -10, 8, 24, 3, 2.2, 0, &with_practice, ROTATION },
  { "grip", N_ ("Grip pressure"), TB_KNOB_DELIVERY, SLIDE, "grip_pressure", NO_SECOND, 2, 8, 3, 0.5, 0,
    &next_shot, GRIP },
  { "loft-reach", N_ ("Loft, forward"), TB_KNOB_DELIVERY, SLIDE, "loft_reach_in", NO_SECOND, 0, 24, 18, 0.1,
    0, &lofted, LOFT },
  { "loft-angle", N_ ("Loft, upward"), TB_KNOB_DELIVERY, SLIDE, "loft_angle_deg", NO_SECOND, 0, 8, 8, 0.4, 0,
    &lofted, LOFT },
  { "target", N_ ("Target"), TB_KNOB_LINE, SLIDE, "aim_board", NO_SECOND, 1, 39, 6, 0.4, 0, &next_shot,
    FOUL },
  { "feet", N_ ("Feet"), TB_KNOB_LINE, SLIDE, "laydown_board", NO_SECOND, 4, 36, 8, 0.3, 0, &next_shot,
    FOUL },
  { "parallel", N_ ("Feet and target alike"), TB_KNOB_LINE, SLIDE, "laydown_board", "aim_board", 1, 4, 36, 8,
    0.4, 0, &next_shot, FOUL },
  { "feet-and-target", N_ ("Feet two, target one"), TB_KNOB_LINE, SLIDE, "laydown_board", "aim_board", 0.5, 4,
    36, 10, 0.35, 0, &next_shot, FOUL },
  { "surface", N_ ("Surface"), TB_KNOB_BALL, SLIDE, "grit", NO_SECOND, TB_GRIT_COARSEST, TB_GRIT_POLISH,
    TB_GRIT_POLISH, 0.0005, 1, &sanded, SHINE },
  { "surface-and-line", N_ ("Surface and line"), TB_KNOB_BALL, TB_KNOB_SURFACE_AND_LINE, NULL, NO_SECOND, 0,
    0, 0, 0.0005, 1, &sanded, SHINE },
  { "cover", N_ ("A ball with another cover"), TB_KNOB_BALL, TB_KNOB_COVER, NULL, NO_SECOND, 0, 0, 0, 0, 2,
    &ball_change, COVER },
  { "rg", N_ ("A ball with another RG"), TB_KNOB_BALL, SLIDE, "rg_in", NO_SECOND, 2.46, 2.70, 0.24, 2, 3,
    &ball_change, CORE },
  { "differential", N_ ("A ball with another differential"), TB_KNOB_BALL, SLIDE, "differential_in",
    NO_SECOND, 0.005, 0.060, 0.055, 10, 3, &ball_change, CORE },
  { "pin-to-pap", N_ ("Layout, pin to PAP"), TB_KNOB_BALL, SLIDE, "pin_to_pap_in", NO_SECOND, 1, 6, 6, 0.2, 7,
    &drilled, LAYOUT },
  { "drilling-angle", N_ ("Layout, drilling angle"), TB_KNOB_BALL, SLIDE, "drilling_angle_deg", NO_SECOND, 10,
    90, 80, 0.01, 7, &drilled, LAYOUT },
  { "val-angle", N_ ("Layout, VAL angle"), TB_KNOB_BALL, SLIDE, "val_angle_deg", NO_SECOND, 20, 70, 50, 0.01,
    7, &drilled, LAYOUT },
  { "other-ball", N_ ("Another ball and line"), TB_KNOB_BALL, TB_KNOB_OTHER_BALL, NULL, NO_SECOND, 0, 0, 0, 0,
    1, &ball_change, NULL },
  { NULL, NULL, TB_N_KNOB_GROUPS, SLIDE, NULL, NO_SECOND, 0, 0, 0, 0, 0, NULL, NULL },
};

const char *
tb_knob_group_name (TbKnobGroup group)
{
  static const char *const names[TB_N_KNOB_GROUPS] = { "delivery", "line", "ball" };

  return names[group];
}

const char *
tb_knob_group_label (TbKnobGroup group)
{
  static const char *const labels[TB_N_KNOB_GROUPS] = { N_ ("Delivery"), N_ ("Line"), N_ ("Ball") };

  return labels[group];
}

const char *
tb_occasion_name (TbOccasion occasion)
{
  static const char *const names[TB_N_OCCASIONS] = { "practice", "between_games", "competition" };

  return names[occasion];
}

const char *
tb_occasion_label (TbOccasion occasion)
{
  static const char *const labels[TB_N_OCCASIONS]
      = { N_ ("Practice"), N_ ("Between games"), N_ ("In competition") };

  return labels[occasion];
}

const char *
tb_rule_name (TbRule rule)
{
  static const char *const names[TB_N_RULES] = { "allowed", "ask", "not-allowed" };

  return names[rule];
}

const char *
tb_rule_label (TbRule rule)
{
  static const char *const labels[TB_N_RULES] = { N_ ("allowed"), N_ ("ask first"), N_ ("not allowed") };

  return labels[rule];
}

const TbKnob *
tb_knob_find (const char *name)
{
  for (const TbKnob *knob = tb_knob_table; knob->name; knob++)
    if (g_str_equal (knob->name, name))
      return knob;
  return NULL;
}

static const TbField *
field_of_group (const TbKnob *knob, const char *name)
{
  if (!name)
    return NULL;
  return tb_field_find (knob->group == TB_KNOB_BALL ? TB_GROUP_BALL : TB_GROUP_DELIVERY, name);
}

const TbField *
tb_knob_field (const TbKnob *knob)
{
  return field_of_group (knob, knob->field);
}

const TbField *
tb_knob_second (const TbKnob *knob)
{
  return field_of_group (knob, knob->second);
}

static double
field_value (const TbField *field, const TbShot *shot)
{
  return tb_field_get (field, tb_shot_group_const (shot, field->group));
}

double
tb_knob_value (const TbKnob *knob, const TbShot *shot)
{
  return field_value (tb_knob_field (knob), shot);
}

/* A field that is not moved keeps its bits. */
static gboolean
move_field (const TbField *field, TbShot *shot, double by)
{
  return by == 0
         || tb_field_set (field, tb_shot_group (shot, field->group), field_value (field, shot) + by) == TB_OK;
}

gboolean
tb_knob_turn (const TbKnob *knob, TbShot *shot, double value)
{
  double by = value - tb_knob_value (knob, shot);
  const TbField *second = tb_knob_second (knob);

  return move_field (tb_knob_field (knob), shot, by)
         && (!second || move_field (second, shot, knob->ratio * by));
}

/* How far the second lets the first go. */
static void
limit_by_second (const TbKnob *knob, const TbShot *shot, double *low, double *high)
{
  const TbField *second = tb_knob_second (knob);
  double at = field_value (second, shot), value = tb_knob_value (knob, shot);
  double down = (second->min - at) / knob->ratio, up = (second->max - at) / knob->ratio;

  *low = MAX (*low, value + MIN (down, up));
  *high = MIN (*high, value + MAX (down, up));
}

void
tb_knob_range (const TbKnob *knob, const TbShot *shot, double *low, double *high)
{
  double value = tb_knob_value (knob, shot);

  /* Who is outside of what is usual may come back, or stay. */
  *low = MIN (MAX (knob->low, value - knob->reach), value);
  *high = MAX (MIN (knob->high, value + knob->reach), value);
  if (knob->second)
    limit_by_second (knob, shot, low, high);
}

double
tb_knob_effort (const TbKnob *knob, double change)
{
  return change == 0 ? 0 : knob->effort_fixed + knob->effort * fabs (change);
}

const char *
tb_effort_word (double effort)
{
  static const struct
  {
    double below;
    const char *word;
  } words[] = { { 0.75, N_ ("tiny") }, { 1.5, N_ ("small") }, { 3, N_ ("moderate") }, { 6, N_ ("large") } };

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    if (effort < words[i].below)
      return words[i].word;
  return N_ ("very large");
}

const char *
tb_effort_help (void)
{
  return N_ ("How big a change is for a person, assumed: 1 is a small one that a practised bowler makes on "
             "the next shot, 2 "
             "takes some shots, 4 takes practice, 8 takes weeks or another ball.");
}
