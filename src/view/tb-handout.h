/* One page for a bowler to take home: before and after on the lane, the numbers, why, what to practise.
 *
 * The page is always one. What is long leaves out what matters least, by a rule that stands in tb-handout.c;
 * nothing is clipped and nothing overlaps. It is drawn in the light theme, whatever the window's; dashes tell
 * the runs apart where there is no colour.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include "tb-handout-facts.h"

G_BEGIN_DECLS

typedef enum TbPaper
{
  TB_PAPER_A4,
  TB_PAPER_LETTER,
  TB_N_PAPERS
} TbPaper;
const char *tb_paper_name (TbPaper paper); /* "a4", "letter": on the command line */
/* Points of 1/72 in. */
double tb_paper_width (TbPaper paper);
double tb_paper_height (TbPaper paper);

typedef struct TbHandout
{
  const TbHandoutFacts *facts;
  TbPaper paper;
  const char *bowler;       /* NULL or "": a line to write on */
  const char *date;         /* likewise */
  const char *note;         /* the coach's own words; NULL or "" for none */
  const TbNext *next;       /* what else to try, from "after" on; NULL for nothing */
  const GPtrArray *options; /* of TbNextOption: those of `next` that are printed; NULL for none */
} TbHandout;

/* Draws the page; the context's unit is a point. */
void tb_handout_draw (cairo_t *cr, const TbHandout *handout);
/* The same on a sheet of another size, in points: as large as fits, in its middle. */
void tb_handout_draw_on (cairo_t *cr, const TbHandout *handout, double width, double height);
/* What is printed on top: the study's title, or what stands for it. Borrowed. */
const char *tb_handout_title (const TbHandout *handout);
/* The page as a PDF. The same page gives the same bytes. NULL on an error of cairo's (TB_EXPORT_ERROR). */
GBytes *tb_handout_pdf (const TbHandout *handout, GError **error);

G_END_DECLS
