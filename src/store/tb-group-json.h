/* A group of fields as a JSON object, driven by core's field tables.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-json-reader.h"
#include "tb-json-writer.h"

G_BEGIN_DECLS

/* Fills the group's struct. Choices are set first, then the fields that stand for another (grit), then
 * numbers, in whatever order they stand in the file, so that what a cover brings can be overridden. Every
 * field must be given or follow from one that is. Keys in `more` are other people's business; any others are
 * an error. On an error the struct is left in part. */
gboolean
tb_group_read (TbReader *reader, JsonObject *object, TbGroup group, gpointer target, const char *const *more);
/* Writes every field that is not another way of setting one. */
void tb_group_write (TbJsonWriter *writer, TbGroup group, gconstpointer source);
/* One field, under its own name. */
gboolean tb_field_read (TbReader *reader, JsonObject *object, const TbField *field, gpointer target);
void tb_field_write (TbJsonWriter *writer, const TbField *field, gconstpointer source);

G_END_DECLS
