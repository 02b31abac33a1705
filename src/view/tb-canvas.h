/* A picture while it is being drawn: where it is drawn, in which type, and which places labels have taken.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pangocairo.h>
#include "tb-label-space.h"
#include "tb-theme.h"

G_BEGIN_DECLS

typedef struct TbCanvas
{
  cairo_t *cr;   /* NULL: only measuring */
  TbTheme theme; /* its type and lines made smaller where the picture is small */
  double width, height; /* px */
  double em;     /* px of ordinary text */
  TbLabelSpace labels;
} TbCanvas;

void tb_canvas_init (TbCanvas *self, cairo_t *cr, double width, double height, const TbTheme *theme);
void tb_canvas_clear (TbCanvas *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TbCanvas, tb_canvas_clear)
/* Text size that a picture is given: the theme's, or what a small picture has room for. */
double tb_canvas_text_size (double width, double height, const TbTheme *theme);
void tb_canvas_fill_background (TbCanvas *self);
/* Whether there is room for anything. A picture with a side of less than TB_CANVAS_SMALLEST px is only background. */
#define TB_CANVAS_SMALLEST 72.0
gboolean tb_canvas_has_room (const TbCanvas *self);

/* Which part of a label stands at its place. */
typedef enum TbAlign
{
  TB_ALIGN_START,
  TB_ALIGN_MIDDLE,
  TB_ALIGN_END
} TbAlign;

typedef struct TbLabel
{
  const char *text;
  double x, y;          /* px */
  TbAlign across, down; /* START: the label's left or top edge is at x, y */
  TbColor color;
  double size;          /* px; 0 means the canvas's em */
  gboolean bold;
  gboolean plate;       /* on a plate of the background's colour */
  gboolean upwards;     /* reads from below upwards */
  double wrap;          /* px, lines longer than this are broken; 0 for never */
  double clearance;     /* px kept free on every side */
  double leading;       /* px between lines, beyond the type's own */
  guint bold_bytes;     /* so many bytes at its beginning are bold */
} TbLabel;

/* The box that a label covers, its plate included. */
cairo_rectangle_t tb_canvas_measure (TbCanvas *self, const TbLabel *label);
/* Draws a label and takes its place, whatever is there. */
void tb_canvas_label (TbCanvas *self, const TbLabel *label);
/* Draws it only if its place is free; the second also keeps off the lines. */
gboolean tb_canvas_try_label (TbCanvas *self, const TbLabel *label);
gboolean tb_canvas_try_clear_label (TbCanvas *self, const TbLabel *label);

/* Called for every label on its way into a picture, for tests: box is what the letters cover, px of the surface.
 * Returning false leaves the label out. The hook is the cairo context's. */
typedef bool (*TbLabelHook) (const char *text, const cairo_rectangle_t *box, void *data);
void tb_canvas_set_label_hook (cairo_t *cr, TbLabelHook hook, void *data);

G_END_DECLS
