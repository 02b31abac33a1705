/* Numbers as text: exact, short, and the same in every language.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Room for any double and its end. */
#define TB_DECIMAL_SIZE 32

/* The shortest decimal that reads back as `number`. */
const char *tb_decimal_format (double number, char buffer[TB_DECIMAL_SIZE]);
/* The shortest decimal that, read and put through `to_si`, gives `si` to the last bit; `from_si` is the way
 * back, to rounding. Where no decimal does (not every SI number is one of the unit's), the nearest, and
 * FALSE. */
gboolean tb_decimal_format_si (double si,
                               double (*to_si) (double),
                               double (*from_si) (double),
                               char buffer[TB_DECIMAL_SIZE]);
/* A finite decimal number, all of `text`, with a point whatever the language; FALSE for anything else. */
gboolean tb_decimal_parse (const char *text, double *number);

G_END_DECLS
