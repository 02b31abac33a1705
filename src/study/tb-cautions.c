/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-cautions.h"

#include <glib/gi18n-lib.h>

static const TbCaution cautions[] = {
  { "rev_rate_rpm", N_ ("Wrist, elbow and thumb"),
    N_ ("Revs come from timing and a loose swing, not from force. Twisting the ball by strength strains wrist and "
        "elbow. If the thumb goes numb or tingles, stop, have the fit of the ball checked and see a clinician. A "
        "qualified coach comes before anything shown here."),
    N_ ("Never twist by force; a numb thumb or a sore elbow means stop, and have the fit checked.") },
  { "loft_angle_deg", N_ ("Lofting can damage a lane"),
    N_ ("Try any loft here; on a real lane a high one leaves dents. Many centres forbid it and some charge for it: ask "
        "the staff first. House rules come before anything shown here."),
    N_ ("Ask the staff before you loft: a high loft dents the lane, and house rules come first.") },
  { "laydown_board", N_ ("Stay behind the foul line"),
    N_ ("Never step past the foul line: the lane is oiled, and most injuries of bowlers over 65 are falls (Kerr, "
        "Collins and Comstock, Clinical Pediatrics 50, 2011). Move on the approach, and slide short of the line."),
    N_ ("Never step past the foul line: the lane is oiled.") },
  { "grit", N_ ("Dust, solvents and the rules"),
    N_ ("Sand wet, outdoors or in moving air, with eye protection and a mask made for fine dust, and the whole ball, "
        "not the track alone. Keep solvents away from flames, and never heat a ball. In competition a surface may not "
        "be altered once scoring has begun, and no liquid may be used: the local rulebook decides. Leave what needs a "
        "spinner to a pro shop."),
    N_ ("Sand wet, in moving air, eyes and lungs protected; never once scoring has begun.") },
  { "weight_lb", N_ ("Lift with both hands"),
    N_ ("Take the ball by its sides with both hands, never between it and other balls. A ball that makes you squeeze or "
        "drop the shoulder is too heavy or does not fit: a pro shop can tell."),
    N_ ("Both hands on its sides; a ball that makes you squeeze does not fit.") },
  { "pin_to_pap_in", N_ ("Drilling is a pro shop's work"),
    N_ ("A layout is cut into a ball once. Plugging and drilling are a pro shop's work, and the local rulebook says "
        "which holes and static weights are allowed."),
    N_ ("Leave plugging and drilling to a pro shop; the local rulebook has the limits.") },
};

const TbCaution *
tb_caution_for_field (const char *field)
{
  for (gsize i = 0; i < G_N_ELEMENTS (cautions); i++)
    if (g_str_equal (cautions[i].field, field))
      return &cautions[i];
  return NULL;
}

/* Fields that share the caution of another. */
typedef struct Sharing
{
  TbGroup group;
  const char *field, *with;
} Sharing;

static const Sharing sharings[] = {
  { TB_GROUP_DELIVERY, "hand", "rev_rate_rpm" },
  { TB_GROUP_DELIVERY, "speed_mph", "rev_rate_rpm" },
  { TB_GROUP_DELIVERY, "axis_rotation_deg", "rev_rate_rpm" },
  { TB_GROUP_DELIVERY, "axis_tilt_deg", "rev_rate_rpm" },
  { TB_GROUP_DELIVERY, "grip_pressure", "rev_rate_rpm" },
  { TB_GROUP_DELIVERY, "aim_board", "laydown_board" },
  { TB_GROUP_DELIVERY, "release_height_in", "loft_angle_deg" },
  { TB_GROUP_DELIVERY, "loft_reach_in", "loft_angle_deg" },
  { TB_GROUP_BALL, "roughness_uin", "grit" },
  { TB_GROUP_BALL, "drilling_angle_deg", "pin_to_pap_in" },
  { TB_GROUP_BALL, "val_angle_deg", "pin_to_pap_in" },
};

const TbCaution *
tb_caution_for_change (TbGroup group, const char *field)
{
  for (gsize i = 0; i < G_N_ELEMENTS (sharings); i++)
    if (sharings[i].group == group && g_str_equal (sharings[i].field, field))
      return tb_caution_for_field (sharings[i].with);
  /* Whatever else makes it another ball is lifted with the hands as well. */
  if (group == TB_GROUP_BALL && tb_caution_for_field (field) == NULL)
    return tb_caution_for_field ("weight_lb");
  return tb_caution_for_field (field);
}
