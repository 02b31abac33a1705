/* The surface of a ball between one resurfacing and the next: how it drifts with games, what a touch-up by
 * hand does, and a log of what was done.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-core.h"

G_BEGIN_DECLS

/* Lanes and oil wear a sanded surface smooth: what is rougher than TB_SURFACE_WORN (m) comes down to it, by
 * the share 1 − 1/e in TB_SURFACE_GAMES games. Both assumed. A surface that is smoother stays as it is. */
#define TB_SURFACE_WORN (0.25e-6)
#define TB_SURFACE_GAMES 30.0
double tb_surface_after_games (double roughness, double games);

/* A pad in the hand blends: it does not reset the surface as a spinner does. One published case (USBC
 * technical note: a 3000 ball rubbed with 500 read about 1650) gives the share of the way, in the logarithm
 * of the roughness; that it is the same for other surfaces and pads is assumed. m. */
double tb_surface_touched_up (double roughness, double grit);

/* Grit that would leave such a roughness, as text for people, translated: "2000 grit", "polish", "between
 * 1000 and 2000 grit". Free it. */
char *tb_surface_text (double roughness);

typedef enum TbSurfaceWork
{
  TB_SURFACE_MACHINE, /* resurfaced on a spinner; amount: grit */
  TB_SURFACE_POLISH,  /* polished on a spinner; no amount */
  TB_SURFACE_HAND,    /* touched up by hand; amount: grit */
  TB_SURFACE_CLEAN,   /* cleaned: the roughness stays; no amount */
  TB_SURFACE_PLAYED,  /* amount: games */
  TB_SURFACE_READING, /* a gauge's reading; amount: m */
  TB_N_SURFACE_WORKS
} TbSurfaceWork;

typedef struct TbSurfaceWorkInfo
{
  const char *name;  /* in files */
  const char *label; /* for people, untranslated */
  const char *unit;  /* of the amount, for people, untranslated; NULL where there is none */
  const char *key;   /* of the amount, in files; NULL likewise */
  double (*to_si) (double);
  double (*from_si) (double);
  double min, max; /* of the amount, in its unit */
  double standard;
} TbSurfaceWorkInfo;
const TbSurfaceWorkInfo *tb_surface_work_info (TbSurfaceWork work);

typedef struct TbSurfaceEntry
{
  char *date; /* "2026-11-25" */
  TbSurfaceWork work;
  double amount; /* as above; 0 where there is none */
  char *note;    /* NULL if there is none */
} TbSurfaceEntry;

TbSurfaceEntry *tb_surface_entry_new (const char *date, TbSurfaceWork work, double amount, const char *note);
void tb_surface_entry_free (TbSurfaceEntry *entry);
/* Whether a text is a day of the calendar, YYYY-MM-DD. */
gboolean tb_surface_date_is_valid (const char *date);

/* What was done to one ball, by date. */
typedef GPtrArray TbSurfaceLog;
TbSurfaceLog *tb_surface_log_new (void);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbSurfaceLog, g_ptr_array_unref)
/* Takes the entry; those of one day stay in the order in which they were added. */
void tb_surface_log_add (TbSurfaceLog *log, TbSurfaceEntry *entry);
/* The roughness after the first `count` entries, m, for a ball that was of the given roughness before;
 * *measured tells whether a gauge's reading is the last word. measured may be NULL. */
double tb_surface_log_roughness (const TbSurfaceLog *log, guint count, double before, gboolean *measured);
/* Games since the surface was last made anew. */
double tb_surface_log_games (const TbSurfaceLog *log);
/* One entry in words, translated: "2026-11-25: touched up by hand, 500 grit". Free it. */
char *tb_surface_entry_text (const TbSurfaceEntry *entry);

G_END_DECLS
