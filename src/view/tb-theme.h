/* Colours, type and line widths of every picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <stdbool.h>

typedef struct TbColor
{
  double red, green, blue, alpha;
} TbColor;

typedef struct TbTheme
{
  TbColor background;  /* behind the picture */
  TbColor text, quiet; /* labels; less important labels */
  TbColor rule;        /* thin lines, frames, ticks */
  TbColor before, after; /* the two runs; "before" is dashed everywhere as well */
  TbColor wood, gutter, mark; /* lane surface, gutters, arrows and dots */
  TbColor oil_thin, oil_thick; /* ends of the film's tint */
  TbColor pin, pin_edge;
  TbColor ball, ball_light, ball_mark; /* ball's body, its lit side, what is drawn on it */
  TbColor warning;
  const char *font;    /* family */
  double text_size;    /* px of ordinary labels */
  double line_width;   /* px of a path */
} TbTheme;

/* Ready-made themes; text_size is 11 px × text_scale, and line widths grow with it. */
TbTheme tb_theme_light (double text_scale);
TbTheme tb_theme_dark (double text_scale);
/* For a projector: the strongest contrast. */
TbTheme tb_theme_contrast (double text_scale);
