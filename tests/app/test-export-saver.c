/* What is saved for somebody who may go away meanwhile: how far it is, what became of it, and that what was
 * called off leaves nothing behind. Without a display.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gstdio.h>
#include <locale.h>

#include "../scratch.h"
#include "../waiting.h"
#include "tb-export-saver.h"
#include "tb-export-views.h"
#include "tb-task.h"

/* Large enough that a clip is not done before it can be called off. */
#define WIDTH 640
#define HEIGHT 400

typedef struct Fixture
{
  TbSession *session;
  TbExportViews *views;
  TbExportSaver *saver;
  char *path;
  char *sentence;          /* what was told at the end; NULL before */
  double share;            /* that was told last; -1 before */
  gboolean busy_when_told; /* with the sentence */
} Fixture;

static void
on_progress (Fixture *self, double share)
{
  g_assert_cmpfloat (share, >=, self->share);
  self->share = share;
}

static void
on_finished (Fixture *self, const char *sentence)
{
  self->sentence = g_strdup (sentence);
  self->busy_when_told = tb_export_saver_is_busy (self->saver);
}

static void
set_up (Fixture *self, gconstpointer name)
{
  g_autoptr (TbLibrary) library = tb_library_new ();

  self->session = tb_session_new (library);
  self->views = tb_export_views_new (self->session, FALSE);
  self->saver = tb_export_saver_new ();
  self->path = g_build_filename (scratch_folder (), name, NULL);
  self->share = -1;
  g_signal_connect_swapped (self->saver, "progress", G_CALLBACK (on_progress), self);
  g_signal_connect_swapped (self->saver, "finished", G_CALLBACK (on_finished), self);
}

static void
tear_down (Fixture *self, gconstpointer name)
{
  g_clear_object (&self->saver);
  tb_export_views_free (self->views);
  g_object_unref (self->session);
  g_unlink (self->path);
  g_free (self->path);
  g_free (self->sentence);
}

static TbExportLook
look (void)
{
  return (TbExportLook){ .width = WIDTH, .height = HEIGHT, .theme = tb_theme_light (1), .rate = 1 };
}

static void
draw_first (cairo_t *cr, double width, double height, gpointer data)
{
  TbExportLook how = look ();

  tb_export_views_draw (((Fixture *) data)->views, 0, cr, &how);
}

static void
save_picture (Fixture *self)
{
  tb_export_saver_save_picture (self->saver, &(TbPictureJob){ self->path, WIDTH, HEIGHT, draw_first, self });
}

static void
save_clip (Fixture *self, int width, int height)
{
  TbExportLook how = look ();
  TbThrowScene scene = tb_export_views_scene (self->views, 0, &how);

  tb_export_saver_save_clip (self->saver, &(TbClipJob){ self->path, width, height, 10, &scene });
}

static void
test_picture (Fixture *self, gconstpointer name)
{
  g_assert_false (tb_export_saver_is_busy (self->saver));
  save_picture (self);
  g_assert_true (tb_export_saver_is_busy (self->saver));
  g_assert_false (tb_export_saver_is_saving_clip (self->saver));
  WAIT_UNTIL (self->sentence != NULL);
  g_assert_cmpstr (self->sentence, ==, "Saved as “p.png”.");
  g_assert_false (self->busy_when_told);
  g_assert_true (g_file_test (self->path, G_FILE_TEST_EXISTS));
}

static void
test_clip (Fixture *self, gconstpointer name)
{
  save_clip (self, WIDTH, HEIGHT);
  g_assert_cmpfloat (self->share, ==, 0);
  g_assert_true (tb_export_saver_is_saving_clip (self->saver));
  WAIT_UNTIL (self->sentence != NULL);
  g_assert_cmpstr (self->sentence, ==, "Saved as “c.webp”.");
  g_assert_false (self->busy_when_told);
  g_assert_false (tb_export_saver_is_saving_clip (self->saver));
  g_assert_true (g_file_test (self->path, G_FILE_TEST_EXISTS));
}

static void
test_called_off (Fixture *self, gconstpointer name)
{
  save_clip (self, WIDTH, HEIGHT);
  tb_export_saver_cancel (self->saver);
  WAIT_UNTIL (self->sentence != NULL);
  g_assert_cmpstr (self->sentence, ==, "Cancelled; nothing was saved.");
  g_assert_false (g_file_test (self->path, G_FILE_TEST_EXISTS));
  /* It can be used again. */
  g_clear_pointer (&self->sentence, g_free);
  self->share = -1;
  save_clip (self, 64, 64);
  WAIT_UNTIL (self->sentence != NULL);
  g_assert_true (g_file_test (self->path, G_FILE_TEST_EXISTS));
}

/* Nobody waits any more: nobody is told, a clip is called off, and the saver goes at once. */
static void
test_left_alone (Fixture *self, gconstpointer name)
{
  gpointer gone = self->saver;

  g_object_add_weak_pointer (G_OBJECT (self->saver), &gone);
  save_clip (self, WIDTH, HEIGHT);
  g_clear_object (&self->saver);
  g_assert_null (gone);
  g_assert_true (tb_task_wait_for_all (PATIENCE_S));
  do_pending ();
  g_assert_null (self->sentence);
  g_assert_false (g_file_test (self->path, G_FILE_TEST_EXISTS));
}

static void
test_failure_is_a_sentence (Fixture *self, gconstpointer name)
{
  save_picture (self);
  WAIT_UNTIL (self->sentence != NULL);
  g_assert_true (g_str_has_suffix (self->sentence, "the name of a picture ends in .png, .svg or .pdf."));
}

/* A throw that cannot be made cannot be drawn; nor can a view that is none. */
static void
test_nothing_to_draw (Fixture *self, gconstpointer name)
{
  TbSetup *after = tb_session_get_setup (self->session, TB_SIDE_AFTER);
  TbShot shot = after->shot;
  g_autoptr (TbSetup) impossible = NULL;

  g_assert_cmpuint (tb_export_views_get_n (self->views), ==, TB_N_THROW_VIEWS - TB_THROW_PLAN);
  g_assert_true (tb_export_views_can_draw (self->views, 0));
  g_assert_false (tb_export_views_can_draw (self->views, tb_export_views_get_n (self->views)));
  shot.ball.intermediate_differential = 2 * shot.ball.differential;
  impossible = tb_setup_with_shot (after, &shot);
  tb_session_set_after (self->session, impossible);
  g_assert_false (tb_export_views_can_draw (self->views, 0));
}

static void
add (const char *path, const char *file, void (*test) (Fixture *, gconstpointer))
{
  g_test_add (path, Fixture, file, set_up, test, tear_down);
}

int
main (int argc, char **argv)
{
  /* Not the user's own documents. */
  g_setenv ("XDG_DATA_HOME", scratch_folder (), TRUE);
  setlocale (LC_ALL, "C.UTF-8");
  g_test_init (&argc, &argv, NULL);
  add ("/export-saver/picture", "p.png", test_picture);
  add ("/export-saver/clip", "c.webp", test_clip);
  add ("/export-saver/called-off", "o.webp", test_called_off);
  add ("/export-saver/left-alone", "l.webp", test_left_alone);
  add ("/export-saver/failure-is-a-sentence", "f.gif", test_failure_is_a_sentence);
  add ("/export-saver/nothing-to-draw", "n.png", test_nothing_to_draw);
  return g_test_run ();
}
