/* Clips: how many pictures, when, what they show, and what happens when it cannot be done. Read back by
 * WebP's own decoder.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>
#include <webp/demux.h>
#include "../study/house-setup.h"
#include "picture.h"
#include "tb-clip.h"
#include "tb-throw-caption.h"
#include "tb-throw-view.h"

/* A picture that has lost some of its sharpness differs from what was drawn by so much of a channel on
 * average, of 255. Measured: 1.0 for the lane, 0.9 for the ball. A ball a frame further on: 1.4. */
#define CLOSE 9.0

/* A run at a speed, mph. */
static TbRun *
new_run (double speed_mph)
{
  g_autoptr (TbSetup) house = house_setup ();
  TbShot shot = house->shot;
  g_autoptr (TbSetup) setup = NULL;
  TbRun *run;

  shot.delivery.speed = tb_metres_per_second_from_mph (speed_mph);
  setup = tb_setup_with_shot (house, &shot);
  run = tb_run_new (setup);
  g_assert_cmpint (run->status, ==, TB_OK);
  return run;
}

typedef struct Pair
{
  TbRun *before, *after;
} Pair;

static void
pair_clear (Pair *self)
{
  tb_run_unref (self->before);
  tb_run_unref (self->after);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Pair, pair_clear)

static TbThrowScene
scene_of (const Pair *pair, TbThrowView view)
{
  TbThrowScene scene = tb_throw_scene_new (pair->before, pair->after);

  scene.view = view;
  scene.caption = TRUE;
  return scene;
}

static void
draw_scene (cairo_t *cr, double width, double height, double time, gpointer data)
{
  TbThrowScene scene = *(const TbThrowScene *) data;

  scene.time = time;
  tb_throw_view_draw (cr, width, height, &scene);
}

/* A square that goes from left to right within a second. */
static void
draw_square (cairo_t *cr, double width, double height, double time, gpointer data)
{
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_set_source_rgb (cr, 0.8, 0.1, 0.1);
  cairo_rectangle (cr, time * (width - 8), 0.5 * height, 8, 8);
  cairo_fill (cr);
}

static TbClip
square_clip (double duration)
{
  return (
      TbClip){ .width = 64, .height = 48, .duration = duration, .rate = 1, .fps = 25, .draw = draw_square };
}

/* The clip as a player sees it. */
typedef struct Film
{
  GBytes *bytes;
  WebPAnimDecoder *decoder;
  WebPAnimInfo info;
} Film;

static void
film_clear (Film *self)
{
  WebPAnimDecoderDelete (self->decoder);
  g_bytes_unref (self->bytes);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Film, film_clear)

static Film
film_new (const TbClip *clip)
{
  g_autoptr (GError) error = NULL;
  Film film = { .bytes = tb_clip_encode (clip, NULL, &error) };
  WebPData data;

  g_assert_no_error (error);
  data.bytes = g_bytes_get_data (film.bytes, &data.size);
  film.decoder = WebPAnimDecoderNew (&data, NULL);
  g_assert_nonnull (film.decoder);
  g_assert_true (WebPAnimDecoderGetInfo (film.decoder, &film.info));
  return film;
}

/* Plays it once; ends holds when each picture gives way to the next, ms. */
static GArray *
film_ends (Film *film)
{
  GArray *ends = g_array_new (FALSE, FALSE, sizeof (int));
  uint8_t *pixels;
  int end;

  while (WebPAnimDecoderHasMoreFrames (film->decoder))
    {
      g_assert_true (WebPAnimDecoderGetNext (film->decoder, &pixels, &end));
      g_array_append_val (ends, end);
    }
  WebPAnimDecoderReset (film->decoder);
  return ends;
}

/* As many pictures as the throw takes at that speed of time, at the right moments, and a second of the last.
 */
