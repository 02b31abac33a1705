/* Saves one picture or clip at a time for somebody who may go away meanwhile, and says how far it is and what
 * became of it. A clip that nobody waits for any more is called off.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-export-job.h"

G_BEGIN_DECLS

#define TB_TYPE_EXPORT_SAVER (tb_export_saver_get_type ())
G_DECLARE_FINAL_TYPE (TbExportSaver, tb_export_saver, TB, EXPORT_SAVER, GObject)

/* Signals: "progress" (double): the share of a clip that is done, 0 to 1; "finished" (char *): a whole
 * sentence that says what became of it, when the saver is busy no longer. */
TbExportSaver *tb_export_saver_new (void);

/* Not while it is busy. */
void tb_export_saver_save_picture (TbExportSaver *self, const TbPictureJob *job);
void tb_export_saver_save_clip (TbExportSaver *self, const TbClipJob *job);
/* Calls off a clip; a picture is through in a moment. */
void tb_export_saver_cancel (TbExportSaver *self);
gboolean tb_export_saver_is_busy (TbExportSaver *self);
gboolean tb_export_saver_is_saving_clip (TbExportSaver *self);

G_END_DECLS
