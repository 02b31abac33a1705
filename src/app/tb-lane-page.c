/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lane-page.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-spin.h"
#include "tb-word.h"

typedef struct TbLanePagePrivate
{
  /* Template */
  GtkWidget *box;
  GtkBox *controls;
  TbDrawnPicture *picture;
  GtkLabel *words;

  TbSession *session;
  gboolean stale; /* the session has changed while the page was not seen */
} TbLanePagePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (TbLanePage, tb_lane_page, GTK_TYPE_WIDGET)

static TbLanePagePrivate *
private_of (TbLanePage *self)
{
  return tb_lane_page_get_instance_private (self);
}

static void
on_session_changed (TbLanePage *self)
{
  TbLanePagePrivate *priv = private_of (self);

  priv->stale = !gtk_widget_get_mapped (GTK_WIDGET (self));
  if (!priv->stale)
    TB_LANE_PAGE_GET_CLASS (self)->session_changed (self);
}

void
tb_lane_page_set_session (TbLanePage *self, TbSession *session)
{
  TbLanePagePrivate *priv = private_of (self);

  g_return_if_fail (priv->session == NULL);
  priv->session = g_object_ref (session);
  tb_picture_set_session (TB_PICTURE (priv->picture), session);
  TB_LANE_PAGE_GET_CLASS (self)->session_set (self);
  g_signal_connect_object (session, "changed", G_CALLBACK (on_session_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (on_session_changed), self,
                           G_CONNECT_SWAPPED);
  on_session_changed (self);
}

static void
tb_lane_page_map (GtkWidget *widget)
{
  TbLanePage *self = TB_LANE_PAGE (widget);

  GTK_WIDGET_CLASS (tb_lane_page_parent_class)->map (widget);
  if (private_of (self)->stale)
    on_session_changed (self);
}

static void
tb_lane_page_unmap (GtkWidget *widget)
{
  if (TB_LANE_PAGE_GET_CLASS (widget)->hidden)
    TB_LANE_PAGE_GET_CLASS (widget)->hidden (TB_LANE_PAGE (widget));
  /* What was dropped is to be done again. */
  private_of (TB_LANE_PAGE (widget))->stale = TRUE;
  GTK_WIDGET_CLASS (tb_lane_page_parent_class)->unmap (widget);
}

TbSession *
tb_lane_page_get_session (TbLanePage *self)
{
  return private_of (self)->session;
}

TbDrawnPicture *
tb_lane_page_get_picture (TbLanePage *self)
{
  return private_of (self)->picture;
}

GtkBox *
tb_lane_page_get_controls (TbLanePage *self)
{
  return private_of (self)->controls;
}

const char *
tb_lane_page_get_words (TbLanePage *self)
{
  return gtk_label_get_text (private_of (self)->words);
}

void
tb_lane_page_set_words (TbLanePage *self, const char *words)
{
  gtk_label_set_text (private_of (self)->words, words);
}

TbSetup *
tb_lane_page_get_setup (TbLanePage *self)
{
  return tb_session_get_setup (private_of (self)->session, TB_SIDE_AFTER);
}

void
tb_lane_page_add_title (GtkBox *box, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "section-title");
  gtk_box_append (box, label);
}

GtkLabel *
tb_lane_page_add_note (GtkBox *box, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 34);
  gtk_widget_add_css_class (label, "note");
  gtk_box_append (box, label);
  return GTK_LABEL (label);
}

GtkBox *
tb_lane_page_add_row (GtkBox *box, const char *text)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (row), label);
  gtk_widget_add_css_class (row, "list-row");
  gtk_box_append (box, row);
  return GTK_BOX (row);
}

GtkSpinButton *
tb_lane_page_add_spin (GtkBox *box, const char *label, const TbSpinRange *range)
{
  GtkAdjustment *adjustment
      = gtk_adjustment_new (range->low, range->low, range->high, range->step, range->page, 0);
  GtkWidget *spin = gtk_spin_button_new (adjustment, range->step, range->digits);

  tb_spin_take_either_mark (GTK_SPIN_BUTTON (spin));
  gtk_editable_set_width_chars (GTK_EDITABLE (spin), 5);
  gtk_widget_set_valign (spin, GTK_ALIGN_CENTER);
  tb_accessible_set_name (spin, label);
  gtk_box_append (tb_lane_page_add_row (box, label), spin);
  return GTK_SPIN_BUTTON (spin);
}

void
tb_lane_page_explain (GtkSpinButton *spin, const char *word)
{
  GtkWidget *row = gtk_widget_get_parent (GTK_WIDGET (spin));

  tb_word_attach (row, gtk_widget_get_first_child (row), word);
}

GtkDropDown *
tb_lane_page_add_choice (GtkBox *box, const char *label, const char *const *labels)
{
  GtkStringList *list = gtk_string_list_new (NULL);
  GtkWidget *choice;

  for (; *labels; labels++)
    gtk_string_list_append (list, _ (*labels));
  choice = gtk_drop_down_new (G_LIST_MODEL (list), NULL);
  gtk_widget_set_valign (choice, GTK_ALIGN_CENTER);
  tb_accessible_set_drop_down_name (GTK_DROP_DOWN (choice), label);
  gtk_box_append (tb_lane_page_add_row (box, label), choice);
  return GTK_DROP_DOWN (choice);
}

GtkButton *
tb_lane_page_add_button (GtkBox *box, const char *label, const char *tooltip)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_box_append (box, button);
  return GTK_BUTTON (button);
}

static void
tb_lane_page_dispose (GObject *object)
{
  TbLanePagePrivate *priv = private_of (TB_LANE_PAGE (object));

  g_clear_pointer (&priv->box, gtk_widget_unparent);
  g_clear_object (&priv->session);
  G_OBJECT_CLASS (tb_lane_page_parent_class)->dispose (object);
}

static void
tb_lane_page_class_init (TbLanePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_lane_page_dispose;
  widget_class->map = tb_lane_page_map;
  widget_class->unmap = tb_lane_page_unmap;
  g_type_ensure (TB_TYPE_DRAWN_PICTURE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-lane-page.ui");
  gtk_widget_class_bind_template_child_private (widget_class, TbLanePage, box);
  gtk_widget_class_bind_template_child_private (widget_class, TbLanePage, controls);
  gtk_widget_class_bind_template_child_private (widget_class, TbLanePage, picture);
  gtk_widget_class_bind_template_child_private (widget_class, TbLanePage, words);
}

static void
tb_lane_page_init (TbLanePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
