/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-library.h"

G_BEGIN_DECLS

/* An entry from the text of its document. */
TbLibraryEntry *
tb_library_entry_new (TbDocumentKind kind, gboolean builtin, const char *text, gsize length, GError **error);

G_END_DECLS
