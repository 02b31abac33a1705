/* Mends what GTK 4.8 tells a screen reader about its own widgets, as each comes on the screen: buttons that
 * are named twice, once with the underscore of their mnemonic, and parts of its dialogs that have no name.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* For all widgets of the process, from here on; the second call does nothing. A name that
 * tb_accessible_set_name() gave is left as it is. */
void tb_spoken_names_init (void);

G_END_DECLS
