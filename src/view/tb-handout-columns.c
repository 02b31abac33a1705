/* What stands in the columns, and what each leaves out first.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-handout-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-draw.h"
#include "tb-fill.h"
#include "tb-measure-text.h"
#include "tb-parts-view.h"

/* Of the width: where columns of numbers end, how wide they are, and names beside them. */
static const double number_ends[] = { 0.63, 0.82, 1.0 };
#define NUMBER_SHARE 0.185
#define NAME_SHARE 0.50
#define SECTION_GAP 5.0
#define ROW 12.6
/* Of a bar's line, pt. */
#define BAR_TEXT 8.0
#define MOST_BARS 6
/* The number of a step in its disc, pt. */
#define STEP_INDENT 17.0
#define DISC 6.4
/* Boxes to tick, one a ball. */
#define BOXES 10
#define BOX 11.0
#define BOX_GAP 5.0
#define BOX_LINES 2

/* How much of each there is; every line leaves out a little more than the one above it. */
typedef struct NumbersPlan
{
  guint rows, sentences, notes;
  gboolean bars;
} NumbersPlan;
#define ALL 99
static const NumbersPlan numbers_plans[HANDOUT_NUMBERS_STEPS] = {
  { 10, ALL, 6, TRUE }, { 10, ALL, 6, FALSE }, { 10, ALL, 3, FALSE }, { 10, 6, 3, FALSE },
  { 10, 4, 2, FALSE },  { 8, 3, 1, FALSE },    { 6, 2, 0, FALSE },    { 6, 1, 0, FALSE },
};

/* Steps past the first so many are told by their titles alone; none is left out. */
typedef struct PracticePlan
{
  guint steps, options, note;
  gboolean boxes, effects, score, wrong;
} PracticePlan;
static const PracticePlan practice_plans[HANDOUT_PRACTICE_STEPS] = {
  { ALL, ALL, 8, TRUE, TRUE, TRUE, TRUE },   { ALL, ALL, 8, TRUE, FALSE, TRUE, TRUE },
  { ALL, ALL, 8, FALSE, FALSE, TRUE, TRUE }, { ALL, 3, 6, FALSE, FALSE, TRUE, TRUE },
  { 6, 3, 4, FALSE, FALSE, TRUE, TRUE },     { 4, 2, 4, FALSE, FALSE, TRUE, TRUE },
  { 3, 1, 3, FALSE, FALSE, TRUE, TRUE },     { 3, 0, 2, FALSE, FALSE, TRUE, TRUE },
  { 2, 0, 2, FALSE, FALSE, FALSE, TRUE },    { 1, 0, 2, FALSE, FALSE, FALSE, TRUE },
  { 0, 0, 1, FALSE, FALSE, FALSE, FALSE },
};

static void
put_cell (const Column *cell, const char *text, TextStyle style)
{
  g_autofree char *fitting = column_fitting (cell, text, style, 1);

  sheet_line (cell->sheet, &(TbLabel){ .text = fitting,
                                       .x = cell->x + cell->width,
                                       .y = cell->y,
                                       .across = TB_ALIGN_END,
                                       .color = style.color,
                                       .bold = style.bold,
                                       .size = style.size });
}

/* One number of a row, the last of which may have the place of all three. */
static Column
number_cell (const Column *row, int column, gboolean alone)
{
  double width = (alone ? 1 - NAME_SHARE : NUMBER_SHARE) * row->width;

  return (Column){ row->sheet, row->x + number_ends[column] * row->width - width, row->y, width };
}

