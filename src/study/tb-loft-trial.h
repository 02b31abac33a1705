/* Lofts tried out: how a ball can be let go, and what that does on a fresh and on a worn lane.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-setup.h"

G_BEGIN_DECLS

/* What of a delivery is loft. */
typedef struct TbLoftThrow
{
  double reach;  /* m past the foul line */
  double height; /* m, of the ball's lowest point */
  double angle;  /* rad, upwards */
} TbLoftThrow;

TbLoftThrow tb_loft_throw_of (const TbDelivery *delivery);
/* The same shot, let go like this. */
TbSetup *tb_setup_with_loft (const TbSetup *setup, const TbLoftThrow *loft);

/* Ways of letting go that are talked about: common practice, no source. */
typedef struct TbLoftPreset
{
  const char *id;
  const char *label; /* for people, untranslated */
  const char *help;  /* one sentence, likewise */
  double reach_in, height_in, angle_deg;
} TbLoftPreset;

/* Ends with a NULL id. */
extern const TbLoftPreset tb_loft_presets[];
/* NULL for an unknown id. */
const TbLoftPreset *tb_loft_preset_find (const char *id);
TbLoftThrow tb_loft_preset_throw (const TbLoftPreset *preset);
/* The preset that this is, to a hundredth of its units; NULL if it is none. */
const TbLoftPreset *tb_loft_preset_of (const TbLoftThrow *loft);

/* The two throws and the two lanes that are held against each other. */
typedef enum TbLoftStyle
{
  TB_LOFT_FLAT,
  TB_LOFT_ARC,
  TB_N_LOFTS
} TbLoftStyle;

typedef enum TbLoftLane
{
  TB_LOFT_FRESH,
  TB_LOFT_WORN,
  TB_N_LOFT_LANES
} TbLoftLane;

/* What the landing took of the energy of motion that the ball had at release, 0 to 1; NAN for a run without samples, and for a ball
 * that is off the lane before it lands. */
double tb_run_landing_share (const TbRun *run);

/* Boards hooked against how far past the line the ball is let go, height and angle held. */
#define TB_LOFT_POINTS 13
typedef struct TbLoftCurve
{
  double reach[TB_LOFT_POINTS];                 /* m, over the whole range of the field */
  double hook[TB_N_LOFT_LANES][TB_LOFT_POINTS]; /* m, without gutters; NAN where there is no run or no such lane */
} TbLoftCurve;

/* lane[TB_LOFT_WORN] may be NULL: not known yet. FALSE if cancelled. */
gboolean tb_loft_curve_fill (TbLoftCurve *curve,
                             TbSetup *const lane[TB_N_LOFT_LANES],
                             const TbLoftThrow *loft,
                             GCancellable *cancellable);

/* The curves of both throws, in a thread; g_free() them. NULL if cancelled. */
void tb_loft_curves_new_async (TbSetup *const lane[TB_N_LOFT_LANES],
                               const TbLoftThrow loft[TB_N_LOFTS],
                               GCancellable *cancellable,
                               GAsyncReadyCallback callback,
                               gpointer user_data);
TbLoftCurve *tb_loft_curves_new_finish (GAsyncResult *result, GError **error);

G_END_DECLS
