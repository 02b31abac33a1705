/* Preferences: units, hand, colours, text, motion. What is chosen holds at once, in every window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TB_TYPE_PREFERENCES_WINDOW (tb_preferences_window_get_type ())
G_DECLARE_FINAL_TYPE (TbPreferencesWindow, tb_preferences_window, TB, PREFERENCES_WINDOW, GtkWindow)

/* parent may be NULL. */
TbPreferencesWindow *tb_preferences_window_new (GtkWindow *parent);
/* The drop-down of a key of the settings, for tests; NULL if it has none. */
GtkDropDown *tb_preferences_window_get_choice (TbPreferencesWindow *self, const char *key);

G_END_DECLS
