/* Taking pictures, clips and paths away.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-window-private.h"

#include <glib/gi18n-lib.h>

#include "tb-describe.h"
#include "tb-document.h"
#include "tb-export-window.h"
#include "tb-path-command.h"
#include "tb-picture-menu.h"
#include "tb-save-dialog.h"

static const TbSaveForm path_forms[] = {
  { "csv", N_ ("Tables (CSV)") },
  { "json", N_ ("Data (JSON)") },
  { NULL, NULL },
};

static void
present (TbWindow *self, TbExportKind kind)
{
  TbExportWindow *window = tb_export_window_new (GTK_WINDOW (self), self->session, kind);

  tb_export_window_choose (window, TB_PICTURE (tb_lane_panel_get_picture (self->lane)));
  gtk_window_present (GTK_WINDOW (window));
}

static void
save_picture (GtkWidget *widget, const char *name, GVariant *parameter)
{
  present (TB_WINDOW (widget), TB_EXPORT_PICTURE);
}

static void
save_clip (GtkWidget *widget, const char *name, GVariant *parameter)
{
  present (TB_WINDOW (widget), TB_EXPORT_CLIP);
}

/* The picture that has the focus; otherwise the lane. */
static void
copy_picture (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbWindow *self = TB_WINDOW (widget);
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));
  GtkWidget *picture = focus != NULL ? gtk_widget_get_ancestor (focus, TB_TYPE_PICTURE) : NULL;

  tb_picture_copy (picture != NULL ? TB_PICTURE (picture)
                                   : TB_PICTURE (tb_lane_panel_get_picture (self->lane)));
}

/* FALSE, and a sentence on top of the window, if one of the runs was not thrown: half a table would mislead.
 */
static gboolean
get_runs (TbWindow *self, TbRun *runs[TB_N_SIDES])
{
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      runs[side] = tb_session_get_run (self->session, (TbSide) side);
      if (runs[side]->status != TB_OK)
        {
          g_autofree char *sentence = tb_describe_problem (runs[side]);

          tb_window_tell (self, sentence);
          return FALSE;
        }
    }
  return TRUE;
}

void
tb_window_save_path_to (TbWindow *self, const char *path)
{
  TbRun *runs[TB_N_SIDES];
  g_autofree char *shown = g_filename_display_name (path), *lower = g_ascii_strdown (path, -1);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;

  if (!get_runs (self, runs))
    return;
  text = tb_path_text (runs, !g_str_has_suffix (lower, ".json"));
  tb_document_save_file (path, text, &error);
  tb_document_finish_error (&error, shown);
  tb_window_tell (self, error != NULL ? error->message : NULL);
}

static void
on_path_response (TbWindow *self, int response)
{
  g_autofree char *path = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    path = tb_save_dialog_get_path (self->chooser, path_forms);
  g_clear_object (&self->chooser);
  if (path != NULL)
    tb_window_save_path_to (self, path);
  else if (response == GTK_RESPONSE_ACCEPT)
    tb_window_tell (self, _ ("The path can only be saved on this computer; choose a folder here."));
}

static void
save_path (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TbWindow *self = TB_WINDOW (widget);
  const char *title = tb_session_get_study (self->session)->title;
  /* Translators: %s is a study's title: the name of a file. */
  g_autofree char *base = title[0] != '\0' ? g_strdup_printf (_ ("%s – path"), title) : g_strdup (_ ("Path"));

  g_clear_object (&self->chooser);
  self->chooser = tb_save_dialog_new (GTK_WINDOW (self), _ ("Save the path"), base, path_forms);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (on_path_response), self, G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

void
tb_window_class_install_export_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.save-picture", NULL, save_picture);
  gtk_widget_class_install_action (widget_class, "win.save-clip", NULL, save_clip);
  gtk_widget_class_install_action (widget_class, "win.save-path", NULL, save_path);
  gtk_widget_class_install_action (widget_class, "win.copy-picture", NULL, copy_picture);
}
