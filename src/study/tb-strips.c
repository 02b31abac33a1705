/* Strips, and the film they lay.
 *
 * Along a strip the film is even, and comes down to nothing over the taper at its end by a smooth step s(t)
 * with continuous curvature. The step's mean is 1/2, so a strip of length L and taper T holds film × (L −
 * T/2), and the film follows from the oil on a board. Cells get exact means: the integral of s is a
 * polynomial.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-strips.h"

#include <math.h>

/* Ranges of a strip that make sense. */
#define MAX_VOLUME tb_cubic_metres_from_ml (5.0) /* on one board; a whole lane has some 25 mL */
#define MIN_VOLUME tb_cubic_metres_from_ml (0.001)
#define MAX_DISTANCE TB_HEAD_PIN_Y

TbStrip
tb_strip_default (void)
{
  return (TbStrip){ .way = TB_STRIP_OUT,
                    .right_board = 8,
                    .left_board = 32,
                    .start = 0,
                    .end = tb_metres_from_ft (30),
                    .volume = tb_cubic_metres_from_ml (0.1),
                    .taper = tb_metres_from_ft (4) };
}

double
tb_strip_near (const TbStrip *strip)
{
  return MIN (strip->start, strip->end);
}

double
tb_strip_far (const TbStrip *strip)
{
  return MAX (strip->start, strip->end);
}

int
tb_strip_boards (const TbStrip *strip)
{
  return strip->left_board - strip->right_board + 1;
}

double
tb_strip_volume (const TbStrip *strip)
{
  return strip->volume * tb_strip_boards (strip);
}

static double
strip_length (const TbStrip *strip)
{
  return tb_strip_far (strip) - tb_strip_near (strip);
}

static gboolean
runs_its_way (const TbStrip *strip)
{
  return strip->way == TB_STRIP_OUT ? strip->end > strip->start : strip->end < strip->start;
}

TbStatus
tb_strip_check (const TbStrip *strip)
{
  if (!isfinite (strip->start) || !isfinite (strip->end) || !isfinite (strip->volume)
      || !isfinite (strip->taper))
    return TB_ERROR_NOT_FINITE;
  if (strip->right_board < 1 || strip->left_board > TB_LANE_BOARDS || strip->right_board > strip->left_board)
    return TB_ERROR_OUT_OF_RANGE;
  if (tb_strip_near (strip) < 0 || tb_strip_far (strip) > MAX_DISTANCE || !runs_its_way (strip)
      || strip_length (strip) < TB_STRIP_MIN_LENGTH * (1 - DBL_EPSILON))
    return TB_ERROR_OUT_OF_RANGE;
  if (strip->volume < 0 || strip->volume > MAX_VOLUME || strip->taper < 0
      || strip->taper > strip_length (strip))
    return TB_ERROR_OUT_OF_RANGE;
  return TB_OK;
}

void
tb_strip_tidy (TbStrip *strip)
{
  double near = CLAMP (tb_strip_near (strip), 0, MAX_DISTANCE - TB_STRIP_MIN_LENGTH);
  double far = CLAMP (tb_strip_far (strip), near + TB_STRIP_MIN_LENGTH, MAX_DISTANCE);

  strip->start = strip->way == TB_STRIP_OUT ? near : far;
  strip->end = strip->way == TB_STRIP_OUT ? far : near;
  strip->right_board = CLAMP (strip->right_board, 1, TB_LANE_BOARDS);
  strip->left_board = CLAMP (strip->left_board, strip->right_board, TB_LANE_BOARDS);
  strip->volume = CLAMP (strip->volume, MIN_VOLUME, MAX_VOLUME);
  strip->taper = CLAMP (strip->taper, 0, far - near);
}

void
tb_strip_turn (TbStrip *strip)
{
  double start = strip->start;

  strip->way = strip->way == TB_STRIP_OUT ? TB_STRIP_BACK : TB_STRIP_OUT;
  strip->start = strip->end;
  strip->end = start;
}

/* s(t), 0 to 1 with no kink in slope or curvature, and its integral from 0 to t. */
static double
smooth_step (double t)
{
  t = CLAMP (t, 0, 1);
  return t * t * t * (10 + t * (6 * t - 15));
}

static double
smooth_step_integral (double t)
{
  double over = MAX (t - 1, 0);

  t = CLAMP (t, 0, 1);
  return t * t * t * t * (2.5 + t * (t - 3)) + over;
}

/* Film where it is even, m. */
static double
even_film (const TbStrip *strip)
{
  return strip->volume / (TB_BOARD_WIDTH * (strip_length (strip) - 0.5 * strip->taper));
}

/* How far from the strip's end a place is, on the oiled side; more than the strip's length is before its
 * start. */
static double
distance_to_end (const TbStrip *strip, double y)
{
  return strip->way == TB_STRIP_OUT ? strip->end - y : y - strip->end;
}

double
tb_strip_film (const TbStrip *strip, double y)
{
  double to_end = distance_to_end (strip, y);

  if (to_end <= 0 || to_end > strip_length (strip))
    return 0;
  return even_film (strip) * (strip->taper > 0 ? smooth_step (to_end / strip->taper) : 1);
}

