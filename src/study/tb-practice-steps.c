/* A step for everything that changed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-practice-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include "tb-fill.h"
#include "tb-line-move.h"
#include "tb-measure-text.h"
#include "tb-room.h"
#include "tb-unit-pair.h"

/* How a part of the delivery is practised (common practice). */
typedef struct Drill
{
  const char *field;
  const char *more, *less; /* untranslated */
  const char *measure;     /* what tells; NULL for none */
  const char *target;      /* untranslated: %1$s after, %2$s before */
  TbMiss miss;             /* whose tolerance is told; TB_N_MISSES for none */
} Drill;

#define LANDING N_ ("Ask somebody to watch from the side: it lands %1$s past the foul line, instead of %2$s.")

static const Drill drills[] = {
  { "speed_mph",
    N_ ("Start the swing higher and let the feet keep up with it. The arm falls by itself; do not push the "
        "ball."),
    N_ ("Start the swing lower and take the steps slower. Keep the swing loose; do not brake the arm."),
    "time_s", N_ ("A stopwatch tells: %1$s from your hand to the pins, instead of %2$s."), TB_MISS_SPEED },
  { "rev_rate_rpm",
    N_ ("Loose wrist, thumb out first, fingers a moment later. Timing makes the revs, not force: five slow "
        "swings without steps, then five balls."),
    N_ ("Firm flat wrist; thumb and fingers leave the ball closer together."), "revolutions",
    N_ ("Film a strip of tape on the ball: %1$s to the pins, instead of %2$s."), TB_MISS_REV_RATE },
  { "axis_rotation_deg",
    N_ ("Let the fingers come around the side of the ball as it leaves the hand. The elbow stays still."),
    N_ ("Stay behind the ball: the fingers leave it straight up the lane. The elbow stays still."),
    "angle_at_pins_deg", N_ ("Film it from behind. At the pins the angle is %1$s, instead of %2$s."),
    TB_MISS_ROTATION },
  { "axis_tilt_deg", N_ ("Let the hand come more over the side of the ball as it leaves. No twist by force."),
    N_ ("Keep the hand under the ball until it leaves, palm up for longer."), "hook_start_ft",
    N_ ("Film it from behind. It hooks from %1$s, instead of %2$s."), TB_N_MISSES },
  { "release_height_in", N_ ("Stand taller at the line: bend the knee less."),
    N_ ("Bend the sliding knee more, so that the ball leaves the hand lower."), "landing_ft", LANDING,
    TB_N_MISSES },
  { "loft_angle_deg", N_ ("Let go a moment later in the swing, by inches only, and ask the house first."),
    N_ ("Let go earlier, at the ankle: the ball rolls onto the lane without a thud."), "landing_ft", LANDING,
    TB_N_MISSES },
  { "loft_reach_in",
    N_ ("Reach further out past the line as you let go, low over the lane, and ask the house first."),
    N_ ("Let go nearer to the line, beside the sliding foot."), "landing_ft", LANDING, TB_N_MISSES },
  { "grip_pressure",
    N_ ("Hold the ball a little tighter, the same from the first step to the last. Relax if the hand "
        "tires."),
    N_ ("Hold the ball a little looser, the same from the first step to the last. If you have to squeeze, "
        "have the fit checked."),
    "actual_rev_rate_rpm",
    N_ ("The model takes it as %1$s at release, instead of %2$s; how much a grip does is assumed."),
    TB_N_MISSES },
};

static const Drill *
find_drill (const TbField *field)
{
  for (gsize i = 0; i < G_N_ELEMENTS (drills); i++)
    if (g_str_equal (drills[i].field, field->name))
      return &drills[i];
  return NULL;
}

static double
value_in (const TbField *field, const TbRun *run)
{
  return tb_field_get (field, tb_shot_group_const (&run->setup->shot, field->group));
}

/* As many digits as the field has, or one more for a number that was solved for. */
static int
digits_for (double value, int digits)
{
  double scaled = value * pow (10, digits);

  return fabs (scaled - round (scaled)) < 1e-3 ? digits : digits + 1;
}

/* Digits after the point at most, where it takes so many to tell two settings apart. */
#define MOST_DIGITS 6

static char *
setting_text (const PracticeInput *input, const TbField *field)
{
  double from = value_in (field, input->before), to = value_in (field, input->after);
  TbToldUnit told = tb_told_unit (field->unit, field->digits, input->metric);
  int usual
      = input->metric ? told.digits : MAX (digits_for (from, told.digits), digits_for (to, told.digits));
  int digits = tb_digits_apart (from * told.factor, to * told.factor, usual, MOST_DIGITS);
  g_autofree char *old = tb_number_text (from * told.factor, digits);
  g_autofree char *new = tb_number_text (to * told.factor, digits);

  if (told.unit[0] == '\0')
    /* Translators: what is set, its old and its new value. */
    return tb_fill_with (_ ("%1$s: from %2$s to %3$s"), _ (field->label), old, new, NULL);
  if (g_str_equal (field->unit, "board"))
    /* Translators: what is set, its old and its new board. */
    return tb_fill_with (_ ("%1$s: from board %2$s to board %3$s"), _ (field->label), old, new, NULL);
  if (g_str_equal (field->unit, "°"))
    return tb_fill_with (_ ("%1$s: from %2$s° to %3$s°"), _ (field->label), old, new, NULL);
  /* Translators: %4$s is the unit. */
  return tb_fill_with (_ ("%1$s: from %2$s to %3$s %4$s"), _ (field->label), old, new, told.unit, NULL);
}

