/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-picture-menu.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-export-window.h"

/* What is copied has so many pixels for each of the window's: it is looked at closely elsewhere. */
#define COPY_SCALE 2

static void
save (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbPicture *self = TB_PICTURE (widget);
  GtkWindow *parent = GTK_WINDOW (gtk_widget_get_root (widget));
  TbExportWindow *window;

  if (tb_picture_get_session (self) == NULL)
    return;
  window = tb_export_window_new (parent, tb_picture_get_session (self), TB_EXPORT_PICTURE);
  tb_export_window_choose (window, self);
  gtk_window_present (GTK_WINDOW (window));
}

/* The surface's pixels as they are; it must be an image of ARGB32. */
static GdkTexture *
texture_of (cairo_surface_t *surface)
{
  int width = cairo_image_surface_get_width (surface), height = cairo_image_surface_get_height (surface);
  gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) bytes = NULL;

  cairo_surface_flush (surface);
  bytes = g_bytes_new (cairo_image_surface_get_data (surface), stride * (gsize) height);
  return gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, bytes, stride);
}

void
tb_picture_copy_drawn (GtkWidget *widget, const TbDrawnCopy *copy)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, copy->scale * copy->width,
                                                         copy->scale * copy->height);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (GdkTexture) texture = NULL;

  cairo_scale (cr, copy->scale, copy->scale);
  copy->draw (cr, copy->width, copy->height, copy->data);
  cairo_destroy (cr);
  texture = texture_of (surface);
  cairo_surface_destroy (surface);
  gdk_clipboard_set_texture (gtk_widget_get_clipboard (widget), texture);
}

static void
draw (cairo_t *cr, double width, double height, gpointer data)
{
  TbTheme theme = tb_picture_get_theme (data);

  tb_picture_draw (data, cr, &(TbPictureForm){ width, height, &theme });
}

void
tb_picture_copy (TbPicture *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self)), height = gtk_widget_get_height (GTK_WIDGET (self));

  if (tb_picture_get_session (self) != NULL && width > 0 && height > 0)
    tb_picture_copy_drawn (GTK_WIDGET (self), &(TbDrawnCopy){ width, height, COPY_SCALE, draw, self });
}

static void
copy (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tb_picture_copy (TB_PICTURE (widget));
}

static GtkWidget *
new_menu (GtkWidget *widget)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  GtkWidget *popover;

  g_menu_append (menu, _ ("_Save this picture…"), "picture.save");
  g_menu_append (menu, _ ("_Copy picture"), "picture.copy");
  popover = gtk_popover_menu_new_from_model (G_MENU_MODEL (menu));
  gtk_popover_set_has_arrow (GTK_POPOVER (popover), FALSE);
  gtk_widget_set_halign (popover, GTK_ALIGN_START);
  gtk_widget_set_parent (popover, widget);
  tb_accessible_set_name (popover, tb_picture_get_name (TB_PICTURE (widget)));
  return popover;
}

static void
popup_at (GtkWidget *widget, double x, double y)
{
  GtkPopover *popover = GTK_POPOVER (tb_picture_take_menu (TB_PICTURE (widget), new_menu (widget)));

  gtk_popover_set_pointing_to (popover, &(GdkRectangle){ (int) x, (int) y, 1, 1 });
  gtk_popover_popup (popover);
}

static void
show_menu (GtkWidget *widget, const char *name, GVariant *parameter)
{
  popup_at (widget, 0.5 * gtk_widget_get_width (widget), 0.5 * gtk_widget_get_height (widget));
}

static void
on_pressed (GtkGestureClick *gesture, int count, double x, double y, gpointer picture)
{
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  popup_at (picture, x, y);
}

void
tb_picture_class_install_menu (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "picture.save", NULL, save);
  gtk_widget_class_install_action (widget_class, "picture.copy", NULL, copy);
  gtk_widget_class_install_action (widget_class, "picture.menu", NULL, show_menu);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, "picture.menu", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Menu, 0, "picture.menu", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_c, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "picture.copy", NULL);
}

void
tb_picture_init_menu (TbPicture *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect (click, "pressed", G_CALLBACK (on_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
}
