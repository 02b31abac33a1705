/* One number, the launch, is moved over all that can be thrown; where the ball's end crosses the middle of
 * the pocket between two of them a solver finds the place, and where it only comes near, the turning point
 * decides.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-pocket-line.h"

#include <math.h>
#include "tb-solve.h"

/* Boards between launches that are tried first. */
#define SCAN_STEP 0.75
#define MAX_SCAN 64
/* A turning point that comes this near to the pocket's middle, boards, is looked at. */
#define NEAR_MISS 2.0
#define TURNING_TOLERANCE 0.01
/* The board of the breakpoint is met to this, boards, in at most so many tries. */
#define BREAKPOINT_TOLERANCE 0.003
#define BREAKPOINT_TRIES 8
/* How far a re-aim looks around the present target before it tries everything, boards. */
#define REAIM_REACH 4.0
/* Its first step: this share of the boards by which the pocket is missed, between two limits, boards. */
#define REAIM_FIRST 0.7
#define REAIM_LEAST 0.02
#define REAIM_MOST 0.8

const char *
tb_pocket_hold_name (TbPocketHold hold)
{
  static const char *const names[TB_POCKET_N_HOLDS] = { "laydown", "aim", "breakpoint" };

  return names[hold];
}

const char *
tb_pocket_hold_label (TbPocketHold hold)
{
  static const char *const labels[TB_POCKET_N_HOLDS]
      = { N_ ("Laydown held"), N_ ("Target at the arrows held"), N_ ("Breakpoint held") };

  return labels[hold];
}

double
tb_pocket_middle (const TbAssumed *assumed)
{
  return 0.5 * (tb_board_from_x (assumed->pocket_low) + tb_board_from_x (assumed->pocket_high));
}

gboolean
tb_pocket_contains (const TbAssumed *assumed, const TbMeasures *measures)
{
  return isnan (measures->gutter_y) && measures->x_at_pins <= assumed->pocket_low
         && measures->x_at_pins >= assumed->pocket_high;
}

/* The launches of one kind of answer, by one number. */
typedef struct Launches
{
  TbThrower *thrower;
  TbShot shot;
  TbPocketHold hold;
  double low, high;        /* of the number, boards */
  double breakpoint_board; /* TB_POCKET_HOLD_BREAKPOINT */
  TbMeasures measures;     /* of the last throw */
} Launches;

static double
end_board (Launches *self)
{
  tb_thrower_throw (self->thrower, &self->shot, &self->measures);
  return tb_board_from_x (self->measures.x_at_pins) - tb_pocket_middle (&self->shot.assumed);
}

/* Moves the whole line sideways until the ball turns back on the board that is held. The breakpoint goes
 * along with the line nearly board for board, so the first guess of the slope is one. */
static gboolean
meet_breakpoint (Launches *self, double open_by)
{
  double aim = tb_board_from_x (self->shot.delivery.aim), slope = 1, last_aim = NAN, last_miss = NAN;

  for (int i = 0; i < BREAKPOINT_TRIES; i++)
    {
      double miss;

      self->shot.delivery.aim = tb_x_from_board (aim);
      self->shot.delivery.laydown = tb_x_from_board (aim + open_by);
      end_board (self);
      miss = tb_board_from_x (self->measures.breakpoint_x) - self->breakpoint_board;
      if (isnan (miss) || fabs (miss) <= BREAKPOINT_TOLERANCE)
        return !isnan (miss);
      if (i > 0 && aim != last_aim)
        slope = CLAMP ((miss - last_miss) / (aim - last_aim), 0.3, 3);
      last_aim = aim;
      last_miss = miss;
      aim -= miss / slope;
    }
  return FALSE;
}

static double
launch_value (double number, gpointer data)
{
  Launches *self = data;
  TbDelivery *delivery = &self->shot.delivery;

  switch (self->hold)
    {
    case TB_POCKET_HOLD_LAYDOWN:
      delivery->aim = tb_x_from_board (number);
      return end_board (self);
    case TB_POCKET_HOLD_AIM:
      delivery->laydown = tb_x_from_board (number);
      return end_board (self);
    default:
      return meet_breakpoint (self, number)
                 ? tb_board_from_x (self->measures.x_at_pins) - tb_pocket_middle (&self->shot.assumed)
                 : NAN;
    }
}

static void
limit_to_field (Launches *self, const char *name)
{
  const TbField *field = tb_field_find (TB_GROUP_DELIVERY, name);

  self->low = MAX (self->low, field->min);
  self->high = MIN (self->high, field->max);
}

