/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-path-line.h"

/* Samples further apart than this, px, get points in between. */
#define SPACING 6.0
#define MOST_BETWEEN 64

static int
steps_between (TbPoint a, TbPoint b)
{
  double steps = ceil (hypot (b.x - a.x, b.y - a.y) / SPACING);

  return (int) CLAMP (steps, 1, MOST_BETWEEN);
}

TbPolyline *
tb_path_line (const TbPath *path, gboolean flight, double end_y, TbSamplePoint point, const void *data)
{
  TbPolyline *line = tb_polyline_new ();

  for (int i = 0; i < path->count && path->samples[i].position.y <= end_y; i++)
    {
      const TbSample *from = &path->samples[i], *to = from + 1;
      TbPoint at = point (path, from, data);
      int steps;

      if ((from->phase == TB_PHASE_FLIGHT) != flight)
        continue;
      tb_polyline_add (line, at);
      if (i + 1 == path->count || !(to->time > from->time))
        continue;
      steps = steps_between (at, point (path, to, data));
      for (int j = 1; j < steps; j++)
        {
          TbSample between;

          if (!tb_path_at_time (path, from->time + j * (to->time - from->time) / steps, &between))
            break;
          tb_polyline_add (line, point (path, &between, data));
        }
    }
  return line;
}
