/* Numbers in spin buttons.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Lets a spin button take a point and a comma alike as the decimal mark. GTK's own takes the locale's, and
 * where it is told to take numbers only it drops the other one without a word: "17.5" would become 175. */
void tb_spin_take_either_mark (GtkSpinButton *spin);

G_END_DECLS
