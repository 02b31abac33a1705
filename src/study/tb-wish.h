/* What somebody wishes of the next throw.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-pocket-line.h"

G_BEGIN_DECLS

typedef enum TbWishKind
{
  TB_WISH_BOARDS,    /* so many boards more (or, negative, less) at the pins */
  TB_WISH_POCKET,    /* the middle of the pocket */
  TB_WISH_ANGLE,     /* so many degrees at the pins */
  TB_WISH_TURN,      /* turn back so many feet later (or, negative, earlier) */
  TB_WISH_ROLL,      /* roll from so many feet on */
  TB_WISH_FORGIVING, /* more room at the arrows for a ball that still finds the pocket */
  TB_N_WISHES
} TbWishKind;

typedef struct TbWish
{
  TbWishKind kind;
  double amount; /* in the wish's unit; without meaning for TB_WISH_POCKET and TB_WISH_FORGIVING */
  gboolean
      reaim; /* judge every change on its own pocket line: the target is moved until the ball meets the
              * pocket. Without meaning for TB_WISH_BOARDS and TB_WISH_POCKET, which are about the line */
} TbWish;

typedef struct TbWishInfo
{
  const char *name;                /* "boards", on the command line */
  const char *label;               /* for people, untranslated */
  const char *unit;                /* of the amount and the wished measure, for people, untranslated */
  double min, max, step, standard; /* of the amount; min == max where there is none */
  gboolean can_reaim;
} TbWishInfo;
const TbWishInfo *tb_wish_info (TbWishKind kind);
TbWish tb_wish_default (TbWishKind kind);
gboolean tb_wish_equal (const TbWish *a, const TbWish *b);
/* "boards=-3", "pocket", "angle=5", "turn=2", "roll=50", "forgiving". FALSE and one sentence in *problem
 * (free it) if it is none of these. */
gboolean tb_wish_parse (const char *text, TbWish *wish, char **problem);
/* Whether changes are re-aimed: what `reaim` asks for, where it has a meaning. */
gboolean tb_wish_reaims (const TbWish *wish);

/* The wished measure of a throw, in the wish's unit: board, degrees, feet, boards of room. NAN where there
 * was no run. Room takes some thirty throws more. */
double tb_wish_value (const TbWish *wish, TbThrower *thrower, const TbShot *shot, const TbMeasures *measures);
/* The value wished for, seen from where things stand now; INFINITY for TB_WISH_FORGIVING. */
double tb_wish_target (const TbWish *wish, const TbAssumed *assumed, double now);
/* A wish counts as met within this, in its unit. */
#define TB_WISH_TOLERANCE 0.05

G_END_DECLS
