/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-handout-options.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-children.h"

/* Between the wish and the boxes, and from box to box, px. */
#define SPACING 6
#define BOX_SPACING 3
/* What a box is for, with the box. */
#define OPTION "option"

struct _TbHandoutOptions
{
  GtkWidget parent_instance;

  /* Borrowed: children of the widget. */
  GtkLabel *wish;
  GtkBox *boxes;
};

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbHandoutOptions, tb_handout_options, GTK_TYPE_WIDGET)

static gboolean
is_among (const GPtrArray *best, const TbNextOption *option)
{
  return g_ptr_array_find ((GPtrArray *) best, option, NULL);
}

static GtkWidget *
new_box (TbNextOption *option, gboolean metric)
{
  g_autofree char *change = tb_next_change_text (option, metric);
  /* Translators: a toolbox, and what to change: "Line: Feet 3.0 boards to the left" */
  g_autofree char *text
      = g_strdup_printf (_ ("%s: %s"), _ (tb_knob_group_label (option->knob->group)), change);
  GtkWidget *label = gtk_label_new (text), *box = gtk_check_button_new ();

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_check_button_set_child (GTK_CHECK_BUTTON (box), label);
  tb_accessible_set_name (box, text);
  g_object_set_data_full (G_OBJECT (box), OPTION, tb_next_option_ref (option),
                          (GDestroyNotify) tb_next_option_unref);
  return box;
}

static void
tell_changed (TbHandoutOptions *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
add_box (TbHandoutOptions *self, GtkWidget *box, gboolean checked)
{
  gtk_check_button_set_active (GTK_CHECK_BUTTON (box), checked);
  g_signal_connect_object (box, "toggled", G_CALLBACK (tell_changed), self, G_CONNECT_SWAPPED);
  gtk_box_append (self->boxes, box);
}

void
tb_handout_options_clear (TbHandoutOptions *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->boxes))) != NULL)
    gtk_box_remove (self->boxes, child);
  gtk_label_set_text (self->wish, "");
}

void
tb_handout_options_show (TbHandoutOptions *self, const TbNext *next, const TbHandoutFacts *facts)
{
  g_autoptr (GPtrArray) best = tb_handout_best_options (next);
  g_autofree char *wish = tb_next_wish_text (next, facts->metric);
  const TbSetup *after = facts->run[TB_SIDE_AFTER]->setup;

  tb_handout_options_clear (self);
  gtk_label_set_text (self->wish, wish);
  for (guint i = 0; i < next->options->len; i++)
    {
      TbNextOption *option = g_ptr_array_index (next->options, i);

      /* What is practised anyway is nothing else to try. */
      if (option->reach != TB_REACH_NOT && !tb_setup_equal (option->setup, after))
        add_box (self, new_box (option, facts->metric), is_among (best, option));
    }
}

GPtrArray *
tb_handout_options_get_checked (TbHandoutOptions *self)
{
  GPtrArray *options = g_ptr_array_new_with_free_func ((GDestroyNotify) tb_next_option_unref);

  for (GtkWidget *box = gtk_widget_get_first_child (GTK_WIDGET (self->boxes)); box != NULL;
       box = gtk_widget_get_next_sibling (box))
    {
      TbNextOption *option = g_object_get_data (G_OBJECT (box), OPTION);

      if (gtk_check_button_get_active (GTK_CHECK_BUTTON (box)))
        g_ptr_array_add (options, tb_next_option_ref (option));
    }
  return options;
}

static void
tb_handout_options_dispose (GObject *object)
{
  tb_unparent_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (tb_handout_options_parent_class)->dispose (object);
}

static void
tb_handout_options_class_init (TbHandoutOptionsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_handout_options_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
  signals[CHANGED] = g_signal_new ("changed", TB_TYPE_HANDOUT_OPTIONS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
}

static void
tb_handout_options_init (TbHandoutOptions *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), SPACING);
  self->wish = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->wish, 0);
  gtk_label_set_wrap (self->wish, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->wish), "reason");
  gtk_widget_set_parent (GTK_WIDGET (self->wish), GTK_WIDGET (self));
  self->boxes = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, BOX_SPACING));
  gtk_widget_set_parent (GTK_WIDGET (self->boxes), GTK_WIDGET (self));
}
