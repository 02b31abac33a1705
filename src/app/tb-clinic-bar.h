/* The clinic's controls over the foot of the screen: they come when they are called, and go by themselves.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-clinic.h"

G_BEGIN_DECLS

#define TB_TYPE_CLINIC_BAR (tb_clinic_bar_get_type ())
G_DECLARE_FINAL_TYPE (TbClinicBar, tb_clinic_bar, TB, CLINIC_BAR, GtkWidget)

/* Signals: "action" (guint) when a button wants a TbClinicAction done; "hidden" when the controls have gone,
 * called off or by themselves. */

/* For a while, anew with each call. words say what the next key does; "" for none. */
void tb_clinic_bar_show (TbClinicBar *self, const char *words);
void tb_clinic_bar_hide (TbClinicBar *self);
gboolean tb_clinic_bar_is_shown (TbClinicBar *self);
/* Whether a throw is to be controlled. */
void tb_clinic_bar_set_throwing (TbClinicBar *self, gboolean throwing);

G_END_DECLS
