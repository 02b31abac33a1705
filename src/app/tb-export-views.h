/* What can be taken away: the views of the throw, and the other pictures of its session that are on the
 * screen.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-picture.h"
#include "tb-throw-view.h"

G_BEGIN_DECLS

typedef struct TbExportViews TbExportViews;

/* The views of the throw first. Without `pictures` there are no others. */
TbExportViews *tb_export_views_new (TbSession *session, gboolean pictures);
void tb_export_views_free (TbExportViews *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbExportViews, tb_export_views_free)

guint tb_export_views_get_n (const TbExportViews *self);
/* Translated; borrowed. */
const char *tb_export_views_get_name (const TbExportViews *self, guint view);
/* The view that shows what a picture on the screen shows; their number if none does. */
guint tb_export_views_find (const TbExportViews *self, TbPicture *picture);
/* Whether what a picture shows is rather high than wide. */
gboolean tb_export_views_stands (TbPicture *picture);

/* How it is drawn. */
typedef struct TbExportLook
{
  double width, height; /* px */
  TbTheme theme;
  gboolean caption; /* a clip's, with its rate */
  double rate;      /* of time; 1 is true */
} TbExportLook;

/* FALSE where there is nothing to draw: no such view, no throw, or the picture has gone. */
gboolean tb_export_views_can_draw (const TbExportViews *self, guint view);
/* These only where there is. The scene is of a view of the throw, and does not read the size. */
void tb_export_views_draw (const TbExportViews *self, guint view, cairo_t *cr, const TbExportLook *look);
TbThrowScene tb_export_views_scene (const TbExportViews *self, guint view, const TbExportLook *look);

G_END_DECLS
