/* Reading a parsed document key by key. Every answer that is not there, of another type or too long is a
 * TB_STORE_ERROR that names the key by its path ("before.ball.cover") and says what was expected.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <json-glib/json-glib.h>
#include "tb-store-error.h"

G_BEGIN_DECLS

/* Longest texts, in bytes. */
#define TB_NAME_MAX 200
#define TB_NOTES_MAX 65536
#define TB_ID_MAX 64

typedef struct TbReader
{
  GString *path; /* of the object being read; "" at the top */
  GError **error;
} TbReader;

void tb_reader_init (TbReader *reader, GError **error);
void tb_reader_clear (TbReader *reader);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TbReader, tb_reader_clear)

/* Adds a key, or an index counted from 1, to the path; tb_reader_leave() with the answer takes it away. */
gsize tb_reader_enter (TbReader *reader, const char *key);
gsize tb_reader_enter_index (TbReader *reader, guint index);
void tb_reader_leave (TbReader *reader, gsize mark);

/* Sets the error to "PATH.KEY: sentence" and answers FALSE. key NULL: the object itself. */
gboolean tb_reader_fail (TbReader *reader, const char *key, TbStoreError code, const char *format, ...)
    G_GNUC_PRINTF (4, 5);

/* Whether `object` has a key that is not null. */
gboolean tb_reader_has (JsonObject *object, const char *key);
/* The member, with its type checked; NULL or FALSE if it is not there or of another type. */
JsonObject *tb_reader_object (TbReader *reader, JsonObject *object, const char *key);
JsonArray *tb_reader_list (TbReader *reader, JsonObject *object, const char *key);
gboolean tb_reader_number (TbReader *reader, JsonObject *object, const char *key, double *number);

/* Reads the member that is an object, or each item of the one that is a list, with its place in the path.
 * `read` answers FALSE with the error set. index counts from 0. */
typedef gboolean (*TbReadObject) (TbReader *reader, JsonObject *object, gpointer data);
typedef gboolean (*TbReadItem) (TbReader *reader, JsonNode *item, guint index, gpointer data);
gboolean
tb_reader_part (TbReader *reader, JsonObject *object, const char *key, TbReadObject read, gpointer data);
gboolean
tb_reader_items (TbReader *reader, JsonObject *object, const char *key, TbReadItem read, gpointer data);
/* What an item holds; NULL or FALSE with the error set if it is something else. */
JsonObject *tb_reader_item_object (TbReader *reader, JsonNode *item);
gboolean tb_reader_item_number (TbReader *reader, JsonNode *item, double *number);

/* A text as a document may hold it: a control character becomes a blank (line ends and tabs stay, unless it is to be on
 * one line), and what goes past `limit` bytes is cut off between two characters. Whatever a person types goes through it,
 * so that what is saved can be opened again. */
char *tb_text_fitted (const char *text, gsize limit, gboolean one_line);

/* A string of at most `limit` bytes without control characters; line ends and tabs may be in it. */
const char *tb_reader_string (TbReader *reader, JsonObject *object, const char *key, gsize limit);
/* A name for people: on one line, not empty. */
const char *tb_reader_name (TbReader *reader, JsonObject *object, const char *key);
/* A string, or NULL in *text where the key is left out or null. */
gboolean tb_reader_optional_text (TbReader *reader,
                                  JsonObject *object,
                                  const char *key,
                                  gsize limit,
                                  const char **text);
/* An id: lower-case letters, digits and hyphens, so that it can be the name of a file. */
const char *tb_reader_id (TbReader *reader, JsonObject *object, const char *key);
gboolean tb_id_is_valid (const char *id);
/* Both at once, either of which may be left out if `optional`. */
typedef struct TbDocumentNames
{
  const char *id, *name; /* the parser's */
} TbDocumentNames;
gboolean tb_reader_names (TbReader *reader, JsonObject *object, gboolean optional, TbDocumentNames *names);
/* FALSE if the object has a key that is in none of the lists; each ends with NULL and may itself be NULL. */
gboolean
tb_reader_only (TbReader *reader, JsonObject *object, const char *const *keys, const char *const *more);
/* The number in a node; FALSE if it holds none. */
gboolean tb_node_number (JsonNode *node, double *number);

G_END_DECLS
