/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-reading-page.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-spin.h"
#include "tb-word.h"
#include "tb-caution-button.h"
#include "tb-quantity.h"

#define MAX_INPUTS 6

/* One number that is measured. */
typedef struct Input
{
  const char *label; /* untranslated; with its unit */
  double low, high, step;
  int digits;
  double standard;
} Input;

typedef struct Section
{
  Input inputs[MAX_INPUTS];
  const char *take; /* what the button does, untranslated */
} Section;

#define TAPE(label, standard)               \
  {                                         \
    label, -13.5, 13.5, 0.0625, 3, standard \
  }

static const Section sections[TB_N_READINGS] = {
  [TB_READING_SPEED] = { { { N_ ("Time, s"), 1, 8, 0.01, 2, 2.5 } }, N_ ("Take the speed") },
  [TB_READING_REV_RATE] = { { { N_ ("Turns"), 0.25, 20, 0.25, 2, 2 },
                              { N_ ("In so many frames"), 1, 2000, 1, 0, 24 },
                              { N_ ("Frames a second"), 10, 1000, 10, 0, 60 } },
                            N_ ("Take the rev rate") },
  [TB_READING_TILT] = { { { N_ ("Arc, in"), 0.5, 13.5, 0.0625, 3, 11.75 } }, N_ ("Take the tilt") },
  [TB_READING_AXIS] = { { { N_ ("Aside, ball radii"), -1, 1, 0.01, 2, 0.63 },
                          { N_ ("Above, ball radii"), -1, 1, 0.01, 2, 0.21 } },
                        N_ ("Take rotation and tilt") },
  [TB_READING_PAP] = { { TAPE (N_ ("First point over, in"), -3), TAPE (N_ ("up, in"), 4),
                         TAPE (N_ ("Second point over, in"), -2.25), TAPE (N_ ("up, in"), -0.5),
                         TAPE (N_ ("Third point over, in"), -2.75), TAPE (N_ ("up, in"), -5) },
                       N_ ("Take the PAP") },
};

struct _TbReadingPage
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *box;
  GtkBox *start;
  GtkBox *end;

  TbSession *session;
  GtkSpinButton *inputs[TB_N_READINGS][MAX_INPUTS];
  GtkLabel *answers[TB_N_READINGS];
  GtkWidget *takes[TB_N_READINGS];
};

G_DEFINE_FINAL_TYPE (TbReadingPage, tb_reading_page, GTK_TYPE_WIDGET)

static TbSetup *
setup_of (TbReadingPage *self)
{
  return tb_session_get_setup (self->session, TB_SIDE_AFTER);
}

static double
input (TbReadingPage *self, TbReadingKind kind, guint i)
{
  return gtk_spin_button_get_value (self->inputs[kind][i]);
}

static double
radius_of (TbReadingPage *self)
{
  return 0.5 * setup_of (self)->shot.ball.diameter;
}

/* Readings. */

static TbMeasured
read_time (TbReadingPage *self)
{
  return (TbMeasured){ input (self, TB_READING_SPEED, 0), TB_READING_STOPWATCH_ERROR };
}

static TbMeasured
read_rev_rate (TbReadingPage *self)
{
  return tb_reading_rev_rate ((TbMeasured){ input (self, TB_READING_REV_RATE, 0), TB_READING_TURN_ERROR },
                              (TbMeasured){ input (self, TB_READING_REV_RATE, 1), TB_READING_FRAME_ERROR },
                              input (self, TB_READING_REV_RATE, 2));
}

static TbMeasured
read_tilt (TbReadingPage *self)
{
  return tb_reading_tilt (radius_of (self),
                          (TbMeasured){ tb_metres_from_in (input (self, TB_READING_TILT, 0)),
                                        tb_metres_from_in (TB_READING_TAPE_ERROR_IN) });
}

