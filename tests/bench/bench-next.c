/* How long every option of a wish, and the reasons of a difference, take on two cores; the goal is half a
 * second.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdio.h>

#include "study-support.h"
#include "tb-next.h"
#include "tb-why.h"

#define THREADS 2
#define MANY                                                                                           \
  "speed_mph=18 rev_rate_rpm=340 axis_rotation_deg=60 axis_tilt_deg=16 laydown_board=25 aim_board=16 " \
  "grit=3000 rg_in=2.53"

static double
milliseconds_since (gint64 start)
{
  return (double) (g_get_monotonic_time () - start) / 1000;
}

static void
time_wish (TbWishKind kind)
{
  g_autoptr (TbSetup) setup = setup_with ("");
  TbWish wish = tb_wish_default (kind);
  gint64 start = g_get_monotonic_time ();
  g_autoptr (TbNext) next
      = tb_next_find (&(TbNextQuestion){ .start = setup, .wish = &wish, .threads = THREADS }, NULL);
  double time = milliseconds_since (start);

  printf ("next %-10s %6.0f ms  %5u throws  %2u options\n", tb_wish_info (kind)->name, time, next->throws,
          next->options->len);
}

static void
time_why (const char *name, const char *changes)
{
  g_autoptr (TbSetup) before = setup_with ("");
  g_autoptr (TbSetup) after = setup_with (changes);
  const TbWhyOptions options = { .threads = THREADS };
  gint64 start = g_get_monotonic_time ();
  g_autoptr (TbWhy) why = tb_why_new (before, after, &options, NULL);
  double time = milliseconds_since (start);

  printf ("why  %-10s %6.0f ms  %5u throws  %2u inputs\n", name, time, why->throws, why->n_inputs);
}

int
main (void)
{
  for (int kind = 0; kind < TB_N_WISHES; kind++)
    time_wish ((TbWishKind) kind);
  time_why ("one", "speed_mph=18");
  time_why ("eight", MANY);
  time_why ("ten", MANY " grip_pressure=6 weight_lb=14");
  return 0;
}
