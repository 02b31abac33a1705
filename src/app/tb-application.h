/* The application: its windows, its library of bowlers, balls and patterns, its shortcuts.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-library.h"

G_BEGIN_DECLS

#define TB_TYPE_APPLICATION (tb_application_get_type ())
G_DECLARE_FINAL_TYPE (TbApplication, tb_application, TB, APPLICATION, GtkApplication)

TbApplication *tb_application_new (void);
/* Borrowed. */
TbLibrary *tb_application_get_library (TbApplication *self);

G_END_DECLS