/* The range of the number: the target, the laydown, or how far the line opens from foul line to arrows. */
static gboolean
launches_init (Launches *self, TbThrower *thrower, const TbShot *shot, TbPocketHold hold)
{
  double laydown = tb_board_from_x (shot->delivery.laydown), aim = tb_board_from_x (shot->delivery.aim);

  *self = (Launches){ .thrower = thrower, .shot = *shot, .hold = hold };
  switch (hold)
    {
    case TB_POCKET_HOLD_LAYDOWN:
      self->low = laydown - TB_POCKET_BOARDS_OUT;
      self->high = laydown + TB_POCKET_BOARDS_IN;
      limit_to_field (self, "aim_board");
      return TRUE;
    case TB_POCKET_HOLD_AIM:
      self->low = aim - TB_POCKET_BOARDS_IN;
      self->high = aim + TB_POCKET_BOARDS_OUT;
      limit_to_field (self, "laydown_board");
      return TRUE;
    default:
      self->low = -TB_POCKET_BOARDS_IN;
      self->high = TB_POCKET_BOARDS_OUT;
      end_board (self);
      self->breakpoint_board = tb_board_from_x (self->measures.breakpoint_x);
      return isfinite (self->breakpoint_board);
    }
}

static TbCurve
launches_curve (Launches *self)
{
  return (TbCurve){ launch_value, self };
}

typedef struct Finder
{
  Launches *launches;
  TbPocketLines *lines;
} Finder;

static gboolean
is_legal (const TbDelivery *delivery)
{
  const TbField *laydown = tb_field_find (TB_GROUP_DELIVERY, "laydown_board");
  const TbField *aim = tb_field_find (TB_GROUP_DELIVERY, "aim_board");

  return tb_field_check (laydown, tb_board_from_x (delivery->laydown)) == TB_OK
         && tb_field_check (aim, tb_board_from_x (delivery->aim)) == TB_OK;
}

/* The launch at a root, if a real ball gets there. */
static void
add_answer (Finder *finder, double root)
{
  Launches *launches = finder->launches;
  TbPocketAnswer *answer = &finder->lines->answer[finder->lines->count];
  double value = launch_value (root, launches);

  if (finder->lines->count == TB_POCKET_MAX_ANSWERS || !(fabs (value) <= TB_POCKET_TOLERANCE)
      || isfinite (launches->measures.gutter_y) || !is_legal (&launches->shot.delivery))
    return;
  answer->delivery = launches->shot.delivery;
  answer->measures = launches->measures;
  finder->lines->count++;
}

static void
find_between (Finder *finder, const TbBracket *bracket)
{
  const TbCurve curve = launches_curve (finder->launches);
  double root;

  if (bracket->at_low * bracket->at_high <= 0
      && tb_solve_root (&curve, bracket, 0.5 * TB_POCKET_TOLERANCE, &root))
    add_answer (finder, root);
}

/* Two roots can hide between three launches that all end on the same side of the pocket. */
static void
find_at_turn (Finder *finder, const TbTriple *triple)
{
  const TbCurve curve = launches_curve (finder->launches);
  double sign = triple->at_middle > 0 ? 1 : -1, place, value;

  if (!(sign * triple->at_low > sign * triple->at_middle && sign * triple->at_high > sign * triple->at_middle)
      || fabs (triple->at_middle) > NEAR_MISS
      || !tb_solve_turning_point (&curve, triple, TURNING_TOLERANCE, &place, &value) || sign * value > 0)
    return;
  find_between (finder, &(TbBracket){ triple->low, place, triple->at_low, value });
  find_between (finder, &(TbBracket){ place, triple->high, value, triple->at_high });
}

static gboolean
scan (Finder *finder, GCancellable *cancellable)
{
  Launches *launches = finder->launches;
  double at[MAX_SCAN], value[MAX_SCAN];
  int count = CLAMP ((int) ceil ((launches->high - launches->low) / SCAN_STEP) + 1, 2, MAX_SCAN);

  for (int i = 0; i < count; i++)
    {
      at[i] = launches->low + (launches->high - launches->low) * i / (count - 1);
      value[i] = launch_value (at[i], launches);
      if (g_cancellable_is_cancelled (cancellable))
        return FALSE;
    }
  for (int i = 1; i < count; i++)
    {
      find_between (finder, &(TbBracket){ at[i - 1], at[i], value[i - 1], value[i] });
      if (i + 1 < count)
        find_at_turn (finder,
                      &(TbTriple){ at[i - 1], at[i], at[i + 1], value[i - 1], value[i], value[i + 1] });
    }
  return !g_cancellable_is_cancelled (cancellable);
}

