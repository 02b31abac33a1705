/* A list of strips: each "way" (out, back), right_board, left_board, start_ft, end_ft, microlitres_per_board,
 * taper_ft.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-json-reader.h"
#include "tb-json-writer.h"
#include "tb-strips.h"

G_BEGIN_DECLS

/* A list under `key`; strips are TbStrip. */
gboolean tb_strips_read (TbReader *reader, JsonObject *object, const char *key, GArray *strips);
void tb_strips_write (TbJsonWriter *writer, const char *key, const TbStrip *strips, guint count);

G_END_DECLS
