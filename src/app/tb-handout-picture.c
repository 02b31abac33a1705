/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-handout-picture.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-draw.h"

/* px */
#define LEAST_WIDTH 320
#define EDGE 12.0
#define SHADOW 3.0
#define SHADOW_OPACITY 0.25

struct _TbHandoutPicture
{
  GtkWidget parent_instance;

  const TbHandout *handout;
  GskRenderNode *still; /* drawn as wide as `width`; NULL once something has changed */
  int width;
};

G_DEFINE_FINAL_TYPE (TbHandoutPicture, tb_handout_picture, GTK_TYPE_WIDGET)

static double
paper_ratio (TbHandoutPicture *self)
{
  TbPaper paper = self->handout != NULL ? self->handout->paper : TB_PAPER_A4;

  return tb_paper_height (paper) / tb_paper_width (paper);
}

static void
draw (TbHandoutPicture *self, cairo_t *cr, double width)
{
  cairo_rectangle_t sheet = { EDGE, EDGE, width - 2 * EDGE, (width - 2 * EDGE) * paper_ratio (self) };
  cairo_rectangle_t shadow = { sheet.x + SHADOW, sheet.y + SHADOW, sheet.width, sheet.height };

  tb_draw_color (cr, (TbColor){ 0, 0, 0, SHADOW_OPACITY });
  tb_draw_rectangle (cr, &shadow);
  cairo_fill (cr);
  tb_draw_color (cr, (TbColor){ 1, 1, 1, 1 });
  tb_draw_rectangle (cr, &sheet);
  cairo_fill (cr);
  if (self->handout == NULL || self->handout->facts == NULL)
    return;
  cairo_translate (cr, sheet.x, sheet.y);
  cairo_scale (cr, sheet.width / tb_paper_width (self->handout->paper),
               sheet.width / tb_paper_width (self->handout->paper));
  tb_handout_draw (cr, self->handout);
}

static GskRenderNode *
draw_still (TbHandoutPicture *self, int width, int height)
{
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  cairo_t *cr
      = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  draw (self, cr, width);
  cairo_destroy (cr);
  return gtk_snapshot_free_to_node (snapshot);
}

static void
tb_handout_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TbHandoutPicture *self = TB_HANDOUT_PICTURE (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->width != width)
    g_clear_pointer (&self->still, gsk_render_node_unref);
  if (self->still == NULL)
    self->still = draw_still (self, width, height);
  self->width = width;
  if (self->still != NULL)
    gtk_snapshot_append_node (snapshot, self->still);
}

/* The page in words. */
static char *
description_of (TbHandoutPicture *self)
{
  const TbHandoutFacts *facts = self->handout != NULL ? self->handout->facts : NULL;
  g_auto (GStrv) sentences = NULL;
  g_autofree char *why = NULL;

  if (facts == NULL)
    return g_strdup ("");
  sentences = tb_why_all_sentences (facts->why, facts->metric);
  why = g_strjoinv (" ", sentences);
  return g_strjoin (" ", tb_handout_title (self->handout), why, facts->practice->right, NULL);
}

static GtkSizeRequestMode
tb_handout_picture_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
tb_handout_picture_measure (GtkWidget *widget,
                            GtkOrientation orientation,
                            int for_size,
                            int *minimum,
                            int *natural,
                            int *minimum_baseline,
                            int *natural_baseline)
{
  double ratio = paper_ratio (TB_HANDOUT_PICTURE (widget));
  int width = for_size > 0 ? for_size : LEAST_WIDTH;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = LEAST_WIDTH;
  else
    *minimum = *natural = (int) ceil ((width - 2 * EDGE) * ratio + 2 * EDGE);
  *minimum_baseline = *natural_baseline = -1;
}

void
tb_handout_picture_set_handout (TbHandoutPicture *self, const TbHandout *handout)
{
  self->handout = handout;
  tb_handout_picture_refresh (self);
}

void
tb_handout_picture_refresh (TbHandoutPicture *self)
{
  g_autofree char *description = description_of (self);

  g_clear_pointer (&self->still, gsk_render_node_unref);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description,
                                  -1);
  gtk_widget_queue_resize (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
tb_handout_picture_dispose (GObject *object)
{
  g_clear_pointer (&TB_HANDOUT_PICTURE (object)->still, gsk_render_node_unref);
  G_OBJECT_CLASS (tb_handout_picture_parent_class)->dispose (object);
}

static void
tb_handout_picture_class_init (TbHandoutPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_handout_picture_dispose;
  widget_class->get_request_mode = tb_handout_picture_get_request_mode;
  widget_class->measure = tb_handout_picture_measure;
  widget_class->snapshot = tb_handout_picture_snapshot;
  gtk_widget_class_set_css_name (widget_class, "picture");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
tb_handout_picture_init (TbHandoutPicture *self)
{
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  tb_accessible_set_name (GTK_WIDGET (self), _ ("The page"));
}
