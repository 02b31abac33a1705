/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-grip-editor.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

#include "tb-accessible.h"
#include "tb-spin.h"
#include "tb-word.h"
#include "tb-drilling.h"

typedef enum Column
{
  COLUMN_MIDDLE,
  COLUMN_RING,
  COLUMN_THUMB,
  N_COLUMNS
} Column;

/* Numbers of each hole; the bridge stands in the ring finger's column of its row. */
typedef struct Row
{
  const char *label;      /* untranslated */
  double low, high, step; /* in */
  int digits;
  gsize offset[N_COLUMNS]; /* in TbGrip; NONE where there is no such number */
  const char *word;        /* in the glossary, or NULL */
} Row;

#define NONE G_MAXSIZE
#define FINGER(i, member) \
  (offsetof (TbGrip, finger) + (i) * sizeof (TbGripHole) + offsetof (TbGripHole, member))
#define THUMB(member) (offsetof (TbGrip, thumb) + offsetof (TbGripHole, member))
#define EACH(member)                                       \
  {                                                        \
    FINGER (0, member), FINGER (1, member), THUMB (member) \
  }

static const Row rows[] = {
  { N_ ("Span"),
    2,
    6,
    0.0625,
    3,
    { offsetof (TbGrip, span), offsetof (TbGrip, span) + sizeof (double), NONE },
    "span" },
  { N_ ("Diameter"), 0.4, 1.45, 0.015625, 3, EACH (diameter) },
  { N_ ("Depth"), 0.25, 4, 0.125, 2, EACH (depth) },
  { N_ ("Pitch to PAP"), -1, 1, 0.0625, 3, EACH (pitch_over), "pitch" },
  { N_ ("Pitch up"), -1.5, 1.5, 0.0625, 3, EACH (pitch_up), "pitch" },
  { N_ ("Bridge"), 0, 1, 0.0625, 3, { NONE, offsetof (TbGrip, bridge), NONE } },
};
#define N_ROWS G_N_ELEMENTS (rows)

struct _TbGripEditor
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *box;
  GtkGrid *grid;
  GtkWidget *none;  /* nothing is drilled */
  GtkWidget *other; /* holes that are no ordinary grip */
  GtkWidget *drill;
  GtkWidget *fill;
  GtkCheckButton *no_thumb;
  GtkLabel *problem;

  TbSession *session;
  GtkSpinButton *spins[N_ROWS][N_COLUMNS];
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (TbGripEditor, tb_grip_editor, GTK_TYPE_WIDGET)

static double *
number_of (TbGrip *grip, gsize offset)
{
  return (double *) ((char *) grip + offset);
}

static TbSetup *
setup_of (TbGripEditor *self)
{
  return tb_session_get_setup (self->session, TB_SIDE_AFTER);
}

static void
set_ball (TbGripEditor *self, const TbBall *ball)
{
  TbSetup *setup = setup_of (self);
  g_autoptr (TbSetup) drilled = tb_setup_with_ball (setup, ball, setup->ball_id, setup->ball_name);

  tb_session_set_after (self->session, drilled);
}

static void
tell (TbGripEditor *self, const char *sentence)
{
  gtk_label_set_text (self->problem, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->problem), sentence != NULL);
}

static void
drill (TbGripEditor *self, const TbGrip *grip)
{
  TbBall ball = setup_of (self)->shot.ball;
  TbStatus status = tb_grip_drill (grip, &ball);

  tell (self, status != TB_OK ? _ (tb_status_sentence (status)) : NULL);
  if (status == TB_OK)
    set_ball (self, &ball);
}

/* What is shown rounded is not to be taken for another number. */
static void
show_number (GtkSpinButton *spin, double shown, int digits)
{
  if (fabs (gtk_spin_button_get_value (spin) - shown) > 0.5 * pow (10, -digits))
    gtk_spin_button_set_value (spin, shown);
}

static void
show_row (TbGripEditor *self, TbGrip *grip, gsize row)
{
  for (int j = 0; j < N_COLUMNS; j++)
    {
      GtkSpinButton *spin = self->spins[row][j];

      if (spin == NULL)
        continue;
      show_number (spin, tb_in_from_metres (*number_of (grip, rows[row].offset[j])), rows[row].digits);
      gtk_widget_set_sensitive (GTK_WIDGET (spin), j != COLUMN_THUMB || !grip->no_thumb);
    }
}

static void
show_grip (TbGripEditor *self, TbGrip *grip)
{
  gtk_check_button_set_active (self->no_thumb, grip->no_thumb);
  for (gsize i = 0; i < N_ROWS; i++)
    show_row (self, grip, i);
}

static void
show_session (TbGripEditor *self)
{
  const TbBall *ball = &setup_of (self)->shot.ball;
  TbGrip grip;
  gboolean drilled = ball->n_holes > 0, ordinary = tb_grip_from_ball (ball, &grip);

  gtk_widget_set_visible (self->none, !drilled);
  gtk_widget_set_visible (self->other, drilled && !ordinary);
  gtk_widget_set_visible (self->drill, !drilled);
  gtk_widget_set_visible (self->fill, drilled);
  gtk_widget_set_visible (GTK_WIDGET (self->grid), ordinary);
  gtk_widget_set_visible (GTK_WIDGET (self->no_thumb), ordinary);
  if (!ordinary)
    return;
  self->showing = TRUE;
  show_grip (self, &grip);
  self->showing = FALSE;
}

