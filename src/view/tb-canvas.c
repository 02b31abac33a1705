/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <math.h>
#include "tb-canvas.h"
#include "tb-draw.h"
#include "tb-text-layout.h"

/* No text is smaller than this, px: there is then no room for it. */
#define SMALLEST_TEXT 1.0
/* Labels keep this far from the picture's edge, em. */
#define EDGE 0.3
/* A plate reaches this far beyond its letters, em. */
#define PLATE_ACROSS 0.35
#define PLATE_DOWN 0.12
#define PLATE_OPACITY 0.88

typedef struct TbHook
{
  TbLabelHook function;
  void *data;
} TbHook;

static const cairo_user_data_key_t hook_key;

double
tb_canvas_text_size (double width, double height, const TbTheme *theme)
{
  return fmin (theme->text_size, fmin (width, height) / theme->lines);
}

void
tb_canvas_init (TbCanvas *self, cairo_t *cr, double width, double height, const TbTheme *theme)
{
  double em = MAX (tb_canvas_text_size (width, height, theme), SMALLEST_TEXT);
  cairo_rectangle_t bounds = { EDGE * em, EDGE * em, width - 2 * EDGE * em, height - 2 * EDGE * em };

  *self = (TbCanvas){ .cr = cr, .theme = *theme, .width = width, .height = height, .em = em };
  self->theme.line_width *= em / theme->text_size;
  self->theme.text_size = em;
  tb_label_space_init (&self->labels, &bounds);
}

void
tb_canvas_clear (TbCanvas *self)
{
  tb_label_space_clear (&self->labels);
}

void
tb_canvas_fill_background (TbCanvas *self)
{
  tb_draw_color (self->cr, self->theme.background);
  cairo_rectangle (self->cr, 0, 0, self->width, self->height);
  cairo_fill (self->cr);
}

gboolean
tb_canvas_has_room (const TbCanvas *self)
{
  return MIN (self->width, self->height) >= TB_CANVAS_SMALLEST;
}

static PangoLayout *
lay_out (const TbCanvas *self, const TbLabel *label)
{
  TbLabel sized = *label;

  if (sized.size <= 0)
    sized.size = self->em;
  return tb_text_layout (self->theme.font, &sized);
}

static double
aligned (double at, double size, TbAlign align)
{
  return at - 0.5 * size * (double) align;
}

/* What the letters cover; `offset`: where the layout's own origin lies from the box's corner, before any turn. */
static cairo_rectangle_t
letter_box (PangoLayout *layout, const TbLabel *label, TbPoint *offset)
{
  PangoRectangle logical;
  double width, height;

  pango_layout_get_extents (layout, NULL, &logical);
  *offset = (TbPoint){ -(double) logical.x / PANGO_SCALE, -(double) logical.y / PANGO_SCALE };
  width = (double) logical.width / PANGO_SCALE;
  height = (double) logical.height / PANGO_SCALE;
  if (label->upwards)
    {
      double swap = width;

      width = height;
      height = swap;
    }
  return (cairo_rectangle_t){ aligned (label->x, width, label->across),
                              aligned (label->y, height, label->down),
                              width,
                              height };
}

static cairo_rectangle_t
with_plate (const TbCanvas *self, const cairo_rectangle_t *box, const TbLabel *label)
{
  double across = label->plate ? PLATE_ACROSS * self->em : 0, down = label->plate ? PLATE_DOWN * self->em : 0;

  return (cairo_rectangle_t){ box->x - across, box->y - down, box->width + 2 * across, box->height + 2 * down };
}

static gboolean
hook_wants (cairo_t *cr, const char *text, const cairo_rectangle_t *box)
{
  const TbHook *hook = cairo_get_user_data (cr, &hook_key);
  cairo_rectangle_t device = *box;

  if (hook == NULL)
    return TRUE;
  cairo_user_to_device (cr, &device.x, &device.y);
  cairo_user_to_device_distance (cr, &device.width, &device.height);
  return hook->function (text, &device, hook->data);
}

static void
draw_letters (TbCanvas *self, PangoLayout *layout, const TbLabel *label, const cairo_rectangle_t *box)
{
  TbPoint offset;

  letter_box (layout, label, &offset);
  cairo_save (self->cr);
  tb_draw_color (self->cr, label->color);
  if (label->upwards)
    {
      cairo_translate (self->cr, box->x, box->y + box->height);
      cairo_rotate (self->cr, -G_PI / 2);
    }
  else
    cairo_translate (self->cr, box->x, box->y);
  cairo_move_to (self->cr, offset.x, offset.y);
  pango_cairo_show_layout (self->cr, layout);
  cairo_restore (self->cr);
}

static void
draw_plate (TbCanvas *self, const cairo_rectangle_t *plate)
{
  tb_draw_color (self->cr, tb_color_with_alpha (self->theme.background, PLATE_OPACITY));
  tb_draw_rounded (self->cr, plate, 0.25 * self->em);
  cairo_fill (self->cr);
}

typedef enum TbPlacing
{
  TB_PLACE_ANYWAY,
  TB_PLACE_IF_FREE,
  TB_PLACE_IF_CLEAR
} TbPlacing;

static gboolean
place (TbCanvas *self, const TbLabel *label, TbPlacing placing)
{
  g_autoptr (PangoLayout) layout = lay_out (self, label);
  TbPoint offset;
  cairo_rectangle_t box = letter_box (layout, label, &offset), plate = with_plate (self, &box, label);
  cairo_rectangle_t wanted = tb_rectangle_grown (&plate, label->clearance);

  if (placing == TB_PLACE_IF_FREE && !tb_label_space_is_free (&self->labels, &wanted))
    return FALSE;
  if (placing == TB_PLACE_IF_CLEAR && !tb_label_space_is_clear (&self->labels, &wanted))
    return FALSE;
  tb_label_space_take (&self->labels, &plate);
  if (!hook_wants (self->cr, label->text, &box))
    return FALSE;
  if (label->plate)
    draw_plate (self, &plate);
  draw_letters (self, layout, label, &box);
  return TRUE;
}

cairo_rectangle_t
tb_canvas_measure (TbCanvas *self, const TbLabel *label)
{
  g_autoptr (PangoLayout) layout = lay_out (self, label);
  TbPoint offset;
  cairo_rectangle_t box = letter_box (layout, label, &offset);

  return with_plate (self, &box, label);
}

void
tb_canvas_label (TbCanvas *self, const TbLabel *label)
{
  place (self, label, TB_PLACE_ANYWAY);
}

gboolean
tb_canvas_try_label (TbCanvas *self, const TbLabel *label)
{
  return place (self, label, TB_PLACE_IF_FREE);
}

gboolean
tb_canvas_try_clear_label (TbCanvas *self, const TbLabel *label)
{
  return place (self, label, TB_PLACE_IF_CLEAR);
}

void
tb_canvas_set_label_hook (cairo_t *cr, TbLabelHook hook, void *data)
{
  TbHook *stored = g_new (TbHook, 1);

  *stored = (TbHook){ hook, data };
  cairo_set_user_data (cr, &hook_key, stored, g_free);
}
