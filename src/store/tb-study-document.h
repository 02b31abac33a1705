/* A study as a document. It embeds the ball and pattern it used, so that it can be sent to someone; where a
 * ball or pattern is expected, a string is taken as the id of a built-in or user document.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-library.h"

G_BEGIN_DECLS

char *tb_study_to_text (const TbStudy *study);
/* The library is asked for what is named by its id. The error is a clause without the file's name. */
TbStudy *tb_study_from_text (TbLibrary *library, const char *text, gsize length, GError **error);

/* A file anywhere. The error is a whole sentence with the file's name. */
TbStudy *tb_study_load (TbLibrary *library, const char *path, GError **error);
gboolean tb_study_save (const TbStudy *study, const char *path, GError **error);

G_END_DECLS
