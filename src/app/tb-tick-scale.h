/* A slider with a tick where "before" stands.
 *
 * The wheel does not move it: it stands in a column that scrolls.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TB_TYPE_TICK_SCALE (tb_tick_scale_get_type ())
G_DECLARE_FINAL_TYPE (TbTickScale, tb_tick_scale, TB, TICK_SCALE, GtkScale)

/* Signals: "grabbed" and "let-go" around everything one press of the pointer does. */

/* In the adjustment's numbers. */
void tb_tick_scale_set_tick (TbTickScale *self, double tick);
double tb_tick_scale_get_tick (TbTickScale *self);

G_END_DECLS