static TbAxisReading
read_axis (TbReadingPage *self)
{
  return tb_reading_axis ((TbMeasured){ input (self, TB_READING_AXIS, 0), TB_READING_PICTURE_ERROR },
                          (TbMeasured){ input (self, TB_READING_AXIS, 1), TB_READING_PICTURE_ERROR });
}

static TbPapReading
read_pap (TbReadingPage *self)
{
  TbRingPoint points[TB_RING_POINTS];

  for (guint i = 0; i < TB_RING_POINTS; i++)
    points[i] = (TbRingPoint){ tb_metres_from_in (input (self, TB_READING_PAP, 2 * i)),
                               tb_metres_from_in (input (self, TB_READING_PAP, 2 * i + 1)) };
  return tb_reading_pap (radius_of (self), points, tb_metres_from_in (TB_READING_TAPE_ERROR_IN));
}

/* Answers. */

/* "17.2 mph ± 0.6". */
static char *
measured_text (TbMeasured measured, double (*from_si) (double), int digits, const char *unit)
{
  g_autofree char *value = tb_number_with_unit (from_si (measured.value), digits, unit);
  g_autofree char *error = tb_number_format (fabs (from_si (measured.error)), digits);

  /* Translators: a value with its unit, then its likely error. */
  return g_strdup_printf (_ ("%s ± %s"), value, error);
}

static char *
speed_text (TbReadingPage *self, TbMeasured speed)
{
  if (tb_session_get_units (self->session) == TB_UNITS_METRIC)
    return measured_text (speed, tb_km_per_hour_from_metres_per_second, 1, N_ ("km/h"));
  return measured_text (speed, tb_mph_from_metres_per_second, 1, N_ ("mph"));
}

static char *
speed_answer (TbReadingPage *self)
{
  TbMeasured mean = tb_reading_mean_speed (TB_HEAD_PIN_Y, read_time (self));
  TbMeasured release = tb_reading_release_speed (setup_of (self), read_time (self));
  g_autofree char *of_mean = speed_text (self, mean), *of_release = NULL;

  if (isnan (release.value))
    return g_strdup_printf (_ ("Mean %s. No speed of this model takes this ball as long."), of_mean);
  of_release = speed_text (self, release);
  return g_strdup_printf (_ ("Mean %s; at release %s (by this model)."), of_mean, of_release);
}

static char *
axis_answer (TbReadingPage *self)
{
  TbAxisReading reading = read_axis (self);
  g_autofree char *rotation = NULL, *tilt = NULL;

  if (isnan (reading.rotation.value))
    return g_strdup (_ ("The mark cannot stand there: it would be off the ball."));
  rotation = measured_text (reading.rotation, tb_deg_from_radians, 0, N_ ("°"));
  tilt = measured_text (reading.tilt, tb_deg_from_radians, 0, N_ ("°"));
  return g_strdup_printf (_ ("Rotation %s, tilt %s."), rotation, tilt);
}

static char *
pap_answer (TbReadingPage *self)
{
  TbPapReading reading = read_pap (self);
  g_autofree char *over = NULL, *up = NULL, *tilt = NULL;

  if (isnan (reading.over.value))
    return g_strdup (_ ("These three points lie too near to each other to make a ring."));
  over = measured_text (reading.over, tb_in_from_metres, 2, N_ ("in"));
  up = measured_text (reading.up, tb_in_from_metres, 2, N_ ("in"));
  tilt = measured_text (reading.tilt, tb_deg_from_radians, 0, N_ ("°"));
  return g_strdup_printf (_ ("%s over, %s up; tilt %s."), over, up, tilt);
}

static char *
answer (TbReadingPage *self, TbReadingKind kind)
{
  g_autofree char *text = NULL;

  switch (kind)
    {
    case TB_READING_SPEED:
      return speed_answer (self);
    case TB_READING_REV_RATE:
      text = measured_text (read_rev_rate (self), tb_rpm_from_radians_per_second, 0, N_ ("rpm"));
      return g_strdup_printf (_ ("Rev rate %s."), text);
    case TB_READING_TILT:
      text = measured_text (read_tilt (self), tb_deg_from_radians, 1, N_ ("°"));
      return g_strdup_printf (_ ("Tilt %s."), text);
    case TB_READING_AXIS:
      return axis_answer (self);
    default:
      return pap_answer (self);
    }
}

