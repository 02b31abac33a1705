/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-handout.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>
#include "tb-export.h"

static cairo_status_t
append (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static cairo_surface_t *
new_surface (const TbHandout *handout, GByteArray *bytes)
{
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (
      append, bytes, tb_paper_width (handout->paper), tb_paper_height (handout->paper));

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, tb_handout_title (handout));
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Tenboard " PACKAGE_VERSION);
  /* Without a date the same page is the same file. */
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, "");
  return surface;
}

GBytes *
tb_handout_pdf (const TbHandout *handout, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface = new_surface (handout, bytes);
  cairo_t *cr = cairo_create (surface);
  cairo_status_t status;

  tb_handout_draw (cr, handout);
  status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, TB_EXPORT_ERROR, TB_EXPORT_ERROR_DRAWING, _ ("The page could not be drawn: %s."),
                   cairo_status_to_string (status));
      return NULL;
    }
  return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}
