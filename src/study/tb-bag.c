/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-bag.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>

#include "tb-pocket-line.h"

TbBagBall *
tb_bag_ball_new (const char *id, const char *name, const TbBall *ball)
{
  TbBagBall *made = g_new0 (TbBagBall, 1);

  made->id = g_strdup (id);
  made->name = g_strdup (name);
  made->ball = *ball;
  return made;
}

void
tb_bag_ball_free (TbBagBall *ball)
{
  g_free (ball->id);
  g_free (ball->name);
  g_free (ball);
}

static void
entry_free (gpointer data)
{
  TbBagEntry *entry = data;

  for (int line = 0; line < TB_N_BALL_LINES; line++)
    g_clear_pointer (&entry->run[line], tb_run_unref);
  g_free (entry->id);
  g_free (entry->name);
  g_free (entry);
}

static gboolean
throw_pocket_line (TbThrower *thrower, const TbSetup *setup, GCancellable *cancellable, TbBagEntry *entry)
{
  TbShot shot = setup->shot;
  TbPocketLines lines;
  const TbPocketAnswer *answer;
  g_autoptr (TbSetup) aimed = NULL;

  if (!tb_pocket_lines_find (thrower, &shot, TB_POCKET_HOLD_LAYDOWN, cancellable, &lines))
    return FALSE;
  answer = tb_pocket_lines_best (&lines);
  if (answer == NULL)
    return TRUE;
  shot.delivery = answer->delivery;
  aimed = tb_setup_with_shot (setup, &shot);
  entry->run[TB_BALL_POCKET_LINE] = tb_run_new (aimed);
  entry->room = answer->room_out + answer->room_in;
  return TRUE;
}

/* NULL if cancelled. */
static TbBagEntry *
throw_ball (TbThrower *thrower, const TbSetup *setup, const TbBagBall *ball, GCancellable *cancellable)
{
  g_autoptr (TbSetup) with = tb_setup_with_ball (setup, &ball->ball, ball->id, ball->name);
  TbBagEntry *entry = g_new0 (TbBagEntry, 1);

  entry->id = g_strdup (ball->id);
  entry->name = g_strdup (ball->name);
  entry->room = NAN;
  entry->run[TB_BALL_SAME_LINE] = tb_run_new (with);
  if (throw_pocket_line (thrower, with, cancellable, entry))
    return entry;
  entry_free (entry);
  return NULL;
}

TbBag *
tb_bag_new (const TbSetup *setup, const GPtrArray *balls, GCancellable *cancellable)
{
  g_autoptr (TbThrower) thrower = tb_thrower_new ();
  g_autoptr (TbBag) bag = g_new0 (TbBag, 1);

  bag->entries = g_ptr_array_new_with_free_func (entry_free);
  for (guint i = 0; i < balls->len; i++)
    {
      TbBagEntry *entry = throw_ball (thrower, setup, balls->pdata[i], cancellable);

      if (entry == NULL)
        return NULL;
      g_ptr_array_add (bag->entries, entry);
    }
  return g_steal_pointer (&bag);
}

void
tb_bag_free (TbBag *bag)
{
  g_clear_pointer (&bag->entries, g_ptr_array_unref);
  g_free (bag);
}

const TbBagEntry *
tb_bag_entry (const TbBag *bag, guint index)
{
  return bag->entries->pdata[index];
}

double
tb_bag_value (const TbBag *bag, guint index, TbBallLine line, const TbMeasureInfo *measure)
{
  const TbRun *run = tb_bag_entry (bag, index)->run[line];

  if (run == NULL || run->status != TB_OK)
    return NAN;
  return tb_measure_value (measure, &run->path.measures);
}

typedef struct Rank
{
  double value;
  guint index;
} Rank;

static int
compare_ranks (const void *a, const void *b)
{
  const Rank *x = a, *y = b;

  if (isnan (x->value) != isnan (y->value))
    return isnan (x->value) ? 1 : -1;
  if (!isnan (x->value) && x->value != y->value)
    return x->value < y->value ? -1 : 1;
  return x->index < y->index ? -1 : 1;
}

void
tb_bag_order (const TbBag *bag, TbBallLine line, const TbMeasureInfo *measure, guint *order)
{
  guint count = bag->entries->len;
  g_autofree Rank *ranks = g_new (Rank, MAX (count, 1));

  for (guint i = 0; i < count; i++)
    ranks[i] = (Rank){ tb_bag_value (bag, i, line, measure), i };
  qsort (ranks, count, sizeof *ranks, compare_ranks);
  for (guint i = 0; i < count; i++)
    order[i] = ranks[i].index;
}

