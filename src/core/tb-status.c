/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-status.h"

static const char *const sentences[TB_N_STATUS] = {
  [TB_OK] = N_ ("All is well."),
  [TB_ERROR_NOT_FINITE] = N_ ("A value is not a number."),
  [TB_ERROR_OUT_OF_RANGE] = N_ ("A value is outside its range."),
  [TB_ERROR_UNKNOWN_CHOICE] = N_ ("A word is not one of the choices."),
  [TB_ERROR_BALL_TOO_HEAVY] = N_ ("The ball is heavier than the 16 pounds that the rules allow."),
  [TB_ERROR_NO_PATTERN] = N_ ("The lane has no pattern."),
  [TB_ERROR_EMPTY_PATTERN] = N_ ("The pattern has no oil in it."),
  [TB_ERROR_BAD_ZONES] = N_ ("The friction zones are out of order, or one has less friction than none."),
  [TB_ERROR_DIFFERENTIALS] = N_ ("The intermediate differential is larger than the differential."),
  [TB_ERROR_HOLES] = N_ ("A hole lies off the ball or goes through it."),
  [TB_ERROR_TOO_SLOW] = N_ ("The ball does not get to the pins."),
  [TB_ERROR_BEYOND_LANE] = N_ ("The ball flies past the pins."),
};

const char *
tb_status_sentence (TbStatus status)
{
  return status >= 0 && status < TB_N_STATUS ? sentences[status] : N_ ("An unknown problem.");
}
