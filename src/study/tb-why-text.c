/* The reasons, in sentences.
 *
 * A sentence says what was changed, what that did on the way (a fact that was computed with the split and
 * points the same way as the part), and what it comes to. Where no fact bears a part out, the part stands
 * alone: the sentences never claim a cause that the numbers do not show. Each is one whole text with numbered
 * gaps.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-why.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-fill.h"
#include "tb-why-reason.h"

/* Parts named at most, and the share of the greatest under which they are not. */
#define MOST_PARTS 6
#define SMALL_SHARE 0.04
/* What a part comes to. "A of the B boards" is said only where it can be so: parts may be larger than the
 * whole, when others work against them. */
typedef struct Outcome
{
  const char *all;         /* it is the whole difference: %1$s */
  const char *of;          /* %1$s of %2$s */
  const char *more, *less; /* it is more than the whole, or against it: %1$s */
} Outcome;

/* Translators: these end a sentence: "2.0 mph more makes the ball hook 3.1 ft later: 3.1 of the 3.6 boards."
 */
static const Outcome going_out = { N_ ("all of the %1$s°"), N_ ("%1$s of the %2$s°"),
                                   N_ ("%1$s° towards higher boards"), N_ ("%1$s° towards lower boards") };
static const Outcome outcomes[TB_WHY_N_SPLITS] = {
  { N_ ("all of the %1$s boards"), N_ ("%1$s of the %2$s boards"), N_ ("%1$s boards higher"),
    N_ ("%1$s boards lower") },
  { N_ ("all of the %1$s°"), N_ ("%1$s of the %2$s°"), N_ ("%1$s° steeper"), N_ ("%1$s° flatter") },
  { N_ ("all of the %1$s %3$s"), N_ ("%1$s of the %2$s %3$s"), N_ ("%1$s %3$s later"),
    N_ ("%1$s %3$s earlier") },
};

static char *
outcome_text (const WhyTeller *teller, const TbWhyInput *input, TbWhyMeasure split)
{
  const Outcome *outcome = split == TB_WHY_ANGLE && !why_comes_in (teller) ? &going_out : &outcomes[split];
  double part = input->part[split], whole = why_told_difference (teller, split);
  g_autofree char *size = why_told_text (teller, split, fabs (part)),
                  *total = why_told_difference_text (teller, split);
  const char *unit = why_told_unit (teller, split).unit, *format = part > 0 ? outcome->more : outcome->less;

  if (teller->why->n_inputs == 1 && why_differs (teller, split))
    return tb_fill_with (_ (outcome->all), total, "", unit, NULL);
  if (part * whole > 0 && fabs (why_as_told (teller, split, part)) <= fabs (whole) + 1e-9)
    format = outcome->of;
  return tb_fill_with (_ (format), size, total, unit, NULL);
}

/* A change of the launch line moves the ball twice: by where it points, and by what the hook then makes of
 * it. */
static char *
line_sentence (const WhyTeller *teller, const TbWhyInput *input, const char *phrase, const char *comes_to)
{
  double launch = input->part[TB_WHY_LAUNCH], hook = input->part[TB_WHY_BOARD] - launch;
  g_autofree char *pointed = tb_number_text (fabs (launch), 1), *hooked = tb_number_text (fabs (hook), 1);
  const char *format;

  if (why_is_small (TB_WHY_BOARD, hook))
    return tb_fill_with (launch > 0 ? _ ("%1$s points the ball %2$s boards higher at the pins: %3$s.")
                                    : _ ("%1$s points the ball %2$s boards lower at the pins: %3$s."),
                         phrase, pointed, comes_to, NULL);
  if (launch > 0)
    format
        = hook < 0
              ? _ ("%1$s points the ball %2$s boards higher at the pins, and the hook takes %3$s back: %4$s.")
              : _ ("%1$s points the ball %2$s boards higher at the pins, and the hook adds %3$s: %4$s.");
  else
    format
        = hook > 0
              ? _ ("%1$s points the ball %2$s boards lower at the pins, and the hook brings %3$s back: %4$s.")
              : _ ("%1$s points the ball %2$s boards lower at the pins, and the hook takes %3$s more: %4$s.");
  return tb_fill_with (format, phrase, pointed, hooked, comes_to, NULL);
}

