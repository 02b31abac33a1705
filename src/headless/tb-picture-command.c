/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-picture-command.h"

#include "tb-export.h"

static TbThrowScene
make_scene (const TbRequest *request, TbRun *runs[TB_N_SIDES])
{
  TbThrowScene scene = tb_throw_scene_new (runs[TB_SIDE_BEFORE], runs[TB_SIDE_AFTER]);

  scene.theme = tb_theme_light (tb_throw_view_text_scale (request->width, request->height));
  scene.view = request->view;
  return scene;
}

static void
draw (cairo_t *cr, double width, double height, gpointer data)
{
  tb_throw_view_draw (cr, width, height, data);
}

static gboolean
export_picture (const TbRequest *request, TbThrowScene *scene, const char *filename, GError **error)
{
  g_autoptr (GError) problem = NULL;
  gboolean asked;

  if (tb_export_picture (filename, request->width, request->height, draw, scene, &problem))
    return TRUE;
  /* A name or a size that will not do is the user's; the rest is the disk's. */
  asked = g_error_matches (problem, TB_EXPORT_ERROR, TB_EXPORT_ERROR_FORMAT)
          || g_error_matches (problem, TB_EXPORT_ERROR, TB_EXPORT_ERROR_SIZE);
  /* The system's sentences come without their full stop. */
  g_set_error (error, TB_HEADLESS_ERROR, asked ? TB_EXIT_USAGE : TB_EXIT_FILE, "%s%s", problem->message,
               g_str_has_suffix (problem->message, ".") ? "" : ".");
  return FALSE;
}

gboolean
tb_picture_command (TbRequest *request, const char *filename, GError **error)
{
  TbRun *runs[TB_N_SIDES] = { NULL };
  gboolean done = FALSE;

  if (tb_request_throw (request, runs, error))
    {
      TbThrowScene scene = make_scene (request, runs);

      done = export_picture (request, &scene, filename, error);
    }
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&runs[side], tb_run_unref);
  return done;
}
