/* What else there is to try: a box to check for each option that shall stand on the page to take home.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-handout-facts.h"

G_BEGIN_DECLS

#define TB_TYPE_HANDOUT_OPTIONS (tb_handout_options_get_type ())
G_DECLARE_FINAL_TYPE (TbHandoutOptions, tb_handout_options, TB, HANDOUT_OPTIONS, GtkWidget)

/* Signal "changed": a box was checked, or is no longer. */

/* The wish, and the options that come near it; the best of each toolbox is checked. What the facts already
 * have in "after" is none. */
void tb_handout_options_show (TbHandoutOptions *self, const TbNext *next, const TbHandoutFacts *facts);
void tb_handout_options_clear (TbHandoutOptions *self);
/* Those that are checked: of TbNextOption. The caller's. */
GPtrArray *tb_handout_options_get_checked (TbHandoutOptions *self);

G_END_DECLS
