/* Rings on the ball: against the closed form of a free top, and against what the trade says of them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "house-setup.h"
#include "tb-flare.h"

#define IN(value) tb_in_from_metres (value)
#define M(inches) tb_metres_from_in (inches)

static TbRun *
throw_with_pin (const TbSetup *setup, double pin_to_pap)
{
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) other = NULL;

  shot.ball.pin_to_pap = pin_to_pap;
  other = tb_setup_with_shot (setup, &shot);
  return tb_run_new_edgeless (other);
}

/* A ball put down without a fall: the landing's push, which tilts the spin axis once, is left out. */
static TbSetup *
smooth_setup (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  TbShot shot = setup->shot;

  shot.delivery.release_height = 0;
  return tb_setup_with_shot (setup, &shot);
}

/* π R ε sin 2θ (a free symmetric top: L. D. Landau and E. M. Lifshitz, Mechanics, §35). */
static void
test_closed_form (void)
{
  g_autoptr (TbSetup) setup = smooth_setup ();
  double worst = 0;

  for (double pin = 0.5; pin <= 6.0; pin += 0.5)
    {
      g_autoptr (TbRun) run = throw_with_pin (setup, M (pin));

      g_assert_cmpint (run->status, ==, TB_OK);
      worst = fmax (
          worst, fabs (run->path.measures.ring_spacing - tb_flare_free_spacing (&setup->shot.ball, M (pin))));
    }
  /* Measured 0.0032 in of 0.47: the lane's friction turns the axis a little in the first turn. */
  g_assert_cmpfloat (IN (worst), <, 0.006);
  /* The published instance: differential 0.050 in on RG 2.50 in gives 0.524 in at 3.375 in of a 27 in ball.
   */
  TbBall ball = setup->shot.ball;

  ball.rg = M (2.50);
  ball.differential = M (0.050);
  ball.diameter = M (27 / TB_PI);
  g_assert_cmpfloat_with_epsilon (IN (tb_flare_free_spacing (&ball, M (3.375))), 0.524, 0.0005);
}

typedef struct Peaks
{
  double spacing_at, spacing, total_at, total; /* in */
} Peaks;

static Peaks
find_peaks (const TbSetup *setup)
{
  Peaks peaks = { 0 };

  for (double pin = 0; pin <= 6.75; pin += 0.125)
    {
      g_autoptr (TbRun) run = throw_with_pin (setup, M (pin));
      double spacing = IN (run->path.measures.ring_spacing), total = IN (run->path.measures.flare);

      if (spacing > peaks.spacing)
        {
          peaks.spacing = spacing;
          peaks.spacing_at = pin;
        }
      if (total > peaks.total)
        {
          peaks.total = total;
          peaks.total_at = pin;
        }
    }
  return peaks;
}

/* Common practice: rings near release are furthest apart at 3 3/8 in, the whole flare a little beyond, near 4
 * in. */
static void
test_peaks (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (TbSetup) smooth = smooth_setup ();
  Peaks lofted = find_peaks (setup), peaks = find_peaks (smooth);

  g_assert_cmpfloat_with_epsilon (peaks.spacing_at, 3.375, 0.13);
  g_assert_cmpfloat_with_epsilon (lofted.spacing_at, 3.375, 0.13);
  /* Measured 3.875 in with the fall, 3.75 without. */
  g_assert_cmpfloat (peaks.total_at, >, 3.5);
  g_assert_cmpfloat (peaks.total_at, <, 4.25);
  g_assert_cmpfloat (lofted.total_at, >, 3.5);
  g_assert_cmpfloat (lofted.total_at, <, 4.25);
}

/* With the pin on the PAP, or a quarter of the way round from it, a symmetric balanced ball spins about a
 * principal axis: nothing flares but for what the lane does to the axis. */
static void
test_nothing_at_the_ends (void)
{
  g_autoptr (TbSetup) setup = smooth_setup ();
  g_autoptr (TbRun) on_pap = throw_with_pin (setup, 0);
  g_autoptr (TbRun) quarter = throw_with_pin (setup, 0.25 * TB_PI * setup->shot.ball.diameter);
  g_autoptr (TbRun) most = throw_with_pin (setup, M (4));

  /* Measured 0.09 and 0.13 in, against 6.3 at 4 in. */
  g_assert_cmpfloat (on_pap->path.measures.flare, <, 0.04 * most->path.measures.flare);
  g_assert_cmpfloat (quarter->path.measures.flare, <, 0.04 * most->path.measures.flare);
  g_assert_cmpfloat (IN (on_pap->path.measures.ring_spacing), <, 0.02);
  g_assert_cmpfloat (IN (quarter->path.measures.ring_spacing), <, 0.02);
}