/* A row's name and its three numbers, or only the last of them where the first is NULL; a head is quiet. */
static void
put_row (Column *column, const char *name, const char *const numbers[], gboolean head)
{
  Sheet *sheet = column->sheet;
  TextStyle style = head ? sheet_quiet (sheet) : sheet_body (sheet);
  Column cell = { sheet, column->x, column->y, NAME_SHARE * column->width };
  gboolean alone = numbers[0] == NULL;
  int last = (int) G_N_ELEMENTS (number_ends) - 1;

  column_short_text (&cell, name, style, 1);
  for (int i = alone ? last : 0; i <= last; i++)
    {
      Column number = number_cell (column, i, alone);

      style.bold = !head && (alone || i == 1);
      put_cell (&number, numbers[i], style);
    }
  column->y += ROW;
  sheet_rule (sheet, column->x, column->y - 0.5, column->width);
}

static void
put_measure (Column *column, const char *name)
{
  const TbHandoutFacts *facts = column->sheet->handout->facts;
  const TbMeasureInfo *info = tb_measure_find (name);
  const TbMeasures *before = &facts->run[TB_SIDE_BEFORE]->path.measures,
                   *after = &facts->run[TB_SIDE_AFTER]->path.measures;
  const char *unit = tb_measure_unit_text (info, facts->metric);
  g_autofree char *from = tb_measure_number_text (info, before, facts->metric),
                  *to = tb_measure_number_text (info, after, facts->metric),
                  *difference = tb_measure_difference_text (info, before, after, facts->metric);
  /* Names of boards say so themselves. */
  gboolean bare = unit[0] == '\0' || g_str_equal (info->unit, "board");
  /* Translators: the name of a number, and its unit. */
  g_autofree char *label
      = bare ? g_strdup (_ (info->label)) : tb_fill_with (_ ("%1$s, %2$s"), _ (info->label), unit, NULL);

  if (handout_is_one_throw (facts))
    put_row (column, label, (const char *const[]){ NULL, NULL, to }, FALSE);
  else
    put_row (column, label, (const char *const[]){ from, to, difference }, FALSE);
}

static void
put_numbers (Column *column, guint rows)
{
  column_head (column, _ ("The numbers"));
  if (handout_is_one_throw (column->sheet->handout->facts))
    put_row (column, " ", (const char *const[]){ NULL, NULL, _ ("before and after") }, TRUE);
  else
    put_row (column, " ", (const char *const[]){ _ ("before"), _ ("after"), _ ("change") }, TRUE);
  for (guint i = 0; tb_main_measures[i] && i < rows; i++)
    put_measure (column, tb_main_measures[i]);
  column_gap (column, SECTION_GAP);
}

static void
put_sentences (Column *column, guint most)
{
  const TbHandoutFacts *facts = column->sheet->handout->facts;
  g_auto (GStrv) sentences = tb_why_all_sentences (facts->why, facts->metric);

  column_head (column, _ ("Why"));
  for (guint i = 0; sentences[i] && i < most; i++)
    column_text (column, sentences[i], sheet_body (column->sheet));
}

/* Where on the lane the one change did it: the line that the ball was sent along, then each stretch. */
static guint
find_places (const TbHandoutFacts *facts, TbPart parts[MOST_BARS], GPtrArray *names)
{
  const TbWhy *why = facts->why;
  guint count = 0;

  if (why->launch_part[TB_WHY_BOARD] != 0)
    parts[count++] = (TbPart){ _ ("Launch line"), why->launch_part[TB_WHY_BOARD], 0 };
  for (guint i = 0; i < why->n_stretches && count < MOST_BARS; i++)
    {
      g_ptr_array_add (names, tb_why_stretch_name (&why->stretch[i], facts->metric));
      parts[count++]
          = (TbPart){ g_ptr_array_index (names, names->len - 1), why->stretch[i].part[TB_WHY_BOARD], 0 };
    }
  return count;
}

/* By what was changed, or by place where only one thing was. */
static guint
find_parts (const TbHandoutFacts *facts, TbPart parts[MOST_BARS], GPtrArray *names)
{
  const TbWhy *why = facts->why;
  guint count = 0;

  if (why->status != TB_OK || why->n_inputs == 0)
    return 0;
  if (why->n_inputs == 1)
    return find_places (facts, parts, names);
  for (guint i = 0; i < why->n_inputs && count < MOST_BARS; i++)
    parts[count++] = (TbPart){ tb_change_label (&why->input[i].change), why->input[i].part[TB_WHY_BOARD],
                               why->input[i].error[TB_WHY_BOARD] };
  return count;
}

