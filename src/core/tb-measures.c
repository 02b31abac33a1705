/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-measures.h"

#include <string.h>
#include "tb-status.h"

#define AT(member) offsetof (TbMeasures, member)
#define NO_METRIC NULL, NULL, 0
#define METRES N_ ("m"), tb_same, 2
#define CENTIMETRES N_ ("cm"), cm_from_metres, 1
#define KM_PER_HOUR_FINE N_ ("km/h"), tb_km_per_hour_from_metres_per_second, 2
#define KM_PER_HOUR N_ ("km/h"), tb_km_per_hour_from_metres_per_second, 1

static double cm_from_metres (double m) { return m * 100; }

const TbMeasureInfo tb_measure_table[] = {
  { "board_at_arrows", N_ ("Board at the arrows"), N_ ("board"), AT (x_at_arrows), tb_board_from_x, 1, NO_METRIC,
    N_ ("Board under the ball's centre 15 ft past the foul line.") },
  { "breakpoint_board", N_ ("Breakpoint, board"), N_ ("board"), AT (breakpoint_x), tb_board_from_x, 1, NO_METRIC,
    N_ ("The lowest board the ball reaches before it turns back.") },
  { "breakpoint_ft", N_ ("Breakpoint, distance"), N_ ("ft"), AT (breakpoint_y), tb_ft_from_metres, 1, METRES,
    N_ ("How far down the lane the ball turns back.") },
  { "board_at_pins", N_ ("Board at the pins"), N_ ("board"), AT (x_at_pins), tb_board_from_x, 1, NO_METRIC,
    N_ ("Board under the ball's centre at the head pin's spot, 60 ft.") },
  { "angle_at_pins_deg", N_ ("Angle at the pins"), N_ ("°"), AT (angle_at_pins), tb_deg_from_radians, 1, NO_METRIC,
    N_ ("Heading at the pins against the boards; positive towards higher boards.") },
  { "hook_board", N_ ("Boards hooked"), N_ ("board"), AT (hook), tb_boards_from_width, 1, NO_METRIC,
    N_ ("From where the launch line would have ended to where the ball ended.") },
  { "hook_start_ft", N_ ("Hooks from"), N_ ("ft"), AT (hook_start_y), tb_ft_from_metres, 1, METRES,
    N_ ("Where the heading has turned by one degree.") },
  { "roll_start_ft", N_ ("Rolls from"), N_ ("ft"), AT (roll_start_y), tb_ft_from_metres, 1, METRES,
    N_ ("Where the ball stops slipping for good.") },
  { "oil_exit_ft", N_ ("Leaves the oil, distance"), N_ ("ft"), AT (oil_exit_y), tb_ft_from_metres, 1, METRES,
    N_ ("Where the film under the ball falls below one unit for good.") },
  { "oil_exit_board", N_ ("Leaves the oil, board"), N_ ("board"), AT (oil_exit_x), tb_board_from_x, 1, NO_METRIC,
    N_ ("The board on which the ball leaves the oil.") },
  { "time_in_oil_s", N_ ("Time in the oil"), N_ ("s"), AT (time_in_oil), tb_same, 2, NO_METRIC,
    N_ ("How long the ball is on oil of one unit or more.") },
  { "time_s", N_ ("Time to the pins"), N_ ("s"), AT (time), tb_same, 2, NO_METRIC, N_ ("From release to the head pin's spot.") },
  { "speed_at_pins_mph", N_ ("Speed at the pins"), N_ ("mph"), AT (speed_at_pins), tb_mph_from_metres_per_second, 1,
    KM_PER_HOUR, N_ ("Speed of the ball's centre at 60 ft.") },
  { "rev_rate_at_pins_rpm", N_ ("Rev rate at the pins"), N_ ("rpm"), AT (rev_rate_at_pins),
    tb_rpm_from_radians_per_second, 0, NO_METRIC, N_ ("How fast the ball turns at 60 ft.") },
  { "revolutions", N_ ("Revolutions"), N_ ("turns"), AT (turned), tb_revolutions_from_radians, 1, NO_METRIC,
    N_ ("Turns from release to the pins.") },
  { "flare_in", N_ ("Flare"), N_ ("in"), AT (flare), tb_in_from_metres, 1, CENTIMETRES,
    N_ ("The greatest distance on the ball between the spin axis and its place at release.") },
  { "ring_spacing_in", N_ ("First ring spacing"), N_ ("in"), AT (ring_spacing), tb_in_from_metres, 2, CENTIMETRES,
    N_ ("How far the axis moves on the ball during the first turn.") },
  { "landing_ft", N_ ("Lands at"), N_ ("ft"), AT (landing_y), tb_ft_from_metres, 1, METRES,
    N_ ("Where the ball first touches the lane.") },
  { "landing_speed_mph", N_ ("Landing, speed downwards"), N_ ("mph"), AT (landing_speed), tb_mph_from_metres_per_second, 1,
    KM_PER_HOUR, N_ ("How fast the ball comes down where it first touches the lane.") },
  { "landing_load", N_ ("Landing, load"), N_ ("weights"), AT (landing_load), tb_same, 0, NO_METRIC,
    N_ ("The push on the lane at the first touch, in weights of the ball (how long it lasts is assumed).") },
  { "landing_slowed_mph", N_ ("Landing, speed lost"), N_ ("mph"), AT (landing_slowed), tb_mph_from_metres_per_second, 2,
    KM_PER_HOUR_FINE, N_ ("Speed along the lane that the landing and its bounces take.") },
  { "landing_loss_j", N_ ("Landing, energy lost"), N_ ("J"), AT (landing_loss), tb_same, 1, NO_METRIC,
    N_ ("Energy of motion that the landing and its bounces take, the fall's own included.") },
  { "actual_speed_mph", N_ ("Actual speed at release"), N_ ("mph"), AT (actual_speed), tb_mph_from_metres_per_second, 1,
    KM_PER_HOUR, N_ ("Speed after the grip's effect (its size is assumed).") },
  { "actual_rev_rate_rpm", N_ ("Actual rev rate at release"), N_ ("rpm"), AT (actual_rev_rate),
    tb_rpm_from_radians_per_second, 0, NO_METRIC, N_ ("Rev rate after the grip's effect (its size is assumed).") },
  { NULL, NULL, NULL, 0, NULL, 0, NULL, NULL, 0, NULL },
};

int
tb_measure_count (void)
{
  return (int) (sizeof tb_measure_table / sizeof tb_measure_table[0]) - 1;
}

const TbMeasureInfo *
tb_measure_find (const char *name)
{
  for (const TbMeasureInfo *info = tb_measure_table; info->name; info++)
    if (strcmp (info->name, name) == 0)
      return info;
  return NULL;
}

double
tb_measure_si (const TbMeasureInfo *info, const TbMeasures *measures)
{
  return *(const double *) ((const char *) measures + info->offset);
}

double
tb_measure_value (const TbMeasureInfo *info, const TbMeasures *measures)
{
  return info->from_si (tb_measure_si (info, measures));
}
