/* Numbered gaps in a whole sentence, filled in.
 *
 * Sentences are picked from tables and translated, so the compiler cannot check them against their arguments;
 * this way of filling them cannot go wrong whatever a translation says.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A copy of `sentence` with %1$s … %9$s replaced by the texts of the list (NULL-terminated) and %% by %; a
 * plain %s is the next text. A gap without a text stays empty. */
char *tb_fill (const char *sentence, const char *const *texts);
/* The same with the texts one by one; the last is NULL. */
char *tb_fill_with (const char *sentence, ...) G_GNUC_NULL_TERMINATED;
/* A number with the locale's decimal sign and a true minus sign; never "−0". The second always has a sign. */
char *tb_number_text (double value, int digits);
char *tb_signed_text (double value, int digits);
/* So many digits, from `digits` up to `most`, that the two do not read the same. */
int tb_digits_apart (double one, double other, int digits, int most);

G_END_DECLS
