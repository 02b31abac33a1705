/* A bag of balls on one lane: the fan of their paths, and beside it a ladder of boards: at the pins, or,
 * where all of them go to the pocket, at the arrows.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-core.h"
#include "tb-theme.h"

G_BEGIN_DECLS

/* One ball. It keeps its number, colour and dashes wherever it is drawn. */
typedef struct TbBagPath
{
  const TbPath *path; /* with samples; NULL where there is none */
  const char *label;  /* translated */
} TbBagPath;

typedef struct TbBagScene
{
  TbTheme theme;
  const TbOil *oil;
  double oil_scale;
  gboolean mirrored;              /* the bowler is left-handed */
  double pocket_low, pocket_high; /* m, bowler's frame, at the pins */
  gboolean at_arrows;             /* the ladder tells the boards at the arrows */
  const TbBagPath *paths;
  guint n_paths;
  guint chosen; /* index of the one drawn strongest; G_MAXUINT for none */
} TbBagScene;

void tb_bag_view_draw (cairo_t *cr, double width, double height, const TbBagScene *scene);
/* The number of a ball in its own colour and shape, as it stands on its path: for tables. Size in px. */
void tb_bag_view_draw_number (cairo_t *cr, double size, const TbTheme *theme, guint index);

G_END_DECLS
