/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-mix-json.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-ball-document.h"
#include "tb-group-json.h"

/* Whole numbers up to here are the same in a double. */
#define MAX_SEED 9007199254740991.0

static const char *const mix_keys[] = { "seed", "moves", "bowlers", NULL };
static const char *const typical_keys[] = { "bowler", "count", NULL };
static const char *const described_keys[] = { "name", "count", "skill", "delivery", "ball", NULL };

static gboolean
read_whole (TbReader *reader, JsonObject *object, const char *key, double max, double *number)
{
  if (!tb_reader_number (reader, object, key, number))
    return FALSE;
  if (*number >= 0 && *number <= max && *number == floor (*number))
    return TRUE;
  return tb_reader_fail (reader, key, TB_STORE_ERROR_VALUE, _ ("a whole number from 0 to %.0f was expected"),
                         max);
}

static gboolean
read_count (TbReader *reader, JsonObject *object, TbMixBowler *bowler)
{
  double count;

  if (!read_whole (reader, object, "count", TB_MIX_MAX_COUNT, &count))
    return FALSE;
  bowler->count = (guint)count;
  return TRUE;
}

static gboolean
read_typical (TbReader *reader, JsonObject *object, TbMixBowler *bowler)
{
  const char *id;

  if (!tb_reader_only (reader, object, typical_keys, NULL))
    return FALSE;
  id = tb_reader_id (reader, object, "bowler");
  if (!id)
    return FALSE;
  if (!tb_mix_bowler_typical (bowler, id, 0))
    return tb_reader_fail (reader, "bowler", TB_STORE_ERROR_UNKNOWN_ID, _ ("there is no typical bowler “%s”"),
                           id);
  return read_count (reader, object, bowler);
}

static gboolean
read_skill (TbReader *reader, JsonObject *object, TbMixBowler *bowler)
{
  const char *word = tb_reader_string (reader, object, "skill", TB_ID_MAX);

  if (!word)
    return FALSE;
  for (TbSkill skill = 0; skill < TB_N_SKILLS; skill++)
    if (g_str_equal (word, tb_skill_name (skill)))
      {
        bowler->skill = skill;
        return TRUE;
      }
  return tb_reader_fail (reader, "skill", TB_STORE_ERROR_VALUE, _ ("%s was expected"),
                         _ ("one of practised, league, new"));
}

static gboolean
read_delivery (TbReader *reader, JsonObject *object, gpointer data)
{
  TbMixBowler *bowler = data;

  return tb_group_read (reader, object, TB_GROUP_DELIVERY, &bowler->delivery, NULL);
}

static gboolean
read_ball (TbReader *reader, JsonObject *object, gpointer data)
{
  TbMixBowler *bowler = data;
  g_autoptr (TbBallDocument) ball = tb_ball_document_read (reader, object, TRUE);

  if (ball)
    bowler->ball = ball->ball;
  return ball != NULL;
}

static gboolean
read_described (TbReader *reader, JsonObject *object, TbMixBowler *bowler)
{
  bowler->name = (char *)tb_reader_name (reader, object, "name");
  return bowler->name && tb_reader_only (reader, object, described_keys, NULL)
         && read_count (reader, object, bowler) && read_skill (reader, object, bowler)
         && tb_reader_part (reader, object, "delivery", read_delivery, bowler)
         && tb_reader_part (reader, object, "ball", read_ball, bowler);
}

static gboolean
read_bowler (TbReader *reader, JsonNode *item, guint index, gpointer data)
{
  TbMix *mix = data;
  JsonObject *object = tb_reader_item_object (reader, item);
  TbMixBowler bowler = { 0 };

  if (!object
      || !(tb_reader_has (object, "bowler") ? read_typical (reader, object, &bowler)
                                            : read_described (reader, object, &bowler)))
    return FALSE;
  return tb_mix_add (mix, &bowler)
         || tb_reader_fail (reader, NULL, TB_STORE_ERROR_TOO_LARGE,
                            _ ("a mix has at most %d kinds of bowlers"), TB_MIX_MAX_KINDS);
}

static gboolean
read_moves (TbReader *reader, JsonObject *object, TbMix *mix)
{
  JsonNode *node = tb_reader_has (object, "moves") ? json_object_get_member (object, "moves") : NULL;

  if (!node)
    return TRUE;
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_BOOLEAN)
    return tb_reader_fail (reader, "moves", TB_STORE_ERROR_TYPE, _ ("%s was expected"), _ ("true or false"));
  mix->moves = json_node_get_boolean (node);
  return TRUE;
}

TbMix *
tb_mix_read (TbReader *reader, JsonObject *object)
{
  g_autoptr (TbMix) mix = tb_mix_new (0, FALSE);
  double seed;

  if (!tb_reader_only (reader, object, mix_keys, NULL)
      || !read_whole (reader, object, "seed", MAX_SEED, &seed) || !read_moves (reader, object, mix)
      || !tb_reader_items (reader, object, "bowlers", read_bowler, mix))
    return NULL;
  mix->seed = (guint64)seed;
  return g_steal_pointer (&mix);
}

static void
write_described (TbJsonWriter *writer, const TbMixBowler *bowler)
{
  g_autoptr (TbBallDocument) ball = tb_ball_document_new (NULL, NULL, NULL, &bowler->ball);

  tb_json_string (writer, "name", bowler->name);
  tb_json_number (writer, "count", bowler->count);
  tb_json_string (writer, "skill", tb_skill_name (bowler->skill));
  tb_json_begin_object (writer, "delivery");
  tb_group_write (writer, TB_GROUP_DELIVERY, &bowler->delivery);
  tb_json_end_object (writer);
  tb_json_begin_object (writer, "ball");
  tb_ball_document_write (writer, ball);
  tb_json_end_object (writer);
}

static void
write_bowler (TbJsonWriter *writer, const TbMixBowler *bowler)
{
  tb_json_begin_object (writer, NULL);
  if (bowler->id)
    {
      tb_json_string (writer, "bowler", bowler->id);
      tb_json_number (writer, "count", bowler->count);
    }
  else
    write_described (writer, bowler);
  tb_json_end_object (writer);
}

void
tb_mix_write (TbJsonWriter *writer, const char *key, const TbMix *mix)
{
  tb_json_begin_object (writer, key);
  tb_json_number (writer, "seed", (double)mix->seed);
  if (mix->moves)
    tb_json_true (writer, "moves");
  tb_json_begin_list (writer, "bowlers");
  for (guint i = 0; i < mix->n_bowlers; i++)
    write_bowler (writer, &mix->bowlers[i]);
  tb_json_end_list (writer);
  tb_json_end_object (writer);
}
