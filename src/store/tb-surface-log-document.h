/* The log of surface work of one ball, kept beside the user's balls: a file of its own for each ball's id.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-document.h"
#include "tb-surface.h"

G_BEGIN_DECLS

/* Entries that one log may have. */
#define TB_SURFACE_LOG_MAX 5000

typedef struct TbBallSurface
{
  double roughness; /* m, of the ball before the first entry */
  TbSurfaceLog *log;
} TbBallSurface;

TbBallSurface *tb_ball_surface_new (double roughness);
void tb_ball_surface_free (TbBallSurface *surface);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbBallSurface, tb_ball_surface_free)

/* The text of a file, and back. */
char *tb_ball_surface_to_text (const TbBallSurface *surface);
TbBallSurface *tb_ball_surface_from_text (const char *text, gsize length, GError **error);

/* Where the log of a ball is kept. */
char *tb_ball_surface_path (const char *ball_id);
/* A ball that has no file yet has an empty log, with the roughness given. The error is a whole sentence with
 * the file's name. */
TbBallSurface *tb_ball_surface_load (const char *ball_id, double roughness, GError **error);
gboolean tb_ball_surface_save (const TbBallSurface *surface, const char *ball_id, GError **error);
/* With the ball goes its log. No file is no error. */
gboolean tb_ball_surface_remove (const char *ball_id, GError **error);

G_END_DECLS
