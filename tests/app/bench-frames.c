/* What a frame of the real window costs: while a throw runs, and while a slider is dragged.
 *
 * bench-frames WIDTH HEIGHT prints the milliseconds between before-paint and after-paint of the frame clock:
 * layout, recording, rasterising and the X server together; this program's processor time in all, which other
 * programs disturb less; what each picture costs alone; the time to the first frame; and memory. What is compared
 * between machines is the processor time over that of laying one image of the window's size over another.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "tb-application.h"
#include "tb-picture.h"
#include "tb-window.h"

/* Frames that are thrown away first (caches fill), and those that count. */
#define WARM_UP 60
#define FRAMES 240
/* The drag goes up and down between these, mph. */
#define DRAG_LOW 15.0
#define DRAG_SPAN 5.0
#define DRAG_PERIOD 60
/* Of these the middle one counts, for one picture. */
#define PICTURE_DRAWS 21

typedef struct Bench
{
  TbWindow *window;
  TbSession *session;
  const TbField *speed;
  gboolean dragging;
  guint frame;
  gint64 begin;
  double costs[FRAMES];
  double busy; /* ms, the most that one change took outside the frame */
  double lay;  /* ms, one image of the window's size over another */
} Bench;

static void
on_before_paint (GdkFrameClock *clock, Bench *bench)
{
  bench->begin = g_get_monotonic_time ();
}

static void
on_after_paint (GdkFrameClock *clock, Bench *bench)
{
  if (bench->begin == 0)
    return;
  if (bench->frame >= WARM_UP && bench->frame < WARM_UP + FRAMES)
    bench->costs[bench->frame - WARM_UP] = (double)(g_get_monotonic_time () - bench->begin) / 1000.0;
  bench->frame++;
}

static gboolean
on_tick (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  Bench *bench = data;
  double phase = fabs (fmod (bench->frame, DRAG_PERIOD) / DRAG_PERIOD - 0.5) * 2;
  gint64 start = g_get_monotonic_time ();

  if (bench->dragging)
    tb_session_set_field (bench->session, bench->speed, DRAG_LOW + DRAG_SPAN * phase, NULL);
  else if (!tb_session_get_playing (bench->session))
    tb_session_throw (bench->session);
  bench->busy = MAX (bench->busy, (double)(g_get_monotonic_time () - start) / 1000.0);
  return G_SOURCE_CONTINUE;
}

/* A line of /proc/self/status, MiB; 0 where there is none. */
static double
memory (const char *key)
{
  g_autofree char *text = NULL;
  const char *line;

  if (!g_file_get_contents ("/proc/self/status", &text, NULL, NULL))
    return 0;
  line = strstr (text, key);
  return line != NULL ? g_ascii_strtod (line + strlen (key), NULL) / 1024 : 0;
}

static int
compare (gconstpointer a, gconstpointer b)
{
  double x = *(const double *)a, y = *(const double *)b;

  return (x > y) - (x < y);
}

/* ms of this program; what others take, the X server too, does not count. */
static double
processor_time (void)
{
  struct timespec now;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);
  return 1e3 * (double)now.tv_sec + 1e-6 * (double)now.tv_nsec;
}

/* The middle one of many, ms. */
static double
time_laying (int width, int height)
{
  cairo_surface_t *below = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_surface_t *above = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (above);
  double costs[PICTURE_DRAWS];

  /* Nothing on top of nothing would be no work. */
  cairo_set_source_rgba (cr, 0.2, 0.4, 0.6, 0.5);
  cairo_paint (cr);
  cairo_destroy (cr);
  cr = cairo_create (below);
  cairo_set_source_surface (cr, above, 0, 0);
  for (guint i = 0; i < PICTURE_DRAWS; i++)
    {
      double start = processor_time ();

      cairo_paint (cr);
      costs[i] = processor_time () - start;
    }
  qsort (costs, PICTURE_DRAWS, sizeof costs[0], compare);
  cairo_destroy (cr);
  cairo_surface_destroy (above);
  cairo_surface_destroy (below);
  return costs[PICTURE_DRAWS / 2];
}

