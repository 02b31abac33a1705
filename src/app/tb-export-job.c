/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-export-job.h"

#include <glib/gi18n-lib.h>

#include "tb-atomic-file.h"
#include "tb-clip.h"
#include "tb-document.h"
#include "tb-task.h"

/* The share that is done is passed between threads as a whole number of these. */
#define SHARES 1000

typedef struct Picture
{
  char *path;
  int width, height;
  cairo_surface_t *recording;
} Picture;

static void
picture_free (gpointer data)
{
  Picture *self = data;

  g_free (self->path);
  cairo_surface_destroy (self->recording);
  g_free (self);
}

static void
replay (cairo_t *cr, double width, double height, gpointer recording)
{
  cairo_set_source_surface (cr, recording, 0, 0);
  cairo_paint (cr);
}

static void
save_picture (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Picture *self = data;
  GError *error = NULL;

  if (tb_export_picture (self->path, self->width, self->height, replay, self->recording, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

/* What the picture is of belongs to the window; what is drawn belongs to nobody. */
static cairo_surface_t *
record (const TbPictureJob *job)
{
  cairo_rectangle_t extents = { 0, 0, job->width, job->height };
  cairo_surface_t *recording = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &extents);
  cairo_t *cr = cairo_create (recording);

  job->draw (cr, job->width, job->height, job->data);
  cairo_destroy (cr);
  return recording;
}

void
tb_export_picture_async (const TbPictureJob *job, GAsyncReadyCallback callback, gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, callback, user_data);
  Picture *picture = g_new0 (Picture, 1);

  *picture = (Picture){ g_strdup (job->path), job->width, job->height, record (job) };
  g_task_set_task_data (task, picture, picture_free);
  tb_task_run (task, save_picture);
}

/* The system's sentences come without their full stop. */
static void
finish_sentence (GError **error)
{
  if (error != NULL && *error != NULL && !g_str_has_suffix ((*error)->message, "."))
    {
      g_autofree char *clause = g_steal_pointer (&(*error)->message);

      (*error)->message = g_strconcat (clause, ".", NULL);
    }
}

gboolean
tb_export_picture_finish (GAsyncResult *result, GError **error)
{
  gboolean done = g_task_propagate_boolean (G_TASK (result), error);

  finish_sentence (error);
  return done;
}

typedef struct Clip
{
  char *path;
  TbClip clip;
  TbThrowScene scene;
  int shares; /* done; atomic */
} Clip;

static void
clip_free (gpointer data)
{
  Clip *self = data;

  g_free (self->path);
  g_clear_pointer ((TbRun **) &self->scene.before, tb_run_unref);
  tb_run_unref ((TbRun *) self->scene.after);
  g_free (self);
}

static void
draw_moment (cairo_t *cr, double width, double height, double time, gpointer data)
{
  TbThrowScene scene = ((Clip *) data)->scene;

  scene.time = time;
  tb_throw_view_draw (cr, width, height, &scene);
}

static void
tell_progress (double share, gpointer data)
{
  g_atomic_int_set (&((Clip *) data)->shares, (int) (share * SHARES));
}

static gboolean
write_clip (Clip *self, GBytes *bytes, GError **error)
{
  g_autofree char *shown = g_filename_display_name (self->path);

  if (tb_atomic_write (self->path, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, error))
    return TRUE;
  tb_document_finish_error (error, shown);
  return FALSE;
}

static void
save_clip (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Clip *self = data;
  GError *error = NULL;
  g_autoptr (GBytes) bytes = tb_clip_encode (&self->clip, cancellable, &error);

  if (bytes != NULL && write_clip (self, bytes, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

GTask *
tb_export_clip_async (const TbClipJob *job,
                      GCancellable *cancellable,
                      GAsyncReadyCallback callback,
                      gpointer user_data)
{
  GTask *task = g_task_new (NULL, cancellable, callback, user_data);
  Clip *clip = g_new0 (Clip, 1);

  clip->path = g_strdup (job->path);
  clip->scene = *job->scene;
  clip->scene.before = job->scene->before != NULL ? tb_run_ref ((TbRun *) job->scene->before) : NULL;
  clip->scene.after = tb_run_ref ((TbRun *) job->scene->after);
  clip->clip = (TbClip){ .width = job->width,
                         .height = job->height,
                         .duration = tb_throw_scene_duration (job->scene),
                         .rate = job->scene->rate,
                         .fps = job->fps,
                         .draw = draw_moment,
                         .progress = tell_progress,
                         .data = clip };
  g_task_set_task_data (task, clip, clip_free);
  tb_task_run (task, save_clip);
  return task;
}

gboolean
tb_export_clip_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_boolean (G_TASK (result), error);
}

double
tb_export_clip_get_share (GTask *task)
{
  return g_atomic_int_get (&((Clip *) g_task_get_task_data (task))->shares) / (double) SHARES;
}
