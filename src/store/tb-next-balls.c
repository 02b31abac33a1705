/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-next-balls.h"

GArray *
tb_next_balls (TbLibrary *library, const TbSetup *setup)
{
  GListModel *entries = tb_library_get_entries (library, TB_DOCUMENT_BALL);
  GArray *balls = g_array_new (FALSE, FALSE, sizeof (TbNextBall));

  for (guint i = 0; i < g_list_model_get_n_items (entries); i++)
    {
      g_autoptr (TbLibraryEntry) entry = g_list_model_get_item (entries, i);
      const char *id = tb_library_entry_get_id (entry);
      g_autoptr (TbSetup) chosen = tb_library_choose (library, setup, TB_DOCUMENT_BALL, id, NULL);
      TbNextBall ball;

      if (!chosen)
        continue;
      ball = (TbNextBall){ id, tb_library_entry_get_name (entry), chosen->shot.ball };
      g_array_append_val (balls, ball);
    }
  return balls;
}
