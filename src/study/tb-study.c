/* Studies.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-study.h"

TbStudy *
tb_study_new (TbSetup *before, TbSetup *after, const char *title, const char *notes)
{
  TbStudy *study = g_new0 (TbStudy, 1);

  g_atomic_ref_count_init (&study->ref_count);
  study->side[TB_SIDE_BEFORE] = tb_setup_ref (before);
  study->side[TB_SIDE_AFTER] = tb_setup_ref (after);
  study->title = g_strdup (title ? title : "");
  study->notes = g_strdup (notes ? notes : "");
  return study;
}

TbStudy *
tb_study_with_side (const TbStudy *study, TbSide side, TbSetup *setup)
{
  TbSetup *before = side == TB_SIDE_BEFORE ? setup : study->side[TB_SIDE_BEFORE];
  TbSetup *after = side == TB_SIDE_AFTER ? setup : study->side[TB_SIDE_AFTER];

  return tb_study_new (before, after, study->title, study->notes);
}

TbStudy *
tb_study_with_text (const TbStudy *study, const char *title, const char *notes)
{
  return tb_study_new (study->side[TB_SIDE_BEFORE], study->side[TB_SIDE_AFTER], title, notes);
}

TbStudy *
tb_study_swapped (const TbStudy *study)
{
  return tb_study_new (study->side[TB_SIDE_AFTER], study->side[TB_SIDE_BEFORE], study->title, study->notes);
}

gboolean
tb_study_equal (const TbStudy *a, const TbStudy *b)
{
  return a == b
         || (g_str_equal (a->title, b->title) && g_str_equal (a->notes, b->notes)
             && tb_setup_equal (a->side[TB_SIDE_BEFORE], b->side[TB_SIDE_BEFORE])
             && tb_setup_equal (a->side[TB_SIDE_AFTER], b->side[TB_SIDE_AFTER]));
}

TbStudy *
tb_study_ref (TbStudy *study)
{
  g_atomic_ref_count_inc (&study->ref_count);
  return study;
}

void
tb_study_unref (TbStudy *study)
{
  if (!g_atomic_ref_count_dec (&study->ref_count))
    return;
  for (int side = 0; side < TB_N_SIDES; side++)
    tb_setup_unref (study->side[side]);
  g_free (study->title);
  g_free (study->notes);
  g_free (study);
}
