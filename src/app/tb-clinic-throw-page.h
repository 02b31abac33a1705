/* The throw on the clinic's screen: both balls, each on its own lane or both on one, under the time that has
 * passed. It lets the time run while the throw plays.
 *
 * A screen reader hears how the throw ended, but not before it has.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-clinic.h"
#include "tb-strip-picture.h"

G_BEGIN_DECLS

#define TB_TYPE_CLINIC_THROW_PAGE (tb_clinic_throw_page_get_type ())
G_DECLARE_FINAL_TYPE (TbClinicThrowPage, tb_clinic_throw_page, TB, CLINIC_THROW_PAGE, GtkBox)

/* Once; it follows the clinic from then on. */
void tb_clinic_throw_page_set_clinic (TbClinicThrowPage *self, TbClinic *clinic);
/* The sizes of type suit a screen that is so high, px. */
void tb_clinic_throw_page_set_height (TbClinicThrowPage *self, int height);

G_END_DECLS
