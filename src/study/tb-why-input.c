/* The split by input: Shapley values over the inputs that differ.
 *
 * A mixture is a set of inputs taken over from "after", written as the bits of a number. Every mixture is
 * thrown once.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-why-private.h"

#include <math.h>
#include <string.h>
#include "tb-batch.h"
#include "tb-thrower.h"

/* Orders that are sampled where there are too many: in pairs, an order and its reverse, so that swapping
 * before and after only flips signs. */
#define ORDER_PAIRS 32
#define SEED G_GUINT64_CONSTANT (0x7e4b0a12d)

typedef struct Mixtures
{
  TbWhy *why;
  GHashTable *index; /* mixture to its place in the arrays below */
  GArray *sets;      /* of guint64 */
  double (*value)[TB_WHY_N_MEASURES];
} Mixtures;

static void
mixtures_add (Mixtures *self, guint64 set)
{
  if (g_hash_table_contains (self->index, &set))
    return;
  g_hash_table_insert (self->index, g_memdup2 (&set, sizeof set), GUINT_TO_POINTER (self->sets->len));
  g_array_append_val (self->sets, set);
}

static const double *
mixtures_value (const Mixtures *self, guint64 set)
{
  return self->value[GPOINTER_TO_UINT (g_hash_table_lookup (self->index, &set))];
}

static void
mixtures_clear (Mixtures *self)
{
  g_hash_table_unref (self->index);
  g_array_unref (self->sets);
  g_free (self->value);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Mixtures, mixtures_clear)

static void
mixtures_init (Mixtures *self, TbWhy *why)
{
  self->why = why;
  self->index = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  self->sets = g_array_new (FALSE, FALSE, sizeof (guint64));
  self->value = NULL;
}

static void
make_mixture (TbShot *shot, guint index, gpointer data)
{
  const Mixtures *self = data;
  guint64 set = g_array_index (self->sets, guint64, index);

  *shot = self->why->setup[TB_SIDE_BEFORE]->shot;
  for (guint i = 0; i < self->why->n_inputs; i++)
    if (set >> i & 1)
      tb_change_apply (&self->why->input[i].change, self->why->setup[TB_SIDE_AFTER], shot);
  shot->options.edgeless = true;
}

/* Share of the friction across the launch line as the released ball first slips: friction acts against the
 * slip, whose direction hardly changes until the ball rolls. */
static double
side_share (const TbShot *shot)
{
  const TbDelivery *delivery = &shot->delivery;
  double rim = tb_delivery_actual_rev_rate (delivery, &shot->assumed) * 0.5 * shot->ball.diameter
               * cos (delivery->axis_tilt);
  double speed = tb_delivery_actual_speed (delivery, &shot->assumed) * cos (delivery->loft_angle);
  double heading = tb_delivery_launch_heading (delivery);
  /* The rim's speed at the lane, along and across the launch line. */
  double along = speed - rim * cos (delivery->axis_rotation - heading);
  double across = rim * sin (delivery->axis_rotation - heading);
  double slip = hypot (along, across);

  return slip > 0 ? across / slip : 0;
}

void
why_measure (const TbShot *shot, const TbMeasures *measures, double value[TB_WHY_N_MEASURES])
{
  value[TB_WHY_BOARD] = tb_board_from_x (measures->x_at_pins);
  value[TB_WHY_ANGLE] = tb_deg_from_radians (measures->angle_at_pins);
  value[TB_WHY_BREAKPOINT] = tb_breakpoint_ft_held (measures);
  value[TB_WHY_DRY_TIME] = measures->time - measures->time_in_oil;
  value[TB_WHY_SIDE_SHARE] = side_share (shot);
  value[TB_WHY_OIL_EXIT] = tb_ft_from_metres (measures->oil_exit_y);
  value[TB_WHY_HOOK_START] = tb_ft_from_metres (measures->hook_start_y);
  value[TB_WHY_ROLL_START] = tb_ft_from_metres (measures->roll_start_y);
  value[TB_WHY_LAUNCH] = tb_board_from_x (tb_delivery_launch_x (&shot->delivery, TB_HEAD_PIN_Y));
  value[TB_WHY_TURN]
      = tb_deg_from_radians (measures->angle_at_pins - tb_delivery_launch_heading (&shot->delivery));
  value[TB_WHY_FLARE] = tb_in_from_metres (measures->flare);
}