static void
on_changed (TbGripEditor *self)
{
  TbGrip grip;

  if (self->showing || self->session == NULL || !tb_grip_from_ball (&setup_of (self)->shot.ball, &grip))
    return;
  grip.no_thumb = gtk_check_button_get_active (self->no_thumb);
  for (gsize i = 0; i < N_ROWS; i++)
    for (int j = 0; j < N_COLUMNS; j++)
      if (self->spins[i][j] != NULL)
        *number_of (&grip, rows[i].offset[j])
            = tb_metres_from_in (gtk_spin_button_get_value (self->spins[i][j]));
  drill (self, &grip);
}

static void
on_drill (TbGripEditor *self)
{
  TbGrip grip = tb_grip_default ();

  drill (self, &grip);
}

static void
on_fill (TbGripEditor *self)
{
  TbBall ball = setup_of (self)->shot.ball;

  ball.n_holes = 0;
  tell (self, NULL);
  set_ball (self, &ball);
}

static void
add_spin (TbGripEditor *self, gsize i, int j)
{
  static const char *const holes[N_COLUMNS] = { N_ ("middle finger"), N_ ("ring finger"), N_ ("thumb") };
  const Row *row = &rows[i];
  GtkWidget *spin = gtk_spin_button_new_with_range (row->low, row->high, row->step);
  g_autofree char *name = NULL;

  /* Translators: a measure and the hole it is of: "Depth, thumb, in". */
  name = g_strdup_printf (_ ("%s, %s, in"), _ (row->label), _ (holes[j]));
  gtk_spin_button_set_digits (GTK_SPIN_BUTTON (spin), (guint) row->digits);
  gtk_editable_set_width_chars (GTK_EDITABLE (spin), 5);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (spin), 5);
  tb_spin_take_either_mark (GTK_SPIN_BUTTON (spin));
  tb_accessible_set_name (spin, name);
  if (row->word != NULL)
    tb_word_set (spin, spin, row->word);
  g_signal_connect_swapped (spin, "value-changed", G_CALLBACK (on_changed), self);
  gtk_grid_attach (self->grid, spin, j + 1, (int) i + 1, 1, 1);
  self->spins[i][j] = GTK_SPIN_BUTTON (spin);
}

static void
build_grid (TbGripEditor *self)
{
  static const char *const heads[N_COLUMNS] = { N_ ("Middle"), N_ ("Ring"), N_ ("Thumb") };

  for (int j = 0; j < N_COLUMNS; j++)
    {
      GtkWidget *head = gtk_label_new (_ (heads[j]));

      gtk_widget_add_css_class (head, "note");
      gtk_grid_attach (self->grid, head, j + 1, 0, 1, 1);
    }
  for (gsize i = 0; i < N_ROWS; i++)
    {
      GtkWidget *label = gtk_label_new (_ (rows[i].label));

      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_grid_attach (self->grid, label, 0, (int) i + 1, 1, 1);
      if (rows[i].word != NULL)
        tb_word_listen (label, GTK_WIDGET (self->grid), rows[i].word, TRUE);
      for (int j = 0; j < N_COLUMNS; j++)
        if (rows[i].offset[j] != NONE)
          add_spin (self, i, j);
    }
}

void
tb_grip_editor_set_session (TbGripEditor *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_session), self, G_CONNECT_SWAPPED);
  show_session (self);
}

static void
tb_grip_editor_dispose (GObject *object)
{
  TbGripEditor *self = TB_GRIP_EDITOR (object);

  self->showing = TRUE;
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_grip_editor_parent_class)->dispose (object);
}

static void
tb_grip_editor_class_init (TbGripEditorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_grip_editor_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-grip-editor.ui");
  gtk_widget_class_bind_template_child (widget_class, TbGripEditor, box);
  gtk_widget_class_bind_template_child (widget_class, TbGripEditor, grid);
  gtk_widget_class_bind_template_child (widget_class, TbGripEditor, none);
  gtk_widget_class_bind_template_child (widget_class, TbGripEditor, other);
  gtk_widget_class_bind_template_child (widget_class, TbGripEditor, drill);
  gtk_widget_class_bind_template_child (widget_class, TbGripEditor, fill);
  gtk_widget_class_bind_template_child (widget_class, TbGripEditor, no_thumb);
  gtk_widget_class_bind_template_child (widget_class, TbGripEditor, problem);
  gtk_widget_class_bind_template_callback (widget_class, on_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_drill);
  gtk_widget_class_bind_template_callback (widget_class, on_fill);
}

static void
tb_grip_editor_init (TbGripEditor *self)
{
  self->showing = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  build_grid (self);
  self->showing = FALSE;
}
