/* Whether a text is JSON that may be handed to the parser.
 *
 * The parser of the library recurses without a limit and takes more than JSON (octal numbers, comments); both
 * are shut out here, and its errors become sentences that name what was expected.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Limits of a document. A study with two patterns given cell by cell is 10,000 numbers and a tenth of this
 * size. */
#define TB_JSON_MAX_BYTES (4u * 1024u * 1024u)
#define TB_JSON_MAX_DEPTH 32
#define TB_JSON_MAX_VALUES 200000u

/* TRUE if `text` is one JSON value within the limits, by RFC 8259, with no key given twice. Otherwise a
 * TB_STORE_ERROR that names the line. */
gboolean tb_json_check (const char *text, gsize length, GError **error);

G_END_DECLS
