/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-bowler-reading.h"

#include <glib/gi18n-lib.h>

#include "tb-drilling.h"

static const TbReadingInfo infos[TB_N_READINGS] = {
  [TB_READING_SPEED]
  = { N_ ("Speed"),
      N_ ("Time the ball from the foul line to the head pin, with a watch or by counting video frames."),
      N_ ("mean speed = 60 ft ÷ time; speed at release: the one that takes this ball as long in this model"),
      N_ ("Definition of a mean; 40.91 ÷ seconds in mph. The step from mean to release is this model's, not "
          "a "
          "measurement."),
      N_ ("A watch pressed twice by hand: about 0.1 s in 2.5, a twenty-fifth of the speed. A display over the "
          "lane may measure elsewhere than at release.") },
  [TB_READING_REV_RATE] = { N_ ("Rev rate"),
                            N_ ("Put a strip of white tape from the grip towards the PAP, film the release, "
                                "and count the frames over whole "
                                "turns of the tape."),
                            N_ ("rev rate = turns ÷ frames × frames per second × 60"), N_ ("Definition."),
                            N_ ("A frame more or less, and a sixteenth of a turn: count over two turns or "
                                "more. Count right after release; "
                                "the lane adds turns.") },
  [TB_READING_TILT] = { N_ ("Axis tilt"),
                        N_ ("Measure with a tape along the surface, straight across the first ring (nearest "
                            "the thumb and fingers) through "
                            "its middle, on the ring's smaller side."),
                        N_ ("tilt = (half the circumference − arc) ÷ circumference × 180°"),
                        N_ ("Geometry of a circle on a sphere; on a 27 in ball (13.5 − arc) ÷ 0.15."),
                        N_ ("An eighth of an inch is 0.8°. A later ring gives the tilt further down the "
                            "lane, which is less.") },
  [TB_READING_AXIS]
  = { N_ ("Axis rotation"),
      N_ ("Put a round mark on the PAP. In a frame from behind the bowler, right after release, measure how "
          "far the mark "
          "stands beside the ball's middle (left for a right-hander) and above it, in ball radii."),
      N_ ("tilt = arcsin (above); rotation = arccos (aside ÷ cos tilt)"),
      N_ ("Geometry of the spin axis as it is defined here."),
      N_ ("A camera that is off to the side turns the answer by as much. Near no rotation the answer is "
          "poor: the "
          "mark hardly moves.") },
  [TB_READING_PAP] = { N_ ("Positive axis point"),
                       N_ ("Mark three points far apart on the first ring. Measure each from the grip "
                           "centre: along the midline, then "
                           "straight up or down from it."),
                       N_ ("the PAP is the pole of the circle through the three points"),
                       N_ ("Geometry of a circle on a sphere."),
                       N_ ("An eighth of an inch on each number. The further apart the points, the better; a "
                           "ring of the middle of the "
                           "lane gives another point.") },
};

const TbReadingInfo *
tb_reading_info (TbReadingKind kind)
{
  return &infos[kind];
}

/* Errors. */

#define MAX_INPUTS 6
/* A formula of several measured numbers. */
typedef double (*Formula) (const double *inputs, gconstpointer data);

/* The inputs' errors, carried through by the difference that each of them makes, both ways. */
static TbMeasured
propagate (Formula formula, const TbMeasured *inputs, int count, gconstpointer data)
{
  double values[MAX_INPUTS] = { 0 }, square = 0;

  for (int i = 0; i < count; i++)
    values[i] = inputs[i].value;
  TbMeasured answer = { formula (values, data), 0 };

  for (int i = 0; i < count; i++)
    {
      double at = values[i];

      values[i] = at + inputs[i].error;
      double above = formula (values, data);
      values[i] = at - inputs[i].error;
      double below = formula (values, data);
      values[i] = at;
      /* At the end of what makes sense only one of the two is there. */
      double change = fmax (fabs (above - answer.value), fabs (below - answer.value));

      square += change * change;
    }
  answer.error = sqrt (square);
  return answer;
}

/* Speed and revs. */

static double
mean_speed (const double *inputs, gconstpointer data)
{
  return inputs[0] > 0 ? *(const double *) data / inputs[0] : (double) NAN;
}

TbMeasured
tb_reading_mean_speed (double distance, TbMeasured time)
{
  return propagate (mean_speed, &time, 1, &distance);
}

static double
time_at_speed (const TbShot *shot, double speed, TbWorkspace *workspace)
{
  TbShot faster = *shot;
  TbPath path = { 0 };

  faster.delivery.speed = speed;
  faster.options.edgeless = true;
  if (tb_shot_run (&faster, workspace, &path, NULL) != TB_OK)
    return (double) INFINITY;
  /* Past the foul line the hand carries the ball on, at the speed of the throw (assumed). */
  double ahead = path.measures.actual_speed * cos (faster.delivery.loft_angle)
                 * cos (tb_delivery_launch_heading (&faster.delivery));
  return path.measures.time + faster.delivery.loft_reach / ahead;
}

/* Halvings that bring the range of speeds down to less than a hundredth of a mile an hour. */
#define SPEED_HALVINGS 14

static double
release_speed (const double *inputs, gconstpointer data)
{
  const TbShot *shot = data;
  const TbField *field = tb_field_find (TB_GROUP_DELIVERY, "speed_mph");
  double low = field->to_si (field->min), high = field->to_si (field->max);
  g_autofree TbWorkspace *workspace = g_malloc (tb_workspace_size ());

  if (!(time_at_speed (shot, high, workspace) <= inputs[0]
        && inputs[0] <= time_at_speed (shot, low, workspace)))
    return (double) NAN;
  for (int i = 0; i < SPEED_HALVINGS; i++)
    {
      double middle = 0.5 * (low + high);

      if (time_at_speed (shot, middle, workspace) > inputs[0])
        low = middle;
      else
        high = middle;
    }
  TbDelivery found = shot->delivery;
  found.speed = 0.5 * (low + high);
  return tb_delivery_actual_speed (&found, &shot->assumed);
}

