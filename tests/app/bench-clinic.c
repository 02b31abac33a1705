/* What a frame of the clinic costs while a throw runs over the whole screen.
 *
 * bench-clinic WIDTH HEIGHT prints the milliseconds between before-paint and after-paint of the frame clock,
 * with the throws in two strips and on one lane.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <stdlib.h>

#include "tb-clinic-window.h"
#include "tb-style.h"

#define WARM_UP 60
#define FRAMES 240

typedef struct Bench
{
  GtkWidget *window;
  TbClinic *clinic;
  guint frame;
  gint64 begin;
  double costs[FRAMES];
} Bench;

static void
on_before_paint (GdkFrameClock *clock, Bench *bench)
{
  bench->begin = g_get_monotonic_time ();
}

static void
on_after_paint (GdkFrameClock *clock, Bench *bench)
{
  if (bench->begin != 0 && bench->frame >= WARM_UP && bench->frame < WARM_UP + FRAMES)
    bench->costs[bench->frame - WARM_UP] = (double) (g_get_monotonic_time () - bench->begin) / 1000.0;
  bench->frame++;
}

static gboolean
on_tick (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  Bench *bench = data;

  if (!tb_session_get_playing (tb_clinic_get_session (bench->clinic)))
    tb_clinic_do (bench->clinic, TB_CLINIC_REPLAY);
  return G_SOURCE_CONTINUE;
}

static int
compare (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static void
run (Bench *bench, const char *label)
{
  gint64 start = g_get_monotonic_time ();
  double seconds;

  bench->frame = 0;
  bench->begin = 0;
  while (bench->frame < WARM_UP + FRAMES)
    g_main_context_iteration (NULL, TRUE);
  seconds = (double) (g_get_monotonic_time () - start) / G_USEC_PER_SEC;
  qsort (bench->costs, FRAMES, sizeof bench->costs[0], compare);
  g_print (
      "clinic: %d x %d, %s: %.1f ms a frame (median), %.1f (95 %%), %.1f (worst), %.0f frames a second\n",
      gtk_widget_get_width (bench->window), gtk_widget_get_height (bench->window), label,
      bench->costs[FRAMES / 2], bench->costs[FRAMES * 95 / 100], bench->costs[FRAMES - 1],
      (WARM_UP + FRAMES) / seconds);
}

int
main (int argc, char **argv)
{
  g_autoptr (TbLibrary) library = NULL;
  g_autoptr (TbStudy) study = NULL;
  Bench bench = { 0 };
  GdkFrameClock *clock;
  int width = argc > 2 ? atoi (argv[1]) : 1920, height = argc > 2 ? atoi (argv[2]) : 1080;

  g_setenv ("GTK_A11Y", "test", TRUE);
  gtk_test_init (&argc, &argv, NULL);
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", TRUE, NULL);
  tb_style_init (gdk_display_get_default ());
  library = tb_library_new ();
  study = tb_library_start_study ();
  bench.clinic = tb_clinic_new (library, study, TB_UNITS_IMPERIAL);
  bench.window = GTK_WIDGET (tb_clinic_window_new (NULL, bench.clinic));
  gtk_window_set_decorated (GTK_WINDOW (bench.window), FALSE);
  gtk_window_set_default_size (GTK_WINDOW (bench.window), width, height);
  gtk_window_present (GTK_WINDOW (bench.window));
  gtk_test_widget_wait_for_draw (bench.window);
  for (int i = 0; i < 3; i++)
    tb_clinic_do (bench.clinic, TB_CLINIC_ONWARD);
  clock = gtk_widget_get_frame_clock (bench.window);
  g_signal_connect (clock, "before-paint", G_CALLBACK (on_before_paint), &bench);
  g_signal_connect (clock, "after-paint", G_CALLBACK (on_after_paint), &bench);
  gtk_widget_add_tick_callback (bench.window, on_tick, &bench, NULL);
  run (&bench, "two strips");
  tb_clinic_do (bench.clinic, TB_CLINIC_OVERLAY);
  run (&bench, "one lane");
  gtk_window_destroy (GTK_WINDOW (bench.window));
  g_object_unref (bench.clinic);
  return 0;
}
