/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-study-document.h"

#include <glib/gi18n-lib.h>

#include "tb-group-json.h"
#include "tb-mix-json.h"
#include "tb-model-json.h"

static const char *const study_keys[] = { "tenboard", "version", "title", "notes", "before", "after", NULL };
static const char *const setup_keys[] = { "bowler", "delivery", "ball", "lane", "assumed", "left_out", NULL };
static const char *const bowler_keys[] = { "id", "name", NULL };
static const char *const lane_keys[] = { "pattern", "mix", NULL };
static const char *const side_names[TB_N_SIDES] = { "before", "after" };

/* What is being read of one side. */
typedef struct Draft
{
  TbLibrary *library;
  TbShot shot;
  TbDocumentNames bowler;
  TbBallDocument *ball;
  TbPattern *pattern;
  TbMix *mix; /* NULL for a common league */
} Draft;

static void
draft_clear (Draft *draft)
{
  g_clear_pointer (&draft->ball, tb_ball_document_unref);
  g_clear_pointer (&draft->pattern, tb_pattern_unref);
  g_clear_pointer (&draft->mix, tb_mix_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Draft, draft_clear)

/* A document in a study: embedded, or named by its id. */
static gboolean
is_id (JsonObject *object, const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  return node && JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING;
}

static TbLibraryEntry *
read_named (TbReader *reader, JsonObject *object, TbDocumentKind kind, TbLibrary *library)
{
  const char *key = tb_document_kind_name (kind);
  const char *id = tb_reader_id (reader, object, key);
  g_autoptr (GError) problem = NULL;
  TbLibraryEntry *entry = id ? tb_library_find (library, kind, id, &problem) : NULL;

  if (problem)
    tb_reader_fail (reader, key, TB_STORE_ERROR_UNKNOWN_ID, "%s", problem->message);
  return entry;
}

static gboolean
read_embedded_ball (TbReader *reader, JsonObject *object, gpointer data)
{
  Draft *draft = data;

  draft->ball = tb_ball_document_read (reader, object, TRUE);
  return draft->ball != NULL;
}

static gboolean
read_ball (TbReader *reader, JsonObject *object, Draft *draft)
{
  TbLibraryEntry *entry;

  if (is_id (object, "ball"))
    {
      entry = read_named (reader, object, TB_DOCUMENT_BALL, draft->library);
      draft->ball = entry ? tb_ball_document_ref (tb_library_entry_get_ball (entry)) : NULL;
    }
  else
    tb_reader_part (reader, object, "ball", read_embedded_ball, draft);
  if (draft->ball)
    draft->shot.ball = draft->ball->ball;
  return draft->ball != NULL;
}

static gboolean
read_embedded_pattern (TbReader *reader, JsonObject *object, gpointer data)
{
  Draft *draft = data;

  draft->pattern = tb_pattern_read (reader, object, TRUE);
  return draft->pattern != NULL;
}

static gboolean
read_pattern (TbReader *reader, JsonObject *object, Draft *draft)
{
  TbLibraryEntry *entry;

  if (!is_id (object, "pattern"))
    return tb_reader_part (reader, object, "pattern", read_embedded_pattern, draft);
  entry = read_named (reader, object, TB_DOCUMENT_PATTERN, draft->library);
  draft->pattern = entry ? tb_pattern_ref (tb_library_entry_get_pattern (entry)) : NULL;
  return entry != NULL;
}

static gboolean
read_mix (TbReader *reader, JsonObject *object, gpointer data)
{
  Draft *draft = data;

  draft->mix = tb_mix_read (reader, object);
  return draft->mix != NULL;
}

static gboolean
read_lane (TbReader *reader, JsonObject *object, gpointer data)
{
  Draft *draft = data;

  return tb_group_read (reader, object, TB_GROUP_LANE, &draft->shot.lane, lane_keys)
         && (!tb_reader_has (object, "mix") || tb_reader_part (reader, object, "mix", read_mix, draft))
         && read_pattern (reader, object, draft);
}

static gboolean
read_delivery (TbReader *reader, JsonObject *object, gpointer delivery)
{
  return tb_group_read (reader, object, TB_GROUP_DELIVERY, delivery, NULL);
}

static gboolean
read_bowler (TbReader *reader, JsonObject *object, gpointer names)
{
  return tb_reader_only (reader, object, bowler_keys, NULL) && tb_reader_names (reader, object, TRUE, names);
}

static gboolean
read_optional (TbReader *reader, JsonObject *object, const char *key, TbReadObject read, gpointer data)
{
  return !tb_reader_has (object, key) || tb_reader_part (reader, object, key, read, data);
}

static gboolean
check_whole (TbReader *reader, const Draft *draft)
{
  TbShot shot = draft->shot;
  TbProblem problem = { 0 };
  g_autofree char *sentence = NULL;

  shot.lane.oil = &draft->pattern->oil;
  problem.status = tb_shot_check (&shot, &problem);
  if (problem.status == TB_OK)
    return TRUE;
  sentence = tb_problem_sentence (&problem);
  return tb_reader_fail (reader, NULL, TB_STORE_ERROR_VALUE, "%s", sentence);
}

static gboolean
read_setup (TbReader *reader, JsonObject *object, gpointer data)
{
  Draft *draft = data;

  draft->shot = tb_shot_default ();
  return tb_reader_only (reader, object, setup_keys, NULL)
         && read_optional (reader, object, "bowler", read_bowler, &draft->bowler)
         && tb_reader_part (reader, object, "delivery", read_delivery, &draft->shot.delivery)
         && read_ball (reader, object, draft) && tb_reader_part (reader, object, "lane", read_lane, draft)
         && read_optional (reader, object, "assumed", tb_assumed_read, &draft->shot.assumed)
         && tb_left_out_read (reader, object, "left_out", &draft->shot.options)
         && check_whole (reader, draft);
}

/* The lane is played on last, once it is known by whom. */
static TbSetup *
draft_finish (const Draft *draft)
{
  TbShot fresh = draft->shot;
  g_autoptr (TbSetup) bare = NULL;
  g_autoptr (TbSetup) mixed = NULL;
  g_autoptr (TbSetup) bowled = NULL;
  g_autoptr (TbSetup) balled = NULL;

  fresh.lane.games_played = 0;
  bare = tb_setup_new (&fresh, draft->pattern);
  mixed = tb_setup_with_mix (bare, draft->mix);
  bowled = tb_setup_with_bowler (mixed, &draft->shot.delivery, draft->bowler.id, draft->bowler.name);
  balled = tb_setup_with_ball (bowled, &draft->shot.ball, draft->ball->id, draft->ball->name);
  return tb_setup_with_shot (balled, &draft->shot);
}

static TbSetup *
read_side (TbReader *reader, JsonObject *object, TbSide side, TbLibrary *library)
{
  g_auto (Draft) draft = { .library = library };

  if (!tb_reader_part (reader, object, side_names[side], read_setup, &draft))
    return NULL;
  return draft_finish (&draft);
}

static TbStudy *
read_study (TbReader *reader, JsonObject *object, TbLibrary *library)
{
  const char *title, *notes;
  g_autofree char *line = NULL;
  g_autoptr (TbSetup) before = NULL;
  g_autoptr (TbSetup) after = NULL;

  if (!tb_reader_only (reader, object, study_keys, NULL)
      || !tb_reader_optional_text (reader, object, "title", TB_NAME_MAX, &title)
      || !tb_reader_optional_text (reader, object, "notes", TB_NOTES_MAX, &notes))
    return NULL;
  line = title ? tb_text_fitted (title, TB_NAME_MAX, TRUE) : NULL;
  before = read_side (reader, object, TB_SIDE_BEFORE, library);
  after = before ? read_side (reader, object, TB_SIDE_AFTER, library) : NULL;
  return after ? tb_study_new (before, after, line, notes) : NULL;
}

TbStudy *
tb_study_from_text (TbLibrary *library, const char *text, gsize length, GError **error)
{
  g_auto (TbReader) reader = { 0 };
  g_autoptr (JsonNode) root = tb_document_parse (TB_DOCUMENT_STUDY, text, length, error);

  tb_reader_init (&reader, error);
  return root ? read_study (&reader, json_node_get_object (root), library) : NULL;
}

static void
write_bowler (TbJsonWriter *writer, const TbSetup *setup)
{
  if (!setup->bowler_id && !setup->bowler_name)
    return;
  tb_json_begin_object (writer, "bowler");
  tb_json_string (writer, "id", setup->bowler_id);
  tb_json_string (writer, "name", setup->bowler_name);
  tb_json_end_object (writer);
}

static void
write_ball (TbJsonWriter *writer, const TbSetup *setup)
{
  g_autoptr (TbBallDocument) ball
      = tb_ball_document_new (setup->ball_id, setup->ball_name, NULL, &setup->shot.ball);

  tb_json_begin_object (writer, "ball");
  tb_ball_document_write (writer, ball);
  tb_json_end_object (writer);
}

static void
write_setup (TbJsonWriter *writer, const char *key, const TbSetup *setup)
{
  tb_json_begin_object (writer, key);
  write_bowler (writer, setup);
  tb_json_begin_object (writer, "delivery");
  tb_group_write (writer, TB_GROUP_DELIVERY, &setup->shot.delivery);
  tb_json_end_object (writer);
  write_ball (writer, setup);
  tb_json_begin_object (writer, "lane");
  tb_group_write (writer, TB_GROUP_LANE, &setup->shot.lane);
  if (setup->mix)
    tb_mix_write (writer, "mix", setup->mix);
  tb_json_begin_object (writer, "pattern");
  tb_pattern_write (writer, setup->pattern);
  tb_json_end_object (writer);
  tb_json_end_object (writer);
  tb_assumed_write (writer, "assumed", &setup->shot.assumed);
  tb_left_out_write (writer, "left_out", &setup->shot.options);
  tb_json_end_object (writer);
}

char *
tb_study_to_text (const TbStudy *study)
{
  TbJsonWriter writer;

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  tb_document_write_head (&writer, TB_DOCUMENT_STUDY);
  tb_json_string (&writer, "title", study->title);
  tb_json_string (&writer, "notes", study->notes);
  for (int side = 0; side < TB_N_SIDES; side++)
    write_setup (&writer, side_names[side], study->side[side]);
  tb_json_end_object (&writer);
  return tb_json_writer_finish (&writer);
}

TbStudy *
tb_study_load (TbLibrary *library, const char *path, GError **error)
{
  gsize length;
  g_autoptr (GError) problem = NULL;
  g_autofree char *text = tb_document_read_file (path, &length, &problem);
  g_autofree char *shown = g_filename_display_name (path);
  TbStudy *study = text ? tb_study_from_text (library, text, length, &problem) : NULL;

  if (!study)
    {
      tb_document_finish_error (&problem, shown);
      g_propagate_error (error, g_steal_pointer (&problem));
    }
  return study;
}

gboolean
tb_study_save (const TbStudy *study, const char *path, GError **error)
{
  g_autofree char *text = tb_study_to_text (study);
  g_autofree char *shown = g_filename_display_name (path);
  g_autoptr (GError) problem = NULL;

  if (tb_document_save_file (path, text, &problem))
    return TRUE;
  tb_document_finish_error (&problem, shown);
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}
