/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-slide-picture.h"

#include "tb-accessible.h"
#include "tb-style.h"

struct _TbSlidePicture
{
  GtkWidget parent_instance;

  TbClinicPage *page;
  GskRenderNode *node; /* the drawing, until something changes */
  int width, height;   /* of it */
};

enum
{
  PICKED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbSlidePicture, tb_slide_picture, GTK_TYPE_WIDGET)

static void
invalidate (TbSlidePicture *self)
{
  g_clear_pointer (&self->node, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
tb_slide_picture_set_page (TbSlidePicture *self, TbClinicPage *page)
{
  g_autofree char *sentences = tb_clinic_page_sentences (page);

  g_clear_pointer (&self->page, tb_clinic_page_free);
  self->page = page;
  tb_accessible_set_name (GTK_WIDGET (self), page->slide.headline);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, sentences, -1);
  invalidate (self);
}

const TbClinicPage *
tb_slide_picture_get_page (TbSlidePicture *self)
{
  return self->page;
}

static GskRenderNode *
draw_node (TbSlidePicture *self)
{
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) self->width, (float) self->height));

  self->page->slide.theme = tb_style_projector_theme (GTK_WIDGET (self), 1);
  tb_slide_view_draw (cr, self->width, self->height, &self->page->slide);
  cairo_destroy (cr);
  return gtk_snapshot_free_to_node (snapshot);
}

static void
tb_slide_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TbSlidePicture *self = TB_SLIDE_PICTURE (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->page == NULL || width < 1 || height < 1)
    return;
  if (self->node != NULL && (self->width != width || self->height != height))
    g_clear_pointer (&self->node, gsk_render_node_unref);
  self->width = width;
  self->height = height;
  if (self->node == NULL)
    self->node = draw_node (self);
  gtk_snapshot_append_node (snapshot, self->node);
}

static void
on_pressed (TbSlidePicture *self, int presses, double x, double y)
{
  int item = self->page != NULL
                 ? tb_slide_view_item_at (gtk_widget_get_width (GTK_WIDGET (self)),
                                          gtk_widget_get_height (GTK_WIDGET (self)), &self->page->slide, x, y)
                 : -1;

  if (item >= 0)
    g_signal_emit (self, signals[PICKED], 0, (guint) item);
}

static void
tb_slide_picture_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (tb_slide_picture_parent_class)->css_changed (widget, change);
  invalidate (TB_SLIDE_PICTURE (widget));
}

static void
tb_slide_picture_dispose (GObject *object)
{
  TbSlidePicture *self = TB_SLIDE_PICTURE (object);

  g_clear_pointer (&self->node, gsk_render_node_unref);
  g_clear_pointer (&self->page, tb_clinic_page_free);
  G_OBJECT_CLASS (tb_slide_picture_parent_class)->dispose (object);
}

static void
tb_slide_picture_class_init (TbSlidePictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_slide_picture_dispose;
  widget_class->snapshot = tb_slide_picture_snapshot;
  widget_class->css_changed = tb_slide_picture_css_changed;
  gtk_widget_class_set_css_name (widget_class, "slide");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  signals[PICKED] = g_signal_new ("picked", TB_TYPE_SLIDE_PICTURE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_UINT);
}

static void
tb_slide_picture_init (TbSlidePicture *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect_swapped (click, "pressed", G_CALLBACK (on_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}
