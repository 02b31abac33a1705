/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-clinic-page.h"
#include "tb-fill.h"
#include "tb-quantity.h"

/* Parts smaller than this are not seen, boards. */
#define SMALLEST_PART 0.05
#define MOST_SENTENCES 2
#define MOST_TRIES 3

static char *
field_text (const TbField *field, const TbSetup *setup, TbUnits units)
{
  double value = tb_field_get (field, tb_shot_group_const (&setup->shot, field->group));
  TbQuantity quantity = tb_quantity_for_field (field, units);

  if (field->kind == TB_FIELD_CHOICE)
    return g_strdup (_ (field->choices[(int) value].label));
  return tb_quantity_format (&quantity, value);
}

static double
field_share (const TbField *field, const TbSetup *setup)
{
  double value = tb_field_get (field, tb_shot_group_const (&setup->shot, field->group));

  return field->kind == TB_FIELD_CHOICE ? NAN : (value - field->min) / (field->max - field->min);
}

/* What there is no field for. */
static char *
other_text (const TbChange *change, const TbSetup *setup, TbSide side)
{
  switch (change->kind)
    {
    case TB_CHANGE_PATTERN:
      return g_strdup (tb_document_display_name (setup->pattern->name));
    case TB_CHANGE_WEAR:
      return tb_number_format (setup->shot.lane.games_played, 1);
    case TB_CHANGE_BALL:
      if (setup->ball_name != NULL)
        return g_strdup (tb_document_display_name (setup->ball_name));
      /* fall through */
    default:
      return g_strdup (side == TB_SIDE_BEFORE ? C_ ("a change", "as it was") : C_ ("a change", "another"));
    }
}

static TbClinicChange
describe_change (const TbChange *change, const TbStudy *study, TbUnits units)
{
  const TbSetup *before = study->side[TB_SIDE_BEFORE], *after = study->side[TB_SIDE_AFTER];

  if (change->field == NULL)
    return (TbClinicChange){ tb_change_label (change), other_text (change, before, TB_SIDE_BEFORE),
                             other_text (change, after, TB_SIDE_AFTER), NAN, NAN };
  return (TbClinicChange){ tb_change_label (change), field_text (change->field, before, units),
                           field_text (change->field, after, units), field_share (change->field, before),
                           field_share (change->field, after) };
}

/* Another ball is one change to a room, however many numbers it has. */
static guint
changes_for_people (const TbStudy *study, TbChange changes[TB_MAX_CHANGES])
{
  const TbSetup *before = study->side[TB_SIDE_BEFORE], *after = study->side[TB_SIDE_AFTER];
  guint n = tb_changes_find (before, after, changes);

  if (before->ball_name != NULL && after->ball_name != NULL
      && !g_str_equal (before->ball_name, after->ball_name))
    return tb_changes_merge_ball (changes, n);
  return n;
}

guint
tb_clinic_changes (const TbStudy *study,
                   TbUnits units,
                   TbClinicChange changes[TB_CLINIC_MOST_CHANGES],
                   guint *more)
{
  TbChange found[TB_MAX_CHANGES];
  guint n = changes_for_people (study, found), told = MIN (n, TB_CLINIC_MOST_CHANGES);

  for (guint i = 0; i < told; i++)
    changes[i] = describe_change (&found[i], study, units);
  *more = n - told;
  return told;
}

static int
compare_parts (gconstpointer a, gconstpointer b)
{
  double x = fabs (((const TbClinicPart *) a)->part), y = fabs (((const TbClinicPart *) b)->part);

  return (x < y) - (x > y);
}

static char *
part_text (double boards)
{
  g_autofree char *number = tb_number_format_signed (boards, 1);

  return g_strdup_printf ("%s %s", number, _ ("boards"));
}

guint
tb_clinic_parts (const TbWhy *why, TbClinicPart parts[TB_CLINIC_MOST_PARTS])
{
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (TbClinicPart));
  guint n;

  for (guint i = 0; why->status == TB_OK && i < why->n_inputs; i++)
    {
      TbClinicPart part
          = { .name = tb_change_label (&why->input[i].change), .part = why->input[i].part[TB_WHY_BOARD] };

      if (fabs (part.part) >= SMALLEST_PART)
        g_array_append_val (all, part);
    }
  g_array_sort (all, compare_parts);
  n = MIN (all->len, TB_CLINIC_MOST_PARTS);
  for (guint i = 0; i < n; i++)
    {
      parts[i] = g_array_index (all, TbClinicPart, i);
      parts[i].number = part_text (parts[i].part);
    }
  return n;
}

char *
tb_clinic_why_words (const TbWhy *why, TbUnits units)
{
  g_auto (GStrv) sentences = tb_why_sentences (why, TB_WHY_BOARD, units == TB_UNITS_METRIC);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; sentences[i] != NULL && i < MOST_SENTENCES; i++)
    g_string_append_printf (text, i > 0 ? "\n%s" : "%s", sentences[i]);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static int
compare_tries (gconstpointer a, gconstpointer b)
{
  const TbNextOption *x = *(TbNextOption *const *) a, *y = *(TbNextOption *const *) b;
  double key_x = x->reach == TB_REACH_MET ? x->effort : fabs (x->missing);
  double key_y = y->reach == TB_REACH_MET ? y->effort : fabs (y->missing);

  return (key_x > key_y) - (key_x < key_y);
}

