/* The keys of the clinic, in whichever of its windows has the focus.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-clinic.h"

G_BEGIN_DECLS

typedef void (*TbClinicRemoteFunc) (GtkWidget *window, TbClinicAction action);

/* Keys go to the clinic before any widget sees them, but for Space and Return on a button
 * that was reached with Tab. */
void tb_clinic_remote_attach (GtkWidget *window, TbClinicRemoteFunc func);

G_END_DECLS
