/* A slide for a room: a headline, a few words, and one idea as a picture. Large type, strong contrast.
 *
 * Type follows the height of the picture: never smaller than TB_SLIDE_SMALLEST of it, unless the words would
 * not fit otherwise. Pure functions of their arguments, like all views.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-theme.h"

G_BEGIN_DECLS

/* Smallest type that the back of a room reads, of the picture's height. */
#define TB_SLIDE_SMALLEST (1.0 / 24.0)
#define TB_SLIDE_MAX_ITEMS 24

typedef enum TbSlideKind
{
  TB_SLIDE_WORDS,   /* no items */
  TB_SLIDE_LIST,    /* names, one of them chosen */
  TB_SLIDE_VOTES,   /* names, and how many voted for each */
  TB_SLIDE_CHANGES, /* names, a slider with where it was and where it is */
  TB_SLIDE_NUMBERS, /* names, a number before and after and their difference */
  TB_SLIDE_PARTS    /* names, bars to either side of nothing */
} TbSlideKind;

typedef struct TbSlideItem
{
  const char *name;           /* translated */
  const char *before, *after; /* CHANGES, NUMBERS: as people read them */
  const char *detail;         /* NUMBERS: the difference; PARTS: the number; else NULL */
  double from, to;            /* CHANGES: shares of the slider, 0 to 1, or NAN; PARTS: `to` is the part */
  guint count;                /* VOTES */
  gboolean chosen;            /* LIST */
} TbSlideItem;

typedef struct TbSlide
{
  TbTheme theme;
  TbSlideKind kind;
  const char *headline; /* translated; "" for none */
  const char *body;     /* below it; NULL for none */
  const char *caution;  /* at the bottom, with a mark; NULL for none */
  const TbSlideItem *items;
  guint n_items;
} TbSlide;

/* Size in px. Too small a picture (under 72 px on a side) is only its background. */
void tb_slide_view_draw (cairo_t *cr, double width, double height, const TbSlide *slide);
/* The item at a place, px; −1 for none. */
int tb_slide_view_item_at (double width, double height, const TbSlide *slide, double x, double y);
/* The size of its ordinary type, px. */
double tb_slide_view_text_size (double width, double height, const TbSlide *slide);

G_END_DECLS
