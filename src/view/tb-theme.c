/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <math.h>
#include "tb-theme.h"

/* A path's width, px, at a text scale of 1. */
#define LINE_WIDTH 2.4
#define LINE_WIDTH_CONTRAST 3.2
/* A picture that is looked at from near by has room for at least so many lines of text. */
#define LINES_IN_PICTURE 22.0

/* The picture that tb_theme_suitable_scale() calls 1, px, and the largest scale it proposes. */
#define ORDINARY_WIDTH 1280.0
#define ORDINARY_HEIGHT 800.0
#define LARGEST_SCALE 2.6

#define RGB(hex)                                                                              \
  {                                                                                           \
    (((hex) >> 16) & 0xff) / 255.0, (((hex) >> 8) & 0xff) / 255.0, ((hex) &0xff) / 255.0, 1.0 \
  }
#define RGBA(hex, opacity)                                                                        \
  {                                                                                               \
    (((hex) >> 16) & 0xff) / 255.0, (((hex) >> 8) & 0xff) / 255.0, ((hex) &0xff) / 255.0, opacity \
  }

static TbTheme
scaled (TbTheme theme, double text_scale)
{
  theme.text_size *= text_scale;
  theme.line_width *= text_scale;
  return theme;
}

TbTheme
tb_theme_light (double text_scale)
{
  static const TbTheme light = {
    .background = RGB (0xfafafa),
    .text = RGB (0x2a2a2a),
    .quiet = RGB (0x636363),
    .rule = RGB (0xcfcac3),
    .before = RGB (0x2c2c34),
    .after = RGB (0xc04a00),
    .wood = RGB (0xf3e7cf),
    .gutter = RGB (0xc8c4be),
    .mark = RGB (0x75512f),
    .approach = RGB (0xe2cfa9),
    .pit = RGB (0x57534e),
    .oil_thin = RGBA (0x8fbfd3, 0.0),
    .oil_thick = RGBA (0x2f7296, 0.86),
    .pin = RGB (0xffffff),
    .pin_edge = RGB (0x6b6762),
    .pin_band = RGB (0xb5362a),
    .ball = RGB (0x1f3a5c),
    .ball_light = RGB (0x6f95c2),
    .ball_mark = RGB (0xf7efda),
    .warning = RGB (0xa32d00),
    .focus = RGB (0x15539e),
    .font = "sans-serif",
    .text_size = TB_THEME_TEXT_SIZE,
    .line_width = LINE_WIDTH,
    .lines = LINES_IN_PICTURE,
  };

  return scaled (light, text_scale);
}

TbTheme
tb_theme_dark (double text_scale)
{
  static const TbTheme dark = {
    .background = RGB (0x1e1e20),
    .text = RGB (0xeeeeec),
    .quiet = RGB (0xadadab),
    .rule = RGB (0x4c4c4e),
    .before = RGB (0xf2f2f2),
    .after = RGB (0xff9a4d),
    .wood = RGB (0x453b2d),
    .gutter = RGB (0x414145),
    .mark = RGB (0xcdb083),
    .approach = RGB (0x584a35),
    .pit = RGB (0x0f0f10),
    .oil_thin = RGBA (0x3c6f86, 0.0),
    .oil_thick = RGBA (0x2f7fa8, 0.9),
    .pin = RGB (0xf4f4f2),
    .pin_edge = RGB (0x77736d),
    .pin_band = RGB (0xc8453a),
    .ball = RGB (0x274a74),
    .ball_light = RGB (0x86aeda),
    .ball_mark = RGB (0xfbf3de),
    .warning = RGB (0xffb37a),
    .focus = RGB (0x8fc0f5),
    .font = "sans-serif",
    .text_size = TB_THEME_TEXT_SIZE,
    .line_width = LINE_WIDTH,
    .lines = LINES_IN_PICTURE,
  };

  return scaled (dark, text_scale);
}

