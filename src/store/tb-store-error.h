/* What can go wrong with a document. Every message is one whole translated sentence: the file, the line or
 * the key, and what was expected there.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include "tb-core.h"

G_BEGIN_DECLS

#define TB_STORE_ERROR (tb_store_error_quark ())
GQuark tb_store_error_quark (void);

typedef enum TbStoreError
{
  TB_STORE_ERROR_READ,      /* the file cannot be read */
  TB_STORE_ERROR_TOO_LARGE, /* more bytes, deeper nesting or more values than a document has */
  TB_STORE_ERROR_NOT_TEXT,  /* not UTF-8, or with a NUL */
  TB_STORE_ERROR_SYNTAX,    /* not JSON */
  TB_STORE_ERROR_NOT_OURS,  /* JSON, but not the kind of document expected */
  TB_STORE_ERROR_VERSION,   /* written by a newer Tenboard */
  TB_STORE_ERROR_MISSING_KEY,
  TB_STORE_ERROR_UNKNOWN_KEY,
  TB_STORE_ERROR_TYPE,       /* a string where a number is expected, … */
  TB_STORE_ERROR_VALUE,      /* out of range, or a word that is none of the choices */
  TB_STORE_ERROR_UNKNOWN_ID, /* no built-in or user document is called that */
  TB_STORE_ERROR_WRITE       /* the file cannot be written; what was there before still is */
} TbStoreError;

/* What a field accepts, translated: "a number from 5 to 28 mph", "one of right, left". */
char *tb_field_expected (const TbField *field);
/* What is wrong with a value (in the field's unit), translated: "80 is out of range; a number from 5 to 28
 * mph was expected". */
char *tb_field_sentence (const TbField *field, TbStatus status, double value);
/* What core found wrong with a shot: the field's full name and the above, or core's own sentence. */
char *tb_problem_sentence (const TbProblem *problem);
/* A piece of somebody else's text, short enough and without control characters, to be quoted in a sentence.
 */
char *tb_quotable (const char *text);
/* A file's name, likewise, but whole. */
char *tb_quotable_file (const char *filename);

G_END_DECLS
