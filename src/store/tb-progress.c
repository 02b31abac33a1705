/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-progress.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <math.h>

#include "tb-document.h"

static const char *const progress_keys[] = { "tenboard", "version", "bowler", "guesses", NULL };
static const char *const guess_keys[] = { "lesson", "step", "off", "verdict", NULL };
static const char *const verdict_words[] = { "right", "close", "off", NULL };

static void
guess_clear (gpointer guess)
{
  g_free (((TbProgressGuess *) guess)->lesson);
}

TbProgress *
tb_progress_new (const char *bowler)
{
  TbProgress *progress = g_new0 (TbProgress, 1);

  g_return_val_if_fail (tb_id_is_valid (bowler), progress);
  progress->bowler = g_strdup (bowler);
  progress->guesses = g_array_new (FALSE, TRUE, sizeof (TbProgressGuess));
  g_array_set_clear_func (progress->guesses, guess_clear);
  return progress;
}

void
tb_progress_free (TbProgress *progress)
{
  g_free (progress->bowler);
  g_clear_pointer (&progress->guesses, g_array_unref);
  g_free (progress);
}

void
tb_progress_add (TbProgress *progress, const TbProgressGuess *guess)
{
  TbProgressGuess copy = *guess;

  copy.lesson = g_strdup (guess->lesson);
  if (progress->guesses->len >= TB_PROGRESS_MAX)
    g_array_remove_index (progress->guesses, 0);
  g_array_append_val (progress->guesses, copy);
}

guint
tb_progress_best_streak (const TbProgress *progress)
{
  g_autofree TbVerdictOfGuess *verdicts = g_new (TbVerdictOfGuess, progress->guesses->len + 1);

  for (guint i = 0; i < progress->guesses->len; i++)
    verdicts[i] = g_array_index (progress->guesses, TbProgressGuess, i).verdict;
  return tb_guess_best_streak (verdicts, progress->guesses->len);
}

double
tb_progress_mean_off (const TbProgress *progress)
{
  double sum = 0;
  guint count = 0;

  for (guint i = 0; i < progress->guesses->len; i++)
    {
      double off = g_array_index (progress->guesses, TbProgressGuess, i).off;

      if (!isnan (off))
        {
          sum += off;
          count++;
        }
    }
  return count > 0 ? sum / count : NAN;
}

static gboolean
read_verdict (TbReader *reader, JsonObject *object, TbProgressGuess *guess)
{
  const char *word = tb_reader_string (reader, object, "verdict", TB_ID_MAX);

  if (!word)
    return FALSE;
  for (int i = 0; verdict_words[i]; i++)
    if (g_str_equal (word, verdict_words[i]))
      {
        guess->verdict = (TbVerdictOfGuess) i;
        return TRUE;
      }
  return tb_reader_fail (reader, "verdict", TB_STORE_ERROR_VALUE, _ ("right, close or off was expected"));
}

static gboolean
read_guess (TbReader *reader, JsonNode *item, guint index, gpointer progress)
{
  JsonObject *object = tb_reader_item_object (reader, item);
  TbProgressGuess guess = { .off = NAN };
  double step;

  if (index >= TB_PROGRESS_MAX)
    return tb_reader_fail (reader, NULL, TB_STORE_ERROR_TOO_LARGE, _ ("there are more than %d guesses"), TB_PROGRESS_MAX);
  if (!object || !tb_reader_only (reader, object, guess_keys, NULL)
      || !(guess.lesson = (char *) tb_reader_id (reader, object, "lesson"))
      || !tb_reader_number (reader, object, "step", &step) || !read_verdict (reader, object, &guess)
      || (tb_reader_has (object, "off") && !tb_reader_number (reader, object, "off", &guess.off)))
    return FALSE;
  if (!(step >= 1 && step <= G_MAXUINT16) || step != (guint) step)
    return tb_reader_fail (reader, "step", TB_STORE_ERROR_VALUE, _ ("a whole number from 1 was expected"));
  guess.step = (guint) step;
  tb_progress_add (progress, &guess);
  return TRUE;
}

TbProgress *
tb_progress_from_text (const char *bowler, const char *text, gsize length, GError **error)
{
  g_auto (TbReader) reader = { 0 };
  g_autoptr (JsonNode) root = tb_document_parse (TB_DOCUMENT_PROGRESS, text, length, error);
  g_autoptr (TbProgress) progress = tb_progress_new (bowler);
  JsonObject *object;

  tb_reader_init (&reader, error);
  if (!root)
    return NULL;
  object = json_node_get_object (root);
  if (!tb_reader_only (&reader, object, progress_keys, NULL) || !tb_reader_id (&reader, object, "bowler")
      || !tb_reader_items (&reader, object, "guesses", read_guess, progress))
    return NULL;
  return g_steal_pointer (&progress);
}

char *
tb_progress_to_text (const TbProgress *progress)
{
  TbJsonWriter writer;

  tb_json_writer_init (&writer);
  tb_json_begin_object (&writer, NULL);
  tb_document_write_head (&writer, TB_DOCUMENT_PROGRESS);
  tb_json_string (&writer, "bowler", progress->bowler);
  tb_json_begin_list (&writer, "guesses");
  for (guint i = 0; i < progress->guesses->len; i++)
    {
      const TbProgressGuess *guess = &g_array_index (progress->guesses, TbProgressGuess, i);

      tb_json_begin_object (&writer, NULL);
      tb_json_string (&writer, "lesson", guess->lesson);
      tb_json_number (&writer, "step", guess->step);
      tb_json_number (&writer, "off", guess->off);
      tb_json_string (&writer, "verdict", verdict_words[guess->verdict]);
      tb_json_end_object (&writer);
    }
  tb_json_end_list (&writer);
  tb_json_end_object (&writer);
  return tb_json_writer_finish (&writer);
}

static char *
find_path (const char *bowler)
{
  g_autofree char *folder = tb_document_folder (TB_DOCUMENT_PROGRESS);
  g_autofree char *name = g_strconcat (bowler, TB_DOCUMENT_SUFFIX, NULL);

  return g_build_filename (folder, name, NULL);
}

TbProgress *
tb_progress_load (const char *bowler, GError **error)
{
  g_autofree char *path = find_path (bowler), *text = NULL;
  TbProgress *progress;
  gsize length;

  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return tb_progress_new (bowler);
  text = tb_document_read_file (path, &length, error);
  progress = text ? tb_progress_from_text (bowler, text, length, error) : NULL;
  if (!progress)
    tb_document_finish_error (error, path);
  return progress;
}

gboolean
tb_progress_save (const TbProgress *progress, GError **error)
{
  g_autofree char *path = find_path (progress->bowler), *text = tb_progress_to_text (progress);
  gboolean saved = tb_document_save_file (path, text, error);

  if (!saved)
    tb_document_finish_error (error, path);
  return saved;
}

gboolean
tb_progress_delete (const char *bowler, GError **error)
{
  g_autofree char *path = find_path (bowler);

  if (g_unlink (path) == 0 || errno == ENOENT)
    return TRUE;
  g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_WRITE, _ ("%s: the file cannot be removed: %s."), path,
               g_strerror (errno));
  return FALSE;
}
