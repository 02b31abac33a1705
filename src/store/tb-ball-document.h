/* A ball as a document: built in, the user's own, or embedded in a study.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-document.h"

G_BEGIN_DECLS

/* Immutable and counted. */
typedef struct TbBallDocument
{
  gatomicrefcount ref_count;
  char *id;   /* NULL only for one that stands in a study */
  char *name; /* for people; NULL likewise */
  char *note; /* for people; NULL if there is none */
  TbBall ball;
} TbBallDocument;

TbBallDocument *tb_ball_document_new (const char *id, const char *name, const char *note, const TbBall *ball);
TbBallDocument *tb_ball_document_ref (TbBallDocument *document);
void tb_ball_document_unref (TbBallDocument *document);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbBallDocument, tb_ball_document_unref)

/* The text of a file, and back. The ball is checked as a whole too: differentials, holes. */
char *tb_ball_document_to_text (const TbBallDocument *document);
TbBallDocument *tb_ball_document_from_text (const char *text, gsize length, GError **error);

/* Inside another document. An embedded ball needs neither id nor name. */
TbBallDocument *tb_ball_document_read (TbReader *reader, JsonObject *object, gboolean embedded);
void tb_ball_document_write (TbJsonWriter *writer, const TbBallDocument *document);

G_END_DECLS
