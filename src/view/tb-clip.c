/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <webp/encode.h>
#include <webp/mux.h>
#include "tb-clip.h"

#define MS_PER_SECOND 1000
/* A moment this much of a picture's time after the last picture is not worth a picture of its own. */
#define ROUNDING 1e-6
/* WebP's own scales: how true the pictures stay, 0 to 100, and how hard it tries to make them small, 0 (fast)
 * to 6. A ball that turns takes a quarter of the bytes that it takes without loss; letters stay sharp. */
#define QUALITY 80
#define METHOD 1
#define OPAQUE 0xff000000u

G_DEFINE_QUARK (tb - clip - error - quark, tb_clip_error)

int
tb_clip_count_frames (const TbClip *clip)
{
  double frames = clip->duration / clip->rate * clip->fps;

  /* What is too long is refused; it only has to be told from what is not. */
  return (int) ceil (fmin (fmax (frames, 0), 2.0 * TB_CLIP_MAX_FRAMES) - ROUNDING) + 1;
}

double
tb_clip_frame_time (const TbClip *clip, int frame)
{
  return fmin (frame * clip->rate / clip->fps, clip->duration);
}

int
tb_clip_frame_start_ms (const TbClip *clip, int frame)
{
  return (int) lround (frame * (double) MS_PER_SECOND / clip->fps);
}

int
tb_clip_length_ms (const TbClip *clip)
{
  return tb_clip_frame_start_ms (clip, tb_clip_count_frames (clip) - 1) + TB_CLIP_HOLD_MS;
}

static gboolean
check (const TbClip *clip, GError **error)
{
  if (clip->width < 1 || clip->width > TB_CLIP_MAX_SIZE || clip->height < 1
      || clip->height > TB_CLIP_MAX_SIZE)
    g_set_error (error, TB_CLIP_ERROR, TB_CLIP_ERROR_SIZE,
                 _ ("A clip is 1 to %d pixels wide and high, not %d × %d."), TB_CLIP_MAX_SIZE, clip->width,
                 clip->height);
  else if (tb_clip_count_frames (clip) > TB_CLIP_MAX_FRAMES)
    g_set_error (
        error, TB_CLIP_ERROR, TB_CLIP_ERROR_LENGTH,
        _ ("A clip has at most %d pictures; this throw is too long for %d a second at that speed of time."),
        TB_CLIP_MAX_FRAMES, clip->fps);
  else
    return TRUE;
  return FALSE;
}

/* What one clip is made with. */
typedef struct Studio
{
  const TbClip *clip;
  cairo_surface_t *surface;
  WebPAnimEncoder *encoder;
  WebPConfig config;
  WebPPicture picture;
} Studio;

static void
studio_clear (Studio *self)
{
  g_clear_pointer (&self->surface, cairo_surface_destroy);
  g_clear_pointer (&self->encoder, WebPAnimEncoderDelete);
  WebPPictureFree (&self->picture);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Studio, studio_clear)

static gboolean
fail_encoding (GError **error, const char *reason)
{
  g_set_error (error, TB_CLIP_ERROR, TB_CLIP_ERROR_ENCODING, _ ("The clip could not be encoded: %s."),
               reason);
  return FALSE;
}

static gboolean
studio_init (Studio *self, const TbClip *clip, GError **error)
{
  WebPAnimEncoderOptions options;

  self->clip = clip;
  if (!WebPPictureInit (&self->picture) || !WebPConfigInit (&self->config)
      || !WebPAnimEncoderOptionsInit (&options))
    return fail_encoding (error, _ ("another version of the library was expected"));
  self->config.quality = QUALITY;
  self->config.method = METHOD;
  self->surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, clip->width, clip->height);
  self->picture.use_argb = 1;
  self->picture.width = clip->width;
  self->picture.height = clip->height;
  /* Every picture after the first is told by what differs: nobody seeks in so short a clip. */
  options.kmax = 0;
  options.anim_params.loop_count = 0; /* for ever */
  self->encoder = WebPAnimEncoderNew (clip->width, clip->height, &options);
  if (self->encoder == NULL || !WebPPictureAlloc (&self->picture))
    return fail_encoding (error, _ ("there is not enough memory"));
  return TRUE;
}

static gboolean
draw_frame (Studio *self, int frame, GError **error)
{
  cairo_t *cr = cairo_create (self->surface);
  cairo_status_t status;

  self->clip->draw (cr, self->clip->width, self->clip->height, tb_clip_frame_time (self->clip, frame),
                    self->clip->data);
  status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_flush (self->surface);
  if (status == CAIRO_STATUS_SUCCESS)
    return TRUE;
  g_set_error (error, TB_CLIP_ERROR, TB_CLIP_ERROR_DRAWING, _ ("The clip could not be drawn: %s."),
               cairo_status_to_string (status));
  return FALSE;
}

/* Both keep a pixel in one word, red above green above blue. */
static void
copy_pixels (Studio *self)
{
  const unsigned char *row = cairo_image_surface_get_data (self->surface);
  int stride = cairo_image_surface_get_stride (self->surface);

  for (int y = 0; y < self->clip->height; y++)
    for (int x = 0; x < self->clip->width; x++)
      self->picture.argb[y * self->picture.argb_stride + x]
          = ((const guint32 *) (const void *) (row + (gssize) y * stride))[x] | OPAQUE;
}

static gboolean
add_frame (Studio *self, int frame, GError **error)
{
  if (!draw_frame (self, frame, error))
    return FALSE;
  copy_pixels (self);
  if (WebPAnimEncoderAdd (self->encoder, &self->picture, tb_clip_frame_start_ms (self->clip, frame),
                          &self->config))
    return TRUE;
  return fail_encoding (error, WebPAnimEncoderGetError (self->encoder));
}

static gboolean
add_frames (Studio *self, GCancellable *cancellable, GError **error)
{
  int count = tb_clip_count_frames (self->clip);

  for (int frame = 0; frame < count; frame++)
    {
      if (g_cancellable_set_error_if_cancelled (cancellable, error) || !add_frame (self, frame, error))
        return FALSE;
      if (self->clip->progress != NULL)
        self->clip->progress ((frame + 1.0) / count, self->clip->data);
    }
  return TRUE;
}

static void
free_data (gpointer data)
{
  WebPFree (data);
}

static GBytes *
assemble (Studio *self, GError **error)
{
  WebPData data;

  WebPDataInit (&data);
  if (WebPAnimEncoderAdd (self->encoder, NULL, tb_clip_length_ms (self->clip), NULL)
      && WebPAnimEncoderAssemble (self->encoder, &data))
    return g_bytes_new_with_free_func (data.bytes, data.size, free_data, (gpointer) data.bytes);
  fail_encoding (error, WebPAnimEncoderGetError (self->encoder));
  return NULL;
}

GBytes *
tb_clip_encode (const TbClip *clip, GCancellable *cancellable, GError **error)
{
  g_auto (Studio) studio = { 0 };

  g_return_val_if_fail (clip->rate > 0 && clip->fps > 0, NULL);
  if (!check (clip, error) || !studio_init (&studio, clip, error)
      || !add_frames (&studio, cancellable, error))
    return NULL;
  return assemble (&studio, error);
}
