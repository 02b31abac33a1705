/* Many shots at once, on all cores. The result is the same, bit for bit, whatever the number of threads.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-core.h"

G_BEGIN_DECLS

typedef struct TbBatchItem
{
  TbStatus status;
  TbResult result;
  TbMeasures measures;
} TbBatchItem;

/* Fills in the shot with an index (0 to count − 1). Called from several threads at once; may not block. */
typedef void (*TbBatchShot) (TbShot *shot, guint index, gpointer user_data);

/* Runs `count` shots into `items`. threads 0 means one a processor. FALSE if cancelled: what was not run has status
 * TB_N_STATUS. */
gboolean tb_batch_run (guint count,
                       TbBatchShot make,
                       gpointer user_data,
                       TbBatchItem *items,
                       guint threads,
                       GCancellable *cancellable);

G_END_DECLS
