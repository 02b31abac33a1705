/* What all documents share: kinds, schema versions, the folders they live in, reading and saving.
 *
 * A document is a JSON object that begins with its kind and schema version: "tenboard": "ball", "version": 1.
 * Documents come from elsewhere, and are taken for hostile: see tb-json-check.h and tb-json-reader.h.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-json-reader.h"
#include "tb-json-writer.h"

G_BEGIN_DECLS

typedef enum TbDocumentKind
{
  TB_DOCUMENT_BOWLER,
  TB_DOCUMENT_BALL,
  TB_DOCUMENT_PATTERN,
  TB_DOCUMENT_STUDY,
  TB_DOCUMENT_LESSON,
  TB_DOCUMENT_PROGRESS,
  TB_N_DOCUMENT_KINDS
} TbDocumentKind;

/* Ends of the name of a document's file. */
#define TB_DOCUMENT_SUFFIX ".json"

/* "bowler", "ball", "pattern", "study", "lesson", "progress": what stands behind "tenboard" in the file. */
const char *tb_document_kind_name (TbDocumentKind kind);
/* Folder for the user's own documents of a kind: $XDG_DATA_HOME/tenboard/balls and so on. */
char *tb_document_folder (TbDocumentKind kind);
/* A name or note of a document for people: those of built-in documents are translated, any others left as they are.
 * Never NULL. */
const char *tb_document_display_name (const char *name);
/* All of those texts, untranslated; ends with NULL. */
extern const char *const tb_builtin_texts[];

/* Parses a text within the limits and checks that it is a document of the kind. NULL and a TB_STORE_ERROR
 * otherwise. */
JsonNode *tb_document_parse (TbDocumentKind kind, const char *text, gsize length, GError **error);
/* The two keys that every document begins with; they may be left out if `embedded`. */
gboolean
tb_document_check_head (TbReader *reader, JsonObject *object, TbDocumentKind kind, gboolean embedded);
void tb_document_write_head (TbJsonWriter *writer, TbDocumentKind kind);

/* Reads an ordinary file of at most TB_JSON_MAX_BYTES. */
char *tb_document_read_file (const char *path, gsize *length, GError **error);
/* Writes a file so that at any moment the old or the new one is there, whole; makes its folder if it has
 * none. */
gboolean tb_document_save_file (const char *path, const char *text, GError **error);
/* Paths of the documents in a folder, at most so many, in the order of their names: a new array of char *. A folder that
 * is not there has none. */
GPtrArray *tb_document_list_folder (const char *folder, guint most);
/* Turns a clause about a document into a sentence: puts the name of the file before it, and a full stop after
 * it. */
void tb_document_finish_error (GError **error, const char *name);

G_END_DECLS