gboolean
tb_bag_widest_gap (const TbBag *bag, TbBallLine line, const TbMeasureInfo *measure, TbBagGap *gap)
{
  guint count = bag->entries->len;
  g_autofree guint *order = g_new (guint, MAX (count, 1));
  gboolean found = FALSE;

  tb_bag_order (bag, line, measure, order);
  for (guint i = 0; i + 1 < count; i++)
    {
      double width
          = tb_bag_value (bag, order[i + 1], line, measure) - tb_bag_value (bag, order[i], line, measure);

      if (isnan (width) || (found && width <= gap->width))
        continue;
      *gap = (TbBagGap){ order[i], order[i + 1], width };
      found = TRUE;
    }
  return found;
}

gboolean
tb_bag_between (const TbBag *bag,
                TbBallLine line,
                const TbMeasureInfo *measure,
                const guint ends[2],
                guint *between)
{
  double a = tb_bag_value (bag, ends[0], line, measure), b = tb_bag_value (bag, ends[1], line, measure);
  double low = fmin (a, b), high = fmax (a, b), nearest = (double)INFINITY;

  for (guint i = 0; i < bag->entries->len; i++)
    {
      double value = tb_bag_value (bag, i, line, measure), off = fabs (value - 0.5 * (low + high));

      if (i == ends[0] || i == ends[1] || !(value > low && value < high) || off >= nearest)
        continue;
      nearest = off;
      *between = i;
    }
  return isfinite (nearest);
}

/* The widest gap is worth closing only if it is so many times the others' mean (assumed). */
#define WIDE_GAP 1.5

static guint
count_with (const TbBag *bag, TbBallLine line, const TbMeasureInfo *measure)
{
  guint count = 0;

  for (guint i = 0; i < bag->entries->len; i++)
    count += !isnan (tb_bag_value (bag, i, line, measure));
  return count;
}

/* A difference in a measure, with its unit. */
static char *
difference_text (const TbMeasureInfo *measure, double difference, gboolean metric)
{
  gboolean converted = metric && measure->metric_unit != NULL;
  const char *unit = converted ? measure->metric_unit : measure->unit;
  int digits = converted ? measure->metric_digits : measure->digits;

  if (g_str_equal (unit, "board"))
    return g_strdup_printf (_ ("%.1f boards"), difference);
  return g_strdup_printf (g_str_equal (unit, "°") ? "%.*f%s" : "%.*f %s", digits, difference, _ (unit));
}

/* How far apart two entries are, in the unit that is told. */
static double
told_difference (const TbBag *bag,
                 TbBallLine line,
                 const TbMeasureInfo *measure,
                 gboolean metric,
                 guint from,
                 guint to)
{
  const TbMeasures *a = &tb_bag_entry (bag, from)->run[line]->path.measures;
  const TbMeasures *b = &tb_bag_entry (bag, to)->run[line]->path.measures;
  double (*convert) (double)
      = metric && measure->metric_unit != NULL ? measure->metric_from_si : measure->from_si;

  return fabs (convert (tb_measure_si (measure, b)) - convert (tb_measure_si (measure, a)));
}

char *
tb_bag_statement (const TbBag *bag, TbBallLine line, const TbMeasureInfo *measure, gboolean metric)
{
  guint all = bag->entries->len, count = count_with (bag, line, measure);
  g_autofree guint *order = g_new (guint, MAX (all, 1));
  guint between;
  TbBagGap gap;
  GString *text;

  if (count < 2 || !tb_bag_widest_gap (bag, line, measure, &gap))
    return g_strdup (_ ("There is nothing to compare: fewer than two balls have this measure."));
  tb_bag_order (bag, line, measure, order);
  const guint ends[2] = { order[0], order[count - 1] };
  double whole = tb_bag_value (bag, ends[1], line, measure) - tb_bag_value (bag, ends[0], line, measure);
  g_autofree char *span
      = difference_text (measure, told_difference (bag, line, measure, metric, ends[0], ends[1]), metric);
  g_autofree char *width
      = difference_text (measure, told_difference (bag, line, measure, metric, gap.low, gap.high), metric);

  text = g_string_new (NULL);
  /* Translators: a measure, a difference with its unit, two balls. */
  g_string_append_printf (text, _ ("%s: the bag spans %s, from %s to %s."), _ (measure->label), span,
                          tb_bag_entry (bag, ends[0])->name, tb_bag_entry (bag, ends[1])->name);
  if (tb_bag_between (bag, line, measure, ends, &between))
    g_string_append_printf (text, _ (" Nearest to the middle of that is %s."),
                            tb_bag_entry (bag, between)->name);
  if (count > 2 && gap.width > WIDE_GAP * whole / (count - 1))
    g_string_append_printf (text, _ (" The widest gap, %s, lies between %s and %s."), width,
                            tb_bag_entry (bag, gap.low)->name, tb_bag_entry (bag, gap.high)->name);
  return g_string_free (text, FALSE);
}
