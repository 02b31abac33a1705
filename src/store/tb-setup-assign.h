/* One value of a setup, changed by its key: what --set and the steps of lessons share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-library.h"

G_BEGIN_DECLS

/* A setup with a value changed. key is GROUP.FIELD by core's field tables, or "bowler", "ball" or "lane.pattern" with
 * the id of a document. NULL and a clause without the key: TB_STORE_ERROR_UNKNOWN_KEY, or what is wrong with the
 * value. */
TbSetup *
tb_setup_assign (const TbSetup *setup, TbLibrary *library, const char *key, const char *value, GError **error);

G_END_DECLS
