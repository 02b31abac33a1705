/* The table of a bag: a row for each ball, a column for each measure, sorted by any of them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-bag.h"
#include "tb-session.h"

G_BEGIN_DECLS

/* What a view of columns is filled with. Lives in its page. */
typedef struct TbBagTable
{
  GtkColumnView *view; /* borrowed */
  const TbBag *bag;    /* likewise; NULL for none */
  TbBallLine line;
  TbUnits units;
  GListStore *rows;
  GtkSingleSelection *selection;
} TbBagTable;

/* The measure that belongs to the room. */
#define TB_BAG_TABLE_ANGLE "angle_at_pins_deg"

void tb_bag_table_init (TbBagTable *self, GtkColumnView *view);
/* Before the view goes away. */
void tb_bag_table_clear (TbBagTable *self);
/* Another bag, or another way of telling it. */
void tb_bag_table_show (TbBagTable *self, const TbBag *bag, TbBallLine line, TbUnits units);
/* Index in the bag of the row that is chosen; G_MAXUINT for none. */
guint tb_bag_table_chosen (const TbBagTable *self);

G_END_DECLS
