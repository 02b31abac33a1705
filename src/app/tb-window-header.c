/* The header bar in a narrow window: words give way to pictures, one after the other.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

/* What the words may take, px: in this order as much as fits, so that those a newcomer needs are kept
 * longest. */
static void
unfold (TbWindow *self, int room)
{
  TbFoldingLabel *const labels[]
      = { self->save_label, self->open_label,     self->lessons_label, self->clinic_label,
          self->keep_label, self->put_back_label, self->swap_label };

  int left = room - tb_title_button_get_wish (self->title), taken = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (labels); i++)
    {
      int extra = tb_folding_label_get_extra (labels[i]);
      gboolean fits = extra <= left;

      tb_folding_label_set_folded (labels[i], !fits);
      /* None further down takes the place of one that is needed more. */
      left = fits ? left - extra : 0;
      taken += fits ? extra : 0;
    }
  tb_title_button_set_room (self->title, room - taken);
}

void
tb_window_fit_header (TbWindow *self)
{
  GtkWidget *header = gtk_window_get_titlebar (GTK_WINDOW (self));
  int least = 0;

  /* This is what it asks for with pictures alone, whatever is unfolded now. */
  gtk_widget_measure (header, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  unfold (self, MAX (0, gtk_widget_get_width (GTK_WIDGET (self)) - least));
}

void
tb_window_class_bind_header (GtkWidgetClass *widget_class)
{
  g_type_ensure (TB_TYPE_FOLDING_LABEL);
  g_type_ensure (TB_TYPE_TITLE_BUTTON);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, open_label);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, save_label);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, lessons_label);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, clinic_label);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, keep_label);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, swap_label);
  gtk_widget_class_bind_template_child (widget_class, TbWindow, put_back_label);
}
