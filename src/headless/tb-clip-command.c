/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-clip-command.h"

#include <glib/gi18n-lib.h>

#include "tb-atomic-file.h"
#include "tb-clip.h"

static void
draw (cairo_t *cr, double width, double height, double time, gpointer data)
{
  TbThrowScene scene = *(const TbThrowScene *) data;

  scene.time = time;
  tb_throw_view_draw (cr, width, height, &scene);
}

static TbThrowScene
make_scene (const TbRequest *request, TbRun *runs[TB_N_SIDES])
{
  TbThrowScene scene = tb_throw_scene_new (runs[TB_SIDE_BEFORE], runs[TB_SIDE_AFTER]);

  scene.theme = tb_theme_light (tb_throw_view_text_scale (request->width, request->height));
  scene.view = request->view;
  scene.rate = request->rate;
  scene.caption = TRUE;
  return scene;
}

static GBytes *
encode (const TbRequest *request, TbThrowScene *scene, const char *filename, GError **error)
{
  g_autoptr (GError) problem = NULL;
  TbClip clip = { .width = request->width,
                  .height = request->height,
                  .duration = tb_throw_scene_duration (scene),
                  .rate = request->rate,
                  .fps = request->fps,
                  .draw = draw,
                  .data = scene };
  GBytes *bytes = tb_clip_encode (&clip, NULL, &problem);
  gboolean asked;

  if (bytes != NULL)
    return bytes;
  /* A size or a length that will not do is the user's. */
  asked = g_error_matches (problem, TB_CLIP_ERROR, TB_CLIP_ERROR_SIZE)
          || g_error_matches (problem, TB_CLIP_ERROR, TB_CLIP_ERROR_LENGTH);
  g_set_error (error, TB_HEADLESS_ERROR, asked ? TB_EXIT_USAGE : TB_EXIT_FILE, "%s: %s", filename,
               problem->message);
  return NULL;
}

static gboolean
save (const char *filename, GBytes *bytes, const char *shown, GError **error)
{
  g_autoptr (GError) problem = NULL;

  if (tb_atomic_write (filename, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, &problem))
    return TRUE;
  tb_document_finish_error (&problem, shown);
  g_set_error_literal (error, TB_HEADLESS_ERROR, TB_EXIT_FILE, problem->message);
  return FALSE;
}

gboolean
tb_clip_command (TbRequest *request, const char *filename, GError **error)
{
  TbRun *runs[TB_N_SIDES] = { NULL };
  g_autofree char *lower = g_ascii_strdown (filename, -1), *shown = tb_quotable_file (filename);
  g_autoptr (GBytes) bytes = NULL;

  if (!g_str_has_suffix (lower, ".webp"))
    {
      g_set_error (error, TB_HEADLESS_ERROR, TB_EXIT_USAGE,
                   _ ("--clip %s: a name that ends in .webp was expected."), shown);
      return FALSE;
    }
  if (tb_request_throw (request, runs, error))
    {
      TbThrowScene scene = make_scene (request, runs);

      bytes = encode (request, &scene, shown, error);
    }
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&runs[side], tb_run_unref);
  return bytes != NULL && save (filename, bytes, shown, error);
}