static void
test_rings (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (TbRun) run = tb_run_new (setup);
  g_autoptr (TbFlare) flare = tb_flare_new (run);
  const TbMeasures *measures = &run->path.measures;
  double reached = 0;

  g_assert_cmpuint (flare->rings->len, ==, (guint)floor (tb_revolutions_from_radians (measures->turned)) + 1);
  for (guint i = 0; i < flare->rings->len; i++)
    {
      const TbFlareRing *ring = &g_array_index (flare->rings, TbFlareRing, i);

      g_assert_cmpfloat (ring->start_y, >=, reached - 1e-9);
      g_assert_cmpfloat (ring->end_y, >, ring->start_y);
      reached = ring->end_y;
      g_assert_true (isnan (ring->spacing) == (i + 1 == flare->rings->len));
      g_assert_cmpfloat (ring->film_left, >=, 0);
    }
  /* Interpolated another way than the measure: measured 0.0002 in apart. */
  g_assert_cmpfloat_with_epsilon (IN (g_array_index (flare->rings, TbFlareRing, 0).spacing),
                                  IN (measures->ring_spacing), 0.002);
  g_assert_cmpfloat (flare->total, ==, measures->flare);
  /* The first turn meets no oil of its own. */
  g_assert_cmpfloat (g_array_index (flare->rings, TbFlareRing, 0).film_met, <, 1e-9);
}

/* One track line: the ball rolls on its own oil, and hooks less; rings well apart: fresh cover each turn,
 * more hook. */
static void
test_oil_on_rings (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  g_autoptr (GPtrArray) cases = tb_flare_cases_new (setup, (double[]){ 0, M (3.375) }, 2);
  const TbFlareCase *line = cases->pdata[0], *apart = cases->pdata[1];
  const TbAssumed *assumed = &setup->shot.assumed;
  g_autofree char *of_line = tb_flare_statement (line->flare, assumed, FALSE);
  g_autofree char *of_apart = tb_flare_statement (apart->flare, assumed, TRUE);

  g_assert_cmpint (tb_flare_kind (line->flare, assumed), ==, TB_FLARE_ONE_LINE);
  g_assert_cmpint (tb_flare_kind (apart->flare, assumed), ==, TB_FLARE_APART);
  g_assert_nonnull (strstr (of_line, "rolls on its own oil"));
  g_assert_nonnull (strstr (of_apart, "left dry"));
  g_assert_nonnull (strstr (of_line, " in apart"));
  g_assert_nonnull (strstr (of_apart, " mm apart"));
  /* Measured 0.98 against 0.17 µm, and 7.7 boards. */
  g_assert_cmpfloat (line->flare->film_met, >, 3 * apart->flare->film_met);
  g_assert_cmpfloat (tb_boards_from_width (line->run->path.measures.hook), <,
                     tb_boards_from_width (apart->run->path.measures.hook) - 0.5);
}

/* Common practice: close rings get down the lane. The closer they are, the later the ball turns back and
 * rolls. */
static void
test_close_rings_go_long (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  const double pins[] = { M (3.375), M (0.75), M (0) };
  g_autoptr (GPtrArray) cases = tb_flare_cases_new (setup, pins, G_N_ELEMENTS (pins));

  for (guint i = 0; i + 1 < cases->len; i++)
    {
      const TbFlareCase *apart = cases->pdata[i], *close = cases->pdata[i + 1];

      g_assert_cmpfloat (close->flare->widest_spacing, <, apart->flare->widest_spacing);
      g_assert_cmpfloat (close->run->path.measures.breakpoint_y, >, apart->run->path.measures.breakpoint_y);
      /* Or it does not roll at all before the pins. */
      g_assert_false (close->run->path.measures.roll_start_y <= apart->run->path.measures.roll_start_y);
    }
}

/* A left-hander's ball is the mirror image: the same rings. */
static void
test_left_hander (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) left = NULL;

  shot.delivery.hand = TB_HAND_LEFT;
  left = tb_setup_with_shot (setup, &shot);

  g_autoptr (TbRun) a = tb_run_new (setup), b = tb_run_new (left);
  g_autoptr (TbFlare) of_a = tb_flare_new (a), of_b = tb_flare_new (b);

  g_assert_cmpuint (of_a->rings->len, ==, of_b->rings->len);
  for (guint i = 0; i < of_a->rings->len; i++)
    g_assert_cmpmem (&g_array_index (of_a->rings, TbFlareRing, i), sizeof (TbFlareRing),
                     &g_array_index (of_b->rings, TbFlareRing, i), sizeof (TbFlareRing));
}

static void
test_no_rings (void)
{
  g_autoptr (TbSetup) setup = house_setup ();
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) other = NULL;

  shot.ball.mass = NAN;
  other = tb_setup_with_shot (setup, &shot);

  g_autoptr (TbRun) run = tb_run_new (other);
  g_autoptr (TbFlare) flare = tb_flare_new (run);
  g_autofree char *statement = tb_flare_statement (flare, &shot.assumed, FALSE);

  g_assert_cmpint (run->status, !=, TB_OK);
  g_assert_cmpuint (flare->rings->len, ==, 0);
  g_assert_nonnull (strstr (statement, "no rings"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/flare/closed-form", test_closed_form);
  g_test_add_func ("/flare/peaks", test_peaks);
  g_test_add_func ("/flare/nothing-at-the-ends", test_nothing_at_the_ends);
  g_test_add_func ("/flare/rings", test_rings);
  g_test_add_func ("/flare/oil-on-rings", test_oil_on_rings);
  g_test_add_func ("/flare/close-rings-go-long", test_close_rings_go_long);
  g_test_add_func ("/flare/left-hander", test_left_hander);
  g_test_add_func ("/flare/no-rings", test_no_rings);
  return g_test_run ();
}
