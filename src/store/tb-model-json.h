/* What a study keeps of the model itself: assumed constants that were moved, and parts that were left out.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-json-reader.h"
#include "tb-json-writer.h"

G_BEGIN_DECLS

/* Constants that are given replace those in `assumed`, a TbAssumed; the ranges are those of core's table. */
gboolean tb_assumed_read (TbReader *reader, JsonObject *object, gpointer assumed);
/* Only what differs from the default; nothing at all if nothing does. */
void tb_assumed_write (TbJsonWriter *writer, const char *key, const TbAssumed *assumed);
/* The row of a name; NULL if there is none. */
const TbAssumedInfo *tb_assumed_find (const char *name);

/* A list of names under `key`, which may be missing: "edges", "air_drag" … The integrator's step and gravity
 * are not part of a document. */
gboolean tb_left_out_read (TbReader *reader, JsonObject *object, const char *key, TbOptions *options);
void tb_left_out_write (TbJsonWriter *writer, const char *key, const TbOptions *options);

G_END_DECLS
