/* Colours, type and line widths of every picture.
 *
 * The palettes are derived from the general colour-blind-safe one of M. Okabe and K. Ito (2008). Colour is never the
 * only mark: "before" is dashed and ends in an open ring, "after" is solid and ends in a filled ball.
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
  TbColor approach;    /* floor before the foul line */
  TbColor pit;         /* behind the pins */
  TbColor oil_thin, oil_thick; /* ends of the film's tint; laid over the wood */
  TbColor pin, pin_edge, pin_band;
  TbColor ball, ball_light, ball_mark; /* ball's body, its lit side, what is drawn on it */
  TbColor warning;
  TbColor focus; /* the ring around what has the keyboard */
  const char *font;    /* family */
  double text_size;    /* px of ordinary labels; a small picture draws them smaller */
  double line_width;   /* px of a path */
  double lines;        /* of ordinary text that the shorter side of a picture has at least room for */
} TbTheme;

/* Text size of the ready-made themes, px, at a text scale of 1. */
#define TB_THEME_TEXT_SIZE 11.0

/* Ready-made themes; text_size is 11 px × text_scale, and line widths grow with it. */
TbTheme tb_theme_light (double text_scale);
TbTheme tb_theme_dark (double text_scale);
/* For a projector: the strongest contrast; and the same on black. */
TbTheme tb_theme_contrast (double text_scale);
TbTheme tb_theme_contrast_dark (double text_scale);

/* Sets of colours for the two runs. In each the two differ in lightness as well as in hue, so that they are told apart
 * with any kind of colour vision, and in a copy without colours. */
typedef enum TbRunColors
{
  TB_RUN_COLORS_ORANGE,      /* grey and orange: the themes' own */
  TB_RUN_COLORS_BLUE_ORANGE, /* blue and orange */
  TB_RUN_COLORS_BLUE,        /* grey and blue */
  TB_N_RUN_COLORS
} TbRunColors;

/* Gives a theme another set; what is right for its background is chosen. */
void tb_theme_set_run_colors (TbTheme *theme, TbRunColors colors);
/* How light a colour is, 0 for black to 1 for white (relative luminance of sRGB, WCAG 2). */
double tb_color_luminance (TbColor color);

/* The text scale that reads well in a picture of this size (px) seen as a whole: 1 for a window of 1280 × 800, 2.5 for
 * 3840 × 2160. */
double tb_theme_suitable_scale (double width, double height);

/* What lies between two colours: a at 0, b at 1. */
TbColor tb_color_mix (TbColor a, TbColor b, double share);
TbColor tb_color_with_alpha (TbColor color, double alpha);
