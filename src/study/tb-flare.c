/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-flare.h"

#include <glib/gi18n-lib.h>

#define INCH TB_METRES_PER_INCH

const double tb_flare_distances[TB_FLARE_N_DISTANCES]
    = { 0, 1.5 * INCH, 2.5 * INCH, 3.375 * INCH, 5.0 * INCH, 6.75 * INCH };

double
tb_flare_film_left (const TbSample *sample, const TbAssumed *assumed, double radius)
{
  double over_lane = hypot (sample->velocity.x, sample->velocity.y);
  double over_ball = radius * hypot (sample->spin.x, sample->spin.y);

  if (sample->phase == TB_PHASE_FLIGHT || over_ball <= 0)
    return sample->film_on_ball;
  return (1 - assumed->lay_down) * sample->film_on_ball
         + assumed->pick_up * sample->film_on_lane * over_lane / over_ball;
}

/* Sums over the samples of a ring, each weighted with the angle it stands for. */
typedef struct RingSum
{
  double angle, lane, met, left;
} RingSum;

static void
add_sample (RingSum *sum, const TbSample *sample, double angle, const TbRun *run)
{
  sum->angle += angle;
  sum->lane += angle * sample->film_on_lane;
  sum->met += angle * sample->film_on_ball;
  sum->left += angle * tb_flare_film_left (sample, &run->setup->shot.assumed, run->path.body.radius);
}

static TbFlareRing
make_ring (const TbRun *run, int first, int last)
{
  const TbSample *samples = run->path.samples;
  TbFlareRing ring = { .first = first, .last = last, .spacing = NAN };
  RingSum sum = { 0 };

  for (int i = first; i <= last; i++)
    {
      int before = MAX (i - 1, first), after = MIN (i + 1, last);

      if (samples[i].phase != TB_PHASE_FLIGHT)
        add_sample (&sum, &samples[i], 0.5 * (samples[after].turned - samples[before].turned), run);
    }
  ring.start_y = samples[first].position.y;
  ring.end_y = samples[last].position.y;
  if (sum.angle > 0)
    {
      ring.film_on_lane = sum.lane / sum.angle;
      ring.film_met = sum.met / sum.angle;
      ring.film_left = sum.left / sum.angle;
    }
  return ring;
}

/* Where the spin axis is on the ball once it has turned by an angle; `i` is the last sample before that. */
static TbVec3
axis_when_turned (const TbPath *path, int i, double turned)
{
  const TbSample *from = &path->samples[i], *to = &path->samples[i + 1];
  TbVec3 a = tb_sample_axis_on_ball (from), b = tb_sample_axis_on_ball (to);
  double share = to->turned > from->turned ? (turned - from->turned) / (to->turned - from->turned) : 0;

  return tb_vec3_unit (tb_vec3_add_scaled (tb_vec3_scale (a, 1 - share), share, b), a);
}

static void
cut_into_rings (TbFlare *flare, const TbRun *run)
{
  const TbPath *path = &run->path;
  const double turn = 2 * TB_PI;
  TbVec3 axis = tb_sample_axis_on_ball (&path->samples[0]);
  int first = 0;

  for (int i = 0; i + 1 < path->count; i++)
    {
      double end = (flare->rings->len + 1) * turn;

      if (path->samples[i + 1].turned < end)
        continue;
      TbFlareRing ring = make_ring (run, first, i + 1);
      TbVec3 next = axis_when_turned (path, i, end);

      ring.spacing = path->body.radius * tb_vec3_angle (axis, next);
      g_array_append_val (flare->rings, ring);
      axis = next;
      first = i + 1;
    }
  if (first + 1 < path->count)
    {
      TbFlareRing rest = make_ring (run, first, path->count - 1);

      g_array_append_val (flare->rings, rest);
    }
}

static void
sum_up (TbFlare *flare, const TbRun *run)
{
  guint wet = 0;

  flare->widest_spacing = NAN;
  for (guint i = 0; i < flare->rings->len; i++)
    {
      const TbFlareRing *ring = &g_array_index (flare->rings, TbFlareRing, i);

      flare->widest_spacing = fmax (flare->widest_spacing, ring->spacing);
      if (ring->film_on_lane <= run->setup->shot.assumed.oil_exit_film)
        continue;
      wet++;
      flare->film_on_lane += ring->film_on_lane;
      flare->film_met += ring->film_met;
    }
  if (wet == 0)
    return;
  flare->film_on_lane /= wet;
  flare->film_met /= wet;
}

