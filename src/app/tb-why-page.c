/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-why-page.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-children.h"
#include "tb-parts-picture.h"
#include "tb-quantity.h"
#include "tb-why.h"

struct _TbWhyPage
{
  GtkWidget parent_instance;

  /* Template */
  GtkSwitch *reaim;
  GtkToggleButton *measure[TB_WHY_N_SPLITS];
  GtkBox *sentences;
  GtkWidget *inputs_title;
  TbPartsPicture *inputs;
  GtkWidget *places_title;
  GtkDropDown *places_length;
  TbPartsPicture *places;

  TbSession *session;
  TbWhy *why;                /* last known; NULL before the first */
  GCancellable *cancellable; /* of what is being worked out; else NULL */
  gboolean stale;            /* the session has changed since it was begun */
};

G_DEFINE_FINAL_TYPE (TbWhyPage, tb_why_page, GTK_TYPE_WIDGET)

/* Lengths of a stretch of lane that can be chosen, ft. */
static const double lengths[] = { 20, 10, 5 };

static gboolean
is_metric (TbWhyPage *self)
{
  return tb_session_get_units (self->session) == TB_UNITS_METRIC;
}

/* The lengths to choose from, in the units of the session. */
static void
show_lengths (TbWhyPage *self)
{
  GtkStringList *list = GTK_STRING_LIST (gtk_drop_down_get_model (self->places_length));
  guint chosen = gtk_drop_down_get_selected (self->places_length);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) texts = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      /* Translators: the lane is split into stretches of this length, one after the other. */
      g_autofree char *text = is_metric (self)
                                  ? g_strdup_printf (_ ("every %.1f m"), lengths[i] * TB_METRES_PER_FOOT)
                                  : g_strdup_printf (_ ("every %.0f ft"), lengths[i]);

      g_strv_builder_add (builder, text);
    }
  texts = g_strv_builder_end (builder);
  gtk_string_list_splice (list, 0, g_list_model_get_n_items (G_LIST_MODEL (list)),
                          (const char *const *) texts);
  gtk_drop_down_set_selected (self->places_length, chosen < G_N_ELEMENTS (lengths) ? chosen : 0);
}

/* Gives bars their unit; the factor that a part in core's own unit is multiplied by is returned. */
static double
show_unit (TbWhyPage *self, TbPartsPicture *picture, TbWhyMeasure split)
{
  gboolean metres = split == TB_WHY_BREAKPOINT && is_metric (self);
  const char *const units[TB_WHY_N_SPLITS] = { "", _ ("°"), metres ? _ (" m") : _ (" ft") };

  tb_parts_picture_set_unit (picture, units[split], metres ? 2 : 1);
  return metres ? TB_METRES_PER_FOOT : 1;
}

static TbWhyMeasure
chosen_measure (TbWhyPage *self)
{
  for (int i = 0; i < TB_WHY_N_SPLITS; i++)
    if (gtk_toggle_button_get_active (self->measure[i]))
      return (TbWhyMeasure) i;
  return TB_WHY_BOARD;
}

static void
add_sentence (TbWhyPage *self, const char *sentence, const char *style)
{
  GtkWidget *label = gtk_label_new (sentence);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_selectable (GTK_LABEL (label), FALSE);
  gtk_widget_add_css_class (label, style);
  gtk_box_append (self->sentences, label);
}

static void
show_sentences (TbWhyPage *self)
{
  g_auto (GStrv) sentences = tb_why_sentences (self->why, chosen_measure (self), is_metric (self));
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->sentences))) != NULL)
    gtk_box_remove (self->sentences, child);
  for (guint i = 0; sentences[i] != NULL; i++)
    add_sentence (self, sentences[i], i == 0 ? "headline" : "reason");
  if (self->why->status == TB_OK && self->why->n_inputs == 0)
    add_sentence (self, _ ("Change one thing on the left, and the reasons stand here."), "hint");
}

static void
show_inputs (TbWhyPage *self)
{
  TbWhyMeasure split = chosen_measure (self);
  gboolean there
      = self->why->status == TB_OK && isfinite (self->why->difference[split]) && self->why->n_inputs > 0;
  TbPart parts[TB_MAX_CHANGES];
  double factor = show_unit (self, self->inputs, split);

  for (guint i = 0; there && i < self->why->n_inputs; i++)
    parts[i]
        = (TbPart){ tb_change_label (&self->why->input[i].change), factor * self->why->input[i].part[split],
                    factor * self->why->input[i].error[split] };
  tb_parts_picture_set_parts (self->inputs, parts, there ? self->why->n_inputs : 0);
  gtk_widget_set_visible (self->inputs_title, there);
  gtk_widget_set_visible (GTK_WIDGET (self->inputs), there);
}

static void
show_places (TbWhyPage *self)
{
  TbWhyMeasure split = chosen_measure (self);
  gboolean there = self->why->status == TB_OK && split != TB_WHY_BREAKPOINT && self->why->n_inputs > 0;
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  TbPart parts[TB_WHY_MAX_STRETCHES + 1];
  guint count = 0;

  show_unit (self, self->places, split);
  if (there && self->why->launch_part[split] != 0)
    parts[count++] = (TbPart){ .name = _ ("Launch line"), .value = self->why->launch_part[split] };
  for (guint i = 0; there && i < self->why->n_stretches; i++)
    {
      g_ptr_array_add (names, tb_why_stretch_name (&self->why->stretch[i], is_metric (self)));
      parts[count++] = (TbPart){ .name = g_ptr_array_index (names, names->len - 1),
                                 .value = self->why->stretch[i].part[split] };
    }
  tb_parts_picture_set_parts (self->places, parts, count);
  gtk_widget_set_visible (self->places_title, there);
  gtk_widget_set_visible (GTK_WIDGET (self->places), there);
}