static char *
board_sentence (const WhyTeller *teller, const TbWhyInput *input)
{
  g_autofree char *phrase = tb_change_phrase (&input->change, teller->why->setup[TB_SIDE_BEFORE],
                                              teller->why->setup[TB_SIDE_AFTER], teller->metric);
  g_autofree char *comes_to = outcome_text (teller, input, TB_WHY_BOARD);
  const WhyReason *reason = why_reason_for (teller, input);

  if (!why_is_small (TB_WHY_BOARD, input->part[TB_WHY_LAUNCH]))
    return line_sentence (teller, input, phrase, comes_to);
  if (reason)
    return why_reason_sentence (teller, input, reason, &(WhySaid){ phrase, comes_to });
  /* Translators: the change, and what it comes to: "2.0 mph more: 3.1 of the 3.6 boards." */
  return tb_fill_with (_ ("%1$s: %2$s."), phrase, comes_to, NULL);
}

static char *
part_sentence (const WhyTeller *teller, const TbWhyInput *input, TbWhyMeasure split)
{
  g_autofree char *phrase = NULL, *comes_to = NULL;

  if (split == TB_WHY_BOARD)
    return board_sentence (teller, input);
  phrase = tb_change_phrase (&input->change, teller->why->setup[TB_SIDE_BEFORE],
                             teller->why->setup[TB_SIDE_AFTER], teller->metric);
  comes_to = outcome_text (teller, input, split);
  return tb_fill_with (_ ("%1$s: %2$s."), phrase, comes_to, NULL);
}

typedef struct Headline
{
  const char *more, *less, *same; /* %1$s the difference, %2$s after, %3$s before */
} Headline;

static const Headline headlines[TB_WHY_N_SPLITS] = {
  { N_ ("At the pins the ball is %1$s boards higher than before: board %2$s instead of %3$s."),
    N_ ("At the pins the ball is %1$s boards lower than before: board %2$s instead of %3$s."),
    N_ ("At the pins the ball is where it was before, on board %2$s.") },
  { N_ ("It meets the pins %1$s° steeper: at %2$s° instead of %3$s°."),
    N_ ("It meets the pins %1$s° flatter: at %2$s° instead of %3$s°."),
    N_ ("It meets the pins at the same angle, %2$s°.") },
  { N_ ("It turns back %1$s %4$s later: at %2$s %4$s instead of %3$s %4$s."),
    N_ ("It turns back %1$s %4$s earlier: at %2$s %4$s instead of %3$s %4$s."),
    N_ ("It turns back where it did before, at %2$s %4$s.") },
};

static const Headline heading_out
    = { N_ ("It meets the pins heading %1$s° further to higher boards: at %2$s° instead of %3$s°."),
        N_ ("It meets the pins heading %1$s° further to lower boards: at %2$s° instead of %3$s°."),
        N_ ("It meets the pins at the same angle, %2$s°.") };

static char *
headline (const WhyTeller *teller, TbWhyMeasure split)
{
  const Headline *words = split == TB_WHY_ANGLE && !why_comes_in (teller) ? &heading_out : &headlines[split];
  double difference = why_told_difference (teller, split);
  g_autofree char *size = why_told_difference_text (teller, split);
  g_autofree char *after = why_told_text (teller, split, teller->why->value[TB_SIDE_AFTER][split]);
  g_autofree char *before = why_told_text (teller, split, teller->why->value[TB_SIDE_BEFORE][split]);
  const char *format = difference > 0 ? words->more : words->less;

  if (!why_differs (teller, split))
    format = words->same;
  return tb_fill_with (_ (format), size, after, before, why_told_unit (teller, split).unit, NULL);
}

