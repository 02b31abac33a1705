/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include "tb-export.h"

/* A pixel is 1/96 in, a point 1/72 in. */
#define POINTS_PER_PIXEL (72.0 / 96.0)
/* What a new file may be read and written by, before the user's own mask is applied. */
#define FILE_MODE 0666

G_DEFINE_QUARK (tb-export-error-quark, tb_export_error)

typedef enum TbFormat
{
  TB_FORMAT_PNG,
  TB_FORMAT_SVG,
  TB_FORMAT_PDF,
  TB_N_FORMATS
} TbFormat;

static gboolean
find_format (const char *filename, TbFormat *format, GError **error)
{
  static const char *const endings[TB_N_FORMATS] = { ".png", ".svg", ".pdf" };
  g_autofree char *lower = g_ascii_strdown (filename, -1);

  for (int i = 0; i < TB_N_FORMATS; i++)
    if (g_str_has_suffix (lower, endings[i]))
      {
        *format = (TbFormat) i;
        return TRUE;
      }
  g_set_error (error,
               TB_EXPORT_ERROR,
               TB_EXPORT_ERROR_FORMAT,
               _("%s: the name of a picture ends in .png, .svg or .pdf."),
               filename);
  return FALSE;
}

static gboolean
check_size (const char *filename, int width, int height, GError **error)
{
  if (width >= 1 && width <= TB_EXPORT_MAX_SIZE && height >= 1 && height <= TB_EXPORT_MAX_SIZE)
    return TRUE;
  g_set_error (error,
               TB_EXPORT_ERROR,
               TB_EXPORT_ERROR_SIZE,
               _("%s: a picture is 1 to %d pixels wide and high, not %d × %d."),
               filename,
               TB_EXPORT_MAX_SIZE,
               width,
               height);
  return FALSE;
}

static cairo_status_t
append (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static cairo_surface_t *
new_surface (TbFormat format, int width, int height, GByteArray *bytes)
{
  double points_across = width * POINTS_PER_PIXEL, points_down = height * POINTS_PER_PIXEL;
  cairo_surface_t *surface;

  switch (format)
    {
    case TB_FORMAT_SVG:
      return cairo_svg_surface_create_for_stream (append, bytes, points_across, points_down);
    case TB_FORMAT_PDF:
      surface = cairo_pdf_surface_create_for_stream (append, bytes, points_across, points_down);
      /* Without a date the same picture is the same file. */
      cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, "");
      return surface;
    case TB_FORMAT_PNG:
    default:
      return cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
    }
}

/* All errors of drawing and of putting it into its format are known after this. */
static cairo_status_t
finish (cairo_t *cr, cairo_surface_t *surface, TbFormat format, GByteArray *bytes)
{
  cairo_status_t status = cairo_status (cr);

  if (status == CAIRO_STATUS_SUCCESS && format == TB_FORMAT_PNG)
    status = cairo_surface_write_to_png_stream (surface, append, bytes);
  cairo_surface_finish (surface);
  return status != CAIRO_STATUS_SUCCESS ? status : cairo_surface_status (surface);
}

/* A link stays a link: what it leads to is replaced. */
static char *
end_of_links (const char *filename)
{
  char *resolved = realpath (filename, NULL);
  char *end = g_strdup (resolved != NULL ? resolved : filename);

  free (resolved);
  return end;
}

gboolean
tb_export_picture (const char *filename, int width, int height, TbExportDraw draw, gpointer data, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autofree char *target = end_of_links (filename);
  TbFormat format;
  cairo_surface_t *surface;
  cairo_status_t status;
  cairo_t *cr;

  if (!find_format (filename, &format, error) || !check_size (filename, width, height, error))
    return FALSE;
  surface = new_surface (format, width, height, bytes);
  cr = cairo_create (surface);
  if (format != TB_FORMAT_PNG)
    cairo_scale (cr, POINTS_PER_PIXEL, POINTS_PER_PIXEL);
  draw (cr, width, height, data);
  status = finish (cr, surface, format, bytes);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error,
                   TB_EXPORT_ERROR,
                   TB_EXPORT_ERROR_DRAWING,
                   _("%s: the picture could not be drawn: %s."),
                   filename,
                   cairo_status_to_string (status));
      return FALSE;
    }
  return g_file_set_contents_full (target,
                                   (const char *) bytes->data,
                                   (gssize) bytes->len,
                                   G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                   FILE_MODE,
                                   error);
}