static void
show_answers (TbReadingPage *self)
{
  if (self->session == NULL)
    return;
  for (int kind = 0; kind < TB_N_READINGS; kind++)
    {
      g_autofree char *text = answer (self, (TbReadingKind) kind);

      gtk_label_set_text (self->answers[kind], text);
    }
}

/* Taking them. */

/* FALSE, and what is wrong stands beside the reading, if the field does not reach so far. */
static gboolean
take (TbReadingPage *self, TbGroup group, const char *name, double si)
{
  const TbField *field = tb_field_find (group, name);
  double value = field->from_si (si);

  if (isnan (si) || tb_field_check (field, value) != TB_OK)
    return FALSE;
  return tb_session_set_field (self->session, field, value, NULL);
}

static gboolean
take_reading (TbReadingPage *self, TbReadingKind kind)
{
  const TbSetup *setup = setup_of (self);
  TbAxisReading axis;
  TbPapReading pap;

  switch (kind)
    {
    case TB_READING_SPEED:
      return take (
          self, TB_GROUP_DELIVERY, "speed_mph",
          tb_reading_neutral_speed (setup, tb_reading_release_speed (setup, read_time (self)).value));
    case TB_READING_REV_RATE:
      return take (self, TB_GROUP_DELIVERY, "rev_rate_rpm",
                   tb_reading_neutral_rev_rate (setup, read_rev_rate (self).value));
    case TB_READING_TILT:
      return take (self, TB_GROUP_DELIVERY, "axis_tilt_deg", read_tilt (self).value);
    case TB_READING_AXIS:
      axis = read_axis (self);
      return take (self, TB_GROUP_DELIVERY, "axis_rotation_deg", axis.rotation.value)
             && take (self, TB_GROUP_DELIVERY, "axis_tilt_deg", axis.tilt.value);
    default:
      pap = read_pap (self);
      return take (self, TB_GROUP_BALL, "pap_over_in", pap.over.value)
             && take (self, TB_GROUP_BALL, "pap_up_in", pap.up.value);
    }
}

static void
on_take (GtkButton *button, TbReadingPage *self)
{
  TbReadingKind kind = (TbReadingKind) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "kind"));
  gboolean taken;

  tb_session_begin_gesture (self->session);
  taken = take_reading (self, kind);
  tb_session_end_gesture (self->session);
  if (!taken)
    gtk_label_set_text (self->answers[kind],
                        _ ("This lies outside of what a control can be set to; measure again."));
}

/* Building. */

static GtkWidget *
add_label (GtkBox *box, const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (box, label);
  return label;
}

static void
add_input (TbReadingPage *self, GtkGrid *grid, TbReadingKind kind, guint i)
{
  const Input *in = &sections[kind].inputs[i];
  GtkWidget *label = gtk_label_new (_ (in->label)),
            *spin = gtk_spin_button_new_with_range (in->low, in->high, in->step);
  /* Points stand two numbers to a row. */
  guint pair = kind == TB_READING_PAP ? 2 : 1;
  g_autofree char *name = g_strdup_printf ("%s, %s", _ (tb_reading_info (kind)->label), _ (in->label));

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_spin_button_set_digits (GTK_SPIN_BUTTON (spin), (guint) in->digits);
  gtk_editable_set_width_chars (GTK_EDITABLE (spin), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (spin), 6);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (spin), in->standard);
  tb_spin_take_either_mark (GTK_SPIN_BUTTON (spin));
  tb_accessible_set_name (spin, name);
  gtk_grid_attach (grid, label, (int) (2 * (i % pair)), (int) (i / pair), 1, 1);
  gtk_grid_attach (grid, spin, (int) (2 * (i % pair) + 1), (int) (i / pair), 1, 1);
  g_signal_connect_swapped (spin, "value-changed", G_CALLBACK (show_answers), self);
  self->inputs[kind][i] = GTK_SPIN_BUTTON (spin);
}

