/* What a page to take home tells of a session, worked out beside the main thread: first the facts of the two
 * throws, then what else to try.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-handout-facts.h"
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_HANDOUT_WORK (tb_handout_work_get_type ())
G_DECLARE_FINAL_TYPE (TbHandoutWork, tb_handout_work, TB, HANDOUT_WORK, GObject)

/* Signals: "facts" when there are others, and so no longer anything else to try; "next" when there is. */
TbHandoutWork *tb_handout_work_new (TbSession *session);

/* Begins anew, for the study as it is; nothing is told of what was under way. Both its runs were thrown. */
void tb_handout_work_start (TbHandoutWork *self);
void tb_handout_work_cancel (TbHandoutWork *self);
gboolean tb_handout_work_is_busy (TbHandoutWork *self);
/* The last that were told; NULL before. Borrowed, until others are. */
const TbHandoutFacts *tb_handout_work_get_facts (TbHandoutWork *self);
const TbNext *tb_handout_work_get_next (TbHandoutWork *self);

G_END_DECLS
