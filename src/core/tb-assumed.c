/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-assumed.h"
#include "tb-status.h"

#define AT(member) offsetof (TbAssumed, member)
#define SAME tb_same, tb_same
#define MILLIMETRES metres_from_mm, mm_from_metres
#define MILLISECONDS seconds_from_ms, ms_from_seconds

static double metres_from_mm (double mm) { return mm * 1e-3; }
static double mm_from_metres (double m) { return m / 1e-3; }
static double seconds_from_ms (double ms) { return ms * 1e-3; }
static double ms_from_seconds (double s) { return s / 1e-3; }

const TbAssumedInfo tb_assumed_table[] = {
  { "film_friction", N_ ("Friction on full oil"), "", AT (film_friction), SAME, 0.008, 0.004, 0.040,
    N_ ("assumed; fitted with the dry friction and film scale to published and coaching figures"),
    N_ ("more of it makes every ball hook and roll earlier, on the heads too") },
  { "restitution", N_ ("Bounce of ball on lane"), "", AT (restitution), SAME, 0.3, 0.1, 0.6, N_ ("assumed"),
    N_ ("more of it makes a lofted ball bounce longer and rub harder where it lands") },
  { "landing_time", N_ ("Time a landing presses"), "ms", AT (landing_time), MILLISECONDS, 3, 1, 6, N_ ("assumed"),
    N_ ("a shorter press squeezes the film thinner at the landing") },
  { "contact_radius", N_ ("Radius of the contact spot"), "mm", AT (contact_radius), MILLIMETRES, 2, 1, 5,
    N_ ("assumed; Hertz contact of a sphere of 0.5 to 1 GPa under its own weight"),
    N_ ("a larger spot takes more of the upright part of the spin; the path hardly changes") },
  { "rolling_resistance", N_ ("Rolling resistance"), "", AT (rolling_resistance), SAME, 0.001, 0, 0.005,
    N_ ("assumed"), N_ ("more of it costs a little speed at the pins") },
  { "drag_coefficient", N_ ("Air drag of the ball"), "", AT (drag_coefficient), SAME, 0.47, 0, 0.6,
    N_ ("typical of a smooth sphere at this speed, in free air (textbook value, from memory); near the lane assumed"),
    N_ ("more of it costs speed: about a third of a mile an hour over the lane at the default") },
  { "air_density", N_ ("Density of the air"), "kg/m³", AT (air_density), SAME, 1.20, 0, 1.3,
    N_ ("dry air at 20 °C and sea level (standard)"), N_ ("thinner air costs less speed") },
  { "grip_speed", N_ ("Speed lost to a tight grip"), N_ ("share for each step"), AT (grip_speed), SAME, 0.01, 0, 0.03,
    N_ ("assumed; its direction is common practice"), N_ ("the size of what grip pressure does") },
  { "grip_rev_rate", N_ ("Revs gained by a tight grip"), N_ ("share for each step"), AT (grip_rev_rate), SAME, 0.02, 0,
    0.05, N_ ("assumed; its direction is common practice"), N_ ("the size of what grip pressure does") },
  { "pick_up", N_ ("Oil taken up by the ball"), N_ ("share of the film in one passing"), AT (pick_up), SAME, 0.07, 0,
    0.2,
    N_ ("assumed; with the strip's width held to half of the oil of the heads gone from the track after 12 to 15 games "
        "(Bowlers Journal, August 2015)"),
    N_ ("more of it wets the ball and wears the lane faster") },
  { "lay_down", N_ ("Oil left on the lane by the ball"), N_ ("share of the film in one passing"), AT (lay_down), SAME,
    0.2, 0, 0.6, N_ ("assumed; a ball that runs on one track then carries somewhat less than the film of the lane under it"),
    N_ ("less of it makes a ball that does not flare run on its own oil and hardly hook") },
  { "patch_width", N_ ("Width of the strip that exchanges oil"), "mm", AT (patch_width), MILLIMETRES, 10, 3, 12,
    N_ ("assumed; about the width of an oil ring on a ball; held together with the share taken up"),
    N_ ("a wider strip wears the lane faster") },
  { "oil_exit_film", N_ ("Film that counts as out of the oil"), N_ ("units"), AT (oil_exit_film), tb_film_from_units,
    tb_units_from_film, 1, 0.2, 5, N_ ("assumed; a definition"), N_ ("only where the report says the oil ends") },
  { "pocket_low", N_ ("Pocket, light side"), N_ ("board"), AT (pocket_low), tb_x_from_board, tb_board_from_x, 16.5, 15,
    17.5, N_ ("assumed; boards 17 to 18 strike most (USBC technical note on the 10 pin)"),
    N_ ("only what counts as the pocket") },
  { "pocket_high", N_ ("Pocket, high side"), N_ ("board"), AT (pocket_high), tb_x_from_board, tb_board_from_x, 18.5,
    17.5, 20, N_ ("assumed; boards 17 to 18 strike most (USBC technical note on the 10 pin)"),
    N_ ("only what counts as the pocket") },
  { NULL, NULL, NULL, 0, NULL, NULL, 0, 0, 0, NULL, NULL },
};

int
tb_assumed_count (void)
{
  return (int) (sizeof tb_assumed_table / sizeof tb_assumed_table[0]) - 1;
}

TbAssumed
tb_assumed_default (void)
{
  TbAssumed assumed;
  for (const TbAssumedInfo *info = tb_assumed_table; info->name; info++)
    *(double *) ((char *) &assumed + info->offset) = info->to_si (info->value);
  return assumed;
}
