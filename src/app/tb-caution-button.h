/* A caution in a few words; pressed, it tells the rest.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-cautions.h"

G_BEGIN_DECLS

#define TB_TYPE_CAUTION_BUTTON (tb_caution_button_get_type ())
G_DECLARE_FINAL_TYPE (TbCautionButton, tb_caution_button, TB, CAUTION_BUTTON, GtkWidget)

/* Hidden where the caution is NULL. */
void tb_caution_button_set_caution (TbCautionButton *self, const TbCaution *caution);

G_END_DECLS