static double
opens_by (const TbPocketAnswer *answer)
{
  return answer->delivery.aim - answer->delivery.laydown;
}

static int
compare_answers (gconstpointer a, gconstpointer b)
{
  double difference = opens_by (b) - opens_by (a);

  return difference > 0 ? 1 : difference < 0 ? -1 : 0;
}

gboolean
tb_pocket_lines_find (TbThrower *thrower,
                      const TbShot *shot,
                      TbPocketHold hold,
                      GCancellable *cancellable,
                      TbPocketLines *lines)
{
  Launches launches;
  Finder finder = { &launches, lines };

  lines->count = 0;
  if (!launches_init (&launches, thrower, shot, hold))
    return !g_cancellable_is_cancelled (cancellable);
  if (!scan (&finder, cancellable))
    return FALSE;
  qsort (lines->answer, lines->count, sizeof *lines->answer, compare_answers);
  for (guint i = 0; i < lines->count; i++)
    {
      launches.shot.delivery = lines->answer[i].delivery;
      tb_pocket_room (thrower, &launches.shot, &lines->answer[i].room_out, &lines->answer[i].room_in);
    }
  return !g_cancellable_is_cancelled (cancellable);
}

const TbPocketAnswer *
tb_pocket_lines_best (const TbPocketLines *lines)
{
  const TbPocketAnswer *best = NULL;

  for (guint i = 0; i < lines->count; i++)
    {
      const TbPocketAnswer *answer = &lines->answer[i];

      if (!best || answer->room_out + answer->room_in > best->room_out + best->room_in)
        best = answer;
    }
  return best;
}

/* Steps away from the present target, further each time, until the pocket's middle is crossed. */
static gboolean
reaim_towards (Launches *launches, double aim, double here, double step, double *root)
{
  const TbCurve curve = launches_curve (launches);
  double near = aim, at_near = here;

  while (fabs (near - aim) < REAIM_REACH)
    {
      double far = CLAMP (near + step, launches->low, launches->high), at_far;

      if (far == near || isnan (at_far = launch_value (far, launches)))
        return FALSE;
      if (at_near * at_far <= 0)
        return tb_solve_root (&curve,
                              far > near ? &(TbBracket){ near, far, at_near, at_far }
                                         : &(TbBracket){ far, near, at_far, at_near },
                              0.5 * TB_POCKET_TOLERANCE, root);
      near = far;
      at_near = at_far;
      step *= 2;
    }
  return FALSE;
}

/* First to the side on which a straight ball would be nearer to the pocket, then to the other. */
static gboolean
reaim_nearby (Launches *launches, double *root)
{
  double aim = tb_board_from_x (launches->shot.delivery.aim), here = launch_value (aim, launches);
  double step = CLAMP (fabs (here) * REAIM_FIRST, REAIM_LEAST, REAIM_MOST);

  if (fabs (here) <= 0.5 * TB_POCKET_TOLERANCE)
    {
      *root = aim;
      return TRUE;
    }
  if (isnan (here))
    return FALSE;
  return reaim_towards (launches, aim, here, here > 0 ? -step : step, root)
         || reaim_towards (launches, aim, here, here > 0 ? step : -step, root);
}

/* The answer of the whole scan that is nearest to a target, as seen from the bowler. */
static gboolean
reaim_anywhere (Launches *launches, double aim, double *root)
{
  TbPocketLines lines = { 0 };
  Finder finder = { launches, &lines };

  scan (&finder, NULL);
  for (guint i = 0; i < lines.count; i++)
    {
      double board = tb_board_from_x (lines.answer[i].delivery.aim);

      if (i == 0 || fabs (board - aim) < fabs (*root - aim))
        *root = board;
    }
  return lines.count > 0;
}

gboolean
tb_pocket_reaim (TbThrower *thrower, TbShot *shot, TbMeasures *measures)
{
  Launches launches;
  double aim = tb_board_from_x (shot->delivery.aim), root;

  launches_init (&launches, thrower, shot, TB_POCKET_HOLD_LAYDOWN);
  if (!reaim_nearby (&launches, &root) || !(fabs (launch_value (root, &launches)) <= TB_POCKET_TOLERANCE)
      || isfinite (launches.measures.gutter_y))
    {
      launches.shot = *shot;
      if (!reaim_anywhere (&launches, aim, &root))
        return FALSE;
      launch_value (root, &launches);
    }
  shot->delivery.aim = launches.shot.delivery.aim;
  if (measures)
    *measures = launches.measures;
  return TRUE;
}