static void
check_times (double duration, double rate, int fps)
{
  TbClip clip = square_clip (duration);
  int last = (int) ceil (duration / rate * fps - 1e-6); /* whole pictures before the last */
  g_autoptr (GArray) ends = NULL;

  clip.rate = rate;
  clip.fps = fps;
  {
    g_auto (Film) film = film_new (&clip);

    ends = film_ends (&film);
    g_assert_cmpuint (film.info.canvas_width, ==, 64);
    g_assert_cmpuint (film.info.canvas_height, ==, 48);
    g_assert_cmpuint (film.info.loop_count, ==, 0); /* for ever */
    g_assert_cmpuint (film.info.frame_count, ==, (guint) last + 1);
  }
  g_assert_cmpuint (ends->len, ==, (guint) last + 1);
  for (int i = 0; i < last; i++)
    g_assert_cmpint (g_array_index (ends, int, i), ==, lround ((i + 1) * 1000.0 / fps));
  g_assert_cmpint (g_array_index (ends, int, last), ==, lround (last * 1000.0 / fps) + 1000);
  g_assert_cmpint (tb_clip_length_ms (&clip), ==, g_array_index (ends, int, last));
  g_assert_cmpint (tb_clip_count_frames (&clip), ==, last + 1);
  g_assert_cmpfloat (tb_clip_frame_time (&clip, 0), ==, 0);
  g_assert_cmpfloat (tb_clip_frame_time (&clip, last), ==, duration);
}

static void
test_times (void)
{
  check_times (1, 1, 25);
  check_times (0.813, 1, 25);
  check_times (0.813, 0.5, 25);
  check_times (0.813, 0.25, 30);
  check_times (0.35, 1, 60);
  check_times (0.35, 1, 7);
  check_times (0.03, 1, 25);
}

/* Mean difference of a channel, 0 to 255, between a drawn picture and a decoded one. */
static double
mean_difference (cairo_surface_t *drawn, const uint8_t *decoded)
{
  int width = cairo_image_surface_get_width (drawn), height = cairo_image_surface_get_height (drawn);
  double sum = 0;

  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++, decoded += 4)
      {
        guint32 pixel = picture_pixel (drawn, x, y);

        sum += abs ((int) (pixel >> 16 & 0xff) - decoded[0]) + abs ((int) (pixel >> 8 & 0xff) - decoded[1])
               + abs ((int) (pixel & 0xff) - decoded[2]);
      }
  return sum / (3.0 * width * height);
}

static cairo_surface_t *
draw_still (const TbThrowScene *scene, double time)
{
  cairo_surface_t *surface = picture_new (480, 360);
  cairo_t *cr = cairo_create (surface);

  draw_scene (cr, 480, 360, time, (gpointer) scene);
  cairo_destroy (cr);
  return surface;
}

/* The first and the last picture are the still ones of those moments; each is further from the other's. */
static void
check_view (const TbThrowScene *scene)
{
  double duration = tb_throw_scene_duration (scene);
  TbClip clip
      = { .width = 480, .height = 360, .duration = duration, .rate = 1, .fps = 10, .draw = draw_scene };
  cairo_surface_t *first = draw_still (scene, 0), *last = draw_still (scene, duration);
  uint8_t *pixels = NULL;
  double to_first, to_last;
  int end;

  clip.data = (gpointer) scene;
  {
    g_auto (Film) film = film_new (&clip);

    g_assert_true (WebPAnimDecoderGetNext (film.decoder, &pixels, &end));
    to_first = mean_difference (first, pixels);
    g_assert_cmpfloat (to_first, <, CLOSE);
    g_assert_cmpfloat (mean_difference (last, pixels), >, to_first);
    while (WebPAnimDecoderHasMoreFrames (film.decoder))
      g_assert_true (WebPAnimDecoderGetNext (film.decoder, &pixels, &end));
    to_last = mean_difference (last, pixels);
    g_test_message ("%s: %.2f, %.2f; away %.2f", tb_throw_view_names[scene->view], to_first, to_last,
                    mean_difference (first, pixels));
    g_assert_cmpfloat (to_last, <, CLOSE);
    g_assert_cmpfloat (mean_difference (first, pixels), >, to_last);
  }
  cairo_surface_destroy (first);
  cairo_surface_destroy (last);
}

