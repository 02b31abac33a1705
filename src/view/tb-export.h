/* A picture into a file: PNG, SVG or PDF.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

#define TB_EXPORT_ERROR (tb_export_error_quark ())

typedef enum TbExportError
{
  TB_EXPORT_ERROR_FORMAT, /* the name ends in nothing that can be written */
  TB_EXPORT_ERROR_SIZE,   /* no pixels, or too many */
  TB_EXPORT_ERROR_DRAWING /* cairo gave up */
} TbExportError;

/* Longest side, px. */
#define TB_EXPORT_MAX_SIZE 16384

/* Draws the whole picture; width and height in px. */
typedef void (*TbExportDraw) (cairo_t *cr, double width, double height, gpointer data);

GQuark tb_export_error_quark (void);

/* Draws into a file; what is written follows from how the name ends (.png, .svg or .pdf, in any case). A pixel is
 * 1/96 in on paper. The same picture gives the same bytes, but for the running numbers in an SVG's ids, which cairo
 * counts for the whole process. The file is replaced only when the whole picture has been
 * written: on an error (TB_EXPORT_ERROR or G_FILE_ERROR) what was there before is still there. */
gboolean tb_export_picture (const char *filename,
                            int width,
                            int height,
                            TbExportDraw draw,
                            gpointer data,
                            GError **error);

G_END_DECLS
