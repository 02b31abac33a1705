/* The loft lab: two ways of letting go, on a fresh and on a worn lane, where nothing can break.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-loft-controls.h"
#include "tb-loft-runs.h"
#include "tb-loft-table.h"
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_LOFT_LAB (tb_loft_lab_get_type ())
G_DECLARE_FINAL_TYPE (TbLoftLab, tb_loft_lab, TB, LOFT_LAB, GtkWindow)

/* parent may be NULL. The shot is the session's "after"; only what is taken to the trainer changes it. */
TbLoftLab *tb_loft_lab_new (GtkWindow *parent, TbSession *session);
/* For tests. Borrowed. */
TbLoftRuns *tb_loft_lab_get_runs (TbLoftLab *self);
TbLoftControls *tb_loft_lab_get_controls (TbLoftLab *self, TbLoftStyle style);
TbLoftTable *tb_loft_lab_get_table (TbLoftLab *self);
GtkSpinButton *tb_loft_lab_get_games (TbLoftLab *self);
GtkWidget *tb_loft_lab_get_cautions (TbLoftLab *self);

G_END_DECLS
