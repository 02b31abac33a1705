/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-export-saver.h"

#include <glib/gi18n-lib.h>

#include "tb-weak.h"

/* How often the progress is told, ms. */
#define PROGRESS_PERIOD 100

struct _TbExportSaver
{
  GObject parent_instance;

  char *path;                /* of what is being saved; NULL while nothing is */
  GTask *clip;               /* being saved; else NULL */
  GCancellable *cancellable; /* its */
  guint progress_timeout;
};

enum
{
  PROGRESS,
  FINISHED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbExportSaver, tb_export_saver, G_TYPE_OBJECT)

static void
forget_clip (TbExportSaver *self)
{
  g_clear_handle_id (&self->progress_timeout, g_source_remove);
  g_clear_object (&self->clip);
  g_clear_object (&self->cancellable);
}

static void
finish (TbExportSaver *self, const GError *error)
{
  g_autofree char *path = g_steal_pointer (&self->path);
  g_autofree char *shown = g_filename_display_basename (path);
  g_autofree char *saved = g_strdup_printf (_ ("Saved as “%s”."), shown);
  const char *sentence = error != NULL ? error->message : saved;

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    sentence = _ ("Cancelled; nothing was saved.");
  forget_clip (self);
  g_signal_emit (self, signals[FINISHED], 0, sentence);
}

static void
on_picture_saved (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbExportSaver) self = tb_weak_take (data);
  g_autoptr (GError) error = NULL;

  tb_export_picture_finish (result, &error);
  if (self != NULL)
    finish (self, error);
}

static void
on_clip_saved (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbExportSaver) self = tb_weak_take (data);
  g_autoptr (GError) error = NULL;

  tb_export_clip_finish (result, &error);
  if (self != NULL)
    finish (self, error);
}

static gboolean
tell_progress (gpointer data)
{
  TbExportSaver *self = data;

  g_signal_emit (self, signals[PROGRESS], 0, tb_export_clip_get_share (self->clip));
  return G_SOURCE_CONTINUE;
}

void
tb_export_saver_save_picture (TbExportSaver *self, const TbPictureJob *job)
{
  g_return_if_fail (self->path == NULL);

  self->path = g_strdup (job->path);
  tb_export_picture_async (job, on_picture_saved, tb_weak_new (self));
}

void
tb_export_saver_save_clip (TbExportSaver *self, const TbClipJob *job)
{
  g_return_if_fail (self->path == NULL);

  self->path = g_strdup (job->path);
  self->cancellable = g_cancellable_new ();
  self->clip = tb_export_clip_async (job, self->cancellable, on_clip_saved, tb_weak_new (self));
  self->progress_timeout = g_timeout_add (PROGRESS_PERIOD, tell_progress, self);
  g_signal_emit (self, signals[PROGRESS], 0, 0.0);
}

void
tb_export_saver_cancel (TbExportSaver *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
}

gboolean
tb_export_saver_is_busy (TbExportSaver *self)
{
  return self->path != NULL;
}

gboolean
tb_export_saver_is_saving_clip (TbExportSaver *self)
{
  return self->clip != NULL;
}

TbExportSaver *
tb_export_saver_new (void)
{
  return g_object_new (TB_TYPE_EXPORT_SAVER, NULL);
}

static void
tb_export_saver_dispose (GObject *object)
{
  TbExportSaver *self = TB_EXPORT_SAVER (object);

  tb_export_saver_cancel (self);
  forget_clip (self);
  g_clear_pointer (&self->path, g_free);
  G_OBJECT_CLASS (tb_export_saver_parent_class)->dispose (object);
}

static void
tb_export_saver_class_init (TbExportSaverClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_export_saver_dispose;
  signals[PROGRESS] = g_signal_new ("progress", TB_TYPE_EXPORT_SAVER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                    G_TYPE_NONE, 1, G_TYPE_DOUBLE);
  signals[FINISHED] = g_signal_new ("finished", TB_TYPE_EXPORT_SAVER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                    G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
tb_export_saver_init (TbExportSaver *self)
{
}
