/* A short clip: pictures that follow each other, as an animated WebP that begins anew when it is over.
 *
 * Pictures are drawn at the moments they stand for, never recorded, so a clip is the same on any machine.
 * Each is encoded as soon as it is drawn; memory holds a few pictures and what they have become.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <gio/gio.h>

G_BEGIN_DECLS

#define TB_CLIP_ERROR (tb_clip_error_quark ())

typedef enum TbClipError
{
  TB_CLIP_ERROR_SIZE,    /* no pixels, or too many */
  TB_CLIP_ERROR_LENGTH,  /* too many pictures */
  TB_CLIP_ERROR_DRAWING, /* cairo gave up */
  TB_CLIP_ERROR_ENCODING /* WebP gave up */
} TbClipError;

/* Longest side, px; most pictures; pictures a second. */
#define TB_CLIP_MAX_SIZE 1920
#define TB_CLIP_MAX_FRAMES 1000
#define TB_CLIP_MIN_FPS 5
#define TB_CLIP_MAX_FPS 60
#define TB_CLIP_DEFAULT_FPS 25
/* The last picture is held so long, ms. */
#define TB_CLIP_HOLD_MS 1000

typedef struct TbClip
{
  int width, height; /* px */
  double duration;   /* s of what happens; 0 or more */
  double rate;       /* of time: 1 is true, 0.5 half speed; over 0 */
  int fps;           /* pictures a second */
  /* Draws the whole picture of a moment, 0 … duration. */
  void (*draw) (cairo_t *cr, double width, double height, double time, gpointer data);
  /* Optional: the share that is done, rising from over 0 to 1; called by the thread that encodes. */
  void (*progress) (double share, gpointer data);
  gpointer data; /* for both */
} TbClip;

GQuark tb_clip_error_quark (void);

/* From the first moment to the last, both included. */
int tb_clip_count_frames (const TbClip *clip);
/* The moment that a picture shows, s; when it appears, ms from the clip's beginning. */
double tb_clip_frame_time (const TbClip *clip, int frame);
int tb_clip_frame_start_ms (const TbClip *clip, int frame);
/* Once round, the hold at the end included. */
int tb_clip_length_ms (const TbClip *clip);

/* The file's bytes. NULL and a TB_CLIP_ERROR, a whole sentence, if it cannot be made; or
 * G_IO_ERROR_CANCELLED, which is looked for between two pictures. cancellable may be NULL. Any thread. */
GBytes *tb_clip_encode (const TbClip *clip, GCancellable *cancellable, GError **error);

G_END_DECLS
