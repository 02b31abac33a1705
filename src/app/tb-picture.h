/* A drawn view of the session: one still drawing that is kept, and what moves on top of it.
 *
 * The still part is drawn again only when the session, the size or the colours change, and kept as an image; while
 * a throw runs only the small moving parts are drawn. Where a ground is told apart, dragging a slider draws only what
 * lies on it. Role and description make it readable without eyes.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"
#include "tb-theme.h"

G_BEGIN_DECLS

#define TB_TYPE_PICTURE (tb_picture_get_type ())
G_DECLARE_DERIVABLE_TYPE (TbPicture, tb_picture, TB, PICTURE, GtkWidget)

struct _TbPictureClass
{
  GtkWidgetClass parent_class;

  /* Optional: what lies under the still part and changes more seldom yet. Size in px. */
  void (*draw_ground) (TbPicture *self, cairo_t *cr, double width, double height);
  /* With it: all that it is drawn from, in bytes; it is drawn again only when they are others. The caller's. */
  GBytes *(*ground_key) (TbPicture *self, double width, double height);
  /* Size in px. */
  void (*draw_still) (TbPicture *self, cairo_t *cr, double width, double height);
  /* Optional: appends nodes, as small as can be. */
  void (*snapshot_moving) (TbPicture *self, GtkSnapshot *snapshot, double width, double height);
  /* Optional: what the drawing shows, in words; the caller's. */
  char *(*describe) (TbPicture *self);
  /* Optional: the session's time is another. The default redraws the moving parts. */
  void (*time_changed) (TbPicture *self);
  /* Optional: there is a session now. */
  void (*session_set) (TbPicture *self);
};

void tb_picture_set_session (TbPicture *self, TbSession *session);
/* Borrowed; NULL until it is set. */
TbSession *tb_picture_get_session (TbPicture *self);
/* Colours and sizes that fit the window as it is now. */
TbTheme tb_picture_get_theme (TbPicture *self);
/* Drops the still drawing; it is drawn anew with the next frame. */
void tb_picture_invalidate (TbPicture *self);
/* The same, and asks for what it shows in words once more. */
void tb_picture_refresh (TbPicture *self);
/* What describe() last said; "" where there is nothing. Borrowed. */
const char *tb_picture_get_description (TbPicture *self);
/* What it is called, translated; told to assistive technology, and shown where pictures are chosen. "" without. */
void tb_picture_set_name (TbPicture *self, const char *name);
const char *tb_picture_get_name (TbPicture *self);

/* A picture that is not the one on the screen. */
typedef struct TbPictureForm
{
  double width, height; /* px */
  const TbTheme *theme;
} TbPictureForm;
/* The size to draw for, px: of the form that is being drawn, or else the widget's. */
void tb_picture_get_size (TbPicture *self, double *width, double *height);
/* Whether what is being drawn is not the one on the screen. What is kept for that one is not for this. */
gboolean tb_picture_has_other_form (TbPicture *self);
/* Draws it so, once, moving parts and all. It needs a session. */
void tb_picture_draw (TbPicture *self, cairo_t *cr, const TbPictureForm *form);

/* Keeps the menu shown over the picture, in place of the one before. Answers it. */
GtkWidget *tb_picture_take_menu (TbPicture *self, GtkWidget *menu);
/* For tests and benchmarks: how often the still part was drawn, and the ground under it. */
guint tb_picture_get_still_count (TbPicture *self);
guint tb_picture_get_ground_count (TbPicture *self);

G_END_DECLS
