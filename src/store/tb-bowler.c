/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-bowler.h"

#include <glib/gi18n-lib.h>

#include "tb-group-json.h"

static const char *const bowler_keys[]
    = { "tenboard", "version", "id", "name", "note", "delivery", "pap_over_in", "pap_up_in", "drift_boards",
        "foot_offset_boards", "ball", NULL };
/* Fields of the ball that belong to whoever throws it. */
static const char *const pap_fields[] = { "pap_over_in", "pap_up_in" };

TbBowler *
tb_bowler_new (const TbBowler *bowler)
{
  TbBowler *copy = g_new0 (TbBowler, 1);

  *copy = *bowler;
  g_atomic_ref_count_init (&copy->ref_count);
  copy->id = g_strdup (bowler->id);
  copy->name = g_strdup (bowler->name);
  copy->note = g_strdup (bowler->note);
  copy->ball_id = g_strdup (bowler->ball_id);
  return copy;
}

TbBowler *
tb_bowler_ref (TbBowler *bowler)
{
  g_atomic_ref_count_inc (&bowler->ref_count);
  return bowler;
}

void
tb_bowler_unref (TbBowler *bowler)
{
  if (!g_atomic_ref_count_dec (&bowler->ref_count))
    return;
  g_free (bowler->id);
  g_free (bowler->name);
  g_free (bowler->note);
  g_free (bowler->ball_id);
  g_free (bowler);
}

TbBall
tb_bowler_fit_ball (const TbBowler *bowler, const TbBall *ball)
{
  TbBall fitted = *ball;

  fitted.pap_over = bowler->pap_over;
  fitted.pap_up = bowler->pap_up;
  return fitted;
}

static gboolean
read_texts (TbReader *reader, JsonObject *object, TbBowler *bowler)
{
  TbDocumentNames names;
  const char *note;

  if (!tb_reader_names (reader, object, FALSE, &names)
      || !tb_reader_optional_text (reader, object, "note", TB_NOTES_MAX, &note))
    return FALSE;
  bowler->id = (char *) names.id;
  bowler->name = (char *) names.name;
  bowler->note = (char *) note;
  if (tb_reader_has (object, "ball"))
    bowler->ball_id = (char *) tb_reader_id (reader, object, "ball");
  return bowler->ball_id || !tb_reader_has (object, "ball");
}

static gboolean
read_pap (TbReader *reader, JsonObject *object, TbBowler *bowler)
{
  TbBall ball = tb_ball_default ();

  for (gsize i = 0; i < G_N_ELEMENTS (pap_fields); i++)
    if (!tb_field_read (reader, object, tb_field_find (TB_GROUP_BALL, pap_fields[i]), &ball))
      return FALSE;
  bowler->pap_over = ball.pap_over;
  bowler->pap_up = ball.pap_up;
  return TRUE;
}

/* A number of boards that may be left out. */
static gboolean
read_boards (TbReader *reader, JsonObject *object, const char *key, const double range[2], double *boards)
{
  if (!tb_reader_has (object, key))
    return TRUE;
  if (!tb_reader_number (reader, object, key, boards))
    return FALSE;
  return (*boards >= range[0] && *boards <= range[1])
         || tb_reader_fail (reader, key, TB_STORE_ERROR_VALUE,
                            _ ("%g is out of range; a number from %g to %g was expected"), *boards, range[0],
                            range[1]);
}

static gboolean
read_feet (TbReader *reader, JsonObject *object, TbBowler *bowler)
{
  static const double drifts[] = { -TB_BOWLER_MAX_DRIFT, TB_BOWLER_MAX_DRIFT };
  static const double offsets[] = { 0, TB_BOWLER_MAX_FOOT_OFFSET };
  TbStance usual = tb_stance_default ();

  bowler->drift = usual.drift;
  bowler->foot_offset = usual.offset;
  return read_boards (reader, object, "drift_boards", drifts, &bowler->drift)
         && read_boards (reader, object, "foot_offset_boards", offsets, &bowler->foot_offset);
}

static gboolean
read_delivery (TbReader *reader, JsonObject *object, gpointer delivery)
{
  return tb_group_read (reader, object, TB_GROUP_DELIVERY, delivery, NULL);
}

TbBowler *
tb_bowler_from_text (const char *text, gsize length, GError **error)
{
  g_auto (TbReader) reader = { 0 };
  g_autoptr (JsonNode) root = tb_document_parse (TB_DOCUMENT_BOWLER, text, length, error);
  TbBowler bowler = { 0 }; /* its texts are the parser's */
  JsonObject *object;

  tb_reader_init (&reader, error);
  if (!root)
    return NULL;
  object = json_node_get_object (root);
  if (!tb_reader_only (&reader, object, bowler_keys, NULL) || !read_texts (&reader, object, &bowler)
      || !tb_reader_part (&reader, object, "delivery", read_delivery, &bowler.delivery)
      || !read_pap (&reader, object, &bowler) || !read_feet (&reader, object, &bowler))
    return NULL;
  return tb_bowler_new (&bowler);
}

static void
write_pap (TbJsonWriter *writer, const TbBowler *bowler)
{
  TbBall ball = tb_ball_default ();

  ball = tb_bowler_fit_ball (bowler, &ball);
  for (gsize i = 0; i < G_N_ELEMENTS (pap_fields); i++)
    tb_field_write (writer, tb_field_find (TB_GROUP_BALL, pap_fields[i]), &ball);
}

/* Only what is unusual. */
static void
write_feet (TbJsonWriter *writer, const TbBowler *bowler)
{
  TbStance usual = tb_stance_default ();

  if (bowler->drift != usual.drift)
    tb_json_number (writer, "drift_boards", bowler->drift);
  if (bowler->foot_offset != usual.offset)
    tb_json_number (writer, "foot_offset_boards", bowler->foot_offset);
}

char *
tb_bowler_to_text (const TbBowler *bowler)
{
  TbJsonWriter writer;

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  tb_document_write_head (&writer, TB_DOCUMENT_BOWLER);
  tb_json_string (&writer, "id", bowler->id);
  tb_json_string (&writer, "name", bowler->name);
  if (bowler->note)
    tb_json_string (&writer, "note", bowler->note);
  tb_json_begin_object (&writer, "delivery");
  tb_group_write (&writer, TB_GROUP_DELIVERY, &bowler->delivery);
  tb_json_end_object (&writer);
  write_pap (&writer, bowler);
  write_feet (&writer, bowler);
  tb_json_string (&writer, "ball", bowler->ball_id);
  tb_json_end_object (&writer);
  return tb_json_writer_finish (&writer);
}
