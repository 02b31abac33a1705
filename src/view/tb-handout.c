/* The page as a whole, and how it always stays one.
 *
 * Head and foot are fixed. The cautions stand at the bottom, in full unless they would take more than a fifth
 * of the page, otherwise in brief. What is left belongs to the lane and, below it, to two columns, each of
 * which leaves out as little as it has to. The lane is as high as that allows: first it gives way to the
 * columns, down to its least height, and then the columns give way.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-handout-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-draw.h"
#include "tb-fill.h"
#include "tb-lane-view.h"
#include "tb-measure-text.h"

/* pt */
#define MARGIN 40.0
#define COLUMN_GAP 20.0
#define TITLE 20.0
#define SMALL_TITLE 14.0
#define TITLE_LINES 2
#define KICKER 8.0
#define PART_GAP 8.0
#define LANE_HIGHEST 230.0
#define LANE_LEAST 130.0
#define LANE_STEP 10.0
#define LANE_COST 0.15
#define HEAD_GAP 2.0
#define LANE_TEXT 8.5
#define LANE_LINE 1.9
/* The left column's share of the width. */
#define LEFT_SHARE 0.47
/* The most of the page's height that cautions take in full. */
#define CAUTIONS_SHARE 0.17
/* Share of the head's width that is the title's; bowler and date have the rest. */
#define TITLE_SHARE 0.66

static const struct
{
  const char *name;
  double width, height; /* mm for A4, in for Letter, here in pt */
} papers[TB_N_PAPERS] = {
  { "a4", 210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0 },
  { "letter", 8.5 * 72.0, 11.0 * 72.0 },
};

const char *
tb_paper_name (TbPaper paper)
{
  return papers[paper].name;
}

double
tb_paper_width (TbPaper paper)
{
  return papers[paper].width;
}

double
tb_paper_height (TbPaper paper)
{
  return papers[paper].height;
}

const char *
tb_handout_title (const TbHandout *handout)
{
  const char *title = handout->facts->study->title;

  return title[0] ? title : _ ("Before and after");
}

/* Paper is white, and the lines of its pictures are as thick as its letters. */
static TbTheme
paper_theme (void)
{
  TbTheme theme = tb_theme_light (1);

  theme.background = (TbColor){ 1, 1, 1, 1 };
  theme.text_size = HANDOUT_BODY;
  theme.line_width = LANE_LINE;
  return theme;
}

/* Where everything goes, pt. */
typedef struct Arrangement
{
  double lane_top, lane_height, columns_top, cautions_top;
  gboolean brief;
  guint left, right; /* fullness */
} Arrangement;

static double
page_width (const Sheet *sheet)
{
  return sheet->canvas.width - 2 * MARGIN;
}

static Column
left_column (Sheet *sheet, double top)
{
  return (Column){ sheet, MARGIN, top, round (LEFT_SHARE * (page_width (sheet) - COLUMN_GAP)) };
}

static Column
right_column (Sheet *sheet, double top)
{
  double left = round (LEFT_SHARE * (page_width (sheet) - COLUMN_GAP));

  return (Column){ sheet, MARGIN + left + COLUMN_GAP, top, page_width (sheet) - left - COLUMN_GAP };
}

static void
put_who (Sheet *sheet, Column *column, const char *label, const char *value)
{
  TextStyle quiet = sheet_quiet (sheet), body = sheet_body (sheet);
  Column cell = *column;
  double width;

  quiet.size = HANDOUT_SMALL;
  width = sheet_line (sheet, &(TbLabel){ .text = label,
                                         .x = column->x,
                                         .y = column->y + HANDOUT_BODY - HANDOUT_SMALL,
                                         .color = quiet.color,
                                         .size = quiet.size });
  column_indent (&cell, width + 6);
  if (value && value[0])
    column_short_text (&cell, value, body, 1);
  else
    sheet_rule (sheet, cell.x, column->y + 1.2 * HANDOUT_BODY, cell.width);
  column->y += 1.75 * HANDOUT_BODY;
}

/* In large type where it fits on two lines. */
static void
put_title (Sheet *sheet, Column *column)
{
  const char *title = tb_handout_title (sheet->handout);
  TextStyle large = { TITLE, sheet->canvas.theme.text, TRUE }, small = { SMALL_TITLE, large.color, TRUE };
  g_autofree char *fitting = column_fitting (column, title, large, TITLE_LINES);

  if (g_str_equal (fitting, title))
    column_text (column, title, large);
  else
    column_short_text (column, title, small, TITLE_LINES);
}