static char *
no_breakpoint_sentence (const WhyTeller *teller)
{
  gboolean before = isfinite (teller->why->value[TB_SIDE_BEFORE][TB_WHY_BREAKPOINT]);
  gboolean after = isfinite (teller->why->value[TB_SIDE_AFTER][TB_WHY_BREAKPOINT]);

  if (before)
    return g_strdup (_ ("Unlike before, the ball never turns back."));
  return g_strdup (after ? _ ("Before, the ball never turned back; now it does.")
                         : _ ("Neither ball turns back on its way."));
}

/* Inputs by the size of their part. */
typedef struct Ranking
{
  const TbWhy *why;
  TbWhyMeasure split;
} Ranking;

static int
compare_parts (gconstpointer a, gconstpointer b, gpointer data)
{
  const Ranking *ranking = data;
  double size_a = fabs (ranking->why->input[*(const guint *) a].part[ranking->split]);
  double size_b = fabs (ranking->why->input[*(const guint *) b].part[ranking->split]);

  if (size_a != size_b)
    return size_a < size_b ? 1 : -1;
  return *(const guint *) a < *(const guint *) b ? -1 : 1;
}

static void
add_parts (GStrvBuilder *builder, const WhyTeller *teller, TbWhyMeasure split)
{
  Ranking ranking = { teller->why, split };
  guint order[TB_MAX_CHANGES];
  double greatest;

  for (guint i = 0; i < teller->why->n_inputs; i++)
    order[i] = i;
  g_qsort_with_data (order, (int) teller->why->n_inputs, sizeof *order, compare_parts, &ranking);
  greatest = fabs (teller->why->input[order[0]].part[split]);
  for (guint i = 0; i < MIN (teller->why->n_inputs, MOST_PARTS); i++)
    {
      const TbWhyInput *input = &teller->why->input[order[i]];
      double size = fabs (input->part[split]);
      g_autofree char *sentence = NULL;

      if (why_is_small (split, size) || size < SMALL_SHARE * greatest)
        break;
      sentence = part_sentence (teller, input, split);
      g_strv_builder_add (builder, sentence);
    }
}

/* Changes that pull both ways, each by more than what is left in the end. */
static char *
cancel_sentence (const WhyTeller *teller, TbWhyMeasure split)
{
  static const char *const words[TB_WHY_N_SPLITS]
      = { N_ ("The changes work against each other: %1$s boards up and %2$s down."),
          N_ ("The changes work against each other: %1$s° steeper and %2$s° flatter."),
          N_ ("The changes work against each other: %1$s %3$s later and %2$s %3$s earlier.") };
  const char *format
      = split == TB_WHY_ANGLE && !why_comes_in (teller) ? N_ (
            "The changes work against each other: %1$s° towards higher boards and %2$s° towards lower ones.")
                                                        : words[split];
  double up = 0, down = 0;
  g_autofree char *up_text = NULL, *down_text = NULL;

  for (guint i = 0; i < teller->why->n_inputs; i++)
    if (teller->why->input[i].part[split] > 0)
      up += teller->why->input[i].part[split];
    else
      down -= teller->why->input[i].part[split];
  if (why_is_small (split, MIN (up, down)) || MIN (up, down) <= fabs (teller->why->difference[split]))
    return NULL;
  up_text = why_told_text (teller, split, up);
  down_text = why_told_text (teller, split, down);
  return tb_fill_with (_ (format), up_text, down_text, why_told_unit (teller, split).unit, NULL);
}

static char *
error_sentence (const WhyTeller *teller, TbWhyMeasure split)
{
  static const char *const words[TB_WHY_N_SPLITS]
      = { N_ ("With so many changes the parts are estimated from %1$s orders of making them; each may be off "
              "by %2$s boards."),
          N_ ("With so many changes the parts are estimated from %1$s orders of making them; each may be off "
              "by %2$s°."),
          N_ ("With so many changes the parts are estimated from %1$s orders of making them; each may be off "
              "by %2$s %3$s.") };
  double greatest = 0;
  g_autofree char *orders = NULL, *error = NULL;

  for (guint i = 0; i < teller->why->n_inputs; i++)
    greatest = MAX (greatest, teller->why->input[i].error[split]);
  orders = g_strdup_printf ("%u", teller->why->orders);
  error = tb_number_text (greatest * why_told_unit (teller, split).factor, 2);
  return tb_fill_with (_ (words[split]), orders, error, why_told_unit (teller, split).unit, NULL);
}

