/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-ball-document.h"

#include <glib/gi18n-lib.h>

#include "tb-group-json.h"
#include "tb-record.h"

#define INCHES tb_metres_from_in, tb_in_from_metres
/* A quarter of the way round the largest ball: no hole lies further from the grip. */
#define QUARTER_ROUND_IN 6.75
/* Thumbs and fingers, with room to spare on both sides. */
#define MIN_HOLE_DIAMETER_IN 0.3
#define MAX_HOLE_DIAMETER_IN 1.5
#define MIN_HOLE_DEPTH_IN 0.1
#define MAX_HOLE_DEPTH_IN 4.25
#define MAX_PITCH_IN 1.5

static const TbRecordNumber hole_numbers[] = {
  { "over_in", offsetof (TbHole, over), INCHES, -QUARTER_ROUND_IN, QUARTER_ROUND_IN },
  { "up_in", offsetof (TbHole, up), INCHES, -QUARTER_ROUND_IN, QUARTER_ROUND_IN },
  { "diameter_in", offsetof (TbHole, diameter), INCHES, MIN_HOLE_DIAMETER_IN, MAX_HOLE_DIAMETER_IN },
  { "depth_in", offsetof (TbHole, depth), INCHES, MIN_HOLE_DEPTH_IN, MAX_HOLE_DEPTH_IN },
  { "pitch_over_in", offsetof (TbHole, pitch_over), INCHES, -MAX_PITCH_IN, MAX_PITCH_IN },
  { "pitch_up_in", offsetof (TbHole, pitch_up), INCHES, -MAX_PITCH_IN, MAX_PITCH_IN },
  { NULL, 0, NULL, NULL, 0, 0 },
};
static const char *const hole_keys[]
    = { "kind", "over_in", "up_in", "diameter_in", "depth_in", "pitch_over_in", "pitch_up_in", NULL };
static const char *const hole_kinds[TB_N_HOLE_KINDS] = { "finger", "thumb" };
static const char *const ball_keys[] = { "tenboard", "version", "id", "name", "note", "holes", NULL };

TbBallDocument *
tb_ball_document_new (const char *id, const char *name, const char *note, const TbBall *ball)
{
  TbBallDocument *document = g_new0 (TbBallDocument, 1);

  g_atomic_ref_count_init (&document->ref_count);
  document->id = g_strdup (id);
  document->name = g_strdup (name);
  document->note = g_strdup (note);
  document->ball = *ball;
  return document;
}

TbBallDocument *
tb_ball_document_ref (TbBallDocument *document)
{
  g_atomic_ref_count_inc (&document->ref_count);
  return document;
}

void
tb_ball_document_unref (TbBallDocument *document)
{
  if (!g_atomic_ref_count_dec (&document->ref_count))
    return;
  g_free (document->id);
  g_free (document->name);
  g_free (document->note);
  g_free (document);
}

static gboolean
read_hole_kind (TbReader *reader, JsonObject *object, TbHole *hole)
{
  const char *word = tb_reader_string (reader, object, "kind", TB_ID_MAX);

  if (!word)
    return FALSE;
  for (int kind = 0; kind < TB_N_HOLE_KINDS; kind++)
    if (g_str_equal (word, hole_kinds[kind]))
      {
        hole->kind = (TbHoleKind) kind;
        return TRUE;
      }
  return tb_reader_fail (reader, "kind", TB_STORE_ERROR_VALUE, _ ("%s was expected"),
                         _ ("one of finger, thumb"));
}

static gboolean
read_hole (TbReader *reader, JsonNode *item, guint index, gpointer data)
{
  TbBall *ball = data;
  JsonObject *object = tb_reader_item_object (reader, item);

  if (index >= TB_MAX_HOLES)
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_TOO_LARGE, _ ("a ball has at most %d holes"),
                           TB_MAX_HOLES);
  ball->n_holes = (int) index + 1;
  return object && tb_reader_only (reader, object, hole_keys, NULL)
         && read_hole_kind (reader, object, &ball->hole[index])
         && tb_record_read (reader, object, hole_numbers, &ball->hole[index]);
}

static gboolean
read_holes (TbReader *reader, JsonObject *object, TbBall *ball)
{
  ball->n_holes = 0;
  return !json_object_has_member (object, "holes")
         || tb_reader_items (reader, object, "holes", read_hole, ball);
}

/* What no single number can tell: whether they make a ball together. */
static gboolean
check_whole (TbReader *reader, const TbBall *ball)
{
  TbBody body;
  TbProblem problem = { .status = tb_ball_body (ball, &body) };
  g_autofree char *sentence = NULL;

  if (problem.status == TB_OK)
    return TRUE;
  sentence = tb_problem_sentence (&problem);
  return tb_reader_fail (reader, NULL, TB_STORE_ERROR_VALUE, "%s", sentence);
}

static gboolean
read_ball (TbReader *reader, JsonObject *object, TbBall *ball)
{
  return tb_group_read (reader, object, TB_GROUP_BALL, ball, ball_keys) && read_holes (reader, object, ball)
         && check_whole (reader, ball);
}

TbBallDocument *
tb_ball_document_read (TbReader *reader, JsonObject *object, gboolean embedded)
{
  TbDocumentNames names;
  const char *note;
  TbBall ball;

  if (!tb_document_check_head (reader, object, TB_DOCUMENT_BALL, embedded)
      || !tb_reader_names (reader, object, embedded, &names)
      || !tb_reader_optional_text (reader, object, "note", TB_NOTES_MAX, &note)
      || !read_ball (reader, object, &ball))
    return NULL;
  return tb_ball_document_new (names.id, names.name, note, &ball);
}

static void
write_hole (TbJsonWriter *writer, const TbHole *hole)
{
  tb_json_begin_object (writer, NULL);
  tb_json_string (writer, "kind", hole_kinds[hole->kind]);
  tb_record_write (writer, hole_numbers, hole);
  tb_json_end_object (writer);
}

void
tb_ball_document_write (TbJsonWriter *writer, const TbBallDocument *document)
{
  tb_json_string (writer, "id", document->id);
  tb_json_string (writer, "name", document->name);
  if (document->note)
    tb_json_string (writer, "note", document->note);
  tb_group_write (writer, TB_GROUP_BALL, &document->ball);
  tb_json_begin_list (writer, "holes");
  for (int i = 0; i < document->ball.n_holes; i++)
    write_hole (writer, &document->ball.hole[i]);
  tb_json_end_list (writer);
}

char *
tb_ball_document_to_text (const TbBallDocument *document)
{
  TbJsonWriter writer;

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  tb_document_write_head (&writer, TB_DOCUMENT_BALL);
  tb_ball_document_write (&writer, document);
  tb_json_end_object (&writer);
  return tb_json_writer_finish (&writer);
}

TbBallDocument *
tb_ball_document_from_text (const char *text, gsize length, GError **error)
{
  g_auto (TbReader) reader = { 0 };
  g_autoptr (JsonNode) root = tb_document_parse (TB_DOCUMENT_BALL, text, length, error);

  tb_reader_init (&reader, error);
  return root ? tb_ball_document_read (&reader, json_node_get_object (root), FALSE) : NULL;
}
