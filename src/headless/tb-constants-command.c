/* What the model assumes, as JSON: the constants, what is typical of a cover, and of a grit.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-constants-command.h"

#include <glib/gi18n-lib.h>

#include "tb-core.h"
#include "tb-json-writer.h"
#include "tb-output.h"

/* gettext() gives a translation's header for an empty text. */
static const char *
translated (const char *text)
{
  return text[0] != '\0' ? _ (text) : "";
}

static void
write_constant (TbJsonWriter *writer, const TbAssumedInfo *info)
{
  tb_json_begin_object (writer, NULL);
  tb_json_string (writer, "name", info->name);
  tb_json_string (writer, "label", translated (info->label));
  tb_json_string (writer, "unit", translated (info->unit));
  tb_json_number (writer, "value", info->value);
  tb_json_number (writer, "low", info->low);
  tb_json_number (writer, "high", info->high);
  tb_json_string (writer, "source", translated (info->source));
  tb_json_string (writer, "consequence", translated (info->consequence));
  tb_json_end_object (writer);
}

static void
write_constants (TbJsonWriter *writer)
{
  tb_json_begin_list (writer, "constants");
  for (const TbAssumedInfo *info = tb_assumed_table; info->name; info++)
    write_constant (writer, info);
  tb_json_end_list (writer);
}

static void
write_covers (TbJsonWriter *writer)
{
  const TbField *field = tb_field_find (TB_GROUP_BALL, "cover");

  tb_json_begin_list (writer, "covers");
  for (int kind = 0; kind < TB_N_COVER_KINDS; kind++)
    {
      TbCover cover = tb_cover_typical ((TbCoverKind) kind);

      tb_json_begin_object (writer, NULL);
      tb_json_string (writer, "name", field->choices[kind].name);
      tb_json_string (writer, "label", translated (field->choices[kind].label));
      tb_json_number (writer, "dry_friction", cover.dry_friction);
      tb_json_number (writer, "film_scale", cover.film_scale);
      tb_json_number (writer, "absorption", cover.absorption);
      tb_json_string (writer, "source", _ ("assumed"));
      tb_json_end_object (writer);
    }
  tb_json_end_list (writer);
}

static void
write_grit (TbJsonWriter *writer, double grit)
{
  tb_json_begin_object (writer, NULL);
  if (grit < TB_GRIT_POLISH)
    tb_json_number (writer, "grit", grit);
  else
    tb_json_string (writer, "grit", "polish");
  tb_json_number_si (writer, "roughness_um", tb_roughness_from_grit (grit), tb_metres_from_um, tb_um_from_metres);
  tb_json_string (writer, "source", _ ("typical, not measured"));
  tb_json_end_object (writer);
}

static void
write_grits (TbJsonWriter *writer)
{
  static const double grits[] = { TB_GRIT_COARSEST, 1000, 2000, 3000, TB_GRIT_FINEST, TB_GRIT_POLISH };

  tb_json_begin_list (writer, "grits");
  for (guint i = 0; i < G_N_ELEMENTS (grits); i++)
    write_grit (writer, grits[i]);
  tb_json_end_list (writer);
}

gboolean
tb_constants_command (TbRequest *request, const char *argument, GError **error)
{
  g_autofree char *text = NULL;
  TbJsonWriter writer;

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  write_constants (&writer);
  write_covers (&writer);
  write_grits (&writer);
  tb_json_end_object (&writer);
  text = tb_json_writer_finish (&writer);
  return tb_output_write (text, error);
}
