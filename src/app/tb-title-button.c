/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-title-button.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"

/* The least of the title that is seen; what tells most titles apart; and what a wide window does not need. */
#define LEAST_CHARS 4
#define WISHED_CHARS 14
#define MOST_CHARS 36
#define BOLDER 1.25

struct _TbTitleButton
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *button;
  GtkLabel *label;
  GtkPopover *popover;
  GtkEditable *title;
  GtkWidget *notes_view;
  GtkTextBuffer *notes;

  TbSession *session;
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (TbTitleButton, tb_title_button, GTK_TYPE_WIDGET)

static char *
notes_text (TbTitleButton *self)
{
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (self->notes, &start, &end);
  return gtk_text_buffer_get_text (self->notes, &start, &end, FALSE);
}

/* Texts that are there already are left alone, with the cursor in them. */
static void
show_study (TbTitleButton *self)
{
  const TbStudy *study = tb_session_get_study (self->session);
  g_autofree char *notes = notes_text (self);

  self->showing = TRUE;
  if (strcmp (gtk_editable_get_text (self->title), study->title) != 0)
    gtk_editable_set_text (self->title, study->title);
  if (strcmp (notes, study->notes) != 0)
    gtk_text_buffer_set_text (self->notes, study->notes, -1);
  self->showing = FALSE;
}

static void
show_label (TbTitleButton *self)
{
  const char *title = tb_session_get_study (self->session)->title;
  const char *shown = title[0] != '\0' ? title : _ ("Untitled study");
  g_autofree char *text = g_strdup_printf (tb_session_get_modified (self->session) ? "%s •" : "%s", shown);
  g_autofree char *name = g_strdup_printf (_ ("Study: %s"), shown);

  gtk_label_set_text (self->label, text);
  tb_accessible_set_name (self->button, name);
}

static void
show_session (TbTitleButton *self)
{
  show_study (self);
  show_label (self);
}

static void
on_edited (TbTitleButton *self)
{
  g_autofree char *notes = NULL;

  if (self->showing || self->session == NULL)
    return;
  notes = notes_text (self);
  tb_session_set_texts (self->session, gtk_editable_get_text (self->title), notes);
}

static void
on_done (TbTitleButton *self)
{
  gtk_popover_popdown (self->popover);
}

void
tb_title_button_popup (TbTitleButton *self)
{
  gtk_menu_button_popup (GTK_MENU_BUTTON (self->button));
}

/* px; a title is bold, which metrics leave out. */
static int
char_width (TbTitleButton *self)
{
  PangoContext *context = gtk_widget_get_pango_context (GTK_WIDGET (self->label));
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);
  int width = PANGO_PIXELS_CEIL (pango_font_metrics_get_approximate_char_width (metrics) * BOLDER);

  pango_font_metrics_unref (metrics);
  return MAX (1, width);
}

int
tb_title_button_get_wish (TbTitleButton *self)
{
  return (WISHED_CHARS - LEAST_CHARS) * char_width (self);
}

void
tb_title_button_set_room (TbTitleButton *self, int room)
{
  int chars = LEAST_CHARS + room / char_width (self);

  gtk_label_set_max_width_chars (self->label, CLAMP (chars, LEAST_CHARS, MOST_CHARS));
}

void
tb_title_button_set_session (TbTitleButton *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_study), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::title", G_CALLBACK (show_label), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::modified", G_CALLBACK (show_label), self, G_CONNECT_SWAPPED);
  show_session (self);
}

static void
tb_title_button_dispose (GObject *object)
{
  TbTitleButton *self = TB_TITLE_BUTTON (object);

  self->showing = TRUE;
  g_clear_pointer (&self->button, gtk_widget_unparent);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_title_button_parent_class)->dispose (object);
}

static void
tb_title_button_class_init (TbTitleButtonClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_title_button_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-title-button.ui");
  gtk_widget_class_bind_template_child (widget_class, TbTitleButton, button);
  gtk_widget_class_bind_template_child (widget_class, TbTitleButton, label);
  gtk_widget_class_bind_template_child (widget_class, TbTitleButton, popover);
  gtk_widget_class_bind_template_child (widget_class, TbTitleButton, title);
  gtk_widget_class_bind_template_child (widget_class, TbTitleButton, notes_view);
  gtk_widget_class_bind_template_child (widget_class, TbTitleButton, notes);
  gtk_widget_class_bind_template_callback (widget_class, on_edited);
  gtk_widget_class_bind_template_callback (widget_class, on_done);
}

static void
tb_title_button_init (TbTitleButton *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