/* What is read, in the glossary. */
static const char *const words[TB_N_READINGS] = { [TB_READING_SPEED] = "speed",
                                                  [TB_READING_REV_RATE] = "rev-rate",
                                                  [TB_READING_TILT] = "axis-tilt",
                                                  [TB_READING_AXIS] = "axis-rotation",
                                                  [TB_READING_PAP] = "pap" };

static void
add_section (TbReadingPage *self, GtkBox *box, TbReadingKind kind)
{
  const TbReadingInfo *info = tb_reading_info (kind);
  GtkWidget *grid = gtk_grid_new (), *button = gtk_button_new_with_label (_ (sections[kind].take));

  tb_word_listen (add_label (box, _ (info->label), "section-title"), GTK_WIDGET (box), words[kind], TRUE);
  add_label (box, _ (info->how), NULL);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 4);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 8);
  gtk_widget_set_margin_top (grid, 4);
  tb_word_set (grid, grid, words[kind]);
  gtk_box_append (box, grid);
  for (guint i = 0; i < MAX_INPUTS && sections[kind].inputs[i].label != NULL; i++)
    add_input (self, GTK_GRID (grid), kind, i);
  self->answers[kind] = GTK_LABEL (add_label (box, NULL, "reading-answer"));
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_object_set_data (G_OBJECT (button), "kind", GINT_TO_POINTER (kind));
  g_signal_connect (button, "clicked", G_CALLBACK (on_take), self);
  gtk_box_append (box, button);
  self->takes[kind] = button;
  add_label (box, _ (info->formula), "note");
  add_label (box, _ (info->source), "note");
  add_label (box, _ (info->errors), "note");
}

GtkSpinButton *
tb_reading_page_get_input (TbReadingPage *self, TbReadingKind kind, guint i)
{
  return self->inputs[kind][i];
}

const char *
tb_reading_page_get_answer (TbReadingPage *self, TbReadingKind kind)
{
  return gtk_label_get_text (self->answers[kind]);
}

void
tb_reading_page_set_session (TbReadingPage *self, TbSession *session)
{
  GtkWidget *caution = g_object_new (TB_TYPE_CAUTION_BUTTON, NULL);

  g_return_if_fail (self->session == NULL);
  self->session = g_object_ref (session);
  tb_caution_button_set_caution (TB_CAUTION_BUTTON (caution), tb_caution_for_field ("rev_rate_rpm"));
  gtk_box_insert_child_after (self->start, caution, gtk_widget_get_first_child (GTK_WIDGET (self->start)));
  g_signal_connect_object (session, "changed", G_CALLBACK (show_answers), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (show_answers), self, G_CONNECT_SWAPPED);
  show_answers (self);
}

static void
tb_reading_page_dispose (GObject *object)
{
  TbReadingPage *self = TB_READING_PAGE (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_reading_page_parent_class)->dispose (object);
}

static void
tb_reading_page_class_init (TbReadingPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_reading_page_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-reading-page.ui");
  gtk_widget_class_bind_template_child (widget_class, TbReadingPage, box);
  gtk_widget_class_bind_template_child (widget_class, TbReadingPage, start);
  gtk_widget_class_bind_template_child (widget_class, TbReadingPage, end);
}

static void
tb_reading_page_init (TbReadingPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_section (self, self->start, TB_READING_SPEED);
  add_section (self, self->start, TB_READING_REV_RATE);
  add_section (self, self->start, TB_READING_AXIS);
  add_section (self, self->end, TB_READING_PAP);
  add_section (self, self->end, TB_READING_TILT);
}
