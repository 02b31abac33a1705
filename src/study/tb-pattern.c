/* Patterns: a film with its description.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-pattern.h"

#include <math.h>

static TbPattern *
pattern_alloc (const char *id, const char *name, TbPatternKind kind)
{
  TbPattern *pattern = g_new0 (TbPattern, 1);

  g_atomic_ref_count_init (&pattern->ref_count);
  pattern->id = g_strdup (id);
  pattern->name = g_strdup (name ? name : "");
  pattern->kind = kind;
  return pattern;
}

/* Answers the pattern if its film will do. */
static TbPattern *
pattern_finish (TbPattern *pattern, TbStatus filled, TbStatus *status)
{
  TbStatus found = filled == TB_OK ? tb_oil_check (&pattern->oil) : filled;

  if (status)
    *status = found;
  if (found != TB_OK)
    g_clear_pointer (&pattern, tb_pattern_unref);
  return pattern;
}

TbPattern *
tb_pattern_new_profile (const char *id, const char *name, const TbOilProfile *profile, TbStatus *status)
{
  TbPattern *pattern = pattern_alloc (id, name, TB_PATTERN_PROFILE);

  pattern->profile = *profile;
  return pattern_finish (pattern, tb_oil_fill_profile (&pattern->oil, profile), status);
}

/* The nearest film that some number of units stands for exactly. Not every thickness in metres does: a table
 * is saved in units, and a film that was saved and opened again must be the same film to the last bit. */
static double
film_in_whole_units (double film)
{
  double units = tb_units_from_film (film);

  if (tb_film_from_units (nextafter (units, HUGE_VAL)) == film
      || tb_film_from_units (nextafter (units, -HUGE_VAL)) == film)
    return film;
  return tb_film_from_units (units);
}

TbPattern *
tb_pattern_new_table (const char *id, const char *name, const TbOil *oil, TbStatus *status)
{
  TbPattern *pattern = pattern_alloc (id, name, TB_PATTERN_TABLE);

  for (int row = 0; row < TB_OIL_ROWS; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      tb_oil_set_cell (&pattern->oil, row, column, film_in_whole_units (tb_oil_cell (oil, row, column)));
  tb_oil_reflect (&pattern->oil);
  return pattern_finish (pattern, TB_OK, status);
}

TbPattern *
tb_pattern_new_strips (const char *id, const char *name, const TbStrip *strips, guint count, TbStatus *status)
{
  TbPattern *pattern = pattern_alloc (id, name, TB_PATTERN_STRIPS);
  TbStatus laid
      = count <= TB_STRIPS_MAX ? tb_strips_lay (strips, count, &pattern->oil, NULL) : TB_ERROR_OUT_OF_RANGE;

  pattern->n_strips = count;
  pattern->strips = g_memdup2 (strips, count * sizeof *strips);
  return pattern_finish (pattern, laid, status);
}

TbPattern *
tb_pattern_renamed (const TbPattern *pattern, const char *id, const char *name)
{
  TbPattern *copy = pattern_alloc (id, name, pattern->kind);

  copy->profile = pattern->profile;
  copy->n_strips = pattern->n_strips;
  copy->strips = g_memdup2 (pattern->strips, pattern->n_strips * sizeof *pattern->strips);
  copy->oil = pattern->oil;
  return copy;
}

TbPattern *
tb_pattern_ref (TbPattern *pattern)
{
  g_atomic_ref_count_inc (&pattern->ref_count);
  return pattern;
}

void
tb_pattern_unref (TbPattern *pattern)
{
  if (!g_atomic_ref_count_dec (&pattern->ref_count))
    return;
  g_free (pattern->id);
  g_free (pattern->name);
  g_free (pattern->strips);
  g_free (pattern);
}
