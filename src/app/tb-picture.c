/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-picture.h"

#include "tb-accessible.h"
#include "tb-picture-menu.h"
#include "tb-still-image.h"
#include "tb-style.h"

typedef struct TbPicturePrivate
{
  TbSession *session;
  TbStillImage image;
  GskRenderNode *still; /* shows the image */
  TbTheme theme;        /* of the image */
  char *description;
  guint still_count, ground_count;
  char *name;
  const TbPictureForm *form; /* while it is drawn in another form; else NULL */
  GtkWidget *menu;           /* shown last; a child */
} TbPicturePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (TbPicture, tb_picture, GTK_TYPE_WIDGET)

static TbPicturePrivate *
private_of (TbPicture *self)
{
  return tb_picture_get_instance_private (self);
}

void
tb_picture_invalidate (TbPicture *self)
{
  g_clear_pointer (&private_of (self)->still, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
update_description (TbPicture *self)
{
  TbPicturePrivate *priv = private_of (self);
  g_autofree char *description = NULL;

  if (TB_PICTURE_GET_CLASS (self)->describe == NULL)
    return;
  description = TB_PICTURE_GET_CLASS (self)->describe (self);
  if (g_strcmp0 (description, priv->description) == 0)
    return;
  g_free (priv->description);
  priv->description = g_steal_pointer (&description);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  priv->description, -1);
}

void
tb_picture_refresh (TbPicture *self)
{
  update_description (self);
  tb_picture_invalidate (self);
}

static void
on_time_changed (TbPicture *self)
{
  TB_PICTURE_GET_CLASS (self)->time_changed (self);
}

void
tb_picture_set_session (TbPicture *self, TbSession *session)
{
  TbPicturePrivate *priv = private_of (self);

  g_return_if_fail (priv->session == NULL);
  priv->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (tb_picture_refresh), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (tb_picture_refresh), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::time", G_CALLBACK (on_time_changed), self, G_CONNECT_SWAPPED);
  if (TB_PICTURE_GET_CLASS (self)->session_set != NULL)
    TB_PICTURE_GET_CLASS (self)->session_set (self);
  tb_picture_refresh (self);
}

TbSession *
tb_picture_get_session (TbPicture *self)
{
  return private_of (self)->session;
}

TbTheme
tb_picture_get_theme (TbPicture *self)
{
  if (private_of (self)->form != NULL)
    return *private_of (self)->form->theme;
  return tb_style_theme_for (GTK_WIDGET (self));
}

void
tb_picture_get_size (TbPicture *self, double *width, double *height)
{
  const TbPictureForm *form = private_of (self)->form;

  *width = form != NULL ? form->width : gtk_widget_get_width (GTK_WIDGET (self));
  *height = form != NULL ? form->height : gtk_widget_get_height (GTK_WIDGET (self));
}

gboolean
tb_picture_has_other_form (TbPicture *self)
{
  return private_of (self)->form != NULL;
}

const char *
tb_picture_get_description (TbPicture *self)
{
  const char *description = private_of (self)->description;

  return description != NULL ? description : "";
}

void
tb_picture_set_name (TbPicture *self, const char *name)
{
  g_free (private_of (self)->name);
  private_of (self)->name = g_strdup (name);
  tb_accessible_set_name (GTK_WIDGET (self), name);
}

const char *
tb_picture_get_name (TbPicture *self)
{
  const char *name = private_of (self)->name;

  return name != NULL ? name : "";
}

static void
draw_moving (TbPicture *self, cairo_t *cr, const TbPictureForm *form)
{
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  GskRenderNode *node;

  TB_PICTURE_GET_CLASS (self)->snapshot_moving (self, snapshot, form->width, form->height);
  node = gtk_snapshot_free_to_node (snapshot);
  if (node == NULL)
    return;
  gsk_render_node_draw (node, cr);
  gsk_render_node_unref (node);
}

void
tb_picture_draw (TbPicture *self, cairo_t *cr, const TbPictureForm *form)
{
  TbPicturePrivate *priv = private_of (self);

  g_return_if_fail (priv->session != NULL);
  priv->form = form;
  if (TB_PICTURE_GET_CLASS (self)->draw_ground != NULL)
    TB_PICTURE_GET_CLASS (self)->draw_ground (self, cr, form->width, form->height);
  if (TB_PICTURE_GET_CLASS (self)->draw_still != NULL)
    TB_PICTURE_GET_CLASS (self)->draw_still (self, cr, form->width, form->height);
  if (TB_PICTURE_GET_CLASS (self)->snapshot_moving != NULL)
    draw_moving (self, cr, form);
  priv->form = NULL;
}

GtkWidget *
tb_picture_take_menu (TbPicture *self, GtkWidget *menu)
{
  TbPicturePrivate *priv = private_of (self);

  g_clear_pointer (&priv->menu, gtk_widget_unparent);
  return priv->menu = menu;
}

guint
tb_picture_get_still_count (TbPicture *self)
{
  return private_of (self)->still_count;
}

guint
tb_picture_get_ground_count (TbPicture *self)
{
  return private_of (self)->ground_count;
}

/* Draws the ground, unless it is the one that is there. */
static void
update_ground (TbPicture *self)
{
  TbPicturePrivate *priv = private_of (self);
  int width = priv->image.width, height = priv->image.height;
  cairo_t *cr = tb_still_image_begin_ground (&priv->image,
                                             TB_PICTURE_GET_CLASS (self)->ground_key (self, width, height));

  if (cr == NULL)
    return;
  TB_PICTURE_GET_CLASS (self)->draw_ground (self, cr, width, height);
  cairo_destroy (cr);
  priv->ground_count++;
}

static void
update_still (TbPicture *self)
{
  TbPicturePrivate *priv = private_of (self);
  cairo_t *cr;

  priv->theme = tb_picture_get_theme (self);
  if (TB_PICTURE_GET_CLASS (self)->draw_ground != NULL)
    update_ground (self);
  cr = tb_still_image_begin (&priv->image);
  TB_PICTURE_GET_CLASS (self)->draw_still (self, cr, priv->image.width, priv->image.height);
  cairo_destroy (cr);
  priv->still = tb_still_image_to_node (&priv->image);
  priv->still_count++;
}

static void
tb_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TbPicture *self = TB_PICTURE (widget);
  TbPicturePrivate *priv = private_of (self);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (priv->session == NULL || width < 1 || height < 1)
    return;
  if (tb_still_image_set_size (&priv->image, width, height, gtk_widget_get_scale_factor (widget)))
    g_clear_pointer (&priv->still, gsk_render_node_unref);
  if (priv->still == NULL && TB_PICTURE_GET_CLASS (self)->draw_still != NULL)
    update_still (self);
  if (priv->still != NULL)
    gtk_snapshot_append_node (snapshot, priv->still);
  if (TB_PICTURE_GET_CLASS (self)->snapshot_moving != NULL)
    TB_PICTURE_GET_CLASS (self)->snapshot_moving (self, snapshot, width, height);
}

