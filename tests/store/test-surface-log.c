/* Logs of surface work on disk: there and back, and what is refused.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-surface-log-document.h"

#include <glib/gstdio.h>
#include <string.h>

static TbBallSurface *
sample (void)
{
  TbBallSurface *surface = tb_ball_surface_new (tb_roughness_from_grit (2000));

  tb_surface_log_add (surface->log,
                      tb_surface_entry_new ("2026-03-01", TB_SURFACE_MACHINE, 1000, "as bought, \"new\""));
  tb_surface_log_add (surface->log, tb_surface_entry_new ("2026-03-02", TB_SURFACE_PLAYED, 12, NULL));
  tb_surface_log_add (
      surface->log, tb_surface_entry_new ("2026-03-05", TB_SURFACE_READING, tb_metres_from_uin (22.5), NULL));
  tb_surface_log_add (surface->log, tb_surface_entry_new ("2026-03-05", TB_SURFACE_POLISH, 0, NULL));
  return surface;
}

static void
test_there_and_back (void)
{
  g_autoptr (TbBallSurface) surface = sample (), back = NULL;
  g_autofree char *text = tb_ball_surface_to_text (surface), *again = NULL;
  g_autoptr (GError) error = NULL;

  back = tb_ball_surface_from_text (text, strlen (text), &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (back->roughness, ==, surface->roughness);
  g_assert_cmpuint (back->log->len, ==, surface->log->len);
  for (guint i = 0; i < back->log->len; i++)
    {
      const TbSurfaceEntry *a = surface->log->pdata[i], *b = back->log->pdata[i];

      g_assert_cmpstr (a->date, ==, b->date);
      g_assert_cmpint (a->work, ==, b->work);
      g_assert_cmpfloat (a->amount, ==, b->amount);
      g_assert_cmpstr (a->note, ==, b->note);
    }
  again = tb_ball_surface_to_text (back);
  g_assert_cmpstr (again, ==, text);
}

static void
refuse (const char *text, TbStoreError code, const char *words)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (tb_ball_surface_from_text (text, strlen (text), &error));
  g_assert_error (error, TB_STORE_ERROR, (int)code);
  if (strstr (error->message, words) == NULL)
    g_error ("\"%s\" does not say \"%s\"", error->message, words);
}

#define HEAD "{\"tenboard\": \"surface-log\", \"version\": 1, \"roughness_uin\": 20, \"entries\": "

static void
test_refused (void)
{
  refuse ("", TB_STORE_ERROR_SYNTAX, "");
  refuse ("[]", TB_STORE_ERROR_NOT_OURS, "not a document of Tenboard");
  refuse ("{}", TB_STORE_ERROR_NOT_OURS, "tenboard");
  refuse ("{\"tenboard\": \"ball\", \"version\": 1}", TB_STORE_ERROR_NOT_OURS, "surface-log");
  refuse ("{\"tenboard\": \"surface-log\", \"version\": 2}", TB_STORE_ERROR_VERSION, "newer");
  refuse ("{\"tenboard\": \"surface-log\", \"version\": 1, \"roughness_uin\": 900, \"entries\": []}",
          TB_STORE_ERROR_VALUE, "roughness_uin");
  refuse (HEAD "[], \"more\": 1}", TB_STORE_ERROR_UNKNOWN_KEY, "more");
  refuse (HEAD "[7]}", TB_STORE_ERROR_TYPE, "entries");
  refuse (HEAD "[{\"date\": \"yesterday\", \"work\": \"clean\"}]}", TB_STORE_ERROR_VALUE, "2026-11-25");
  refuse (HEAD "[{\"date\": \"2026-01-01\", \"work\": \"bake\"}]}", TB_STORE_ERROR_VALUE,
          "machine, polish, hand");
  refuse (HEAD "[{\"date\": \"2026-01-01\", \"work\": \"hand\"}]}", TB_STORE_ERROR_MISSING_KEY, "grit");
  refuse (HEAD "[{\"date\": \"2026-01-01\", \"work\": \"hand\", \"grit\": 20}]}", TB_STORE_ERROR_VALUE,
          "500 to 4000");
  refuse (HEAD "[{\"date\": \"2026-01-01\", \"work\": \"reading\", \"roughness_uin\": -1}]}",
          TB_STORE_ERROR_VALUE, "1 to 65");
}

static void
test_files (void)
{
  g_autoptr (TbBallSurface) surface = sample (), none = NULL, back = NULL, broken = NULL;
  g_autofree char *path = tb_ball_surface_path ("my-ball");
  g_autoptr (GError) error = NULL;

  /* No file yet: an empty log with the ball's own roughness. */
  none = tb_ball_surface_load ("my-ball", 1e-6, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (none->log->len, ==, 0);
  g_assert_cmpfloat (none->roughness, ==, 1e-6);
  g_assert_true (tb_ball_surface_save (surface, "my-ball", &error));
  g_assert_no_error (error);
  back = tb_ball_surface_load ("my-ball", 1e-6, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (back->log->len, ==, surface->log->len);
  /* A damaged one is told of, with its name, and stays. */
  g_assert_true (g_file_set_contents (path, "{", 1, NULL));
  broken = tb_ball_surface_load ("my-ball", 1e-6, &error);
  g_assert_null (broken);
  g_assert_nonnull (strstr (error->message, "my-ball.json"));
  g_assert_true (g_file_test (path, G_FILE_TEST_EXISTS));
  g_clear_error (&error);
  g_assert_true (tb_ball_surface_remove ("my-ball", &error));
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  g_assert_true (tb_ball_surface_remove ("my-ball", &error));
  g_assert_no_error (error);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  g_test_add_func ("/surface-log/there-and-back", test_there_and_back);
  g_test_add_func ("/surface-log/refused", test_refused);
  g_test_add_func ("/surface-log/files", test_files);
  return g_test_run ();
}
