/* Spares: one pin and a straight ball.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-lines.h"

#include <math.h>

/* Cross-lane: from this board of the side away from the pin (common practice). */
#define CROSS_BOARD 27.0
/* A pin nearer to the middle than this is taken from the middle of the lane, m. */
#define MIDDLE_PINS (6.5 * TB_METRES_PER_INCH)
/* Steps of the secant, and what counts as met, m. */
#define AIM_STEPS 20
#define AIM_NEAR 1e-4

/* Where a pin stands in the bowler's frame. */
static TbMark
pin_of (TbHand hand, int pin)
{
  TbMark mark = tb_lane_pins[pin];

  if (hand == TB_HAND_LEFT)
    mark.x = -mark.x;
  return mark;
}

static double
widest_pin (void)
{
  double radius = 0;

  for (int i = 0; i < TB_N_PIN_PROFILE; i++)
    radius = MAX (radius, tb_pin_profile[i].radius);
  return radius;
}

double
tb_spare_laydown_board (TbHand hand, int pin)
{
  TbMark mark = pin_of (hand, pin);

  if (fabs (mark.x) < MIDDLE_PINS)
    return TB_MIDDLE_BOARD;
  return mark.x > 0 ? CROSS_BOARD : 2 * TB_MIDDLE_BOARD - CROSS_BOARD;
}

TbSpare
tb_spare_straight (const TbSetup *setup, int pin, double laydown_board)
{
  const TbShot *shot = &setup->shot;
  TbMark mark = pin_of (shot->delivery.hand, pin);
  double laydown = tb_x_from_board (laydown_board), slope = (mark.x - laydown) / mark.y;
  TbSpare spare = { .pin = pin, .laydown_board = laydown_board };

  spare.aim_board = tb_board_from_x (laydown + slope * TB_ARROWS_Y);
  spare.pin_board = tb_board_from_x (mark.x);
  spare.room = (0.5 * shot->ball.diameter + widest_pin ()) / TB_BOARD_WIDTH;
  spare.angle = atan (-slope);
  spare.in_gutter = fabs (mark.x) > TB_LANE_HALF_WIDTH;
  return spare;
}

static TbShot
spare_shot (const TbSetup *setup, const TbSpare *spare)
{
  TbShot shot = setup->shot;

  shot.delivery.laydown = tb_x_from_board (spare->laydown_board);
  shot.delivery.aim = tb_x_from_board (spare->aim_board);
  return shot;
}

TbSetup *
tb_spare_setup (TbSetup *setup, const TbSpare *spare)
{
  TbShot shot = spare_shot (setup, spare);

  return tb_setup_with_shot (setup, &shot);
}

/* How far the ball passes from the pin, m towards lower boards; straight on from the head pin, where a run
 * ends. */
static double
miss_of (const TbSetup *setup, const TbSpare *spare, double *gutter_y)
{
  g_autofree TbWorkspace *workspace = g_malloc (tb_workspace_size ());
  TbShot shot = spare_shot (setup, spare);
  TbMark mark = pin_of (shot.delivery.hand, spare->pin);
  TbPath path = { 0 };

  shot.options.edgeless = true;
  if (tb_shot_run (&shot, workspace, &path, NULL) != TB_OK)
    return (double)NAN;
  *gutter_y = path.measures.gutter_y;
  return path.measures.x_at_pins - (mark.y - TB_HEAD_PIN_Y) * tan (path.measures.angle_at_pins) - mark.x;
}

gboolean
tb_spare_aimed (const TbSetup *setup, int pin, double laydown_board, TbSpare *spare)
{
  double gutter_y = (double)NAN,
         slope = -TB_HEAD_PIN_FT / TB_ARROWS_FT; /* boards at the pins for one at the arrows */
  double miss, last_miss, last_aim;

  *spare = tb_spare_straight (setup, pin, laydown_board);
  miss = miss_of (setup, spare, &gutter_y);
  for (int i = 0; i < AIM_STEPS && fabs (miss) > AIM_NEAR; i++)
    {
      last_miss = miss;
      last_aim = spare->aim_board;
      spare->aim_board -= miss / TB_BOARD_WIDTH / slope;
      miss = miss_of (setup, spare, &gutter_y);
      if (miss != last_miss)
        slope = (miss - last_miss) / TB_BOARD_WIDTH / (spare->aim_board - last_aim);
    }
  spare->angle = atan ((spare->aim_board - laydown_board) * TB_BOARD_WIDTH / TB_ARROWS_Y);
  spare->in_gutter = !isnan (gutter_y);
  return fabs (miss) <= AIM_NEAR;
}
