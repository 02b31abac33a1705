/* Parts of a difference as bars to either side of nothing, with their names and numbers.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-theme.h"

G_BEGIN_DECLS

typedef struct TbPart
{
  const char *name; /* translated */
  double value;
  double error; /* either way; 0 for none */
} TbPart;

typedef struct TbPartsScene
{
  TbTheme theme;
  const TbPart *parts;
  guint n_parts;
  int digits;
  const char *unit; /* translated, with the space before it; "" for none */
} TbPartsScene;

void tb_parts_view_draw (cairo_t *cr, double width, double height, const TbPartsScene *scene);
/* The height that so many parts need, px. */
double tb_parts_view_height (const TbTheme *theme, guint n_parts);

G_END_DECLS