/* Between which values the pocket is still found; NULL where the throw itself misses it, or when cancelled.
 */
static char *
tolerance_text (const PracticeInput *input, TbMiss miss)
{
  TbRoomAxis axis;
  TbRoomWidth width = { 0 };
  TbToldUnit told;
  g_autofree char *low = NULL, *high = NULL;
  double value;

  if (miss == TB_N_MISSES)
    return NULL;
  axis = tb_room_axis (miss, 2);
  if (!tb_room_width (input->after->setup, &axis, 0, &width, input->cancellable) || !width.in_pocket)
    return NULL;
  value = miss == TB_MISS_AIM ? tb_board_from_x (input->after->path.measures.x_at_arrows)
                              : value_in (axis.field, input->after);
  told = tb_told_unit (axis.field->unit, MAX (axis.field->digits, miss == TB_MISS_SPEED ? 1 : 0),
                       input->metric);
  low = tb_number_text ((value + width.low) * told.factor, told.digits);
  high = tb_number_text ((value + width.high) * told.factor, told.digits);
  if (g_str_equal (axis.field->unit, "board"))
    return tb_fill_with (_ ("From board %1$s to board %2$s still finds the pocket."), low, high, NULL);
  if (g_str_equal (axis.field->unit, "°"))
    return tb_fill_with (_ ("From %1$s° to %2$s° still finds the pocket."), low, high, NULL);
  return tb_fill_with (_ ("From %1$s to %2$s %3$s still finds the pocket."), low, high, told.unit, NULL);
}

static char *
join_sentences (char *one, char *other)
{
  char *both;

  if (!one || !other)
    return one ? one : other;
  /* Translators: two whole sentences, one after the other. */
  both = tb_fill_with (_ ("%1$s %2$s"), one, other, NULL);
  g_free (one);
  g_free (other);
  return both;
}

/* A number that tells, before and after; NULL where one of the runs has none, or nobody could tell them
 * apart. */
static char *
measure_target (const PracticeInput *input, const char *name, const char *sentence)
{
  const TbMeasureInfo *info = tb_measure_find (name);
  const TbMeasures *before = &input->before->path.measures, *after = &input->after->path.measures;
  g_autofree char *from = tb_measure_text (info, before, input->metric);
  g_autofree char *to = tb_measure_text (info, after, input->metric);

  if (isnan (tb_measure_si (info, before)) || isnan (tb_measure_si (info, after)) || g_str_equal (from, to))
    return NULL;
  return tb_fill_with (_ (sentence), to, from, NULL);
}

static void
take_step (GPtrArray *steps, TbPracticeStep step)
{
  g_ptr_array_add (steps, g_memdup2 (&step, sizeof step));
}

static void
add_delivery (const PracticeInput *input, const TbField *field, GPtrArray *steps)
{
  const Drill *drill = find_drill (field);
  gboolean more = value_in (field, input->after) > value_in (field, input->before);
  TbPracticeStep step = { .kind = TB_PRACTICE_DELIVERY, .field = field->name };

  if (!drill)
    {
      step.title = g_strdup (_ ("The other hand"));
      step.how = g_strdup (_ ("Begin with five slow swings without steps, then a lighter ball."));
    }
  else
    {
      step.title = setting_text (input, field);
      step.how = g_strdup (_ (more ? drill->more : drill->less));
      step.target = join_sentences (measure_target (input, drill->measure, drill->target),
                                    tolerance_text (input, drill->miss));
    }
  take_step (steps, step);
}

static double
move_of (const PracticeInput *input, const char *name)
{
  const TbField *field = tb_field_find (TB_GROUP_DELIVERY, name);

  return value_in (field, input->after) - value_in (field, input->before);
}

static void
add_line (const PracticeInput *input, GPtrArray *steps)
{
  TbPracticeStep step = { .kind = TB_PRACTICE_LINE, .field = "laydown_board" };
  const TbMeasureInfo *arrows = tb_measure_find ("board_at_arrows");
  g_autofree char *board = tb_measure_number_text (arrows, &input->after->path.measures, input->metric);

  step.title = tb_line_move_text (move_of (input, "laydown_board"), move_of (input, "aim_board"),
                                  input->after->setup->shot.delivery.hand);
  if (!step.title)
    return;
  step.how = g_strdup (_ ("Find the new place for the sliding foot before each ball, and look at the target "
                          "from the first step until the ball is over it."));
  step.target = join_sentences (tb_fill_with (_ ("At the arrows the ball crosses board %1$s."), board, NULL),
                                tolerance_text (input, TB_MISS_AIM));
  take_step (steps, step);
}

