/* What the clinic says of changes, reasons and things to try, in as few words as a room can read.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-clinic.h"
#include "tb-describe.h"

G_BEGIN_DECLS

#define TB_CLINIC_MOST_CHANGES 5
#define TB_CLINIC_MOST_PARTS 4

typedef struct TbClinicChange
{
  const char *name;     /* translated, borrowed */
  char *before, *after; /* the caller's */
  double from, to;      /* shares of the field's range; NAN where there is no slider */
} TbClinicChange;

/* What was changed; `more` gets how many changes are left out. */
guint tb_clinic_changes (const TbStudy *study,
                         TbUnits units,
                         TbClinicChange changes[TB_CLINIC_MOST_CHANGES],
                         guint *more);

typedef struct TbClinicPart
{
  const char *name; /* translated, borrowed */
  char *number;     /* the caller's, with its sign and unit */
  double part;      /* boards at the pins */
} TbClinicPart;

/* The largest parts of the difference at the pins, the largest first. */
guint tb_clinic_parts (const TbWhy *why, TbClinicPart parts[TB_CLINIC_MOST_PARTS]);
/* The two strongest sentences; free it. */
char *tb_clinic_why_words (const TbWhy *why, TbUnits units);

/* The three easiest things to try, a line each; free it. */
char *tb_clinic_try_words (const TbNext *next, TbUnits units);
/* Their cautions; NULL for none; free it. */
char *tb_clinic_try_caution (const TbNext *next);

G_END_DECLS
