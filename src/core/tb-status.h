/* What core answers when it cannot compute: a code, and one sentence for each code.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Marks a string for translation where no translation machinery is at hand (core has none). Word for word as GLib
 * defines it, so that the two may meet in one file. */
#ifndef N_
# define N_(String) (String)
#endif

typedef enum TbStatus
{
  TB_OK = 0,
  TB_ERROR_NOT_FINITE,     /* a value is not a number, or infinite */
  TB_ERROR_OUT_OF_RANGE,   /* a value lies outside its field's range */
  TB_ERROR_UNKNOWN_CHOICE, /* a word that the field does not know */
  TB_ERROR_BALL_TOO_HEAVY, /* over 16 lb (USBC Equipment Specifications Manual) */
  TB_ERROR_NO_PATTERN,     /* the lane has no film to read */
  TB_ERROR_EMPTY_PATTERN,  /* the film has no oil in it */
  TB_ERROR_BAD_ZONES,      /* zone edges out of order, or a friction below nothing */
  TB_ERROR_DIFFERENTIALS,  /* the intermediate differential is larger than the differential */
  TB_ERROR_HOLES,          /* the holes take away more than there is, or lie off the ball */
  TB_ERROR_TOO_SLOW,       /* the ball does not get to the pins in TB_SHOT_TIME_LIMIT */
  TB_ERROR_BEYOND_LANE,    /* the ball is released past the pins, or has not touched the lane when it is there */
  TB_N_STATUS
} TbStatus;

/* One whole sentence, untranslated, for any status, TB_OK included. Never NULL. */
const char *tb_status_sentence (TbStatus status);

struct TbField;

/* What is wrong, and with what. */
typedef struct TbProblem
{
  TbStatus status;
  const struct TbField *field; /* NULL where no single field is to blame */
  double value;                /* in the field's unit */
} TbProblem;