TbFlare *
tb_flare_new (const TbRun *run)
{
  TbFlare *flare = g_new0 (TbFlare, 1);

  flare->rings = g_array_new (FALSE, FALSE, sizeof (TbFlareRing));
  flare->first_spacing = flare->widest_spacing = flare->total = NAN;
  if (run->status != TB_OK || run->path.count < 2)
    return flare;
  cut_into_rings (flare, run);
  sum_up (flare, run);
  flare->first_spacing = run->path.measures.ring_spacing;
  flare->total = run->path.measures.flare;
  return flare;
}

void
tb_flare_free (TbFlare *flare)
{
  g_array_unref (flare->rings);
  g_free (flare);
}

TbFlareKind
tb_flare_kind (const TbFlare *flare, const TbAssumed *assumed)
{
  if (!(flare->total > assumed->patch_width))
    return TB_FLARE_ONE_LINE;
  return flare->widest_spacing > assumed->patch_width ? TB_FLARE_APART : TB_FLARE_OVERLAP;
}

static const char *const statements[] = {
  [TB_FLARE_APART]
  = N_ ("The rings lie up to %s apart and spread over %s: wider than the strip that carries "
        "oil (%s, assumed), so that a turn meets cover the turn before left dry. In the oil it "
        "still met %.2f µm of its own oil on average, under %.1f µm on the lane."),
  [TB_FLARE_OVERLAP]
  = N_ ("The rings lie up to %s apart and spread over %s: closer than the strip that "
        "carries oil (%s, assumed), so that each turn runs partly on the oil of the one before. "
        "In the oil it met %.2f µm of its own oil on average, under %.1f µm on the lane."),
  [TB_FLARE_ONE_LINE]
  = N_ ("The rings lie up to %s apart and spread over %s, inside one strip that carries "
        "oil (%s, assumed): the ball rolls on its own oil. In the oil it met %.2f µm of it on "
        "average, under %.1f µm on the lane."),
};

static char *
length_text (double length, gboolean metric)
{
  return metric ? g_strdup_printf (_ ("%.0f mm"), length * 1e3)
                : g_strdup_printf (_ ("%.2f in"), tb_in_from_metres (length));
}

char *
tb_flare_statement (const TbFlare *flare, const TbAssumed *assumed, gboolean metric)
{
  const char *statement = statements[tb_flare_kind (flare, assumed)];
  g_autofree char *widest = length_text (flare->widest_spacing, metric),
                  *total = length_text (flare->total, metric);
  g_autofree char *strip = length_text (assumed->patch_width, metric);

  if (isnan (flare->widest_spacing))
    return g_strdup (_ ("The ball does not turn once on the way: there are no rings to compare."));
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  return g_strdup_printf (_ (statement), widest, total, strip, tb_um_from_metres (flare->film_met),
                          tb_um_from_metres (flare->film_on_lane));
#pragma GCC diagnostic pop
}

void
tb_flare_case_free (TbFlareCase *flare_case)
{
  tb_flare_free (flare_case->flare);
  tb_run_unref (flare_case->run);
  g_free (flare_case);
}

GPtrArray *
tb_flare_cases_new (const TbSetup *setup, const double *pin_to_pap, guint count)
{
  GPtrArray *cases = g_ptr_array_new_with_free_func ((GDestroyNotify)tb_flare_case_free);

  for (guint i = 0; i < count; i++)
    {
      TbShot shot = setup->shot;
      g_autoptr (TbSetup) other = NULL;
      TbFlareCase *one = g_new0 (TbFlareCase, 1);

      shot.ball.pin_to_pap = pin_to_pap[i];
      other = tb_setup_with_shot (setup, &shot);
      one->pin_to_pap = pin_to_pap[i];
      one->run = tb_run_new_edgeless (other);
      one->flare = tb_flare_new (one->run);
      g_ptr_array_add (cases, one);
    }
  return cases;
}

double
tb_flare_free_spacing (const TbBall *ball, double pin_to_pap)
{
  double radius = 0.5 * ball->diameter, high = ball->rg + ball->differential;
  double share = 1 - (ball->rg / high) * (ball->rg / high);

  return fabs (TB_PI * radius * share * sin (2 * pin_to_pap / radius));
}