static void
put_bars (Column *column)
{
  Sheet *sheet = column->sheet;
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  TbPart parts[MOST_BARS];
  TbPartsScene scene = { .theme = sheet->canvas.theme, .parts = parts, .digits = 1, .unit = "" };
  double height;

  scene.n_parts = find_parts (sheet->handout->facts, parts, names);
  if (scene.n_parts < 2)
    return;
  scene.theme.text_size = BAR_TEXT;
  height = tb_parts_view_height (&scene.theme, scene.n_parts);
  column_gap (column, 2);
  column_text (column, _ ("The difference at the pins, in boards"), sheet_quiet (sheet));
  if (sheet->draws)
    {
      cairo_save (sheet->canvas.cr);
      cairo_translate (sheet->canvas.cr, column->x, column->y);
      tb_parts_view_draw (sheet->canvas.cr, column->width, height, &scene);
      cairo_restore (sheet->canvas.cr);
    }
  column_gap (column, height + SECTION_GAP);
}

void
handout_numbers_column (Column *column, guint fullness)
{
  const NumbersPlan *plan = &numbers_plans[fullness];
  const char *notes = column->sheet->handout->facts->study->notes;

  put_numbers (column, plan->rows);
  put_sentences (column, plan->sentences);
  if (plan->bars)
    put_bars (column);
  if (notes[0] && plan->notes > 0)
    {
      column_gap (column, SECTION_GAP);
      column_head (column, _ ("Notes"));
      column_short_text (column, notes, sheet_body (column->sheet), plan->notes);
    }
}

static void
put_disc (Column *column, guint number)
{
  Sheet *sheet = column->sheet;
  g_autofree char *text = tb_number_text (number, 0);
  TbPoint centre = { column->x + DISC, column->y + DISC };

  if (!sheet->draws)
    return;
  tb_draw_color (sheet->canvas.cr, sheet->canvas.theme.text);
  tb_draw_circle (sheet->canvas.cr, centre, DISC);
  cairo_fill (sheet->canvas.cr);
  sheet_line (sheet, &(TbLabel){ .text = text,
                                 .x = centre.x,
                                 .y = centre.y,
                                 .across = TB_ALIGN_MIDDLE,
                                 .down = TB_ALIGN_MIDDLE,
                                 .color = sheet->canvas.theme.background,
                                 .bold = TRUE,
                                 .size = HANDOUT_SMALL });
}

static void
put_step (Column *column, const TbPracticeStep *step, guint number, gboolean full)
{
  TextStyle body = sheet_body (column->sheet), title = body;

  title.bold = TRUE;
  put_disc (column, number);
  column_indent (column, STEP_INDENT);
  column_text (column, step->title, title);
  if (full)
    {
      column_text (column, step->how, body);
      column_text (column, step->target, body);
    }
  column_indent (column, -STEP_INDENT);
  column_gap (column, 2);
}

static void
put_boxes (Column *column)
{
  Sheet *sheet = column->sheet;
  const char *const names[BOX_LINES] = { _ ("Over the target"), _ ("In the pocket") };
  double first = column->x + column->width - BOXES * (BOX + BOX_GAP) + BOX_GAP;

  column_gap (column, 2);
  for (int line = 0; line < BOX_LINES; line++)
    {
      Column name = { sheet, column->x, column->y, first - column->x - BOX_GAP };

      column_short_text (&name, names[line], sheet_body (sheet), 1);
      for (int box = 0; sheet->draws && box < BOXES; box++)
        {
          tb_draw_color (sheet->canvas.cr, sheet->canvas.theme.quiet);
          cairo_set_line_width (sheet->canvas.cr, 0.7);
          tb_draw_rectangle (sheet->canvas.cr, &(cairo_rectangle_t){ first + box * (BOX + BOX_GAP),
                                                                     column->y + 0.5, BOX, BOX });
          cairo_stroke (sheet->canvas.cr);
        }
      column_gap (column, BOX + 5);
    }
}