/* Integral of the film over even_film from the end up to a distance before it. */
static double
oil_up_to (const TbStrip *strip, double to_end)
{
  double reach = CLAMP (to_end, 0, strip_length (strip));

  if (strip->taper <= 0)
    return reach;
  return strip->taper * smooth_step_integral (reach / strip->taper);
}

/* Mean film over a row of the grid. */
static double
mean_over_row (const TbStrip *strip, int row)
{
  double a = distance_to_end (strip, row * TB_OIL_ROW_LENGTH);
  double b = distance_to_end (strip, (row + 1) * TB_OIL_ROW_LENGTH);

  return even_film (strip) * fabs (oil_up_to (strip, a) - oil_up_to (strip, b)) / TB_OIL_ROW_LENGTH;
}

static void
lay_strip (const TbStrip *strip, TbOil *oil)
{
  for (int row = 0; row < TB_OIL_ROWS; row++)
    {
      double film = mean_over_row (strip, row);

      for (int column = strip->right_board - 1; film > 0 && column < strip->left_board; column++)
        tb_oil_set_cell (oil, row, column, tb_oil_cell (oil, row, column) + film);
    }
}

TbStatus
tb_strips_lay (const TbStrip *strips, guint count, TbOil *oil, guint *wrong)
{
  for (guint i = 0; i < count; i++)
    {
      TbStatus status = tb_strip_check (&strips[i]);

      if (status == TB_OK)
        continue;
      if (wrong)
        *wrong = i;
      return status;
    }
  tb_oil_clear (oil);
  for (guint i = 0; i < count; i++)
    lay_strip (&strips[i], oil);
  tb_oil_reflect (oil);
  return TB_OK;
}

double
tb_strips_volume (const TbStrip *strips, guint count)
{
  double volume = 0;

  for (guint i = 0; i < count; i++)
    volume += tb_strip_volume (&strips[i]);
  return volume;
}

double
tb_strips_volume_of_way (const TbStrip *strips, guint count, TbStripWay way)
{
  double volume = 0;

  for (guint i = 0; i < count; i++)
    if (strips[i].way == way)
      volume += tb_strip_volume (&strips[i]);
  return volume;
}

double
tb_strips_length (const TbStrip *strips, guint count)
{
  double length = 0;

  for (guint i = 0; i < count; i++)
    length = MAX (length, tb_strip_far (&strips[i]));
  return length;
}

/* The steps of a plan: boards from the right edge where each begins (and from the left, where it ends), the
 * part of its oil that goes out, and how far out and back it reaches as a share of the length. Common
 * practice in shape; the numbers are ours. All but the first lie inside of boards 3 to 7 and reach across
 * boards 18 to 22, so that the ratio follows from the volumes alone. */
typedef struct PlanStep
{
  int board;
  double share_out, reach_out, reach_back;
} PlanStep;
static const PlanStep plan_steps[TB_STRIPS_PLAN_COUNT / 2] = {
  { 1, 0.5, 1.0, 0.75 },  { 8, 0.5, 1.0, 0.7 },   { 10, 0.5, 0.95, 0.62 },
  { 12, 0.5, 0.9, 0.55 }, { 14, 0.5, 0.85, 0.5 },
};

static int
step_boards (const PlanStep *step)
{
  return TB_LANE_BOARDS - 2 * (step->board - 1);
}

/* Both strips of a step: `volume` m³ on each board. */
static void
plan_pair (const TbStripsPlan *plan, const PlanStep *step, double volume, TbStrip pair[2])
{
  TbStrip strip = { .way = TB_STRIP_OUT,
                    .right_board = step->board,
                    .left_board = TB_LANE_BOARDS + 1 - step->board,
                    .end = step->reach_out * plan->length,
                    .volume = step->share_out * volume,
                    .taper = plan->taper };

  pair[0] = strip;
  strip.way = TB_STRIP_BACK;
  strip.start = step->reach_back * plan->length;
  strip.end = 0;
  strip.volume = (1 - step->share_out) * volume;
  strip.taper = 0; /* up to the foul line: the heads are where the oil is */
  pair[1] = strip;
}

/* Outside lies the first step alone, in the middle all of them: with b on each board of the first and a on
 * each of the n others, ratio = (b + n a)/b, and all of the oil is the volume. */
gboolean
tb_strips_plan (const TbStripsPlan *plan, TbStrip strips[TB_STRIPS_PLAN_COUNT])
{
  guint others = G_N_ELEMENTS (plan_steps) - 1;
  double boards = 0, base, each;

  if (!(plan->ratio >= 1) || !(plan->volume > 0) || !(plan->taper >= 0) || !(plan->length > 2 * plan->taper)
      || !(plan->length <= MAX_DISTANCE))
    return FALSE;
  for (guint i = 1; i <= others; i++)
    boards += step_boards (&plan_steps[i]);
  base = plan->volume / (step_boards (&plan_steps[0]) + boards * (plan->ratio - 1) / others);
  each = base * (plan->ratio - 1) / others;
  for (guint i = 0; i <= others; i++)
    plan_pair (plan, &plan_steps[i], i == 0 ? base : each, &strips[2 * i]);
  for (guint i = 0; i < TB_STRIPS_PLAN_COUNT; i++)
    if (tb_strip_check (&strips[i]) != TB_OK)
      return FALSE;
  return TRUE;
}
