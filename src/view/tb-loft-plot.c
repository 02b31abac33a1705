/* Where a place over the lane is drawn: the scale along it, and how much larger heights are.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-loft-private.h"

/* What the picture shows before the foul line, ft. */
#define SHOWN_FROM_FT (-3.0)
/* Heights may be drawn so many times larger than lengths. */
static const double stretches[] = { 3, 2.5, 2, 1.5, 1 };
/* Of the plot's height, how much the highest ball may take. */
#define FILLED 0.94

TbPoint
loft_point (const TbLoft *self, double y, double z)
{
  return (TbPoint){ self->plot.x + (y - tb_metres_from_ft (SHOWN_FROM_FT)) * self->along,
                    self->plot.y + self->plot.height - z * self->along * self->stretch };
}

double
loft_ball_radius (const TbLoft *self, const TbPath *path)
{
  return path->body.radius * self->along * self->stretch;
}

double
loft_shown_to (const TbLoft *self)
{
  return tb_metres_from_ft (isfinite (self->scene->shown_to_ft)
                                ? MAX (self->scene->shown_to_ft, LOFT_LEAST_SHOWN_TO_FT)
                                : LOFT_LEAST_SHOWN_TO_FT);
}

gboolean
loft_is_shown (const TbLoft *self, const TbSample *sample)
{
  return sample->position.y <= loft_shown_to (self);
}

/* The largest stretch that fits, and lengths drawn shorter if not even true heights do. */
static void
choose_scale (TbLoft *self, double top)
{
  double length = loft_shown_to (self) - tb_metres_from_ft (SHOWN_FROM_FT), room = FILLED * self->plot.height;
  double slack;

  self->along = self->plot.width / length;
  self->stretch = 1;
  for (guint i = 0; i < G_N_ELEMENTS (stretches) && !self->scene->true_scale; i++)
    if (top * self->along * stretches[i] <= room)
      {
        self->stretch = stretches[i];
        return;
      }
  self->along = fmin (self->along, room / top);
  slack = self->plot.width - self->along * length;
  self->plot.x += 0.5 * slack;
  self->plot.width -= slack;
}

void
loft_fit (TbLoft *self, double top)
{
  choose_scale (self, top);
  self->spare = 0.5 * MAX (self->plot.height - top * self->along * self->stretch / FILLED, 0);
  self->plot.y += self->spare;
  self->plot.height -= 2 * self->spare;
}

double
loft_longest_stretch (void)
{
  return stretches[1];
}
