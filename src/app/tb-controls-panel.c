/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-controls-panel.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-choice-row.h"
#include "tb-disclosure.h"
#include "tb-field-row.h"
#include "tb-library-row.h"
#include "tb-position-row.h"

typedef enum SectionId
{
  SECTION_DELIVERY,
  SECTION_LINE,
  SECTION_BALL,
  SECTION_LANE,
  N_SECTIONS
} SectionId;

/* No drop-down on top. */
#define NO_LIBRARY TB_N_DOCUMENT_KINDS
#define MAX_PLAIN 8

/* A way from a section to the window that is about it alone. */
typedef struct Way
{
  const char *label;
  const char *name; /* told to assistive technology */
  const char *tip;
  const char *action, *target; /* NULL: there is none */
} Way;

typedef struct Section
{
  const char *title;
  TbGroup group;
  TbDocumentKind kind; /* chosen on top */
  const char *kind_label;
  const char *plain[MAX_PLAIN]; /* fields in plain sight; ends with NULL */
  gboolean rest;                /* whether the rest of the group stands here, under "More" */
  Way way;
} Section;

static const Section sections[N_SECTIONS] = {
  [SECTION_DELIVERY]
  = { N_ ("Delivery"),
      TB_GROUP_DELIVERY,
      TB_DOCUMENT_BOWLER,
      N_ ("Bowler"),
      { "speed_mph", "rev_rate_rpm", "axis_rotation_deg", "axis_tilt_deg", "loft_angle_deg", NULL },
      TRUE },
  [SECTION_LINE]
  = { N_ ("Line"), TB_GROUP_DELIVERY, NO_LIBRARY, NULL, { "laydown_board", "aim_board", NULL }, FALSE },
  [SECTION_BALL] = { N_ ("Ball"),
                     TB_GROUP_BALL,
                     TB_DOCUMENT_BALL,
                     N_ ("Ball"),
                     { "grit", "cover", NULL },
                     TRUE,
                     { N_ ("_Ball counter…"), N_ ("Ball counter"), N_ ("Ball, layout, surface, flare, bag"),
                       "win.ball-counter", "ball" } },
  [SECTION_LANE] = { N_ ("Lane"),
                     TB_GROUP_LANE,
                     TB_DOCUMENT_PATTERN,
                     N_ ("Pattern"),
                     { "pattern_scale", NULL },
                     TRUE,
                     { N_ ("_Lane play…"), N_ ("Lane play"), N_ ("Room to miss, lines, pattern, wear"),
                       "win.lane-play", "room" } },
};

struct _TbControlsPanel
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *scroller;
  GtkBox *box;

  TbSession *session;
  GHashTable *rows; /* field name → row, borrowed */
};

G_DEFINE_FINAL_TYPE (TbControlsPanel, tb_controls_panel, GTK_TYPE_WIDGET)

static gboolean
in_plain_sight (const TbField *field)
{
  for (int i = 0; i < N_SECTIONS; i++)
    for (const char *const *name = sections[i].plain; *name != NULL; name++)
      if (sections[i].group == field->group && g_str_equal (*name, field->name))
        return TRUE;
  return FALSE;
}

static void
add_field (TbControlsPanel *self, GtkBox *box, const TbField *field)
{
  GtkWidget *row = field->kind == TB_FIELD_CHOICE ? tb_choice_row_new (self->session, field)
                                                  : tb_field_row_new (self->session, field);

  gtk_widget_add_css_class (row, "control-row");
  gtk_box_append (box, row);
  g_hash_table_insert (self->rows, (gpointer)field->name, row);
}

static void
add_rest (TbControlsPanel *self, const Section *section)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *name = NULL;

  /* Translators: opens the less used controls of a group such as "Delivery". */
  name = g_strdup_printf (_ ("More: %s"), _ (section->title));
  gtk_widget_add_css_class (box, "more");
  for (const TbField *field = tb_field_table; field->name != NULL; field++)
    if (field->group == section->group && !in_plain_sight (field))
      add_field (self, GTK_BOX (box), field);
  gtk_box_append (self->box, tb_disclosure_new (_ ("More"), name, box));
}

/* The section's title, with the way to its window at the end of the line. */
static void
add_title (TbControlsPanel *self, const Section *section)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *title = gtk_label_new (_ (section->title));

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_set_hexpand (title, TRUE);
  gtk_widget_add_css_class (line, "section-title");
  gtk_box_append (GTK_BOX (line), title);
  if (section->way.action != NULL)
    {
      GtkWidget *button = gtk_button_new_with_mnemonic (_ (section->way.label));

      gtk_widget_set_tooltip_text (button, _ (section->way.tip));
      tb_accessible_set_name (button, _ (section->way.name));
      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), section->way.action);
      gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", section->way.target);
      gtk_widget_add_css_class (button, "way");
      gtk_box_append (GTK_BOX (line), button);
    }
  gtk_box_append (self->box, line);
}

static void
add_section (TbControlsPanel *self, const Section *section)
{
  add_title (self, section);
  if (section->kind != NO_LIBRARY)
    gtk_box_append (self->box, tb_library_row_new (self->session, section->kind, _ (section->kind_label)));
  if (section == &sections[SECTION_DELIVERY])
    gtk_box_append (self->box, tb_position_row_new (self->session));
  for (const char *const *name = section->plain; *name != NULL; name++)
    add_field (self, self->box, tb_field_find (section->group, *name));
  if (section->rest)
    add_rest (self, section);
}

void
tb_controls_panel_set_session (TbControlsPanel *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  for (int i = 0; i < N_SECTIONS; i++)
    add_section (self, &sections[i]);
}

GtkWidget *
tb_controls_panel_get_row (TbControlsPanel *self, const char *field)
{
  return g_hash_table_lookup (self->rows, field);
}

static void
tb_controls_panel_dispose (GObject *object)
{
  TbControlsPanel *self = TB_CONTROLS_PANEL (object);

  g_clear_pointer (&self->rows, g_hash_table_unref);
  g_clear_pointer (&self->scroller, gtk_widget_unparent);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_controls_panel_parent_class)->dispose (object);
}

static void
tb_controls_panel_class_init (TbControlsPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_controls_panel_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-controls-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, TbControlsPanel, scroller);
  gtk_widget_class_bind_template_child (widget_class, TbControlsPanel, box);
}

static void
tb_controls_panel_init (TbControlsPanel *self)
{
  self->rows = g_hash_table_new (g_str_hash, g_str_equal);
  gtk_widget_init_template (GTK_WIDGET (self));
}
