/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-parts-picture.h"

#include <glib/gi18n-lib.h>

#include "tb-quantity.h"
#include "tb-style.h"

struct _TbPartsPicture
{
  TbPicture parent_instance;

  GArray *parts; /* of TbPart, their names owned */
  char *unit;
  int digits;
};

G_DEFINE_FINAL_TYPE (TbPartsPicture, tb_parts_picture, TB_TYPE_PICTURE)

static void
clear_part (gpointer data)
{
  g_free ((char *) ((TbPart *) data)->name);
}

static char *
tb_parts_picture_describe (TbPicture *picture)
{
  TbPartsPicture *self = TB_PARTS_PICTURE (picture);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < self->parts->len; i++)
    {
      const TbPart *part = &g_array_index (self->parts, TbPart, i);
      g_autofree char *number = tb_number_format_signed (part->value, self->digits);

      /* Translators: a part's name, its number, its unit (with the space before it). */
      g_string_append_printf (text, _ ("%s: %s%s. "), part->name, number, self->unit);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

void
tb_parts_picture_set_parts (TbPartsPicture *self, const TbPart *parts, guint n_parts)
{
  g_array_set_size (self->parts, 0);
  for (guint i = 0; i < n_parts; i++)
    {
      TbPart part = parts[i];

      part.name = g_strdup (part.name);
      g_array_append_val (self->parts, part);
    }
  tb_picture_refresh (TB_PICTURE (self));
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
tb_parts_picture_set_unit (TbPartsPicture *self, const char *unit, int digits)
{
  char *copy = g_strdup (unit);

  g_free (self->unit);
  self->unit = copy;
  self->digits = digits;
  tb_picture_refresh (TB_PICTURE (self));
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
tb_parts_picture_measure (GtkWidget *widget,
                          GtkOrientation orientation,
                          int for_size,
                          int *minimum,
                          int *natural,
                          int *minimum_baseline,
                          int *natural_baseline)
{
  TbTheme theme = tb_style_theme_for (widget);

  *minimum = *natural = 0;
  if (orientation == GTK_ORIENTATION_VERTICAL)
    *minimum = *natural = (int) ceil (tb_parts_view_height (&theme, TB_PARTS_PICTURE (widget)->parts->len));
}

static void
tb_parts_picture_draw_still (TbPicture *picture, cairo_t *cr, double width, double height)
{
  TbPartsPicture *self = TB_PARTS_PICTURE (picture);
  const TbPartsScene scene = { .theme = tb_picture_get_theme (picture),
                               .parts = (const TbPart *) (gconstpointer) self->parts->data,
                               .n_parts = self->parts->len,
                               .digits = self->digits,
                               .unit = self->unit };

  tb_parts_view_draw (cr, width, height, &scene);
}

/* Nothing of it moves with the throw. */
static void
tb_parts_picture_time_changed (TbPicture *picture)
{
}

static void
tb_parts_picture_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (tb_parts_picture_parent_class)->css_changed (widget, change);
  gtk_widget_queue_resize (widget);
}

static void
tb_parts_picture_finalize (GObject *object)
{
  TbPartsPicture *self = TB_PARTS_PICTURE (object);

  g_array_unref (self->parts);
  g_free (self->unit);
  G_OBJECT_CLASS (tb_parts_picture_parent_class)->finalize (object);
}

static void
tb_parts_picture_class_init (TbPartsPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tb_parts_picture_finalize;
  widget_class->measure = tb_parts_picture_measure;
  widget_class->css_changed = tb_parts_picture_css_changed;
  TB_PICTURE_CLASS (klass)->draw_still = tb_parts_picture_draw_still;
  TB_PICTURE_CLASS (klass)->time_changed = tb_parts_picture_time_changed;
  TB_PICTURE_CLASS (klass)->describe = tb_parts_picture_describe;
}

static void
tb_parts_picture_init (TbPartsPicture *self)
{
  self->parts = g_array_new (FALSE, FALSE, sizeof (TbPart));
  g_array_set_clear_func (self->parts, clear_part);
  self->unit = g_strdup ("");
}