/* Where the ball turns back tells of ball, surface and lane. */
static char *
turn_target (const PracticeInput *input)
{
  return measure_target (input, "breakpoint_ft", N_ ("It turns back at %1$s, instead of %2$s."));
}

static char *
phrase_of (const PracticeInput *input, const TbChange *change)
{
  return tb_change_phrase (change, input->before->setup, input->after->setup, input->metric);
}

static void
add_other (const PracticeInput *input, const TbChange *change, TbPracticeKind kind, GPtrArray *steps)
{
  static const char *const how[] = {
    [TB_PRACTICE_SURFACE] = N_ ("The whole ball alike, wet, before the session. Then five balls on the line "
                                "above, changing nothing else."),
    [TB_PRACTICE_DRILLING]
    = N_ ("A pro shop’s work: take this page along. Then five balls on the line above, "
          "changing nothing else."),
    [TB_PRACTICE_BALL] = N_ ("Five shots with each ball on the same line, changing nothing else: see where "
                             "each turns."),
    [TB_PRACTICE_LANE] = N_ ("The lane’s doing, not yours. Throw the same ball as ever and watch where it "
                             "turns before you move."),
    [TB_PRACTICE_MODEL] = N_ ("A change in the model, not on the lane: there is nothing to practise in it."),
  };
  TbPracticeStep step = { .kind = kind, .title = phrase_of (input, change), .how = g_strdup (_ (how[kind])) };

  step.field = change->field ? change->field->name : NULL;
  if (kind != TB_PRACTICE_MODEL)
    step.target = turn_target (input);
  take_step (steps, step);
}

static gboolean
is_named (const TbField *field, const char *const names[])
{
  return field && g_strv_contains (names, field->name);
}

static TbPracticeKind
kind_of (const TbChange *change)
{
  static const char *const line[] = { "laydown_board", "aim_board", NULL };
  static const char *const drilling[]
      = { "drilling_angle_deg", "pin_to_pap_in", "val_angle_deg", "pap_over_in", "pap_up_in", NULL };

  if (change->kind == TB_CHANGE_ASSUMED || change->kind == TB_CHANGE_OPTIONS)
    return TB_PRACTICE_MODEL;
  if (tb_change_group (change) == TB_GROUP_LANE)
    return TB_PRACTICE_LANE;
  if (tb_change_group (change) == TB_GROUP_DELIVERY)
    return is_named (change->field, line) ? TB_PRACTICE_LINE : TB_PRACTICE_DELIVERY;
  if (change->kind == TB_CHANGE_HOLES || is_named (change->field, drilling))
    return TB_PRACTICE_DRILLING;
  return change->field && change->field->offset == offsetof (TbBall, cover.roughness) ? TB_PRACTICE_SURFACE
                                                                                      : TB_PRACTICE_BALL;
}

/* Changes to a ball that one and the same ball cannot have are told as another ball, and take all of its
 * parts with them. */
static guint
find_changes (const PracticeInput *input, TbChange changes[TB_MAX_CHANGES])
{
  guint count = tb_changes_find (input->before->setup, input->after->setup, changes);

  for (guint i = 0; i < count; i++)
    if (kind_of (&changes[i]) == TB_PRACTICE_BALL)
      return tb_changes_merge_ball (changes, count);
  return count;
}

/* A layout is one step, however many of its numbers changed. */
static gboolean
has_kind (const GPtrArray *steps, TbPracticeKind kind)
{
  for (guint i = 0; i < steps->len; i++)
    if (((const TbPracticeStep *) g_ptr_array_index (steps, i))->kind == kind)
      return TRUE;
  return FALSE;
}

static void
add_step (const PracticeInput *input, const TbChange *change, GPtrArray *steps)
{
  TbPracticeKind kind = kind_of (change);

  if (kind == TB_PRACTICE_DELIVERY)
    add_delivery (input, change->field, steps);
  else if (kind == TB_PRACTICE_LINE && !has_kind (steps, kind))
    add_line (input, steps);
  else if (kind != TB_PRACTICE_LINE && !(kind == TB_PRACTICE_DRILLING && has_kind (steps, kind)))
    add_other (input, change, kind, steps);
}

gboolean
practice_add_steps (const PracticeInput *input, GPtrArray *steps)
{
  TbChange changes[TB_MAX_CHANGES];
  guint count = find_changes (input, changes);

  for (int kind = TB_PRACTICE_LINE; kind <= TB_PRACTICE_MODEL; kind++)
    for (guint i = 0; i < count; i++)
      if ((int) kind_of (&changes[i]) == kind)
        add_step (input, &changes[i], steps);
  return !g_cancellable_is_cancelled (input->cancellable);
}
