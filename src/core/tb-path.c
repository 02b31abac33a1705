/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-path.h"

#include "tb-interpolate.h"

const char *
tb_result_name (TbResult result)
{
  static const char *const names[TB_N_RESULTS] = { "pins", "right-gutter", "left-gutter" };
  return names[result];
}

double
tb_path_duration (const TbPath *path)
{
  return path->n_stretches > 0 ? path->stretches[path->n_stretches - 1].end_time : 0;
}

/* The numbers that follow a straight line well enough between two samples. */
static void
blend_numbers (const TbSample *from, const TbSample *to, double s, TbSample *sample)
{
  const size_t numbers[] = { offsetof (TbSample, slip), offsetof (TbSample, normal), offsetof (TbSample, friction),
                             offsetof (TbSample, coefficient), offsetof (TbSample, film_on_lane),
                             offsetof (TbSample, film_on_ball), offsetof (TbSample, turned),
                             offsetof (TbSample, slip_loss) };
  for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++)
    {
      double a = *(const double *) ((const char *) from + numbers[i]);
      double b = *(const double *) ((const char *) to + numbers[i]);
      *(double *) ((char *) sample + numbers[i]) = a + s * (b - a);
    }
}

static void
sample_between (const TbSample *from, const TbSample *to, double s, TbSample *sample)
{
  Course course = course_fit (from, to);
  *sample = *from;
  sample->time = from->time + s * course.h;
  sample->position = course_position (&course, s);
  sample->velocity = course_velocity (&course, s);
  sample->acceleration = course_acceleration (&course, s);
  attitude_between (from, to, s, &sample->attitude, &sample->spin);
  blend_numbers (from, to, s, sample);
}

bool
tb_path_at_time (const TbPath *path, double time, TbSample *sample)
{
  if (path->count == 0)
    return false;
  int low = 0, high = path->count - 1;
  if (!(time > path->samples[0].time))
    {
      *sample = path->samples[0];
      return true;
    }
  if (time >= path->samples[high].time)
    {
      *sample = path->samples[high];
      return true;
    }
  while (high - low > 1)
    {
      int middle = (low + high) / 2;
      if (path->samples[middle].time <= time)
        low = middle;
      else
        high = middle;
    }
  const TbSample *from = &path->samples[low], *to = &path->samples[high];
  sample_between (from, to, (time - from->time) / (to->time - from->time), sample);
  return true;
}

bool
tb_path_at_distance (const TbPath *path, double y, TbSample *sample)
{
  if (path->count == 0)
    return false;
  const TbSample *samples = path->samples;
  int high = 0;
  while (high < path->count && samples[high].position.y < y)
    high++;
  if (high == 0 || high == path->count)
    {
      *sample = samples[high == 0 ? 0 : path->count - 1];
      return true;
    }
  Course course = course_fit (&samples[high - 1], &samples[high]);
  sample_between (&samples[high - 1], &samples[high], quintic_find (&course.y, y, false), sample);
  return true;
}

double
tb_sample_heading (const TbSample *sample)
{
  return atan2 (-sample->velocity.x, sample->velocity.y);
}

TbVec3
tb_sample_axis_on_ball (const TbSample *sample)
{
  return tb_vec3_unit (tb_quat_rotate_back (sample->attitude, sample->spin), tb_vec3 (0, 0, 1));
}

TbVec3
tb_sample_contact_on_ball (const TbSample *sample)
{
  TbMat3 m = tb_quat_to_mat3 (sample->attitude);
  return tb_vec3_scale (m.row[2], -1);
}
