/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-handout.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>
#include <string.h>
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

/* Where a text stands last among bytes; NULL if nowhere. */
static const char *
find_last (const GByteArray *bytes, const char *text)
{
  const char *data = (const char *) bytes->data;
  gsize length = strlen (text);

  for (gsize at = bytes->len; at >= length; at--)
    if (memcmp (data + at - length, text, length) == 0)
      return data + at - length;
  return NULL;
}

/* cairo 1.16 cannot tell a PDF's language. Its catalogue is the last object before the table of places, so
 * that an entry more moves nothing but that table. Where this does not hold, the file stays as it is. */
static void
tell_language (GByteArray *bytes)
{
  static const char catalogue[] = "/Type /Catalog\n", table[] = "\nxref\n", place[] = "startxref\n";
  /* Translators: the code of the language of this translation, such as de or fr; a PDF tells it to those who
   * read aloud. */
  g_autofree char *entry = g_strdup_printf ("   /Lang (%s)\n", _ ("en-GB")), *last = NULL;
  const char *data = (const char *) bytes->data;
  const char *begins = find_last (bytes, catalogue), *tables = find_last (bytes, table),
             *places = find_last (bytes, place);
  gsize cut, at;

  if (!begins || !tables || !places || begins > tables || tables > places)
    return;
  cut = (gsize) (begins - data) + strlen (catalogue);
  at = (gsize) (places - data) + strlen (place);
  if (g_ascii_strtoull (data + at, NULL, 10) != (guint64) (tables - data) + 1)
    return;
  last = g_strdup_printf ("%.*s%" G_GSIZE_FORMAT "\n%%%%EOF\n", (int) (at - cut), data + cut,
                          (gsize) (tables - data) + 1 + strlen (entry));
  g_byte_array_set_size (bytes, (guint) cut);
  g_byte_array_append (bytes, (const guint8 *) entry, (guint) strlen (entry));
  g_byte_array_append (bytes, (const guint8 *) last, (guint) strlen (last));
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
  tell_language (bytes);
  return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}