typedef enum Outcome
{
  DONE,
  CANCELLED,
  UNMIXABLE /* some mixture is no shot that can be thrown */
} Outcome;

static Outcome
mixtures_throw (Mixtures *self, guint threads, GCancellable *cancellable)
{
  guint count = self->sets->len;
  g_autofree TbBatchItem *items = g_new (TbBatchItem, count);

  if (!tb_batch_run (count, make_mixture, self, items, threads, cancellable))
    return CANCELLED;
  self->why->throws += count;
  self->value = g_malloc_n (count, sizeof *self->value);
  for (guint i = 0; i < count; i++)
    {
      TbShot shot;

      if (items[i].status != TB_OK)
        return UNMIXABLE;
      make_mixture (&shot, i, self);
      why_measure (&shot, &items[i].measures, self->value[i]);
    }
  return DONE;
}

/* |S|! (n − |S| − 1)! / n! */
static double
weight_of (guint n, guint size)
{
  double weight = 1.0 / n;

  for (guint i = 1; i <= size; i++)
    weight *= (double) i / (n - i);
  return weight;
}

static guint
set_size (guint64 set)
{
  guint size = 0;

  for (; set; set &= set - 1)
    size++;
  return size;
}

static void
add_exact_part (const Mixtures *self, guint input, guint64 without)
{
  TbWhy *why = self->why;
  const double *a = mixtures_value (self, without),
               *b = mixtures_value (self, without | G_GUINT64_CONSTANT (1) << input);
  double weight = weight_of (why->n_inputs, set_size (without));

  for (int i = 0; i < TB_WHY_N_MEASURES; i++)
    why->input[input].part[i] += weight * (b[i] - a[i]);
}

static Outcome
split_exactly (TbWhy *why, guint threads, GCancellable *cancellable)
{
  g_auto (Mixtures) mixtures;
  guint64 all = G_GUINT64_CONSTANT (1) << why->n_inputs;
  Outcome outcome;

  mixtures_init (&mixtures, why);
  for (guint64 set = 0; set < all; set++)
    mixtures_add (&mixtures, set);
  outcome = mixtures_throw (&mixtures, threads, cancellable);
  for (guint input = 0; outcome == DONE && input < why->n_inputs; input++)
    for (guint64 set = 0; set < all; set++)
      if (!(set >> input & 1))
        add_exact_part (&mixtures, input, set);
  return outcome;
}

/* A number that depends on its two indices and nothing else (the finaliser of S. Vigna's SplitMix64). */
static guint64
draw (guint order, guint place)
{
  guint64 z = SEED + ((guint64) order << 32 | place) * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);

  z = (z ^ z >> 30) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  z = (z ^ z >> 27) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return z ^ z >> 31;
}

/* Order number 2k is a shuffle, 2k + 1 the same backwards. */
static void
make_order (guint order, guint n, guint8 sequence[TB_MAX_CHANGES])
{
  for (guint i = 0; i < n; i++)
    sequence[i] = (guint8) i;
  for (guint i = n - 1; i > 0; i--)
    {
      guint j = (guint) (draw (order / 2, i) % (i + 1));
      guint8 kept = sequence[i];

      sequence[i] = sequence[j];
      sequence[j] = kept;
    }
  for (guint i = 0; order % 2 == 1 && i < n / 2; i++)
    {
      guint8 kept = sequence[i];

      sequence[i] = sequence[n - 1 - i];
      sequence[n - 1 - i] = kept;
    }
}

static void
add_order (Mixtures *self, guint order)
{
  guint8 sequence[TB_MAX_CHANGES];
  guint64 set = 0;

  make_order (order, self->why->n_inputs, sequence);
  mixtures_add (self, set);
  for (guint i = 0; i < self->why->n_inputs; i++)
    mixtures_add (self, set |= G_GUINT64_CONSTANT (1) << sequence[i]);
}

typedef double Parts[TB_MAX_CHANGES][TB_WHY_N_MEASURES];

