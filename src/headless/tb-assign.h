/* --set: one field of a study, changed by its name.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-library.h"

G_BEGIN_DECLS

/* A study with "KEY=VALUE" applied. KEY is GROUP.FIELD by core's field tables, "bowler", "ball" or
 * "lane.pattern" (with the id of a document), or "assumed.NAME", for both sides unless "before." or "after."
 * stands before it. NULL and TB_EXIT_USAGE with a sentence if it will not do. */
TbStudy *tb_assign (const TbStudy *study, TbLibrary *library, const char *assignment, GError **error);

G_END_DECLS
