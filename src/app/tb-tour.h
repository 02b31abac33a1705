/* A tour of the window in eight stops: a callout that points at what it talks about, waits until that is done, and can be
 * left at any time.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>
#include "tb-session.h"

G_BEGIN_DECLS

/* What a stop points at. */
typedef enum TbTourTarget
{
  TB_TOUR_THROW,
  TB_TOUR_LANE,
  TB_TOUR_SPEED,
  TB_TOUR_COMPARE,
  TB_TOUR_WHY,
  TB_TOUR_NEXT,
  TB_TOUR_KEEP,
  TB_TOUR_HELP,
  TB_TOUR_N_STOPS
} TbTourTarget;

/* What the tour is given through: whoever has the controls. */
typedef struct TbTourStage
{
  /* The control, brought where it can be seen. Borrowed. */
  GtkWidget *(*show) (gpointer owner, TbTourTarget target);
  /* The page of the results that is seen: "compare", "why", "next". */
  const char *(*page) (gpointer owner);
  gpointer owner;
} TbTourStage;

#define TB_TYPE_TOUR (tb_tour_get_type ())
G_DECLARE_FINAL_TYPE (TbTour, tb_tour, TB, TOUR, GtkPopover)

/* Signal "ended": skipped, or gone through; the callout can be taken away. */

/* A callout in a window. The owner of the stage and the session outlive it. */
TbTour *tb_tour_new (GtkWindow *window, TbSession *session, const TbTourStage *stage);
void tb_tour_start (TbTour *self);
/* The results' page is another: what a stop waited for may have been done. */
void tb_tour_look (TbTour *self);
/* Points at its control where that is now; for when the window has been laid out anew. */
void tb_tour_place (TbTour *self);
void tb_tour_next (TbTour *self);
void tb_tour_skip (TbTour *self);

/* TB_TOUR_N_STOPS before it is started and after it ended. */
TbTourTarget tb_tour_get_stop (TbTour *self);
/* Whether what the stop asks for has been done. */
gboolean tb_tour_is_done (TbTour *self);
/* "2 of 8", and what the stop says. Borrowed. */
const char *tb_tour_get_progress (TbTour *self);
const char *tb_tour_get_text (TbTour *self);

G_END_DECLS