static void
show_why (TbWhyPage *self)
{
  if (self->why == NULL)
    return;
  show_sentences (self);
  show_inputs (self);
  show_places (self);
}

static void
on_units (TbWhyPage *self)
{
  show_lengths (self);
  show_why (self);
}

static void update (TbWhyPage *self);

static void
on_why (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbWhyPage) self = data;
  g_autoptr (TbWhy) why = tb_why_new_finish (result, NULL);

  g_clear_object (&self->cancellable);
  if (self->session == NULL)
    return;
  if (why != NULL)
    {
      g_clear_pointer (&self->why, tb_why_unref);
      self->why = g_steal_pointer (&why);
      show_why (self);
    }
  if (self->stale)
    update (self);
}

/* One at a time: a change while one is under way begins the next when it is done, so that a slider that is
 * dragged shows its reasons all along. */
static void
update (TbWhyPage *self)
{
  TbWhyOptions options = { 0 };

  self->stale = TRUE;
  if (self->session == NULL || self->cancellable != NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  options.stretch_ft
      = lengths[MIN (gtk_drop_down_get_selected (self->places_length), G_N_ELEMENTS (lengths) - 1)];
  self->stale = FALSE;
  self->cancellable = g_cancellable_new ();
  tb_why_new_async (tb_session_get_setup (self->session, TB_SIDE_BEFORE),
                    tb_session_get_setup (self->session, TB_SIDE_AFTER), &options, self->cancellable, on_why,
                    g_object_ref (self));
}

static void
tb_why_page_map (GtkWidget *widget)
{
  TbWhyPage *self = TB_WHY_PAGE (widget);

  GTK_WIDGET_CLASS (tb_why_page_parent_class)->map (widget);
  if (self->stale)
    update (self);
}

gboolean
tb_why_page_is_settled (TbWhyPage *self)
{
  return !self->stale && self->cancellable == NULL;
}

void
tb_why_page_set_session (TbWhyPage *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  tb_picture_set_session (TB_PICTURE (self->inputs), session);
  tb_picture_set_session (TB_PICTURE (self->places), session);
  g_object_bind_property (session, "reaim", self->reaim, "active",
                          G_BINDING_BIDIRECTIONAL | G_BINDING_SYNC_CREATE);
  g_signal_connect_object (session, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (on_units), self, G_CONNECT_SWAPPED);
  show_lengths (self);
  update (self);
}

static void
on_measure (TbWhyPage *self, GtkToggleButton *button)
{
  if (gtk_toggle_button_get_active (button))
    show_why (self);
}

static void
tb_why_page_dispose (GObject *object)
{
  TbWhyPage *self = TB_WHY_PAGE (object);

  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->session);
  g_clear_pointer (&self->why, tb_why_unref);
  tb_unparent_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (tb_why_page_parent_class)->dispose (object);
}

static void
tb_why_page_class_init (TbWhyPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_why_page_dispose;
  widget_class->map = tb_why_page_map;
  g_type_ensure (TB_TYPE_PARTS_PICTURE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-why-page.ui");
  gtk_widget_class_bind_template_child (widget_class, TbWhyPage, reaim);
  gtk_widget_class_bind_template_child_full (widget_class, "board", FALSE,
                                             G_STRUCT_OFFSET (TbWhyPage, measure[TB_WHY_BOARD]));
  gtk_widget_class_bind_template_child_full (widget_class, "angle", FALSE,
                                             G_STRUCT_OFFSET (TbWhyPage, measure[TB_WHY_ANGLE]));
  gtk_widget_class_bind_template_child_full (widget_class, "breakpoint", FALSE,
                                             G_STRUCT_OFFSET (TbWhyPage, measure[TB_WHY_BREAKPOINT]));
  gtk_widget_class_bind_template_child (widget_class, TbWhyPage, sentences);
  gtk_widget_class_bind_template_child (widget_class, TbWhyPage, inputs_title);
  gtk_widget_class_bind_template_child (widget_class, TbWhyPage, inputs);
  gtk_widget_class_bind_template_child (widget_class, TbWhyPage, places_title);
  gtk_widget_class_bind_template_child (widget_class, TbWhyPage, places_length);
  gtk_widget_class_bind_template_child (widget_class, TbWhyPage, places);
  gtk_widget_class_bind_template_callback (widget_class, on_measure);
  gtk_widget_class_bind_template_callback (widget_class, update);
}

static void
tb_why_page_init (TbWhyPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  tb_picture_set_name (TB_PICTURE (self->inputs), _ ("By what was changed"));
  tb_picture_set_name (TB_PICTURE (self->places), _ ("By stretch of lane"));
  tb_accessible_set_name (GTK_WIDGET (self->reaim), _ ("Each on its own pocket line"));
  tb_accessible_set_drop_down_name (self->places_length, _ ("Length of a stretch"));
}

GtkWidget *
tb_why_page_new (void)
{
  return g_object_new (TB_TYPE_WHY_PAGE, NULL);
}
