/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-help-search.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-children.h"
#include "tb-help-row.h"

#define SPACING 4

/* One thing that can be found; owns its texts. */
typedef struct Piece
{
  const char *page;
  char *title, *text;
  GtkWidget *place;
} Piece;

struct _TbHelpSearch
{
  GtkWidget parent_instance;

  GtkLabel *summary;
  GtkListBox *list;
  GPtrArray *pieces; /* of Piece */
  GPtrArray *found;  /* of Piece, borrowed, in the list's order */
};

G_DEFINE_FINAL_TYPE (TbHelpSearch, tb_help_search, GTK_TYPE_WIDGET)

enum
{
  CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static void
piece_free (gpointer data)
{
  Piece *piece = data;

  g_free (piece->title);
  g_free (piece->text);
  g_free (piece);
}

void
tb_help_search_add (TbHelpSearch *self, const TbHelpPiece *piece)
{
  Piece *own = g_new0 (Piece, 1);

  own->page = piece->page;
  own->title = g_strdup (piece->title);
  own->text = g_strdup (piece->text);
  own->place = piece->place;
  g_ptr_array_add (self->pieces, own);
}

static void
choose (TbHelpSearch *self, guint index)
{
  const Piece *piece;

  if (index >= self->found->len)
    return;
  piece = self->found->pdata[index];
  g_signal_emit (self, signals[CHOSEN], 0, piece->page, piece->place);
}

void
tb_help_search_choose_first (TbHelpSearch *self)
{
  choose (self, 0);
}

static void
on_row_activated (TbHelpSearch *self, GtkListBoxRow *row)
{
  choose (self, (guint) gtk_list_box_row_get_index (row));
}

static void
clear (TbHelpSearch *self)
{
  GtkListBoxRow *row;

  g_ptr_array_set_size (self->found, 0);
  while ((row = gtk_list_box_get_row_at_index (self->list, 0)) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
}

/* Those with it in the title, or the others. */
static void
gather (TbHelpSearch *self, const char *text, gboolean in_title)
{
  for (guint i = 0; i < self->pieces->len; i++)
    {
      Piece *piece = self->pieces->pdata[i];
      g_autofree char *all = g_strconcat (piece->title, "\n", piece->text, NULL);

      if (g_str_match_string (text, piece->title, TRUE) == in_title && g_str_match_string (text, all, TRUE))
        g_ptr_array_add (self->found, piece);
    }
}

static void
summarise (TbHelpSearch *self, const char *text)
{
  guint count = self->found->len;
  g_autofree char *summary = NULL;

  if (count == 0)
    summary = g_strdup_printf (_ ("Help has nothing about “%s”. Try another word, or a shorter one."), text);
  else
    /* Translators: how many pieces of Help have the words looked for. */
    summary = g_strdup_printf (ngettext ("“%s”: %u place", "“%s”: %u places", count), text, count);
  gtk_label_set_text (self->summary, summary);
}

guint
tb_help_search_find (TbHelpSearch *self, const char *text)
{
  clear (self);
  gather (self, text, TRUE);
  gather (self, text, FALSE);
  for (guint i = 0; i < self->found->len; i++)
    {
      const Piece *piece = self->found->pdata[i];

      gtk_list_box_append (self->list, tb_help_row_new (piece->title, piece->text));
    }
  gtk_widget_set_visible (GTK_WIDGET (self->list), self->found->len > 0);
  summarise (self, text);
  return self->found->len;
}

GtkWidget *
tb_help_search_new (void)
{
  return g_object_new (TB_TYPE_HELP_SEARCH, NULL);
}

static void
tb_help_search_dispose (GObject *object)
{
  TbHelpSearch *self = TB_HELP_SEARCH (object);

  g_clear_pointer (&self->found, g_ptr_array_unref);
  g_clear_pointer (&self->pieces, g_ptr_array_unref);
  tb_unparent_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (tb_help_search_parent_class)->dispose (object);
}

static void
tb_help_search_class_init (TbHelpSearchClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_help_search_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
  signals[CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 2, G_TYPE_STRING, GTK_TYPE_WIDGET);
}

static void
tb_help_search_init (TbHelpSearch *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 2 * SPACING);
  self->pieces = g_ptr_array_new_with_free_func (piece_free);
  self->found = g_ptr_array_new ();
  self->summary = GTK_LABEL (tb_help_label_new (NULL, "heading"));
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "words");
  tb_accessible_set_name (GTK_WIDGET (self->list), _ ("Found in Help"));
  gtk_widget_set_parent (GTK_WIDGET (self->summary), GTK_WIDGET (self));
  gtk_widget_set_parent (GTK_WIDGET (self->list), GTK_WIDGET (self));
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (on_row_activated), self);
}
