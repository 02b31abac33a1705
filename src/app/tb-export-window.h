/* Taking a picture or a clip away: which view, how large, in which colours, with a preview.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-picture.h"

G_BEGIN_DECLS

typedef enum TbExportKind
{
  TB_EXPORT_PICTURE,
  TB_EXPORT_CLIP
} TbExportKind;

#define TB_TYPE_EXPORT_WINDOW (tb_export_window_get_type ())
G_DECLARE_FINAL_TYPE (TbExportWindow, tb_export_window, TB, EXPORT_WINDOW, GtkWindow)

/* Over parent. The views to choose from are those of the throw, if "after" was thrown, and for a picture also
 * every other drawn view of the session that is on the screen. */
TbExportWindow *tb_export_window_new (GtkWindow *parent, TbSession *session, TbExportKind kind);

/* The views' names; which is chosen. */
guint tb_export_window_get_n_views (TbExportWindow *self);
const char *tb_export_window_get_view_name (TbExportWindow *self, guint view);
void tb_export_window_set_view (TbExportWindow *self, guint view);
/* Chooses what a picture on the screen shows. */
void tb_export_window_choose (TbExportWindow *self, TbPicture *picture);
void tb_export_window_set_size (TbExportWindow *self, int width, int height);

/* Saves what is chosen; when it is done, get_answer() says so. */
void tb_export_window_save_to (TbExportWindow *self, const char *path);
gboolean tb_export_window_is_busy (TbExportWindow *self);
void tb_export_window_cancel (TbExportWindow *self);
/* What became of it: a whole sentence; "" before. */
const char *tb_export_window_get_answer (TbExportWindow *self);

G_END_DECLS
