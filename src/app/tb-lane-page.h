/* A page about the lane: controls on the left, a drawn picture on the right, a line of words under it.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-drawn-picture.h"
#include "tb-session.h"

G_BEGIN_DECLS

#define TB_TYPE_LANE_PAGE (tb_lane_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (TbLanePage, tb_lane_page, TB, LANE_PAGE, GtkWidget)

struct _TbLanePageClass
{
  GtkWidgetClass parent_class;

  /* There is a session now: time to build the controls. */
  void (*session_set) (TbLanePage *self);
  /* The session is another, or the page is seen again after that. Not called while the page is not seen. */
  void (*session_changed) (TbLanePage *self);
  /* Optional: the page is not seen any more. */
  void (*hidden) (TbLanePage *self);
};

void tb_lane_page_set_session (TbLanePage *self, TbSession *session);
/* All borrowed. */
TbSession *tb_lane_page_get_session (TbLanePage *self);
TbDrawnPicture *tb_lane_page_get_picture (TbLanePage *self);
GtkBox *tb_lane_page_get_controls (TbLanePage *self);
const char *tb_lane_page_get_words (TbLanePage *self);
void tb_lane_page_set_words (TbLanePage *self, const char *words);
/* "After", and its path with samples (NULL where there is none). */
TbSetup *tb_lane_page_get_setup (TbLanePage *self);

/* Parts of the controls, added at the end of a box; texts are translated. All borrowed. */
void tb_lane_page_add_title (GtkBox *box, const char *text);
GtkLabel *tb_lane_page_add_note (GtkBox *box, const char *text);
GtkBox *tb_lane_page_add_row (GtkBox *box, const char *label);
/* A range of a number that is typed. */
typedef struct TbSpinRange
{
  double low, high, step, page;
  guint digits;
} TbSpinRange;
GtkSpinButton *tb_lane_page_add_spin (GtkBox *box, const char *label, const TbSpinRange *range);
/* Lets a spin button of such a row, and its label, explain a word of the glossary. */
void tb_lane_page_explain (GtkSpinButton *spin, const char *word);
/* labels end with NULL and are untranslated. */
GtkDropDown *tb_lane_page_add_choice (GtkBox *box, const char *label, const char *const *labels);
GtkButton *tb_lane_page_add_button (GtkBox *box, const char *label, const char *tooltip);

G_END_DECLS
