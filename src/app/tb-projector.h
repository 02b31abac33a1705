/* Keeps a window over a whole screen for a room to look at: where there are two screens, over the one that
 * another window is not on. Screens may come and go meanwhile.
 *
 * Screens that show the same part of the desktop, as a projector that mirrors a laptop does, count as one.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define TB_TYPE_PROJECTOR (tb_projector_get_type ())
G_DECLARE_FINAL_TYPE (TbProjector, tb_projector, TB, PROJECTOR, GObject)

/* The signal "arrived" says that the window has got to where it belongs, or that no more is to be hoped for.
 * Both windows are borrowed, and must be there whenever something is asked; beside may be NULL. */
TbProjector *tb_projector_new (GtkWindow *window, GtkWindow *beside);
/* Presents the window, and keeps it where it belongs from now on. */
void tb_projector_present (TbProjector *self);
/* The person takes the window in hand: it goes nowhere any more by itself. */
void tb_projector_let_go (TbProjector *self);
/* Whether the room looks at a screen of its own, where nothing else is. */
gboolean tb_projector_has_own_screen (TbProjector *self);

/* Of n screens, one that shows nothing of what screen own shows; -1 if there is none, or own is -1. */
int tb_projector_choose (const GdkRectangle *screens, int n, int own);

G_END_DECLS