static void
put_practice (Column *column, const PracticePlan *plan)
{
  const TbPractice *practice = column->sheet->handout->facts->practice;
  TextStyle body = sheet_body (column->sheet), strong = body;

  strong.bold = TRUE;
  column_head (column, _ ("What to practise"));
  column_text (column, practice->nothing, body);
  for (guint i = 0; i < practice->steps->len; i++)
    put_step (column, g_ptr_array_index (practice->steps, i), i + 1, i < plan->steps);
  column_led_text (column, _ ("Well thrown:"), practice->right, body);
  if (practice->wrong && plan->wrong)
    column_led_text (column, _ ("Not yet:"), practice->wrong, body);
  if (practice->score && plan->score)
    column_text (column, practice->score, body);
  if (plan->boxes)
    put_boxes (column);
  column_text (column, tb_practice_stop_text (), strong);
  column_gap (column, SECTION_GAP);
}

static void
put_option (Column *column, const TbNextOption *option, gboolean effects)
{
  const TbHandoutFacts *facts = column->sheet->handout->facts;
  g_autofree char *change = tb_next_change_text (option, facts->metric),
                  *reach = tb_next_reach_text (column->sheet->handout->next, option, facts->metric),
                  *effect = tb_next_effect_text (column->sheet->handout->next, option, facts->metric);
  const char *ask = option->knob->cost->rules;

  column_led_text (column, _ (tb_knob_group_label (option->knob->group)), change, sheet_body (column->sheet));
  column_indent (column, STEP_INDENT);
  column_text (column, reach, sheet_body (column->sheet));
  if (effects)
    column_text (column, effect, sheet_quiet (column->sheet));
  if (ask)
    column_text (column, _ (ask), sheet_quiet (column->sheet));
  column_indent (column, -STEP_INDENT);
}

static void
put_options (Column *column, const PracticePlan *plan)
{
  const TbHandout *handout = column->sheet->handout;
  g_autofree char *wish = NULL;

  if (!handout->next || !handout->options || handout->options->len == 0 || plan->options == 0)
    return;
  wish = tb_next_wish_text (handout->next, handout->facts->metric);
  column_head (column, _ ("Also worth a try"));
  column_text (column, wish, sheet_quiet (column->sheet));
  for (guint i = 0; i < handout->options->len && i < plan->options; i++)
    put_option (column, g_ptr_array_index (handout->options, i), plan->effects);
}

void
handout_practice_column (Column *column, guint fullness)
{
  const PracticePlan *plan = &practice_plans[fullness];
  const char *note = column->sheet->handout->note;

  put_practice (column, plan);
  if (note && note[0])
    {
      column_head (column, _ ("From your coach"));
      column_short_text (column, note, sheet_body (column->sheet), plan->note);
      column_gap (column, SECTION_GAP);
    }
  put_options (column, plan);
}

void
handout_cautions (Column *column, gboolean brief)
{
  Sheet *sheet = column->sheet;
  g_autoptr (GPtrArray) cautions = tb_handout_facts_cautions (sheet->handout->facts, sheet->handout->options);

  if (cautions->len == 0)
    return;
  column_head (column, _ ("Take care"));
  for (guint i = 0; i < cautions->len; i++)
    {
      const TbCaution *caution = g_ptr_array_index (cautions, i);
      g_autofree char *lead = g_strconcat (_ (caution->line), ".", NULL);

      column_led_text (column, lead, _ (brief ? caution->brief : caution->text), sheet_body (sheet));
    }
}
