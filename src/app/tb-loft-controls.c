/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-loft-controls.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-field-row.h"

static const char *const fields[] = { "loft_reach_in", "release_height_in", "loft_angle_deg" };
#define N_FIELDS G_N_ELEMENTS (fields)

struct _TbLoftControls
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *box;
  GtkLabel *title;
  GtkDropDown *presets;
  GtkLabel *help;
  GtkBox *rows;
  GtkWidget *take;

  /* A study of its own, so that trying changes nothing in the trainer. */
  TbSession *session;
  GtkWidget *row[N_FIELDS];
  gboolean showing;
};

enum
{
  CHANGED,
  TAKE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbLoftControls, tb_loft_controls, GTK_TYPE_WIDGET)

TbLoftThrow
tb_loft_controls_get_throw (TbLoftControls *self)
{
  return tb_loft_throw_of (&tb_session_get_setup (self->session, TB_SIDE_AFTER)->shot.delivery);
}

void
tb_loft_controls_set_throw (TbLoftControls *self, const TbLoftThrow *loft)
{
  g_autoptr (TbSetup) setup = tb_setup_with_loft (tb_session_get_setup (self->session, TB_SIDE_AFTER), loft);

  tb_session_set_after (self->session, setup);
}

/* The preset that the numbers are; the last entry stands for none of them. */
static void
show_preset (TbLoftControls *self)
{
  TbLoftThrow loft = tb_loft_controls_get_throw (self);
  const TbLoftPreset *preset = tb_loft_preset_of (&loft);
  guint index = 0;

  while (tb_loft_presets[index].id != NULL && &tb_loft_presets[index] != preset)
    index++;
  self->showing = TRUE;
  gtk_drop_down_set_selected (self->presets, index);
  self->showing = FALSE;
  gtk_label_set_text (self->help, preset != NULL ? _ (preset->help) : _ ("Numbers of your own."));
}

static void
on_session_changed (TbLoftControls *self)
{
  show_preset (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
on_preset (TbLoftControls *self)
{
  const TbLoftPreset *preset = &tb_loft_presets[gtk_drop_down_get_selected (self->presets)];
  TbLoftThrow loft;

  if (self->showing || preset->id == NULL)
    return;
  loft = tb_loft_preset_throw (preset);
  tb_loft_controls_set_throw (self, &loft);
}

static void
on_take (TbLoftControls *self)
{
  g_signal_emit (self, signals[TAKE], 0);
}

static void
fill_presets (TbLoftControls *self)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  for (const TbLoftPreset *preset = tb_loft_presets; preset->id != NULL; preset++)
    gtk_string_list_append (list, _ (preset->label));
  gtk_string_list_append (list, _ ("Own numbers"));
  self->showing = TRUE;
  gtk_drop_down_set_model (self->presets, G_LIST_MODEL (list));
  self->showing = FALSE;
}

/* Both throws have the same fields: whose they are is said to those who do not see it. */
static void
add_row (TbLoftControls *self, int index, const char *throw_name)
{
  const TbField *field = tb_field_find (TB_GROUP_DELIVERY, fields[index]);
  GtkWidget *row = tb_field_row_new (self->session, field);
  /* Translators: a throw, such as "High arc", and one of its numbers, such as "Loft angle". */
  g_autofree char *name = g_strdup_printf (_ ("%s: %s"), throw_name, _ (field->label));
  /* Translators: a throw, and one of its numbers: the box where it is typed. */
  g_autofree char *typed = g_strdup_printf (_ ("%s: %s, typed"), throw_name, _ (field->label));

  tb_accessible_set_name (tb_field_row_get_scale (TB_FIELD_ROW (row)), name);
  tb_accessible_set_name (tb_field_row_get_entry (TB_FIELD_ROW (row)), typed);
  gtk_widget_add_css_class (row, "control-row");
  gtk_box_append (self->rows, row);
  self->row[index] = row;
}

void
tb_loft_controls_set_up (TbLoftControls *self, TbSession *session, const char *name, const TbLoftThrow *loft)
{
  /* Translators: %s is a throw, such as "High arc". */
  g_autofree char *presets_name = g_strdup_printf (_ ("%s: let go how"), name);
  /* Translators: %s is a throw, such as "High arc". */
  g_autofree char *take_name = g_strdup_printf (_ ("Take %s to the trainer"), name);
  g_autoptr (TbStudy) study = NULL;
  g_autoptr (TbSetup) setup = tb_setup_with_loft (tb_session_get_setup (session, TB_SIDE_AFTER), loft);

  g_return_if_fail (self->session == NULL);
  self->session = tb_session_new (tb_session_get_library (session));
  study = tb_study_new (setup, setup, "", "");
  tb_session_open (self->session, study, NULL);
  g_object_bind_property (session, "units", self->session, "units", G_BINDING_SYNC_CREATE);
  gtk_label_set_text (self->title, name);
  tb_accessible_set_drop_down_name (self->presets, presets_name);
  tb_accessible_set_name (self->take, take_name);
  for (guint i = 0; i < N_FIELDS; i++)
    add_row (self, (int) i, name);
  fill_presets (self);
  show_preset (self);
  g_signal_connect_object (self->session, "changed", G_CALLBACK (on_session_changed), self,
                           G_CONNECT_SWAPPED);
}

GtkDropDown *
tb_loft_controls_get_presets (TbLoftControls *self)
{
  return self->presets;
}

GtkWidget *
tb_loft_controls_get_row (TbLoftControls *self, const char *field)
{
  for (guint i = 0; i < N_FIELDS; i++)
    if (g_str_equal (fields[i], field))
      return self->row[i];
  return NULL;
}

GtkWidget *
tb_loft_controls_get_take (TbLoftControls *self)
{
  return self->take;
}

static void
tb_loft_controls_dispose (GObject *object)
{
  TbLoftControls *self = TB_LOFT_CONTROLS (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_loft_controls_parent_class)->dispose (object);
}

static void
tb_loft_controls_class_init (TbLoftControlsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_loft_controls_dispose;
  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
  signals[TAKE] = g_signal_new ("take", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-loft-controls.ui");
  gtk_widget_class_bind_template_child (widget_class, TbLoftControls, box);
  gtk_widget_class_bind_template_child (widget_class, TbLoftControls, title);
  gtk_widget_class_bind_template_child (widget_class, TbLoftControls, presets);
  gtk_widget_class_bind_template_child (widget_class, TbLoftControls, help);
  gtk_widget_class_bind_template_child (widget_class, TbLoftControls, rows);
  gtk_widget_class_bind_template_child (widget_class, TbLoftControls, take);
  gtk_widget_class_bind_template_callback (widget_class, on_preset);
  gtk_widget_class_bind_template_callback (widget_class, on_take);
}

static void
tb_loft_controls_init (TbLoftControls *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
