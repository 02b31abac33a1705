/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-help-assumed.h"

#include <glib/gi18n-lib.h>

#include "tb-core.h"

/* "0.008", "3 ms" */
static char *
with_unit (double value, const char *unit)
{
  return unit[0] != '\0' ? g_strdup_printf ("%g %s", value, _ (unit)) : g_strdup_printf ("%g", value);
}

static void
tell_constant (const TbAssumedInfo *info, TbHelpAssumedFunc func, gpointer data)
{
  g_autofree char *value = with_unit (info->value, info->unit), *low = with_unit (info->low, info->unit);
  g_autofree char *high = with_unit (info->high, info->unit);
  /* Translators: what it is, then its value. */
  g_autofree char *heading = g_strdup_printf (_ ("%s: %s"), _ (info->label), value);
  g_autofree char *range = g_strdup_printf (_ ("Plausible from %s to %s."), low, high);
  g_autofree char *source = g_strdup_printf (_ ("Where it comes from: %s."), _ (info->source));
  g_autofree char *consequence = g_strdup_printf (_ ("If it is moved: %s."), _ (info->consequence));
  g_autofree char *all = g_strjoin ("\n", range, source, consequence, NULL);

  func (heading, all, data);
}

/* Pads that people know. */
static const double pads[] = { 500, 1000, 2000, 3000, 4000, TB_GRIT_POLISH };

static char *
surface_text (void)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (pads); i++)
    {
      double um = tb_um_from_metres (tb_roughness_from_grit (pads[i]));

      g_string_append (text, i > 0 ? "\n" : "");
      if (pads[i] == TB_GRIT_POLISH)
        g_string_append_printf (text, _ ("Polish: %.2f µm"), um);
      else
        g_string_append_printf (text, _ ("%.0f grit: %.2f µm"), pads[i], um);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
cover_text (void)
{
  const TbField *field = tb_field_find (TB_GROUP_BALL, "cover");
  g_autoptr (GString) text = g_string_new (NULL);

  for (int kind = 0; kind < TB_N_COVER_KINDS; kind++)
    {
      TbCover cover = tb_cover_typical ((TbCoverKind) kind);

      g_string_append (text, kind > 0 ? "\n" : "");
      /* Translators: kind of cover, friction on a dry lane, film scale, absorption. */
      g_string_append_printf (
          text, _ ("%s: friction on a dry lane %g, grip through oil %g, oil absorption %g 1/s"),
          _ (field->choices[kind].label), cover.dry_friction, cover.film_scale, cover.absorption);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

void
tb_help_assumed_foreach (TbHelpAssumedFunc func, gpointer data)
{
  g_autofree char *covers = cover_text (), *surfaces = surface_text ();

  for (const TbAssumedInfo *info = tb_assumed_table; info->name != NULL; info++)
    tell_constant (info, func, data);
  func (_ ("Covers (assumed)"), covers, data);
  func (_ ("Roughness of a surface (typical, not measured)"), surfaces, data);
}
