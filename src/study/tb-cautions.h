/* What can hurt somebody, or a lane, beside the control that invites it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-fields.h"

G_BEGIN_DECLS

typedef struct TbCaution
{
  const char *field; /* name of the field it stands beside */
  const char *line;  /* a few words, untranslated */
  const char *text;  /* the rest of it, untranslated */
  const char *brief; /* what stands for it where there is little room: one sentence, untranslated */
} TbCaution;

/* NULL where there is none. */
const TbCaution *tb_caution_for_field (const char *field);
/* What a change of any field of a group calls for: the caution of the field itself, or of the one it goes with (the
 * target goes with the feet). NULL where there is none. */
const TbCaution *tb_caution_for_change (TbGroup group, const char *field);

G_END_DECLS
