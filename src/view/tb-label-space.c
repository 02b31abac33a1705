/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <math.h>
#include "tb-label-space.h"

void
tb_label_space_init (TbLabelSpace *self, const cairo_rectangle_t *bounds)
{
  self->bounds = *bounds;
  self->boxes = g_array_new (FALSE, FALSE, sizeof (cairo_rectangle_t));
  self->segments = g_array_new (FALSE, FALSE, sizeof (TbPoint));
}

void
tb_label_space_clear (TbLabelSpace *self)
{
  g_clear_pointer (&self->boxes, g_array_unref);
  g_clear_pointer (&self->segments, g_array_unref);
}

void
tb_label_space_take (TbLabelSpace *self, const cairo_rectangle_t *box)
{
  g_array_append_val (self->boxes, *box);
}

void
tb_label_space_take_segment (TbLabelSpace *self, TbPoint a, TbPoint b)
{
  g_array_append_val (self->segments, a);
  g_array_append_val (self->segments, b);
}

gboolean
tb_rectangle_meets (const cairo_rectangle_t *a, const cairo_rectangle_t *b)
{
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height && b->y < a->y + a->height;
}

gboolean
tb_rectangle_contains (const cairo_rectangle_t *outer, const cairo_rectangle_t *inner)
{
  return inner->x >= outer->x && inner->y >= outer->y && inner->x + inner->width <= outer->x + outer->width
         && inner->y + inner->height <= outer->y + outer->height;
}

cairo_rectangle_t
tb_rectangle_grown (const cairo_rectangle_t *box, double margin)
{
  return (cairo_rectangle_t){ box->x - margin, box->y - margin, box->width + 2 * margin, box->height + 2 * margin };
}

/* Narrows [*enter, *leave], the part of a segment inside of the box, by one edge: `towards` is how fast the segment
 * nears the edge from outside, `room` how far its beginning lies inside of it. */
static gboolean
clip_edge (double towards, double room, double *enter, double *leave)
{
  double share;

  if (towards == 0)
    return room >= 0;
  share = room / towards;
  if (towards < 0)
    *enter = fmax (*enter, share);
  else
    *leave = fmin (*leave, share);
  return *enter <= *leave;
}

gboolean
tb_rectangle_meets_segment (const cairo_rectangle_t *box, TbPoint a, TbPoint b)
{
  double dx = b.x - a.x, dy = b.y - a.y;
  double enter = 0, leave = 1;

  return clip_edge (-dx, a.x - box->x, &enter, &leave)
         && clip_edge (dx, box->x + box->width - a.x, &enter, &leave)
         && clip_edge (-dy, a.y - box->y, &enter, &leave)
         && clip_edge (dy, box->y + box->height - a.y, &enter, &leave);
}

gboolean
tb_label_space_is_free (const TbLabelSpace *self, const cairo_rectangle_t *box)
{
  if (!tb_rectangle_contains (&self->bounds, box))
    return FALSE;
  for (guint i = 0; i < self->boxes->len; i++)
    if (tb_rectangle_meets (&g_array_index (self->boxes, cairo_rectangle_t, i), box))
      return FALSE;
  return TRUE;
}

gboolean
tb_label_space_is_clear (const TbLabelSpace *self, const cairo_rectangle_t *box)
{
  if (!tb_label_space_is_free (self, box))
    return FALSE;
  for (guint i = 0; i + 1 < self->segments->len; i += 2)
    if (tb_rectangle_meets_segment (box,
                                    g_array_index (self->segments, TbPoint, i),
                                    g_array_index (self->segments, TbPoint, i + 1)))
      return FALSE;
  return TRUE;
}

static double
total_length (const double *size, int count, double gap)
{
  double length = gap * (count - 1);

  for (int i = 0; i < count; i++)
    length += size[i];
  return length;
}

/* How far box i must stay from box i − 1, centre to centre. */
static double
pitch (const double *size, int i, double gap)
{
  return 0.5 * (size[i - 1] + size[i]) + gap;
}

gboolean
tb_spread (double *centre, const double *size, int count, const double ends[2], double gap)
{
  if (count == 0)
    return TRUE;
  if (total_length (size, count, gap) > ends[1] - ends[0])
    return FALSE;

  /* Neighbours that are too close share the move; a few rounds settle even a full column. */
  for (int round = 0; round < 8 * count; round++)
    for (int i = 1; i < count; i++)
      {
        double excess = pitch (size, i, gap) - (centre[i] - centre[i - 1]);

        if (excess > 0)
          {
            centre[i - 1] -= 0.5 * excess;
            centre[i] += 0.5 * excess;
          }
      }
  /* Then nothing may cross the ends, nor anything pushed back from them its neighbour. */
  centre[0] = fmax (centre[0], ends[0] + 0.5 * size[0]);
  for (int i = 1; i < count; i++)
    centre[i] = fmax (centre[i], centre[i - 1] + pitch (size, i, gap));
  centre[count - 1] = fmin (centre[count - 1], ends[1] - 0.5 * size[count - 1]);
  for (int i = count - 1; i > 0; i--)
    centre[i - 1] = fmin (centre[i - 1], centre[i] - pitch (size, i, gap));
  return TRUE;
}
