/* Lets a session's time run while it plays: by the frame clock of a widget; or to its end at once, where the
 * desktop wants nothing to move or the widget is not to be seen.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

typedef struct TbPlayback TbPlayback;

/* One for a session. Free it when the widget is disposed of. */
TbPlayback *tb_playback_new (GtkWidget *widget, TbSession *session);
void tb_playback_free (TbPlayback *self);

G_END_DECLS
