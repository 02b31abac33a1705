/* Colours and sizes: of the widgets, and of the drawn views beside them.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-theme.h"

G_BEGIN_DECLS

typedef enum TbColorScheme
{
  TB_COLOR_SCHEME_SYSTEM,
  TB_COLOR_SCHEME_LIGHT,
  TB_COLOR_SCHEME_DARK
} TbColorScheme;

/* Sizes of text, % of the ordinary one; 0 stands for one that suits the window. */
#define TB_TEXT_AUTOMATIC 0

/* Loads the style sheet. Once for a display. */
void tb_style_init (GdkDisplay *display);
/* Light, dark, or as the desktop has it. */
void tb_style_set_color_scheme (TbColorScheme scheme);
/* The strongest contrast, whatever the desktop has; FALSE is as the desktop has it. */
void tb_style_set_high_contrast (gboolean high);
/* The colours of "before" and "after". */
void tb_style_set_run_colors (TbRunColors colors);
/* Nothing moves by itself; FALSE is as the desktop has it. */
void tb_style_set_reduced_motion (gboolean reduced);

/* The step of text size (%) that suits a window of this size, px. */
int tb_style_suitable_text_size (int width, int height);
/* Sets the size of everything in a window, %; one of the steps. */
void tb_style_set_text_size (GtkWidget *window, int percent);
/* What tb_style_set_text_size() was told last; 100 if never. */
int tb_style_get_text_size (GtkWidget *window);
/* Sets the size of one label's type, px, whatever the size of everything is. */
void tb_style_set_label_size (GtkLabel *label, double px);

/* Theme of a drawn view that stands in `widget`'s place. Equal themes are equal byte by byte. */
TbTheme tb_style_theme_for (GtkWidget *widget);
/* The same for a projector: the strongest contrast, dark where the desktop is; its type is `scale` times the ordinary. */
TbTheme tb_style_projector_theme (GtkWidget *widget, double scale);

G_END_DECLS