/* Much of what GTK tells of here (another window has the focus) leaves the drawing as it is. */
static void
invalidate_if_other_theme (TbPicture *self)
{
  TbTheme theme = tb_picture_get_theme (self);

  if (memcmp (&theme, &private_of (self)->theme, sizeof theme) == 0)
    return;
  tb_still_image_drop_ground (&private_of (self)->image);
  tb_picture_invalidate (self);
}

static void
tb_picture_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (tb_picture_parent_class)->css_changed (widget, change);
  invalidate_if_other_theme (TB_PICTURE (widget));
}

static void
tb_picture_system_setting_changed (GtkWidget *widget, GtkSystemSetting setting)
{
  GTK_WIDGET_CLASS (tb_picture_parent_class)->system_setting_changed (widget, setting);
  invalidate_if_other_theme (TB_PICTURE (widget));
}

static void
tb_picture_dispose (GObject *object)
{
  TbPicturePrivate *priv = private_of (TB_PICTURE (object));

  g_clear_pointer (&priv->menu, gtk_widget_unparent);
  g_clear_object (&priv->session);
  g_clear_pointer (&priv->still, gsk_render_node_unref);
  tb_still_image_clear (&priv->image);
  G_OBJECT_CLASS (tb_picture_parent_class)->dispose (object);
}

static void
tb_picture_finalize (GObject *object)
{
  g_free (private_of (TB_PICTURE (object))->description);
  g_free (private_of (TB_PICTURE (object))->name);
  G_OBJECT_CLASS (tb_picture_parent_class)->finalize (object);
}

static void
redraw_moving (TbPicture *self)
{
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
tb_picture_class_init (TbPictureClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = tb_picture_dispose;
  object_class->finalize = tb_picture_finalize;
  widget_class->snapshot = tb_picture_snapshot;
  widget_class->css_changed = tb_picture_css_changed;
  widget_class->system_setting_changed = tb_picture_system_setting_changed;
  klass->time_changed = redraw_moving;
  gtk_widget_class_set_css_name (widget_class, "picture");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  tb_picture_class_install_menu (widget_class);
}

static void
tb_picture_init (TbPicture *self)
{
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  tb_picture_init_menu (self);
}
