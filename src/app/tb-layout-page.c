/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-layout-page.h"

#include <glib/gi18n-lib.h>

#include "tb-drilling.h"
#include "tb-export.h"
#include "tb-field-row.h"
#include "tb-grip-editor.h"
#include "tb-layout-picture.h"
#include "tb-layout-sheet.h"
#include "tb-quantity.h"

struct _TbLayoutPage
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *box;
  TbLayoutPicture *picture;
  GtkBox *fields_box;
  TbGripEditor *grip;
  GtkGrid *figures;
  GtkLabel *message;

  TbSession *session;
  GtkFileChooserNative *chooser; /* open at the moment; else NULL */
};

G_DEFINE_FINAL_TYPE (TbLayoutPage, tb_layout_page, GTK_TYPE_WIDGET)

static const char *const layout_fields[]
    = { "drilling_angle_deg", "pin_to_pap_in", "val_angle_deg", "pap_over_in", "pap_up_in" };

static TbSetup *
setup_of (TbLayoutPage *self)
{
  return tb_session_get_setup (self->session, TB_SIDE_AFTER);
}

static void
tell (TbLayoutPage *self, const char *sentence)
{
  gtk_label_set_text (self->message, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message), sentence != NULL);
}

/* Figures before and after drilling. */

typedef struct Figure
{
  const char *label, *unit; /* untranslated */
  gsize offset;             /* of a double in TbBallFigures */
  double (*from_si) (double);
  int digits;
} Figure;

#define AT(member) offsetof (TbBallFigures, member)

static const Figure figures[] = {
  { N_ ("Weight"), N_ ("lb"), AT (mass), tb_lb_from_kilograms, 2 },
  { N_ ("RG"), N_ ("in"), AT (rg), tb_in_from_metres, 3 },
  { N_ ("Differential"), N_ ("in"), AT (differential), tb_in_from_metres, 3 },
  { N_ ("Intermediate differential"), N_ ("in"), AT (intermediate_differential), tb_in_from_metres, 3 },
  { N_ ("Low-RG axis to PAP"), N_ ("in"), AT (low_axis_to_pap), tb_in_from_metres, 2 },
  { N_ ("Pin off the low-RG axis"), N_ ("°"), AT (pin_to_low_axis), tb_deg_from_radians, 1 },
  { N_ ("Centre of mass off centre"), N_ ("in"), AT (offset), tb_in_from_metres, 3 },
  { N_ ("Top weight"), N_ ("oz"), AT (static_weights.top), tb_oz_from_kilograms, 2 },
  { N_ ("Side weight"), N_ ("oz"), AT (static_weights.side), tb_oz_from_kilograms, 2 },
  { N_ ("Finger weight"), N_ ("oz"), AT (static_weights.finger), tb_oz_from_kilograms, 2 },
};

static void
set_cell (TbLayoutPage *self, int column, int row, const char *text)
{
  GtkWidget *label = gtk_grid_get_child_at (self->figures, column, row);

  if (label == NULL)
    {
      label = gtk_label_new (NULL);
      gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0 : 1);
      gtk_widget_set_hexpand (label, column == 0);
      gtk_widget_add_css_class (label, row == 0 ? "note" : "numeric");
      gtk_grid_attach (self->figures, label, column, row, 1, 1);
    }
  gtk_label_set_text (GTK_LABEL (label), text);
}

static char *
figure_text (const Figure *figure, const TbBallFigures *values)
{
  double value = figure->from_si (*(const double *)((const char *)values + figure->offset));

  return tb_number_with_unit (value, figure->digits, figure->unit);
}

static void
show_figures (TbLayoutPage *self)
{
  TbBallFigures before, after;
  TbStatus status = tb_drilling_figures (&setup_of (self)->shot.ball, &before, &after);

  gtk_widget_set_visible (GTK_WIDGET (self->figures), status == TB_OK);
  tell (self, status != TB_OK ? _ (tb_status_sentence (status)) : NULL);
  if (status != TB_OK)
    return;
  set_cell (self, 1, 0, _ ("undrilled"));
  set_cell (self, 2, 0, _ ("drilled"));
  for (gsize i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      g_autofree char *of_before = figure_text (&figures[i], &before),
                      *of_after = figure_text (&figures[i], &after);

      set_cell (self, 0, (int)i + 1, _ (figures[i].label));
      set_cell (self, 1, (int)i + 1, of_before);
      set_cell (self, 2, (int)i + 1, of_after);
    }
}

/* Sheet. */

/* The sheet of the ball as it is. The date is the caller's to free. */
static TbLayoutSheet
sheet_of (const TbSetup *setup, char **date)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  *date = g_date_time_format (now, "%Y-%m-%d");
  return (TbLayoutSheet){ .ball = &setup->shot.ball,
                          .ball_name
                          = setup->ball_name != NULL ? tb_document_display_name (setup->ball_name) : NULL,
                          .bowler_name
                          = setup->bowler_name != NULL ? tb_document_display_name (setup->bowler_name) : NULL,
                          .date = *date,
                          .mirrored = setup->shot.delivery.hand == TB_HAND_LEFT };
}

