/* What only the presenter sees: notes, the answer, what comes next, the votes, the time.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-clinic.h"

G_BEGIN_DECLS

#define TB_TYPE_PRESENTER_WINDOW (tb_presenter_window_get_type ())
G_DECLARE_FINAL_TYPE (TbPresenterWindow, tb_presenter_window, TB, PRESENTER_WINDOW, GtkWindow)

/* Signal "action" (guint): a key or a button wants a TbClinicAction done. */

TbPresenterWindow *tb_presenter_window_new (GtkWindow *parent, TbClinic *clinic);
/* What it says is the answer. Borrowed. */
const char *tb_presenter_window_get_answer (TbPresenterWindow *self);

G_END_DECLS
