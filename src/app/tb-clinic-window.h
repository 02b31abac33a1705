/* The clinic on a projector: one slide at a time over the whole screen, and a slim bar with what the keys do.
 *
 * Controls come when the pointer is moved to an edge, or with H, Tab or Escape; they go away by themselves.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-clinic.h"

G_BEGIN_DECLS

#define TB_TYPE_CLINIC_WINDOW (tb_clinic_window_get_type ())
G_DECLARE_FINAL_TYPE (TbClinicWindow, tb_clinic_window, TB, CLINIC_WINDOW, GtkWindow)

/* parent may be NULL. */
TbClinicWindow *tb_clinic_window_new (GtkWindow *parent, TbClinic *clinic);
/* Over a whole screen: another one than the parent's if there are two, and the presenter's window on the
 * parent's. */
void tb_clinic_window_present (TbClinicWindow *self);

/* What a key does. */
void tb_clinic_window_act (TbClinicWindow *self, TbClinicAction action);
/* NULL while it is not open. Borrowed. */
GtkWindow *tb_clinic_window_get_presenter (TbClinicWindow *self);

G_END_DECLS
