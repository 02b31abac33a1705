/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-line-move.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-fill.h"

/* A move of less than this, boards, is none. */
#define NO_MOVE 0.005
/* Digits after the point, and how many it takes for the least move. */
#define DIGITS 1
#define MOST_DIGITS 3

/* Towards higher boards is to the left of a right-hander. */
static gboolean
is_left (double move, TbHand hand)
{
  return (move > 0) == (hand == TB_HAND_RIGHT);
}

static char *
size_text (double move)
{
  return tb_number_text (fabs (move), tb_digits_apart (move, 0, DIGITS, MOST_DIGITS));
}

static char *
one_move_text (double feet, double target, TbHand hand)
{
  double move = feet != 0 ? feet : target;
  gboolean left = is_left (move, hand);
  g_autofree char *size = size_text (move);

  if (feet != 0)
    return tb_fill_with (left ? _ ("Feet %1$s boards to the left") : _ ("Feet %1$s boards to the right"),
                         size, NULL);
  return tb_fill_with (left ? _ ("Target %1$s boards to the left") : _ ("Target %1$s boards to the right"),
                       size, NULL);
}

char *
tb_line_move_text (double feet, double target, TbHand hand)
{
  gboolean feet_left = is_left (feet, hand), target_left = is_left (target, hand);
  g_autofree char *feet_size = NULL, *target_size = NULL;
  const char *format;

  feet = fabs (feet) < NO_MOVE ? 0 : feet;
  target = fabs (target) < NO_MOVE ? 0 : target;
  if (feet == 0 && target == 0)
    return NULL;
  if (feet == 0 || target == 0)
    return one_move_text (feet, target, hand);
  feet_size = size_text (feet);
  target_size = size_text (target);
  if (feet_left)
    format = target_left ? _ ("Feet %1$s boards to the left, target %2$s to the left")
                         : _ ("Feet %1$s boards to the left, target %2$s to the right");
  else
    format = target_left ? _ ("Feet %1$s boards to the right, target %2$s to the left")
                         : _ ("Feet %1$s boards to the right, target %2$s to the right");
  return tb_fill_with (format, feet_size, target_size, NULL);
}