/* Returns where the head ends. */
static double
put_head (Sheet *sheet)
{
  const TbHandout *handout = sheet->handout;
  double share = round (TITLE_SHARE * page_width (sheet));
  Column title = { sheet, MARGIN, MARGIN, share - COLUMN_GAP },
         who = { sheet, MARGIN + share, MARGIN + KICKER + 3, page_width (sheet) - share };
  double end;

  column_text (&title, _ ("To take home and practise"),
               (TextStyle){ KICKER, sheet->canvas.theme.after, TRUE });
  put_title (sheet, &title);
  put_who (sheet, &who, _ ("Bowler"), handout->bowler);
  put_who (sheet, &who, _ ("Date"), handout->date);
  end = MAX (title.y, who.y);
  return end;
}

static char *
footer_text (void)
{
  return g_strdup (
      _ ("The numbers come from a model of the ball’s motion with assumed constants, not from a "
         "measurement: go by what the ball does on your lane. House rules and the local rulebook come "
         "first. Made with Tenboard."));
}

/* Draws the foot, or only says where it begins. */
static double
put_foot (Sheet *sheet)
{
  g_autofree char *text = footer_text ();
  TextStyle style = { HANDOUT_SMALL - 0.5, sheet->canvas.theme.quiet, FALSE };
  Column foot = { sheet, MARGIN, 0, page_width (sheet) };
  Sheet measuring = *sheet;
  Column measure = foot;

  measuring.draws = FALSE;
  measure.sheet = &measuring;
  column_text (&measure, text, style);
  foot.y = sheet->canvas.height - MARGIN - measure.y;
  sheet_rule (sheet, foot.x, foot.y - 3, foot.width);
  column_text (&foot, text, style);
  return sheet->canvas.height - MARGIN - measure.y - 3;
}

static double
cautions_height (Sheet *sheet, gboolean brief)
{
  Column column = { sheet, MARGIN, 0, page_width (sheet) };

  handout_cautions (&column, brief);
  return column.y;
}

/* Heights of a column at each fullness, pt. */
static void
measure_column (Column column, void (*fill) (Column *, guint), guint steps, double *heights)
{
  for (guint fullness = 0; fullness < steps; fullness++)
    {
      Column tried = column;

      fill (&tried, fullness);
      heights[fullness] = tried.y - column.y;
    }
}

/* The fullest that stays under a height; `steps` if none does. */
static guint
fitting (const double *heights, guint steps, double height)
{
  guint fullness = 0;

  while (fullness < steps && heights[fullness] > height)
    fullness++;
  return fullness;
}

/* Heights of both columns at each fullness, pt. */
typedef struct Heights
{
  double left[HANDOUT_NUMBERS_STEPS], right[HANDOUT_PRACTICE_STEPS];
} Heights;

/* What a height of the lane (0 for none) makes both columns leave out, as a number to be kept small. */
static double
try_lane (const Heights *heights, double lane, Arrangement *tried)
{
  double room, cost;

  tried->lane_height = lane;
  tried->columns_top = tried->lane_top + lane + PART_GAP;
  room = tried->cautions_top - PART_GAP - tried->columns_top;
  tried->left = fitting (heights->left, HANDOUT_NUMBERS_STEPS, room);
  tried->right = fitting (heights->right, HANDOUT_PRACTICE_STEPS, room);
  cost = tried->left + tried->right + (lane > 0 ? LANE_COST * (LANE_HIGHEST - lane) / LANE_STEP : 0);
  if (tried->left == HANDOUT_NUMBERS_STEPS || tried->right == HANDOUT_PRACTICE_STEPS)
    cost = INFINITY;
  return cost;
}

/* A lane that is a step lower is worth less than what a column leaves out by it. Without a lane is the last
 * resort. */
static void
arrange_columns (Sheet *sheet, Arrangement *arrangement)
{
  Arrangement tried = *arrangement;
  Heights heights;
  double least = INFINITY;

  measure_column (left_column (sheet, 0), handout_numbers_column, HANDOUT_NUMBERS_STEPS, heights.left);
  measure_column (right_column (sheet, 0), handout_practice_column, HANDOUT_PRACTICE_STEPS, heights.right);
  for (double lane = LANE_HIGHEST; lane >= LANE_LEAST; lane -= LANE_STEP)
    {
      double cost = try_lane (&heights, lane, &tried);

      if (cost < least)
        *arrangement = tried;
      least = fmin (least, cost);
    }
  if (isfinite (least))
    return;
  try_lane (&heights, 0, arrangement);
  arrangement->left = MIN (arrangement->left, HANDOUT_NUMBERS_STEPS - 1);
  arrangement->right = MIN (arrangement->right, HANDOUT_PRACTICE_STEPS - 1);
}