static void
run (Bench *bench, const char *label, gboolean dragging)
{
  gint64 start = g_get_monotonic_time ();
  double seconds, busy = processor_time ();

  bench->dragging = dragging;
  bench->frame = 0;
  bench->begin = 0;
  bench->busy = 0;
  tb_session_set_playing (bench->session, FALSE);
  while (bench->frame < WARM_UP + FRAMES)
    g_main_context_iteration (NULL, TRUE);
  seconds = (double)(g_get_monotonic_time () - start) / G_USEC_PER_SEC;
  busy = (processor_time () - busy) / (WARM_UP + FRAMES);
  qsort (bench->costs, FRAMES, sizeof bench->costs[0], compare);
  g_print ("frames: %d x %d, %s: %.1f ms a frame (median), %.1f (95 %%), %.1f (worst), %.0f frames a second, "
           "%.1f ms of processor time each, %.1f times laying a window's image\n",
           gtk_widget_get_width (GTK_WIDGET (bench->window)),
           gtk_widget_get_height (GTK_WIDGET (bench->window)), label, bench->costs[FRAMES / 2],
           bench->costs[FRAMES * 95 / 100], bench->costs[FRAMES - 1], (WARM_UP + FRAMES) / seconds, busy, busy / bench->lay);
}

/* Draws one picture, moving parts and all, as often as counts, and tells what that takes. */
static void
tell_picture (TbPicture *picture)
{
  TbPictureForm form = { .width = gtk_widget_get_width (GTK_WIDGET (picture)),
                         .height = gtk_widget_get_height (GTK_WIDGET (picture)) };
  cairo_surface_t *surface
      = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int)form.width, (int)form.height);
  cairo_t *cr = cairo_create (surface);
  double costs[PICTURE_DRAWS];

  for (guint i = 0; i < PICTURE_DRAWS; i++)
    {
      double start = processor_time ();

      tb_picture_draw (picture, cr, &form);
      costs[i] = processor_time () - start;
    }
  qsort (costs, PICTURE_DRAWS, sizeof costs[0], compare);
  g_print ("frames: %s, %.0f x %.0f: %.2f ms to draw\n", G_OBJECT_TYPE_NAME (picture), form.width,
           form.height, costs[PICTURE_DRAWS / 2]);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
tell_pictures (GtkWidget *widget)
{
  if (TB_IS_PICTURE (widget) && gtk_widget_get_mapped (widget))
    tell_picture (TB_PICTURE (widget));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    tell_pictures (child);
}

int
main (int argc, char **argv)
{
  TbApplication *application;
  Bench bench = { 0 };
  GdkFrameClock *clock;
  gint64 start = g_get_monotonic_time ();
  int width = argc > 2 ? atoi (argv[1]) : 1920;
  int height = argc > 2 ? atoi (argv[2]) : 1080;

  g_setenv ("GTK_A11Y", "test", TRUE);
  gtk_test_init (&argc, &argv, NULL);
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", TRUE, NULL);
  application = tb_application_new ();
  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_NON_UNIQUE);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));
  bench.window = tb_window_new (GTK_APPLICATION (application), tb_application_get_library (application));
  bench.session = tb_window_get_session (bench.window);
  bench.speed = tb_field_find (TB_GROUP_DELIVERY, "speed_mph");
  gtk_window_set_default_size (GTK_WINDOW (bench.window), width, height);
  gtk_window_present (GTK_WINDOW (bench.window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (bench.window));
  g_print ("frames: from start to the first frame %.0f ms\n",
           (double)(g_get_monotonic_time () - start) / 1000.0);
  g_print ("frames: %.0f MiB resident at the first frame\n", memory ("VmRSS:"));
  clock = gtk_widget_get_frame_clock (GTK_WIDGET (bench.window));
  g_signal_connect (clock, "before-paint", G_CALLBACK (on_before_paint), &bench);
  g_signal_connect (clock, "after-paint", G_CALLBACK (on_after_paint), &bench);
  gtk_widget_add_tick_callback (GTK_WIDGET (bench.window), on_tick, &bench, NULL);
  bench.lay = time_laying (width, height);
  g_print ("frames: laying one image of the window's size over another takes %.2f ms\n", bench.lay);
  run (&bench, "a throw runs", FALSE);
  run (&bench, "a slider is dragged", TRUE);
  tell_pictures (GTK_WIDGET (bench.window));
  g_print ("frames: %.0f MiB resident at the end, %.0f at most\n", memory ("VmRSS:"), memory ("VmHWM:"));
  gtk_window_destroy (GTK_WINDOW (bench.window));
  g_object_unref (application);
  return 0;
}
