/* What the parts of the pattern editor share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-pattern-editor.h"
#include "tb-pattern-view.h"

G_BEGIN_DECLS

/* The numbers of a strip that can be typed. */
typedef enum StripNumber
{
  STRIP_RIGHT,
  STRIP_LEFT,
  STRIP_START,
  STRIP_END,
  STRIP_VOLUME,
  STRIP_TAPER,
  N_STRIP_NUMBERS
} StripNumber;

struct _TbPatternEditor
{
  TbLanePage parent_instance;

  GtkListBox *list;
  GtkLabel *figures;
  GtkWidget *form; /* of the chosen strip */
  GtkDropDown *way;
  GtkSpinButton *number[N_STRIP_NUMBERS];
  GtkWidget *add, *remove, *up, *down;
  GtkSpinButton *plan_length, *plan_volume, *plan_ratio;
  GtkEntry *name;
  GtkLabel *told; /* what became of a file */

  int selected;              /* strip; −1 for none */
  gboolean showing;          /* the session is being shown: what widgets tell is not a wish */
  double cursor_x, cursor_y; /* m, lane frame */
  TbPatternPart dragged;
  TbStrip at_start;              /* the chosen strip when it was taken hold of */
  double drag_from[2];           /* px */
  double drag_lane[2];           /* m */
  GtkFileChooserNative *chooser; /* open at the moment; else NULL */
};

/* tb-pattern-editor.c */
TbPattern *tb_pattern_editor_get_pattern (TbPatternEditor *self);
void tb_pattern_editor_redraw (TbPatternEditor *self);
TbPatternScene tb_pattern_editor_scene (TbPatternEditor *self, const TbTheme *theme);
/* Puts a pattern in the place of "after"'s; steps with one key that follow each other are one to undo. Takes
 * it; NULL is refused. */
gboolean tb_pattern_editor_take (TbPatternEditor *self, TbPattern *pattern, const char *key);

/* tb-pattern-drag.c: taking hold of strips on the picture */
void tb_pattern_editor_init_drag (TbPatternEditor *self);

/* tb-pattern-files.c: tables, and the library */
void tb_pattern_editor_add_files (TbPatternEditor *self, GtkBox *box);

G_END_DECLS