static void
draw_export (cairo_t *cr, double width, double height, gpointer sheet)
{
  tb_layout_sheet_draw (cr, width, height, sheet);
}

static void
on_chosen (TbLayoutPage *self, int response, GtkNativeDialog *dialog)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  g_autoptr (GError) error = NULL;
  g_autofree char *date = NULL, *path = NULL;

  if (response == GTK_RESPONSE_ACCEPT && file != NULL)
    {
      TbLayoutSheet sheet = sheet_of (setup_of (self), &date);

      path = g_file_get_path (file);
      tb_export_picture (path, TB_LAYOUT_SHEET_WIDTH, TB_LAYOUT_SHEET_HEIGHT, draw_export, &sheet, &error);
      tell (self, error != NULL ? error->message : _ ("The sheet is saved."));
    }
  g_clear_object (&self->chooser);
}

static void
save_sheet (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbLayoutPage *self = TB_LAYOUT_PAGE (widget);
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (widget));

  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (_ ("Save the layout sheet"), window,
                                               GTK_FILE_CHOOSER_ACTION_SAVE, NULL, NULL);
  /* Translators: the name of a file that is offered; keep the ".pdf". */
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), _ ("layout.pdf"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (on_chosen), self, G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
on_draw_page (TbLayoutPage *self, GtkPrintContext *context, int page)
{
  g_autofree char *date = NULL;
  TbLayoutSheet sheet = sheet_of (setup_of (self), &date);
  double width = gtk_print_context_get_width (context), height = gtk_print_context_get_height (context);

  tb_layout_sheet_draw (gtk_print_context_get_cairo_context (context), width,
                        MIN (height, width * TB_LAYOUT_SHEET_HEIGHT / TB_LAYOUT_SHEET_WIDTH), &sheet);
}

static void
print_sheet (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbLayoutPage *self = TB_LAYOUT_PAGE (widget);
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GError) error = NULL;

  gtk_print_operation_set_n_pages (operation, 1);
  gtk_print_operation_set_job_name (operation, _ ("Layout sheet"));
  g_signal_connect_object (operation, "draw-page", G_CALLBACK (on_draw_page), self, G_CONNECT_SWAPPED);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                           GTK_WINDOW (gtk_widget_get_root (widget)), &error);
  if (error != NULL)
    tell (self, error->message);
}

static void
face (GtkWidget *widget, const char *action, GVariant *parameter)
{
  tb_layout_picture_face (TB_LAYOUT_PAGE (widget)->picture);
}

void
tb_layout_page_set_session (TbLayoutPage *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  tb_picture_set_session (TB_PICTURE (self->picture), session);
  tb_grip_editor_set_session (self->grip, session);
  for (gsize i = 0; i < G_N_ELEMENTS (layout_fields); i++)
    {
      GtkWidget *row = tb_field_row_new (session, tb_field_find (TB_GROUP_BALL, layout_fields[i]));

      gtk_widget_add_css_class (row, "control-row");
      gtk_box_append (self->fields_box, row);
    }
  g_signal_connect_object (session, "changed", G_CALLBACK (show_figures), self, G_CONNECT_SWAPPED);
  show_figures (self);
}

static void
tb_layout_page_dispose (GObject *object)
{
  TbLayoutPage *self = TB_LAYOUT_PAGE (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->chooser);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_layout_page_parent_class)->dispose (object);
}

static void
tb_layout_page_class_init (TbLayoutPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_layout_page_dispose;
  g_type_ensure (TB_TYPE_LAYOUT_PICTURE);
  g_type_ensure (TB_TYPE_GRIP_EDITOR);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-layout-page.ui");
  gtk_widget_class_bind_template_child (widget_class, TbLayoutPage, box);
  gtk_widget_class_bind_template_child (widget_class, TbLayoutPage, picture);
  gtk_widget_class_bind_template_child (widget_class, TbLayoutPage, fields_box);
  gtk_widget_class_bind_template_child (widget_class, TbLayoutPage, grip);
  gtk_widget_class_bind_template_child (widget_class, TbLayoutPage, figures);
  gtk_widget_class_bind_template_child (widget_class, TbLayoutPage, message);
  gtk_widget_class_install_action (widget_class, "layout.save-sheet", NULL, save_sheet);
  gtk_widget_class_install_action (widget_class, "layout.print-sheet", NULL, print_sheet);
  gtk_widget_class_install_action (widget_class, "layout.face", NULL, face);
}

static void
tb_layout_page_init (TbLayoutPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
