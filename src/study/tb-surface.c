/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-surface.h"

#include <stdlib.h>
#include <string.h>
#include <glib/gi18n-lib.h>

/* USBC technical note: a 3000 ball rubbed by hand with 500 read about 1650. */
#define NOTE_BALL_GRIT 3000.0
#define NOTE_PAD_GRIT 500.0
#define NOTE_READ_GRIT 1650.0

double
tb_surface_after_games (double roughness, double games)
{
  if (roughness <= TB_SURFACE_WORN || !(games > 0))
    return roughness;
  return TB_SURFACE_WORN + (roughness - TB_SURFACE_WORN) * exp (-games / TB_SURFACE_GAMES);
}

double
tb_surface_touched_up (double roughness, double grit)
{
  double ball = tb_roughness_from_grit (NOTE_BALL_GRIT);
  double share = log (tb_roughness_from_grit (NOTE_READ_GRIT) / ball)
                 / log (tb_roughness_from_grit (NOTE_PAD_GRIT) / ball);

  return roughness * pow (tb_roughness_from_grit (grit) / roughness, share);
}

/* Grits of pads that are sold. */
static const double pads[] = { 500, 1000, 2000, 3000, 4000 };
/* Nearer than this share a surface is called by the pad's name. */
#define SAME_PAD 0.05

char *
tb_surface_text (double roughness)
{
  double grit = tb_grit_from_roughness (roughness);
  guint above = 0;

  if (grit > TB_GRIT_POLISH * (1 - SAME_PAD))
    return g_strdup (_ ("polish"));
  while (above < G_N_ELEMENTS (pads) && pads[above] < grit * (1 - SAME_PAD))
    above++;
  if (above == G_N_ELEMENTS (pads))
    return g_strdup_printf (_ ("between %.0f grit and polish"), pads[above - 1]);
  if (above == 0 || pads[above] <= grit * (1 + SAME_PAD))
    return g_strdup_printf (_ ("%.0f grit"), pads[above]);
  return g_strdup_printf (_ ("between %.0f and %.0f grit"), pads[above - 1], pads[above]);
}

#define SAME tb_same, tb_same

static const TbSurfaceWorkInfo works[TB_N_SURFACE_WORKS] = {
  [TB_SURFACE_MACHINE] = { "machine", N_ ("resurfaced on a spinner"), N_ ("grit"), "grit", SAME,
                           TB_GRIT_COARSEST, TB_GRIT_FINEST, 2000 },
  [TB_SURFACE_POLISH] = { "polish", N_ ("polished"), NULL, NULL, SAME, 0, 0, 0 },
  [TB_SURFACE_HAND]
  = { "hand", N_ ("touched up by hand"), N_ ("grit"), "grit", SAME, TB_GRIT_COARSEST, TB_GRIT_FINEST, 2000 },
  [TB_SURFACE_CLEAN] = { "clean", N_ ("cleaned"), NULL, NULL, SAME, 0, 0, 0 },
  [TB_SURFACE_PLAYED] = { "played", N_ ("played"), N_ ("games"), "games", SAME, 0, 1000, 3 },
  [TB_SURFACE_READING] = { "reading", N_ ("read with a gauge"), N_ ("µin"), "roughness_uin",
                           tb_metres_from_uin, tb_uin_from_metres, 1, TB_BALL_MAX_ROUGHNESS_UIN, 20 },
};

const TbSurfaceWorkInfo *
tb_surface_work_info (TbSurfaceWork work)
{
  return &works[work];
}

TbSurfaceEntry *
tb_surface_entry_new (const char *date, TbSurfaceWork work, double amount, const char *note)
{
  TbSurfaceEntry *entry = g_new0 (TbSurfaceEntry, 1);

  entry->date = g_strdup (date);
  entry->work = work;
  entry->amount = amount;
  entry->note = g_strdup (note);
  return entry;
}

void
tb_surface_entry_free (TbSurfaceEntry *entry)
{
  g_free (entry->date);
  g_free (entry->note);
  g_free (entry);
}

gboolean
tb_surface_date_is_valid (const char *date)
{
  static const char shape[] = "dddd-dd-dd";

  if (strlen (date) != sizeof shape - 1)
    return FALSE;
  for (gsize i = 0; i < sizeof shape - 1; i++)
    if (shape[i] == 'd' ? !g_ascii_isdigit (date[i]) : date[i] != shape[i])
      return FALSE;
  return g_date_valid_dmy ((GDateDay)atoi (date + 8), (GDateMonth)atoi (date + 5), (GDateYear)atoi (date));
}

TbSurfaceLog *
tb_surface_log_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify)tb_surface_entry_free);
}

void
tb_surface_log_add (TbSurfaceLog *log, TbSurfaceEntry *entry)
{
  guint at = log->len;

  while (at > 0 && strcmp (((const TbSurfaceEntry *)log->pdata[at - 1])->date, entry->date) > 0)
    at--;
  g_ptr_array_insert (log, (int)at, entry);
}

double
tb_surface_log_roughness (const TbSurfaceLog *log, guint count, double before, gboolean *measured)
{
  gboolean read = FALSE;

  for (guint i = 0; i < MIN (count, log->len); i++)
    {
      const TbSurfaceEntry *entry = log->pdata[i];

      if (entry->work == TB_SURFACE_MACHINE)
        before = tb_roughness_from_grit (entry->amount);
      else if (entry->work == TB_SURFACE_POLISH)
        before = tb_roughness_from_grit (TB_GRIT_POLISH);
      else if (entry->work == TB_SURFACE_HAND)
        before = tb_surface_touched_up (before, entry->amount);
      else if (entry->work == TB_SURFACE_PLAYED)
        before = tb_surface_after_games (before, entry->amount);
      else if (entry->work == TB_SURFACE_READING)
        before = entry->amount;
      read = entry->work == TB_SURFACE_READING || (read && entry->work == TB_SURFACE_CLEAN);
    }
  if (measured != NULL)
    *measured = read;
  return before;
}

double
tb_surface_log_games (const TbSurfaceLog *log)
{
  double games = 0;

  for (guint i = 0; i < log->len; i++)
    {
      const TbSurfaceEntry *entry = log->pdata[i];

      if (entry->work == TB_SURFACE_MACHINE || entry->work == TB_SURFACE_POLISH)
        games = 0;
      else if (entry->work == TB_SURFACE_PLAYED)
        games += entry->amount;
    }
  return games;
}

char *
tb_surface_entry_text (const TbSurfaceEntry *entry)
{
  const TbSurfaceWorkInfo *info = &works[entry->work];
  g_autofree char *amount = NULL;

  if (info->unit == NULL)
    /* Translators: a date and what was done. */
    return g_strdup_printf (_ ("%s: %s"), entry->date, _ (info->label));
  amount = g_strdup_printf ("%.4g", info->from_si (entry->amount));
  /* Translators: a date, what was done, a number and its unit: "2026-11-25: touched up by hand, 500 grit". */
  return g_strdup_printf (_ ("%s: %s, %s %s"), entry->date, _ (info->label), amount, _ (info->unit));
}
