/* Between the parts of the handout.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-canvas.h"
#include "tb-handout.h"

G_BEGIN_DECLS

/* pt */
#define HANDOUT_BODY 9.5
#define HANDOUT_HEAD 11.0
#define HANDOUT_SMALL 8.0

/* The page while it is laid out or drawn. */
typedef struct Sheet
{
  TbCanvas canvas;
  const TbHandout *handout;
  gboolean draws; /* otherwise only heights are wanted */
} Sheet;

/* A column that is filled from above. */
typedef struct Column
{
  Sheet *sheet;
  double x, y, width; /* pt; y: where the next thing goes */
} Column;

typedef struct TextStyle
{
  double size; /* pt */
  TbColor color;
  gboolean bold;
} TextStyle;
TextStyle sheet_body (const Sheet *sheet);
TextStyle sheet_quiet (const Sheet *sheet);

/* Each of these moves the column down by what it takes. */
void column_text (Column *column, const char *text, TextStyle style);
/* The same with a bold beginning. */
void column_led_text (Column *column, const char *lead, const char *text, TextStyle style);
/* At most so many lines; what is longer ends in an ellipsis. */
void column_short_text (Column *column, const char *text, TextStyle style, guint lines);
/* A text cut to so many lines; free it. */
char *column_fitting (const Column *column, const char *text, TextStyle style, guint lines);
void column_head (Column *column, const char *text);
void column_gap (Column *column, double pt);
/* Moves a column's left edge in, or out again. */
void column_indent (Column *column, double pt);
void sheet_rule (Sheet *sheet, double x, double y, double width);
/* One line at a place; the width it takes is returned. */
double sheet_line (Sheet *sheet, const TbLabel *label);

/* Whether "after" is what "before" is: then each number is told once. */
gboolean handout_is_one_throw (const TbHandoutFacts *facts);
/* The two columns and the foot, each as full as `fullness` allows: 0 is all there is. */
void handout_numbers_column (Column *column, guint fullness);
void handout_practice_column (Column *column, guint fullness);
void handout_cautions (Column *column, gboolean brief);
/* After the last fullness there is nothing more to leave out. */
#define HANDOUT_NUMBERS_STEPS 8
#define HANDOUT_PRACTICE_STEPS 11

G_END_DECLS
