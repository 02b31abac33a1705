/* A lane pattern as a document: by the numbers of its profile, as a table of films, or as strips.
 *
 * "profile": length_ft, fade_ft, front_units, back_units, outside_share, outside_board, inside_board (boards
 * from either side; the edge of the lane is at 0.5). Or "table": see tb-film-table.h. Or "strips": see
 * tb-strips-json.h.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-document.h"
#include "tb-pattern.h"

G_BEGIN_DECLS

char *tb_pattern_to_text (const TbPattern *pattern);
TbPattern *tb_pattern_from_text (const char *text, gsize length, GError **error);

/* Inside another document. An embedded pattern needs neither id nor name. */
TbPattern *tb_pattern_read (TbReader *reader, JsonObject *object, gboolean embedded);
void tb_pattern_write (TbJsonWriter *writer, const TbPattern *pattern);

G_END_DECLS
