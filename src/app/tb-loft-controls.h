/* How one ball is let go: a way that is talked about, or its own reach, height and angle.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-loft-trial.h"
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_LOFT_CONTROLS (tb_loft_controls_get_type ())
G_DECLARE_FINAL_TYPE (TbLoftControls, tb_loft_controls, TB, LOFT_CONTROLS, GtkWidget)

/* Signal "changed": the throw is another; "take": the trainer is to have it. */

/* name is the throw's, translated; units follow the session, which is left as it is. */
void tb_loft_controls_set_up (TbLoftControls *self, TbSession *session, const char *name, const TbLoftThrow *loft);
TbLoftThrow tb_loft_controls_get_throw (TbLoftControls *self);
void tb_loft_controls_set_throw (TbLoftControls *self, const TbLoftThrow *loft);
/* For tests: what a person works with. Borrowed. */
GtkDropDown *tb_loft_controls_get_presets (TbLoftControls *self);
GtkWidget *tb_loft_controls_get_row (TbLoftControls *self, const char *field);
GtkWidget *tb_loft_controls_get_take (TbLoftControls *self);

G_END_DECLS
