/* A film as a table of comma-separated values, to be looked at and made in a spreadsheet.
 *
 * A first line of headings, then one line for each distance: feet from the foul line, then the film in units
 * on the 39 boards from the right edge to the left. Between two lines the film changes evenly; nearer than
 * the first line it is as there, past the last line there is none. What is written has a line for the middle
 * of each half foot, and reads back as the same film to the last bit.
 *
 * Read are commas, semicolons or tabs between the values, a point in the numbers, quotation marks around
 * values, a missing line of headings, any rising distances.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-pattern.h"
#include "tb-store-error.h"

G_BEGIN_DECLS

/* A table of the finest spacing, every value with all its digits, is a quarter of it. */
#define TB_FILM_CSV_MAX_BYTES (1024u * 1024u)

char *tb_film_csv_to_text (const TbOil *oil);
/* A clause that says which line is wrong and what was expected; *oil is then not touched. A TB_STORE_ERROR.
 */
gboolean tb_film_csv_from_text (const char *text, gsize length, TbOil *oil, GError **error);

/* The same with files; the sentences name the file. */
gboolean tb_film_csv_save (const TbOil *oil, const char *path, GError **error);
gboolean tb_film_csv_load (const char *path, TbOil *oil, GError **error);
/* A pattern of its own from a file, called by the file's name. */
TbPattern *tb_pattern_import (const char *path, GError **error);

G_END_DECLS
