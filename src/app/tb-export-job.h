/* Saving a picture or a clip without keeping the window waiting.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-export.h"
#include "tb-throw-view.h"

G_BEGIN_DECLS

/* Draws a picture here and now, and puts it into its form and onto the disk in another thread: see
 * tb_export_picture(). */
typedef struct TbPictureJob
{
  const char *path;
  int width, height; /* px */
  TbExportDraw draw;
  gpointer data; /* until the function returns */
} TbPictureJob;
void tb_export_picture_async (const TbPictureJob *job, GAsyncReadyCallback callback, gpointer user_data);
/* FALSE and a whole sentence if it could not be saved. */
gboolean tb_export_picture_finish (GAsyncResult *result, GError **error);

typedef struct TbClipJob
{
  const char *path;
  int width, height; /* px */
  int fps;
  const TbThrowScene *scene; /* at its rate; the runs are referenced */
} TbClipJob;
/* Answers the task, for tb_export_clip_get_share(). Cancelled, it leaves no file. */
GTask *tb_export_clip_async (const TbClipJob *job,
                             GCancellable *cancellable,
                             GAsyncReadyCallback callback,
                             gpointer user_data);
gboolean tb_export_clip_finish (GAsyncResult *result, GError **error);
/* How much of it is done, 0 to 1. */
double tb_export_clip_get_share (GTask *task);

G_END_DECLS