static void
add_owned (GStrvBuilder *builder, char *sentence)
{
  if (sentence)
    g_strv_builder_add (builder, sentence);
  g_free (sentence);
}

/* Where on the lane, for boards and angle. */
static char *
place_sentence (const WhyTeller *teller, TbWhyMeasure split)
{
  gboolean boards = split == TB_WHY_BOARD, line = teller->why->launch_part[split] != 0;
  g_autofree char *launch = NULL, *front = NULL, *middle = NULL, *back = NULL;
  const char *format;

  if (teller->why->n_stretches != 3 || !why_differs (teller, split))
    return NULL;
  launch = tb_signed_text (teller->why->launch_part[split], 1);
  front = tb_signed_text (teller->why->stretch[0].part[split], 1);
  middle = tb_signed_text (teller->why->stretch[1].part[split], 1);
  back = tb_signed_text (teller->why->stretch[2].part[split], 1);
  if (boards)
    format = line ? _ ("Where on the lane it comes from, in boards: launch line %4$s, front %1$s, middle "
                       "%2$s, back %3$s.")
                  : _ ("Where on the lane it comes from, in boards: front %1$s, middle %2$s, back %3$s.");
  else
    format = line ? _ ("Where on the lane it comes from, in degrees: launch line %4$s, front %1$s, middle "
                       "%2$s, back %3$s.")
                  : _ ("Where on the lane it comes from, in degrees: front %1$s, middle %2$s, back %3$s.");
  return tb_fill_with (format, front, middle, back, launch, NULL);
}

/* A ball that rolls has used up its turn: what brings it there earlier or later no longer changes its
 * heading. */
static char *
turn_sentence (const WhyTeller *teller)
{
  double before = teller->why->value[TB_SIDE_BEFORE][TB_WHY_ROLL_START],
         after = teller->why->value[TB_SIDE_AFTER][TB_WHY_ROLL_START];
  const char *unit = why_told_unit (teller, TB_WHY_BREAKPOINT).unit;
  g_autofree char *before_text = NULL, *after_text = NULL;

  if (!isfinite (before) && !isfinite (after))
    return NULL;
  before_text = why_told_text (teller, TB_WHY_BREAKPOINT, before);
  after_text = why_told_text (teller, TB_WHY_BREAKPOINT, after);
  if (isfinite (before) && isfinite (after))
    return tb_fill_with (_ ("Both balls roll before the pins, from %1$s %3$s before and %2$s %3$s now; a "
                            "ball that rolls has used up "
                            "its turn."),
                         before_text, after_text, unit, NULL);
  if (isfinite (after))
    return tb_fill_with (_ ("Now the ball rolls from %1$s %3$s on and has used up its turn; before it was "
                            "still turning at the "
                            "pins."),
                         after_text, "", unit, NULL);
  return tb_fill_with (
      _ ("Before, the ball rolled from %1$s %3$s on and had used up its turn; now it is still turning at the "
         "pins."),
      before_text, "", unit, NULL);
}

static void
add_gutters (GStrvBuilder *builder, const WhyTeller *teller)
{
  static const char *const words[TB_N_SIDES] = { N_ ("Before, the ball is in the gutter at %1$s %2$s; what "
                                                     "is said here goes on as if the lane had no edge."),
                                                 N_ ("Now the ball is in the gutter at %1$s %2$s; what is "
                                                     "said here goes on as if the lane had no edge.") };

  for (int side = 0; side < TB_N_SIDES; side++)
    if (isfinite (teller->why->gutter_ft[side]))
      {
        TbToldUnit told = tb_told_unit ("ft", 0, teller->metric);
        g_autofree char *where = tb_number_text (teller->why->gutter_ft[side] * told.factor, told.digits);

        add_owned (builder, tb_fill_with (_ (words[side]), where, told.unit, NULL));
      }
}