/* Measures only. */
static Arrangement
arrange (Sheet *sheet)
{
  Arrangement best = { 0 };
  double full = cautions_height (sheet, FALSE);

  best.lane_top = put_head (sheet) + HEAD_GAP;
  best.brief = full > CAUTIONS_SHARE * sheet->canvas.height;
  best.cautions_top = put_foot (sheet) - PART_GAP - (best.brief ? cautions_height (sheet, TRUE) : full);
  arrange_columns (sheet, &best);
  return best;
}

gboolean
handout_is_one_throw (const TbHandoutFacts *facts)
{
  return tb_setup_equal (facts->run[TB_SIDE_BEFORE]->setup, facts->run[TB_SIDE_AFTER]->setup);
}

static TbLaneScene
lane_scene (const Sheet *sheet)
{
  const TbHandoutFacts *facts = sheet->handout->facts;
  const TbRun *before = facts->run[TB_SIDE_BEFORE], *after = facts->run[TB_SIDE_AFTER];
  const TbShot *shot = &after->setup->shot;
  TbLaneScene scene = tb_lane_scene_default ();

  scene.theme = sheet->canvas.theme;
  scene.theme.text_size = LANE_TEXT;
  scene.projection = TB_LANE_PLAN_SIDEWAYS;
  scene.oil = shot->lane.oil;
  scene.oil_scale = shot->lane.pattern_scale;
  /* Two runs that are the same would hide each other. */
  scene.before = handout_is_one_throw (facts) ? NULL : &before->path;
  scene.after = &after->path;
  scene.pocket_low = shot->assumed.pocket_low;
  scene.pocket_high = shot->assumed.pocket_high;
  scene.mirrored = after->path.mirrored;
  return scene;
}

static void
draw_lane (Sheet *sheet, const Arrangement *arrangement)
{
  TbLaneScene scene = lane_scene (sheet);
  cairo_t *cr = sheet->canvas.cr;

  cairo_save (cr);
  cairo_translate (cr, MARGIN, arrangement->lane_top);
  tb_lane_view_draw (cr, page_width (sheet), arrangement->lane_height, &scene);
  cairo_restore (cr);
}

static void
draw_parts (Sheet *sheet, const Arrangement *arrangement)
{
  Column left = left_column (sheet, arrangement->columns_top),
         right = right_column (sheet, arrangement->columns_top);
  Column cautions = { sheet, MARGIN, arrangement->cautions_top, page_width (sheet) };

  put_head (sheet);
  if (arrangement->lane_height > 0)
    draw_lane (sheet, arrangement);
  handout_numbers_column (&left, arrangement->left);
  handout_practice_column (&right, arrangement->right);
  handout_cautions (&cautions, arrangement->brief);
  put_foot (sheet);
}

void
tb_handout_draw (cairo_t *cr, const TbHandout *handout)
{
  Sheet sheet = { .handout = handout };
  TbTheme theme = paper_theme ();
  Arrangement arrangement;

  cairo_save (cr);
  tb_canvas_init (&sheet.canvas, cr, tb_paper_width (handout->paper), tb_paper_height (handout->paper),
                  &theme);
  tb_canvas_fill_background (&sheet.canvas);
  arrangement = arrange (&sheet);
  sheet.draws = TRUE;
  draw_parts (&sheet, &arrangement);
  tb_canvas_clear (&sheet.canvas);
  cairo_restore (cr);
}

void
tb_handout_draw_on (cairo_t *cr, const TbHandout *handout, double width, double height)
{
  double page_width = tb_paper_width (handout->paper), page_height = tb_paper_height (handout->paper);
  double scale = fmin (width / page_width, height / page_height);

  cairo_save (cr);
  cairo_translate (cr, 0.5 * (width - scale * page_width), 0.5 * (height - scale * page_height));
  cairo_scale (cr, scale, scale);
  tb_handout_draw (cr, handout);
  cairo_restore (cr);
}
