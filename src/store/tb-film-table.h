/* A film as a table: "spacing_ft", and "rows" of 39 films in units, from the right edge to the left, each for
 * the next spacing_ft from the foul line on.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-json-reader.h"
#include "tb-json-writer.h"

G_BEGIN_DECLS

/* More oil than any lane has, in units; the heads of competition patterns carry 70 to 120. */
#define TB_FILM_MAX_UNITS 500.0

/* Fills a cleared grid. `oil` is a TbOil. */
gboolean tb_film_table_read (TbReader *reader, JsonObject *object, gpointer oil);
/* The contents of the object; rows without oil at the end are left out. */
void tb_film_table_write (TbJsonWriter *writer, const TbOil *oil);

G_END_DECLS
