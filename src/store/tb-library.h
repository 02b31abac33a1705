/* The bowlers, balls and patterns that can be chosen from: those built in, and the user's own over them.
 *
 * A document of the user's with the id of a built-in one takes its place. A file that cannot be read is left
 * out and told of; it never keeps the others from being there.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-ball-document.h"
#include "tb-bowler.h"
#include "tb-pattern-document.h"
#include "tb-study.h"

G_BEGIN_DECLS

/* One of them. Properties "id", "name" (for people, translated), "note" (or NULL) and "builtin" for list
 * widgets. */
#define TB_TYPE_LIBRARY_ENTRY (tb_library_entry_get_type ())
G_DECLARE_FINAL_TYPE (TbLibraryEntry, tb_library_entry, TB, LIBRARY_ENTRY, GObject)

const char *tb_library_entry_get_id (TbLibraryEntry *self);
const char *tb_library_entry_get_name (TbLibraryEntry *self);
const char *tb_library_entry_get_note (TbLibraryEntry *self);
gboolean tb_library_entry_is_builtin (TbLibraryEntry *self);
/* The document; NULL if the entry is of another kind. Borrowed. */
TbBowler *tb_library_entry_get_bowler (TbLibraryEntry *self);
TbBallDocument *tb_library_entry_get_ball (TbLibraryEntry *self);
TbPattern *tb_library_entry_get_pattern (TbLibraryEntry *self);

#define TB_TYPE_LIBRARY (tb_library_get_type ())
G_DECLARE_FINAL_TYPE (TbLibrary, tb_library, TB, LIBRARY, GObject)

/* With everything read. */
TbLibrary *tb_library_new (void);
/* Reads the user's folders again; the lists change in place. */
void tb_library_reload (TbLibrary *self);
/* List of TbLibraryEntry of a kind (not TB_DOCUMENT_STUDY): built-in ones in their order, then the user's by
 * name. Borrowed. */
GListModel *tb_library_get_entries (TbLibrary *self, TbDocumentKind kind);
/* Borrowed; NULL and TB_STORE_ERROR_UNKNOWN_ID if there is none of that id. */
TbLibraryEntry *tb_library_find (TbLibrary *self, TbDocumentKind kind, const char *id, GError **error);
/* One sentence for each file of the user's that could not be read; ends with NULL. Borrowed. */
const char *const *tb_library_get_problems (TbLibrary *self);

/* Saves to the user's folder under the document's id, and reloads. */
gboolean tb_library_save_bowler (TbLibrary *self, const TbBowler *bowler, GError **error);
gboolean tb_library_save_ball (TbLibrary *self, const TbBallDocument *ball, GError **error);
gboolean tb_library_save_pattern (TbLibrary *self, const TbPattern *pattern, GError **error);
/* Removes one of the user's own (what is built in comes back), and reloads. */
gboolean tb_library_remove (TbLibrary *self, TbDocumentKind kind, const char *id, GError **error);

/* A setup with a document chosen by its id. A bowler brings the delivery, the PAP and the usual ball; a ball
 * chosen while a bowler is there is drilled for that bowler. */
TbSetup *tb_library_choose (TbLibrary *self,
                            const TbSetup *setup,
                            TbDocumentKind kind,
                            const char *id,
                            GError **error);
/* The built-in study: before and after alike, a line that finds the pocket of the house pattern. */
TbStudy *tb_library_start_study (void);

G_END_DECLS
