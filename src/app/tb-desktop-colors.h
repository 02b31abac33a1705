/* Whether the desktop wants dark windows, asked of the settings portal. (GTK 4.8 does not ask it.)
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Called now and whenever it changes; never where no portal answers. */
typedef void (*TbDesktopColorsFunc) (gboolean dark, gpointer user_data);

/* One watcher at a time, main thread only. */
void tb_desktop_colors_watch (TbDesktopColorsFunc func, gpointer user_data);
void tb_desktop_colors_unwatch (void);

G_END_DECLS