static char *
straight_sentence (const WhyTeller *teller)
{
  for (int side = 0; side < TB_N_SIDES; side++)
    if (fabs (teller->why->value[side][TB_WHY_BOARD] - teller->why->value[side][TB_WHY_LAUNCH])
        > WHY_STRAIGHT_BOARDS)
      return NULL;
  return g_strdup (_ ("Neither ball hooks: both run straight along their launch lines."));
}

/* With one change only the boards have more to tell than that it was this one: if it was anything, or if the
 * line pointed the ball elsewhere and the hook took it back. */
static gboolean
has_parts (const WhyTeller *teller, TbWhyMeasure split)
{
  if (teller->why->n_inputs > 1)
    return TRUE;
  return split == TB_WHY_BOARD
         && (why_differs (teller, split)
             || !why_is_small (TB_WHY_BOARD, teller->why->input[0].part[TB_WHY_LAUNCH]));
}

static void
add_split (GStrvBuilder *builder, const WhyTeller *teller, TbWhyMeasure split)
{
  if (isnan (teller->why->difference[split]))
    {
      add_owned (builder, no_breakpoint_sentence (teller));
      return;
    }
  add_owned (builder, headline (teller, split));
  if (split == TB_WHY_BOARD)
    {
      add_gutters (builder, teller);
      add_owned (builder, straight_sentence (teller));
    }
  add_owned (builder, cancel_sentence (teller, split));
  if (has_parts (teller, split))
    add_parts (builder, teller, split);
  if (teller->why->orders > 0)
    add_owned (builder, error_sentence (teller, split));
  if (split != TB_WHY_BREAKPOINT)
    add_owned (builder, place_sentence (teller, split));
  if (split == TB_WHY_ANGLE)
    add_owned (builder, turn_sentence (teller));
}

GStrv
tb_why_sentences (const TbWhy *why, TbWhyMeasure split, gboolean metric)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  const WhyTeller teller = { why, metric };

  g_return_val_if_fail (split < TB_WHY_N_SPLITS, NULL);
  if (why->status != TB_OK)
    g_strv_builder_add (builder, _ (tb_status_sentence (why->status)));
  else if (why->n_inputs == 0)
    g_strv_builder_add (builder, _ ("Nothing has changed: both throws are the same."));
  else
    add_split (builder, &teller, split);
  return g_strv_builder_end (builder);
}

GStrv
tb_why_all_sentences (const TbWhy *why, gboolean metric)
{
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (int split = 0; split < TB_WHY_N_SPLITS; split++)
    {
      g_auto (GStrv) sentences = tb_why_sentences (why, split, metric);

      g_strv_builder_addv (builder, (const char **) sentences);
      if (why->n_inputs == 0)
        break;
    }
  return g_strv_builder_end (builder);
}

char *
tb_why_stretch_name (const TbWhyStretch *stretch, gboolean metric)
{
  TbToldUnit told = tb_told_unit ("ft", 0, metric);
  g_autofree char *from = tb_number_text (told.factor * stretch->from_ft, told.digits);
  g_autofree char *end = tb_number_text (told.factor * stretch->to_ft, told.digits);
  g_autofree char *to = tb_fill_with (_ ("%1$s %2$s"), end, told.unit, NULL);

  if (stretch->to_ft - stretch->from_ft == TB_WHY_STRETCH_FT)
    return tb_fill_with (stretch->from_ft == 0             ? _ ("Front, %s to %s")
                         : stretch->to_ft < TB_HEAD_PIN_FT ? _ ("Middle, %s to %s")
                                                           : _ ("Back, %s to %s"),
                         from, to, NULL);
  /* Translators: a stretch of lane: "20 to 30 ft" */
  return tb_fill_with (_ ("%s to %s"), from, to, NULL);
}
