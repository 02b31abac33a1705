/* The small curve of an option: the wished measure against the knob, and beside it what the extremes cost.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-next.h"

G_BEGIN_DECLS

#define TB_TYPE_OPTION_CURVE (tb_option_curve_get_type ())
G_DECLARE_FINAL_TYPE (TbOptionCurve, tb_option_curve, TB, OPTION_CURVE, GtkWidget)

void tb_option_curve_set_option (TbOptionCurve *self, TbNext *next, TbNextOption *option, gboolean metric);

G_END_DECLS
