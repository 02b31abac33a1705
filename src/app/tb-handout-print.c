/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-handout-print.h"

#include "tb-atomic-file.h"
#include "tb-document.h"

TbPaper
tb_paper_usual (void)
{
  return g_str_equal (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER) ? TB_PAPER_LETTER : TB_PAPER_A4;
}

char *
tb_handout_file_name (const TbHandout *handout)
{
  char *name = g_strdup (tb_handout_title (handout));

  g_strdelimit (name, "/\\:\n\t", '-');
  return g_strstrip (name);
}

gboolean
tb_handout_save (const TbHandout *handout, const char *path, GError **error)
{
  g_autoptr (GBytes) bytes = tb_handout_pdf (handout, error);
  g_autofree char *shown = g_filename_display_name (path);

  if (bytes == NULL)
    return FALSE;
  if (tb_atomic_write (path, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, error))
    return TRUE;
  tb_document_finish_error (error, shown);
  return FALSE;
}

static void
on_draw_page (const TbHandout *handout, GtkPrintContext *context)
{
  /* The dialog offers other sheets as well. */
  tb_handout_draw_on (gtk_print_context_get_cairo_context (context), handout,
                      gtk_print_context_get_width (context), gtk_print_context_get_height (context));
}

static GtkPageSetup *
page_setup_for (TbPaper paper)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  GtkPaperSize *size
      = gtk_paper_size_new (paper == TB_PAPER_LETTER ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);

  gtk_page_setup_set_paper_size (setup, size);
  gtk_paper_size_free (size);
  return setup;
}

static GtkPrintOperation *
new_operation (const TbHandout *handout)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = page_setup_for (handout->paper);
  g_autoptr (GtkPrintSettings) settings = gtk_print_settings_new ();
  g_autofree char *name = tb_handout_file_name (handout);

  gtk_print_operation_set_n_pages (operation, 1);
  gtk_print_operation_set_default_page_setup (operation, setup);
  /* The page has margins of its own, in points from the paper's corner. */
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_job_name (operation, tb_handout_title (handout));
  /* What a file is called that is printed to; "output" otherwise. */
  gtk_print_settings_set (settings, GTK_PRINT_SETTINGS_OUTPUT_BASENAME, name);
  gtk_print_operation_set_print_settings (operation, settings);
  return operation;
}

gboolean
tb_handout_print (const TbHandout *handout, const TbHandoutPrinting *printing, GError **error)
{
  g_autoptr (GtkPrintOperation) operation = new_operation (handout);
  GClosure *draws = g_cclosure_new_swap (G_CALLBACK (on_draw_page), (gpointer) handout, NULL);

  g_object_watch_closure (G_OBJECT (printing->window), draws);
  g_signal_connect_closure (operation, "draw-page", draws, FALSE);
  if (printing->filename != NULL)
    gtk_print_operation_set_export_filename (operation, printing->filename);
  return gtk_print_operation_run (operation, printing->action, printing->window, error)
         != GTK_PRINT_OPERATION_RESULT_ERROR;
}