static void
add_order_parts (const Mixtures *self, guint order, Parts parts)
{
  guint8 sequence[TB_MAX_CHANGES];
  guint64 set = 0;

  make_order (order, self->why->n_inputs, sequence);
  for (guint i = 0; i < self->why->n_inputs; i++)
    {
      const double *a = mixtures_value (self, set);
      const double *b = mixtures_value (self, set |= G_GUINT64_CONSTANT (1) << sequence[i]);

      for (int m = 0; m < TB_WHY_N_MEASURES; m++)
        parts[sequence[i]][m] += 0.5 * (b[m] - a[m]);
    }
}

/* Mean over the pairs, and twice the standard error of that mean. */
static void
set_sampled_part (TbWhyInput *input, int measure, double sum, double squares)
{
  double mean = sum / ORDER_PAIRS, variance = MAX (squares / ORDER_PAIRS - mean * mean, 0);

  input->part[measure] = mean;
  input->error[measure] = 2 * sqrt (variance / (ORDER_PAIRS - 1));
}

static void
average_orders (const Mixtures *self)
{
  TbWhy *why = self->why;
  g_autofree Parts *sums = g_malloc0 (sizeof (Parts)), *squares = g_malloc0 (sizeof (Parts)),
                   *pair = g_malloc (sizeof (Parts));

  for (guint order = 0; order < 2 * ORDER_PAIRS; order += 2)
    {
      memset (pair, 0, sizeof (Parts));
      add_order_parts (self, order, *pair);
      add_order_parts (self, order + 1, *pair);
      for (guint i = 0; i < why->n_inputs; i++)
        for (int m = 0; m < TB_WHY_N_MEASURES; m++)
          {
            (*sums)[i][m] += (*pair)[i][m];
            (*squares)[i][m] += (*pair)[i][m] * (*pair)[i][m];
          }
    }
  for (guint i = 0; i < why->n_inputs; i++)
    for (int m = 0; m < TB_WHY_N_MEASURES; m++)
      set_sampled_part (&why->input[i], m, (*sums)[i][m], (*squares)[i][m]);
}

static Outcome
split_by_sampling (TbWhy *why, guint threads, GCancellable *cancellable)
{
  g_auto (Mixtures) mixtures;
  Outcome outcome;

  mixtures_init (&mixtures, why);
  for (guint order = 0; order < 2 * ORDER_PAIRS; order++)
    add_order (&mixtures, order);
  outcome = mixtures_throw (&mixtures, threads, cancellable);
  if (outcome == DONE)
    average_orders (&mixtures);
  why->orders = 2 * ORDER_PAIRS;
  return outcome;
}

static void
set_inputs (TbWhy *why, const TbChange *changes, guint count)
{
  memset (why->input, 0, sizeof why->input);
  for (guint i = 0; i < count; i++)
    why->input[i].change = changes[i];
  why->n_inputs = count;
  why->orders = 0;
}

static Outcome
split (TbWhy *why, guint threads, GCancellable *cancellable)
{
  return why->n_inputs <= TB_WHY_EXACT_INPUTS ? split_exactly (why, threads, cancellable)
                                              : split_by_sampling (why, threads, cancellable);
}

gboolean
why_split_by_input (TbWhy *why, guint threads, GCancellable *cancellable)
{
  TbChange changes[TB_MAX_CHANGES];
  guint count = tb_changes_find (why->setup[TB_SIDE_BEFORE], why->setup[TB_SIDE_AFTER], changes);
  Outcome outcome;

  set_inputs (why, changes, count);
  if (count == 0)
    return TRUE;
  outcome = split (why, threads, cancellable);
  /* Half of one ball and half of another can be no ball at all, and half of one delivery none that gets to
   * the pins. */
  if (outcome == UNMIXABLE)
    {
      set_inputs (why, changes, tb_changes_merge_ball (changes, count));
      outcome = split (why, threads, cancellable);
    }
  if (outcome == UNMIXABLE)
    {
      set_inputs (why, changes, tb_changes_merge_all (changes, why->n_inputs));
      outcome = split (why, threads, cancellable);
    }
  return outcome == DONE;
}