static void
test_pictures (void)
{
  g_auto (Pair) pair = { new_run (16), new_run (20) };
  TbThrowScene lane = scene_of (&pair, TB_THROW_LANE), both = scene_of (&pair, TB_THROW_BOTH);

  check_view (&lane);
  check_view (&both);
}

/* The slower ball decides how long a clip is. */
static void
test_duration (void)
{
  g_auto (Pair) pair = { new_run (20), new_run (16) };
  TbThrowScene scene = scene_of (&pair, TB_THROW_LANE);

  g_assert_cmpfloat (tb_throw_scene_duration (&scene), ==, tb_path_duration (&pair.after->path));
  g_assert_cmpfloat (tb_throw_scene_duration (&scene), >, tb_path_duration (&pair.before->path));
}

/* Two runs that are the same are told once. */
static void
test_same_runs (void)
{
  g_auto (Pair) pair = { new_run (17), new_run (17) };
  TbThrowScene scene = scene_of (&pair, TB_THROW_LANE);

  g_assert_null (scene.before);
  g_assert_true (scene.after == pair.after);
}

static void
check_words (const TbThrowScene *scene, double time, const char *expected)
{
  TbThrowScene moment = *scene;
  g_autofree char *words = NULL;

  moment.time = time;
  words = tb_throw_caption_run (&moment, scene->after);
  g_assert_cmpstr (words, ==, expected);
}

static void
test_caption (void)
{
  g_auto (Pair) pair = { new_run (16), new_run (17) };
  TbThrowScene scene = scene_of (&pair, TB_THROW_LANE);
  const TbMeasures *m = &pair.after->path.measures;
  TbSample sample;
  g_autofree char *moving = NULL, *metric = NULL, *ended = NULL;

  g_assert_true (tb_path_at_time (&pair.after->path, 1, &sample));
  moving = g_strdup_printf ("board %.1f at %.1f ft, %.1f mph", tb_board_from_x (sample.position.x),
                            sample.position.y / TB_METRES_PER_FOOT,
                            tb_vec3_length (sample.velocity) / TB_METRES_PER_SECOND_PER_MPH);
  metric = g_strdup_printf ("board %.1f at %.1f m, %.1f km/h", tb_board_from_x (sample.position.x),
                            sample.position.y, 3.6 * tb_vec3_length (sample.velocity));
  ended = g_strdup_printf ("board %.1f at the pins, %.1f°", tb_board_from_x (m->x_at_pins),
                           m->angle_at_pins * 180 / G_PI);
  check_words (&scene, 1, moving);
  check_words (&scene, tb_path_duration (&pair.after->path), ended);
  scene.metric = TRUE;
  check_words (&scene, 1, metric);
}

/* A picture without a moment, or without room, has no caption. */
static void
test_caption_height (void)
{
  g_auto (Pair) pair = { new_run (16), new_run (17) };
  TbThrowScene scene = scene_of (&pair, TB_THROW_LANE);

  g_assert_cmpfloat (tb_throw_caption_height (640, 480, &scene), ==, 0);
  scene.time = 1;
  g_assert_cmpfloat (tb_throw_caption_height (640, 480, &scene), >, 40);
  g_assert_cmpfloat (tb_throw_caption_height (640, 480, &scene), <, 100);
  g_assert_cmpfloat (tb_throw_caption_height (640, 16, &scene), ==, 0);
}

static void
check_refused (const TbClip *clip, int code, const char *sentence)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (tb_clip_encode (clip, NULL, &error));
  g_assert_error (error, TB_CLIP_ERROR, code);
  g_assert_cmpstr (error->message, ==, sentence);
}