TbTheme
tb_theme_contrast (double text_scale)
{
  static const TbTheme contrast = {
    .background = RGB (0xffffff),
    .text = RGB (0x000000),
    .quiet = RGB (0x303030),
    .rule = RGB (0x8a8a8a),
    .before = RGB (0x000000),
    .after = RGB (0xb83a00),
    .wood = RGB (0xfff8e8),
    .gutter = RGB (0x9c9c9c),
    .mark = RGB (0x4a2f10),
    .approach = RGB (0xe6d3a8),
    .pit = RGB (0x202020),
    .oil_thin = RGBA (0x8cc4e6, 0.0),
    .oil_thick = RGBA (0x4c9ccc, 1.0),
    .pin = RGB (0xffffff),
    .pin_edge = RGB (0x000000),
    .pin_band = RGB (0xb02418),
    .ball = RGB (0x0c2340),
    .ball_light = RGB (0x5b87ba),
    .ball_mark = RGB (0xffffff),
    .warning = RGB (0x9a2600),
    .focus = RGB (0x000000),
    .font = "sans-serif",
    .text_size = TB_THEME_TEXT_SIZE,
    .line_width = LINE_WIDTH_CONTRAST,
    .lines = LINES_IN_PICTURE,
  };

  return scaled (contrast, text_scale);
}

TbTheme
tb_theme_contrast_dark (double text_scale)
{
  static const TbTheme contrast = {
    .background = RGB (0x000000),
    .text = RGB (0xffffff),
    .quiet = RGB (0xd8d8d8),
    .rule = RGB (0x8a8a8a),
    .before = RGB (0xffffff),
    .after = RGB (0xffa347),
    .wood = RGB (0x2a2214),
    .gutter = RGB (0x565656),
    .mark = RGB (0xf0d8ac),
    .approach = RGB (0x4c3e26),
    .pit = RGB (0x000000),
    .oil_thin = RGBA (0x2b6f96, 0.0),
    .oil_thick = RGBA (0x1f6f9c, 1.0),
    .pin = RGB (0xffffff),
    .pin_edge = RGB (0xb0b0b0),
    .pin_band = RGB (0xe0584c),
    .ball = RGB (0x1c3f6c),
    .ball_light = RGB (0x9ac2ee),
    .ball_mark = RGB (0xffffff),
    .warning = RGB (0xffc08c),
    .focus = RGB (0xffffff),
    .font = "sans-serif",
    .text_size = TB_THEME_TEXT_SIZE,
    .line_width = LINE_WIDTH_CONTRAST,
  };

  return scaled (contrast, text_scale);
}

/* WCAG 2: "relative luminance". */
static double
linear (double channel)
{
  return channel <= 0.04045 ? channel / 12.92 : pow ((channel + 0.055) / 1.055, 2.4);
}

double
tb_color_luminance (TbColor color)
{
  return 0.2126 * linear (color.red) + 0.7152 * linear (color.green) + 0.0722 * linear (color.blue);
}

/* A background that light text stands on. */
#define DARK_LUMINANCE 0.2

void
tb_theme_set_run_colors (TbTheme *theme, TbRunColors colors)
{
  /* Blue and vermilion of the palette of Okabe and Ito, made darker or lighter to stand out from the background. */
  static const struct
  {
    TbColor before, after;
  } sets[TB_N_RUN_COLORS][2] = {
    [TB_RUN_COLORS_BLUE_ORANGE] = { { RGB (0x06407a), RGB (0xbe4b00) }, { RGB (0xa8d4ff), RGB (0xff8a33) } },
    [TB_RUN_COLORS_BLUE] = { { RGB (0x2c2c34), RGB (0x0068ad) }, { RGB (0xf2f2f2), RGB (0x56b4e9) } },
  };
  int dark = tb_color_luminance (theme->background) < DARK_LUMINANCE;

  if (colors == TB_RUN_COLORS_ORANGE)
    return;
  theme->before = sets[colors][dark].before;
  theme->after = sets[colors][dark].after;
}

double
tb_theme_suitable_scale (double width, double height)
{
  double scale = sqrt (width / ORDINARY_WIDTH * height / ORDINARY_HEIGHT);

  return fmin (fmax (scale, 1.0), LARGEST_SCALE);
}

TbColor
tb_color_mix (TbColor a, TbColor b, double share)
{
  return (TbColor){ a.red + share * (b.red - a.red), a.green + share * (b.green - a.green),
                    a.blue + share * (b.blue - a.blue), a.alpha + share * (b.alpha - a.alpha) };
}

TbColor
tb_color_with_alpha (TbColor color, double alpha)
{
  color.alpha = alpha;
  return color;
}
