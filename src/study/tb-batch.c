/* Many shots at once. Each shot is computed by itself from its index, so which thread runs it cannot matter;
 * threads take the next few indices from a shared counter, so that a slow stretch does not leave one of them
 * alone.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-batch.h"

#include "tb-task.h"

/* Indices taken at a time: enough to keep the counter quiet, few enough to share out a small batch and to
 * notice a cancel within a millisecond or so. */
#define SHARE 16

typedef struct Batch
{
  gint next; /* index, atomic */
  guint count;
  TbBatchShot make;
  gpointer user_data;
  TbBatchItem *items;
  GCancellable *cancellable;
} Batch;

static void
run_one (const Batch *batch, guint index, TbWorkspace *workspace)
{
  TbBatchItem *item = &batch->items[index];
  TbShot shot = tb_shot_default ();
  TbPath path = { 0 };

  batch->make (&shot, index, batch->user_data);
  item->status = tb_shot_run (&shot, workspace, &path, NULL);
  item->result = path.result;
  item->measures = path.measures;
}

static gpointer
work (gpointer data)
{
  Batch *batch = data;
  g_autofree TbWorkspace *workspace = g_malloc (tb_workspace_size ());

  while (!g_cancellable_is_cancelled (batch->cancellable))
    {
      guint first = (guint) g_atomic_int_add (&batch->next, SHARE);

      if (first >= batch->count)
        break;
      for (guint index = first; index < MIN (first + SHARE, batch->count); index++)
        run_one (batch, index, workspace);
    }
  return NULL;
}

gboolean
tb_batch_run (guint count,
              TbBatchShot make,
              gpointer user_data,
              TbBatchItem *items,
              guint threads,
              GCancellable *cancellable)
{
  Batch batch
      = { .count = count, .make = make, .user_data = user_data, .items = items, .cancellable = cancellable };
  guint shares = (count + SHARE - 1) / SHARE;
  guint wanted = threads ? threads : g_get_num_processors ();

  g_return_val_if_fail (count <= G_MAXINT - SHARE * 1024, FALSE);
  for (guint index = 0; index < count; index++)
    items[index] = (TbBatchItem){ .status = TB_N_STATUS };
  tb_work_together ("tenboard-batch", work, &batch, CLAMP (wanted, 1, MAX (shares, 1)));
  return count == 0 || !g_cancellable_is_cancelled (cancellable);
}