/* Borrowed options that meet the wish, the easiest first; where there are none those that come nearest, the
 * nearest first. A wall has no room to tell the two apart. */
static GPtrArray *
tries_of (const TbNext *next)
{
  GPtrArray *tries = g_ptr_array_new ();
  TbReach best = TB_REACH_NOT;

  for (guint i = 0; i < next->options->len; i++)
    best = MIN (best, ((TbNextOption *) next->options->pdata[i])->reach);
  for (guint i = 0; best != TB_REACH_NOT && i < next->options->len; i++)
    {
      TbNextOption *option = next->options->pdata[i];

      if (option->reach == best && option->n_changes > 0)
        g_ptr_array_add (tries, option);
    }
  g_ptr_array_sort (tries, compare_tries);
  g_ptr_array_set_size (tries, (int) MIN (tries->len, MOST_TRIES));
  return tries;
}

/* What comes short is told with how far it gets. */
static char *
try_text (const TbNext *next, const TbNextOption *option, gboolean metric)
{
  g_autofree char *change = tb_next_change_text (option, metric);
  g_autofree char *gets = tb_next_wished_text (next, option, metric);

  if (option->reach == TB_REACH_MET)
    return g_steal_pointer (&change);
  /* Translators: a change and what it comes to: "Speed: 17.00 → 18.50 mph (4.9°)" */
  return tb_fill_with (_ ("%1$s (%2$s)"), change, gets, NULL);
}

char *
tb_clinic_try_words (const TbNext *next, TbUnits units)
{
  gboolean metric = units == TB_UNITS_METRIC;
  g_autoptr (GPtrArray) tries = tries_of (next);
  g_autofree char *wish = tb_next_wish_text (next, metric);
  g_autoptr (GString) text = g_string_new (wish);

  if (tries->len > 0 && ((TbNextOption *) tries->pdata[0])->reach == TB_REACH_NEARER)
    g_string_append_printf (text, "\n%s", _ ("Nothing gets all the way. The nearest:"));
  for (guint i = 0; i < tries->len; i++)
    {
      g_autofree char *try = try_text (next, tries->pdata[i], metric);

      g_string_append_printf (text, "\n%u. %s", i + 1, try);
    }
  if (tries->len == 0)
    g_string_append_printf (text, "\n%s", _ ("Nothing inside the usual limits gets nearer."));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

char *
tb_clinic_try_caution (const TbNext *next)
{
  g_autoptr (GPtrArray) tries = tries_of (next);

  for (guint i = 0; i < tries->len; i++)
    {
      const TbNextOption *option = tries->pdata[i];

      if (option->knob->caution != NULL)
        return g_strdup (_ (option->knob->caution));
    }
  return g_strdup (_ ("House rules and your coach come first."));
}

const char *
tb_clinic_slide_name (TbClinicSlide slide)
{
  const char *const names[] = { _ ("The choice"),  _ ("The question"), _ ("The vote"),   _ ("The throw"),
                                _ ("The numbers"), _ ("The reasons"),  _ ("What to try") };

  return names[slide];
}

const char *
tb_clinic_answer (const TbTalkStep *step)
{
  return step->right >= 0 ? step->choices->pdata[step->right] : NULL;
}

char *
tb_clinic_room_verdict (TbClinic *clinic)
{
  const TbTalkStep *step = tb_clinic_get_step (clinic);
  guint total = tb_clinic_get_total (clinic), right;

  if (step == NULL || step->right < 0 || total == 0)
    return g_strdup ("");
  right = tb_clinic_get_votes (clinic, (guint) step->right);
  if (right == total)
    return g_strdup_printf (
        ngettext ("All of you had it right: %u vote.", "All of you had it right: %u votes.", total), total);
  if (right == 0)
    return g_strdup_printf (
        ngettext ("Nobody had it right: %u vote.", "Nobody had it right: %u votes.", total), total);
  /* Translators: how many of all votes were right. */
  return g_strdup_printf (ngettext ("%u of %u had it right.", "%u of %u had it right.", right), right, total);
}

const char *
tb_clinic_rate_words (double rate)
{
  if (rate > 0.75)
    return "";
  if (rate > 0.375)
    return _ ("½ speed");
  return rate > 0.1875 ? _ ("¼ speed") : _ ("⅛ speed");
}

char *
tb_clinic_hint (TbClinic *clinic)
{
  switch (tb_clinic_get_slide (clinic))
    {
    case TB_CLINIC_START:
      return g_strdup (_ ("Up, Down: choose · Space: begin · N: presenter’s window · Esc Esc: leave"));
    case TB_CLINIC_VOTE:
      return g_strdup_printf (_ ("1 to %u: a vote · Backspace: take it back · Space: on"),
                              tb_clinic_get_step (clinic)->choices->len);
    case TB_CLINIC_THROW:
      return g_strdup (
          tb_clinic_is_still (clinic)
              ? _ ("Space: to the next mark · J, L: a frame back, on · O: overlaid or apart")
              : _ ("Space: throw, then on · F: freeze · J, L: a frame · Up, Down: faster, slower · R: "
                   "again · O: overlaid"));
    default:
      return g_strdup (_ ("Space: on · Page Up: back · B: blank · H: controls"));
    }
}
