/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-help-words.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-children.h"
#include "tb-help-row.h"

struct _TbHelpWords
{
  GtkWidget parent_instance;

  GtkListBox *list;
  GHashTable *rows; /* id → row, borrowed */
};

G_DEFINE_FINAL_TYPE (TbHelpWords, tb_help_words, GTK_TYPE_WIDGET)

char *
tb_help_words_see_markup (const TbTerm *term)
{
  g_autoptr (GString) links = g_string_new (NULL);

  for (const char *const *see = term->see; *see != NULL; see++)
    {
      const TbTerm *other = tb_glossary_find (*see);
      g_autofree char *link = g_markup_printf_escaped ("<a href=\"%s\">%s</a>", other->id, _ (other->word));

      g_string_append (links, see > term->see ? ", " : "");
      g_string_append (links, link);
    }
  /* Translators: %s are other words of the glossary, with commas between them. */
  return g_strdup_printf (_ ("See also: %s"), links->str);
}

static gboolean
on_link (TbHelpWords *self, const char *id)
{
  tb_help_words_show (self, id);
  return TRUE;
}

static GtkWidget *
new_see_label (TbHelpWords *self, const TbTerm *term)
{
  GtkWidget *label = tb_help_label_new (NULL, "note");
  g_autofree char *markup = tb_help_words_see_markup (term);

  gtk_label_set_markup (GTK_LABEL (label), markup);
  g_signal_connect_swapped (label, "activate-link", G_CALLBACK (on_link), self);
  return label;
}

static void
add_term (TbHelpWords *self, const TbTerm *term)
{
  GtkWidget *row = tb_help_row_new (_ (term->word), _ (term->text));

  tb_help_row_append (row, new_see_label (self, term));
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  gtk_list_box_append (self->list, row);
  g_hash_table_insert (self->rows, (gpointer) term->id, row);
}

GtkWidget *
tb_help_words_get_row (TbHelpWords *self, const char *id)
{
  return g_hash_table_lookup (self->rows, id);
}

void
tb_help_words_show (TbHelpWords *self, const char *id)
{
  GtkWidget *row = tb_help_words_get_row (self, id);

  if (row == NULL)
    return;
  gtk_list_box_select_row (self->list, GTK_LIST_BOX_ROW (row));
  gtk_widget_grab_focus (row);
}

const char *
tb_help_words_get_shown (TbHelpWords *self)
{
  GtkListBoxRow *shown = gtk_list_box_get_selected_row (self->list);
  GHashTableIter iter;
  gpointer id, row;

  g_hash_table_iter_init (&iter, self->rows);
  while (g_hash_table_iter_next (&iter, &id, &row))
    if (row == shown)
      return id;
  return NULL;
}

GtkWidget *
tb_help_words_new (void)
{
  return g_object_new (TB_TYPE_HELP_WORDS, NULL);
}

static void
tb_help_words_dispose (GObject *object)
{
  TbHelpWords *self = TB_HELP_WORDS (object);

  g_clear_pointer (&self->rows, g_hash_table_unref);
  tb_unparent_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (tb_help_words_parent_class)->dispose (object);
}

static void
tb_help_words_class_init (TbHelpWordsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_help_words_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
tb_help_words_init (TbHelpWords *self)
{
  g_autoptr (GPtrArray) terms = tb_glossary_sorted ();

  self->rows = g_hash_table_new (g_str_hash, g_str_equal);
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "words");
  gtk_widget_set_parent (GTK_WIDGET (self->list), GTK_WIDGET (self));
  tb_accessible_set_name (GTK_WIDGET (self->list), _ ("Words"));
  for (guint i = 0; i < terms->len; i++)
    add_term (self, terms->pdata[i]);
}