double
tb_reading_neutral_speed (const TbSetup *setup, double speed)
{
  TbDelivery one = setup->shot.delivery;

  one.speed = 1;
  return speed / tb_delivery_actual_speed (&one, &setup->shot.assumed);
}

double
tb_reading_neutral_rev_rate (const TbSetup *setup, double rev_rate)
{
  TbDelivery one = setup->shot.delivery;

  one.rev_rate = 1;
  return rev_rate / tb_delivery_actual_rev_rate (&one, &setup->shot.assumed);
}

TbMeasured
tb_reading_release_speed (const TbSetup *setup, TbMeasured time)
{
  return propagate (release_speed, &time, 1, &setup->shot);
}

static double
rev_rate (const double *inputs, gconstpointer data)
{
  double per_second = *(const double *) data;

  if (!(inputs[0] >= 0) || !(inputs[1] > 0) || !(per_second > 0))
    return (double) NAN;
  return 2 * TB_PI * inputs[0] / inputs[1] * per_second;
}

TbMeasured
tb_reading_rev_rate (TbMeasured turns, TbMeasured frames, double frames_per_second)
{
  return propagate (rev_rate, (const TbMeasured[]){ turns, frames }, 2, &frames_per_second);
}

/* Axis. */

static double
tilt_from_arc (const double *inputs, gconstpointer data)
{
  double radius = *(const double *) data, half = TB_PI * radius;

  return inputs[0] > 0 && inputs[0] <= 2 * half ? (half - inputs[0]) / (2 * radius) : (double) NAN;
}

TbMeasured
tb_reading_tilt (double radius, TbMeasured arc)
{
  return propagate (tilt_from_arc, &arc, 1, &radius);
}

/* A mark a little outside the ball's edge, as a reading may have it, counts as on it. */
#define EDGE_SLACK 1.1

static double
tilt_of_mark (const double *inputs, gconstpointer data)
{
  return hypot (inputs[0], inputs[1]) <= EDGE_SLACK ? asin (CLAMP (inputs[1], -1, 1)) : (double) NAN;
}

static double
rotation_of_mark (const double *inputs, gconstpointer data)
{
  double length = sqrt (fmax (1 - inputs[1] * inputs[1], 0));

  return hypot (inputs[0], inputs[1]) <= EDGE_SLACK && length > 0 ? acos (CLAMP (inputs[0] / length, -1, 1))
                                                                  : (double) NAN;
}

TbAxisReading
tb_reading_axis (TbMeasured aside, TbMeasured above)
{
  const TbMeasured inputs[] = { aside, above };

  return (TbAxisReading){ .rotation = propagate (rotation_of_mark, inputs, 2, NULL),
                          .tilt = propagate (tilt_of_mark, inputs, 2, NULL) };
}

/* PAP. */

/* Points nearer to one line than this (area on the unit sphere) make no circle. */
#define LEAST_AREA 1e-3

/* The pole on the PAP's side of the circle through three points, and its angle from the circle. */
static gboolean
find_pole (const double *inputs, double radius, TbVec3 *pole, double *angle)
{
  TbVec3 p[TB_RING_POINTS];

  for (int i = 0; i < TB_RING_POINTS; i++)
    p[i] = tb_layout_place (radius, inputs[2 * i], inputs[2 * i + 1]);
  TbVec3 normal = tb_vec3_cross (tb_vec3_sub (p[1], p[0]), tb_vec3_sub (p[2], p[0]));

  if (!(tb_vec3_length (normal) > LEAST_AREA))
    return FALSE;
  normal = tb_vec3_unit (normal, tb_vec3 (1, 0, 0));
  *pole = normal.x >= 0 ? normal : tb_vec3_scale (normal, -1);
  *angle = tb_vec3_angle (*pole, p[0]);
  return TRUE;
}

typedef enum PapAnswer
{
  PAP_OVER,
  PAP_UP,
  PAP_TILT
} PapAnswer;

typedef struct PapQuestion
{
  double radius;
  PapAnswer answer;
} PapQuestion;

static double
pap_formula (const double *inputs, gconstpointer data)
{
  const PapQuestion *question = data;
  TbVec3 pole;
  double angle, over, up;

  if (!find_pole (inputs, question->radius, &pole, &angle))
    return (double) NAN;
  tb_layout_over_up (question->radius, pole, &over, &up);
  switch (question->answer)
    {
    case PAP_OVER:
      return over;
    case PAP_UP:
      return up;
    default:
      return angle - 0.5 * TB_PI;
    }
}

static TbMeasured
ask (PapQuestion question, const TbMeasured *inputs)
{
  return propagate (pap_formula, inputs, 2 * TB_RING_POINTS, &question);
}

TbPapReading
tb_reading_pap (double radius, const TbRingPoint points[TB_RING_POINTS], double error)
{
  TbMeasured inputs[2 * TB_RING_POINTS];
  TbPapReading reading;

  for (int i = 0; i < TB_RING_POINTS; i++)
    {
      inputs[2 * i] = (TbMeasured){ points[i].over, error };
      inputs[2 * i + 1] = (TbMeasured){ points[i].up, error };
    }
  reading.over = ask ((PapQuestion){ radius, PAP_OVER }, inputs);
  reading.up = ask ((PapQuestion){ radius, PAP_UP }, inputs);
  reading.tilt = ask ((PapQuestion){ radius, PAP_TILT }, inputs);
  reading.ring_across = radius * (TB_PI - 2 * fabs (reading.tilt.value));
  return reading;
}
