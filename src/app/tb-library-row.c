/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-library-row.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-children.h"

struct _TbLibraryRow
{
  GtkWidget parent_instance;

  /* Template */
  GtkLabel *label;
  GtkDropDown *drop_down;

  TbSession *session;
  TbDocumentKind kind;
  GtkStringList *own; /* what the study has that the library has not: no entry or one */
  GListModel *model;
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (TbLibraryRow, tb_library_row, GTK_TYPE_WIDGET)

/* Widest a note gets in the list, characters. */
#define NOTE_CHARS 36

static const char *
item_name (gpointer item)
{
  return TB_IS_LIBRARY_ENTRY (item) ? tb_library_entry_get_name (item) : gtk_string_object_get_string (item);
}

static const char *
item_note (gpointer item)
{
  return TB_IS_LIBRARY_ENTRY (item) ? tb_library_entry_get_note (item) : NULL;
}

static void
on_setup_button (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_list_item_set_child (item, label);
}

static void
on_bind_button (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), item_name (gtk_list_item_get_item (item)));
}

static void
on_setup_list (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *name = gtk_label_new (NULL);
  GtkWidget *note = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_xalign (GTK_LABEL (note), 0);
  gtk_label_set_wrap (GTK_LABEL (note), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (note), NOTE_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (note), NOTE_CHARS);
  gtk_widget_add_css_class (note, "note");
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), note);
  gtk_list_item_set_child (item, box);
}

static void
on_bind_list (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *name = gtk_widget_get_first_child (gtk_list_item_get_child (item));
  GtkWidget *note = gtk_widget_get_next_sibling (name);
  const char *text = item_note (gtk_list_item_get_item (item));

  gtk_label_set_text (GTK_LABEL (name), item_name (gtk_list_item_get_item (item)));
  gtk_label_set_text (GTK_LABEL (note), text != NULL ? text : "");
  gtk_widget_set_visible (note, text != NULL);
}

/* Id and name of what the setup is made of; either may be NULL. */
static void
setup_document (TbLibraryRow *self, const char **id, const char **name)
{
  const TbSetup *setup = tb_session_get_setup (self->session, TB_SIDE_AFTER);

  switch (self->kind)
    {
    case TB_DOCUMENT_BOWLER:
      *id = setup->bowler_id;
      *name = setup->bowler_name;
      break;
    case TB_DOCUMENT_BALL:
      *id = setup->ball_id;
      *name = setup->ball_name;
      break;
    default:
      *id = setup->pattern->id;
      *name = setup->pattern->name;
    }
}

static guint
position_of (TbLibraryRow *self, const char *id)
{
  for (guint i = 0; i < g_list_model_get_n_items (self->model); i++)
    {
      g_autoptr (GObject) item = g_list_model_get_item (self->model, i);

      if (TB_IS_LIBRARY_ENTRY (item)
          && g_strcmp0 (tb_library_entry_get_id (TB_LIBRARY_ENTRY (item)), id) == 0)
        return i;
    }
  return GTK_INVALID_LIST_POSITION;
}

static void
show_own (TbLibraryRow *self, const char *name)
{
  const char *shown = name != NULL && name[0] != '\0' ? tb_document_display_name (name) : _ ("of this study");

  gtk_string_list_splice (self->own, 0, g_list_model_get_n_items (G_LIST_MODEL (self->own)),
                          (const char *[]){ shown, NULL });
}

static void
show_session (TbLibraryRow *self)
{
  const char *id, *name;
  guint position;

  setup_document (self, &id, &name);
  position = id != NULL ? position_of (self, id) : GTK_INVALID_LIST_POSITION;
  self->showing = TRUE;
  if (position == GTK_INVALID_LIST_POSITION)
    {
      show_own (self, name);
      position = 0;
    }
  gtk_drop_down_set_selected (self->drop_down, position);
  self->showing = FALSE;
}

static void
on_selected (TbLibraryRow *self)
{
  gpointer item = gtk_drop_down_get_selected_item (self->drop_down);
  g_autoptr (GError) error = NULL;

  if (self->showing || self->session == NULL || !TB_IS_LIBRARY_ENTRY (item))
    return;
  if (!tb_session_choose (self->session, self->kind, tb_library_entry_get_id (item), &error))
    show_session (self);
}

static void
build_model (TbLibraryRow *self)
{
  GListStore *lists = g_list_store_new (G_TYPE_LIST_MODEL);

  g_list_store_append (lists, self->own);
  g_list_store_append (lists, tb_library_get_entries (tb_session_get_library (self->session), self->kind));
  self->model = G_LIST_MODEL (gtk_flatten_list_model_new (G_LIST_MODEL (lists)));
  self->showing = TRUE;
  gtk_drop_down_set_model (self->drop_down, self->model);
  self->showing = FALSE;
}

GtkWidget *
tb_library_row_new (TbSession *session, TbDocumentKind kind, const char *label)
{
  TbLibraryRow *self = g_object_new (TB_TYPE_LIBRARY_ROW, NULL);

  self->session = g_object_ref (session);
  self->kind = kind;
  gtk_label_set_text (self->label, label);
  tb_accessible_set_drop_down_name (self->drop_down, label);
  build_model (self);
  show_session (self);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_session), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}

static void
tb_library_row_dispose (GObject *object)
{
  TbLibraryRow *self = TB_LIBRARY_ROW (object);

  self->showing = TRUE;
  tb_unparent_children (GTK_WIDGET (self));
  g_clear_object (&self->session);
  g_clear_object (&self->own);
  g_clear_object (&self->model);
  G_OBJECT_CLASS (tb_library_row_parent_class)->dispose (object);
}

static void
tb_library_row_class_init (TbLibraryRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_library_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-library-row.ui");
  gtk_widget_class_bind_template_child (widget_class, TbLibraryRow, label);
  gtk_widget_class_bind_template_child (widget_class, TbLibraryRow, drop_down);
  gtk_widget_class_bind_template_callback (widget_class, on_setup_button);
  gtk_widget_class_bind_template_callback (widget_class, on_bind_button);
  gtk_widget_class_bind_template_callback (widget_class, on_setup_list);
  gtk_widget_class_bind_template_callback (widget_class, on_bind_list);
  gtk_widget_class_bind_template_callback (widget_class, on_selected);
}

static void
tb_library_row_init (TbLibraryRow *self)
{
  self->own = gtk_string_list_new (NULL);
  gtk_widget_init_template (GTK_WIDGET (self));
}
