/* What a document chosen from the library does to a setup.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-library.h"

/* The ball of the setup, or another one, drilled for the bowler who throws it. */
static TbSetup *
choose_ball (const TbSetup *setup, const TbBallDocument *document)
{
  TbBall ball = document->ball;

  if (setup->bowler_id || setup->bowler_name)
    {
      ball.pap_over = setup->shot.ball.pap_over;
      ball.pap_up = setup->shot.ball.pap_up;
    }
  return tb_setup_with_ball (setup, &ball, document->id, document->name);
}

static TbSetup *
choose_bowler (TbLibrary *self, const TbSetup *setup, const TbBowler *bowler)
{
  g_autoptr (TbSetup) delivered = tb_setup_with_bowler (setup, &bowler->delivery, bowler->id, bowler->name);
  TbBall fitted = tb_bowler_fit_ball (bowler, &setup->shot.ball);
  g_autoptr (TbSetup) drilled = tb_setup_with_ball (delivered, &fitted, setup->ball_id, setup->ball_name);
  /* A usual ball that has been removed since leaves the one that is there. */
  TbLibraryEntry *usual
      = bowler->ball_id ? tb_library_find (self, TB_DOCUMENT_BALL, bowler->ball_id, NULL) : NULL;

  return usual ? choose_ball (drilled, tb_library_entry_get_ball (usual)) : g_steal_pointer (&drilled);
}

TbSetup *
tb_library_choose (TbLibrary *self, const TbSetup *setup, TbDocumentKind kind, const char *id, GError **error)
{
  TbLibraryEntry *entry = tb_library_find (self, kind, id, error);

  if (!entry)
    return NULL;
  switch (kind)
    {
    case TB_DOCUMENT_BOWLER:
      return choose_bowler (self, setup, tb_library_entry_get_bowler (entry));
    case TB_DOCUMENT_BALL:
      return choose_ball (setup, tb_library_entry_get_ball (entry));
    default:
      return tb_setup_with_pattern (setup, tb_library_entry_get_pattern (entry));
    }
}