/* Drawing that fails halfway. */
static void
draw_badly (cairo_t *cr, double width, double height, double time, gpointer data)
{
  draw_square (cr, width, height, time, data);
  if (time > 0.5)
    cairo_restore (cr);
}

static void
test_refused (void)
{
  TbClip wide = square_clip (1), none = square_clip (1), longest = square_clip (40.1), bad = square_clip (1);

  wide.width = TB_CLIP_MAX_SIZE + 1;
  none.height = 0;
  bad.draw = draw_badly;
  check_refused (&wide, TB_CLIP_ERROR_SIZE, "A clip is 1 to 1920 pixels wide and high, not 1921 × 48.");
  check_refused (&none, TB_CLIP_ERROR_SIZE, "A clip is 1 to 1920 pixels wide and high, not 64 × 0.");
  check_refused (
      &longest, TB_CLIP_ERROR_LENGTH,
      "A clip has at most 1000 pictures; this throw is too long for 25 a second at that speed of time.");
  check_refused (&bad, TB_CLIP_ERROR_DRAWING,
                 "The clip could not be drawn: cairo_restore() without matching cairo_save().");
}

/* What was told of the progress, and when it was called off. */
typedef struct Watch
{
  GArray *shares;
  GCancellable *cancellable;
  double until;
} Watch;

static void
on_progress (double share, gpointer data)
{
  Watch *watch = data;

  g_array_append_val (watch->shares, share);
  if (share >= watch->until)
    g_cancellable_cancel (watch->cancellable);
}

static void
watch_clip (Watch *watch, GError **error)
{
  TbClip clip = square_clip (1);
  g_autoptr (GBytes) bytes = NULL;

  clip.progress = on_progress;
  clip.data = watch;
  bytes = tb_clip_encode (&clip, watch->cancellable, error);
  g_assert_true ((bytes == NULL) == (error != NULL));
}

static void
test_progress (void)
{
  Watch watch = { g_array_new (FALSE, FALSE, sizeof (double)), NULL, 2 };

  watch_clip (&watch, NULL);
  g_assert_cmpuint (watch.shares->len, ==, 26);
  for (guint i = 1; i < watch.shares->len; i++)
    g_assert_cmpfloat (g_array_index (watch.shares, double, i), >,
                       g_array_index (watch.shares, double, i - 1));
  g_assert_cmpfloat (g_array_index (watch.shares, double, 0), >, 0);
  g_assert_cmpfloat (g_array_index (watch.shares, double, watch.shares->len - 1), ==, 1);
  g_array_unref (watch.shares);
}

/* Called off after a third: no picture more is drawn, and there is no clip. */
static void
test_cancelled (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  Watch watch = { g_array_new (FALSE, FALSE, sizeof (double)), cancellable, 0.33 };
  g_autoptr (GError) error = NULL;

  watch_clip (&watch, &error);
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
  g_assert_cmpuint (watch.shares->len, ==, 9); /* of 26 */
  g_array_unref (watch.shares);
}

/* The same clip is the same bytes. */
static void
test_same_bytes (void)
{
  TbClip clip = square_clip (0.5);
  g_autoptr (GBytes) one = tb_clip_encode (&clip, NULL, NULL), other = tb_clip_encode (&clip, NULL, NULL);

  g_assert_true (g_bytes_equal (one, other));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/clip/times", test_times);
  g_test_add_func ("/clip/pictures", test_pictures);
  g_test_add_func ("/clip/duration", test_duration);
  g_test_add_func ("/clip/same-runs", test_same_runs);
  g_test_add_func ("/clip/caption", test_caption);
  g_test_add_func ("/clip/caption-height", test_caption_height);
  g_test_add_func ("/clip/refused", test_refused);
  g_test_add_func ("/clip/progress", test_progress);
  g_test_add_func ("/clip/cancelled", test_cancelled);
  g_test_add_func ("/clip/same-bytes", test_same_bytes);
  return g_test_run ();
}
