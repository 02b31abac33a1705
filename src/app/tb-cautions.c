/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-cautions.h"

#include <glib/gi18n-lib.h>

static const TbCaution cautions[] = {
  { "rev_rate_rpm", N_ ("Wrist, elbow and thumb"),
    N_ ("Revs come from timing and a loose swing, not from force. Twisting the ball by strength strains wrist and "
        "elbow. If the thumb goes numb or tingles, stop, have the fit of the ball checked and see a clinician. A "
        "qualified coach comes before anything shown here.") },
  { "loft_angle_deg", N_ ("Lofting can damage a lane"),
    N_ ("Try any loft here; on a real lane a high one leaves dents. Many centres forbid it and some charge for it: ask "
        "the staff first. House rules come before anything shown here.") },
  { "laydown_board", N_ ("Stay behind the foul line"),
    N_ ("Never step past the foul line: the lane is oiled, and most injuries of bowlers over 65 are falls (Kerr, "
        "Collins and Comstock, Clinical Pediatrics 50, 2011). Move on the approach, and slide short of the line.") },
  { "grit", N_ ("Dust, solvents and the rules"),
    N_ ("Sand wet, outdoors or in moving air, with eye protection and a mask made for fine dust, and the whole ball, "
        "not the track alone. Keep solvents away from flames, and never heat a ball. In competition a surface may not "
        "be altered once scoring has begun, and no liquid may be used: the local rulebook decides. Leave what needs a "
        "spinner to a pro shop.") },
  { "weight_lb", N_ ("Lift with both hands"),
    N_ ("Take the ball by its sides with both hands, never between it and other balls. A ball that makes you squeeze or "
        "drop the shoulder is too heavy or does not fit: a pro shop can tell.") },
  { "pin_to_pap_in", N_ ("Drilling is a pro shop's work"),
    N_ ("A layout is cut into a ball once. Plugging and drilling are a pro shop's work, and the local rulebook says "
        "which holes and static weights are allowed.") },
};

const TbCaution *
tb_caution_for_field (const char *field)
{
  for (gsize i = 0; i < G_N_ELEMENTS (cautions); i++)
    if (g_str_equal (cautions[i].field, field))
      return &cautions[i];
  return NULL;
}
