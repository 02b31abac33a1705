/* The friction law of a cover, and the surface scale.
 *
 * The law is the load-sharing fit of A. V. Olver and H. A. Spikes, Proc. IMechE J 212, 1998; its numbers are
 * assumed, so only its form is checked. The roughness of a grit is typical (project's table, from memory).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "support.h"

static TbCoverLaw
law (void)
{
  return (TbCoverLaw){ .film_friction = tb_assumed_default ().film_friction };
}

static void
test_ends_of_the_law (void)
{
  TbCoverLaw l = law ();

  for (int kind = 0; kind < TB_N_COVER_KINDS; kind++)
    {
      TbCover cover = tb_cover_typical ((TbCoverKind)kind);
      double quarter = cover.roughness * cover.film_scale;

      check_near ("dry", tb_cover_friction (&cover, &l, 0.0, 1.0), cover.dry_friction, 1e-16);
      check_near ("flooded", tb_cover_friction (&cover, &l, 1.0, 1.0), l.film_friction, 1e-10);
      check_near ("film scale leaves a quarter", tb_cover_friction (&cover, &l, quarter, 1.0),
                  l.film_friction + (cover.dry_friction - l.film_friction) / 4.0, 1e-16);
    }
}

static void
test_directions (void)
{
  TbCoverLaw l = law ();
  TbCover cover = tb_cover_typical (TB_COVER_REACTIVE_HYBRID), rougher = cover;

  rougher.roughness *= 1.5;
  for (double units = 1.0; units < 80.0; units *= 1.5)
    {
      double film = tb_film_from_units (units), mu = tb_cover_friction (&cover, &l, film, 1.0);

      check_below ("more film, less friction", tb_cover_friction (&cover, &l, 1.01 * film, 1.0), mu);
      check_above ("rougher, more friction", tb_cover_friction (&rougher, &l, film, 1.0), mu);
    }
}

static void
test_load (void)
{
  TbCoverLaw l = law ();
  TbCover cover = tb_cover_typical (TB_COVER_REACTIVE_SOLID);

  /* On a dry lane the load only weakens; through a thick film it squeezes. */
  check_near ("dry, eightfold load", tb_cover_friction (&cover, &l, 0.0, 8.0), cover.dry_friction / 2.0,
              1e-15);
  check_above ("thick film, eightfold load", tb_cover_friction (&cover, &l, tb_film_from_units (45.0), 8.0),
               tb_cover_friction (&cover, &l, tb_film_from_units (45.0), 1.0));
}

static void
test_grit (void)
{
  static const struct
  {
    double grit, um;
  } typical[] = { { 500, 1.20 },  { 1000, 0.75 }, { 2000, 0.48 },
                  { 3000, 0.33 }, { 4000, 0.23 }, { TB_GRIT_POLISH, 0.13 } };
  double previous = INFINITY;

  for (guint i = 0; i < G_N_ELEMENTS (typical); i++)
    check_near ("Ra, µm", tb_um_from_metres (tb_roughness_from_grit (typical[i].grit)), typical[i].um, 1e-12);
  for (double grit = TB_GRIT_COARSEST; grit <= TB_GRIT_POLISH; grit += 10.0)
    {
      double roughness = tb_roughness_from_grit (grit);

      if (!(roughness < previous))
        g_test_fail_printf ("roughness does not fall at %g grit", grit);
      previous = roughness;
      if (fabs (tb_grit_from_roughness (roughness) - grit) > 1e-8)
        g_test_fail_printf ("%g grit comes back as %g", grit, tb_grit_from_roughness (roughness));
    }
  check_near ("held at the coarse end", tb_grit_from_roughness (3e-6), TB_GRIT_COARSEST, 0.0);
  check_near ("held at the smooth end", tb_grit_from_roughness (1e-9), TB_GRIT_POLISH, 0.0);
}

static double
typical_friction (TbCoverKind kind, double units)
{
  TbCoverLaw l = law ();
  TbCover cover = tb_cover_typical (kind);

  return tb_cover_friction (&cover, &l, tb_film_from_units (units), 1.0);
}

/* Order of grip, common practice: plastic least; among the reactives a pearl least, a solid most. */
static void
test_kinds (void)
{
  for (double units = 0.0; units <= 40.0; units += 10.0)
    {
      double plastic = typical_friction (TB_COVER_PLASTIC, units);
      double pearl = typical_friction (TB_COVER_REACTIVE_PEARL, units);
      double hybrid = typical_friction (TB_COVER_REACTIVE_HYBRID, units);

      check_above ("urethane over plastic", typical_friction (TB_COVER_URETHANE, units), plastic);
      check_above ("pearl over plastic", pearl, plastic);
      check_above ("hybrid over pearl", hybrid, pearl);
      check_above ("solid over hybrid", typical_friction (TB_COVER_REACTIVE_SOLID, units), hybrid);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cover/ends-of-the-law", test_ends_of_the_law);
  g_test_add_func ("/cover/directions", test_directions);
  g_test_add_func ("/cover/load", test_load);
  g_test_add_func ("/cover/grit", test_grit);
  g_test_add_func ("/cover/kinds", test_kinds);
  return g_test_run ();
}
