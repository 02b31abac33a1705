/* What the parts of the window share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-autosave.h"
#include "tb-clinic.h"
#include "tb-columns.h"
#include "tb-controls-panel.h"
#include "tb-folding-label.h"
#include "tb-lane-panel.h"
#include "tb-results-panel.h"
#include "tb-throw-bar.h"
#include "tb-title-button.h"
#include "tb-window.h"

G_BEGIN_DECLS

struct _TbWindow
{
  GtkApplicationWindow parent_instance;

  /* Template */
  GtkMenuButton *open_button;
  GtkWidget *page_switch;
  GtkWidget *lane_switch;
  TbFoldingLabel *open_label, *save_label, *lessons_label, *clinic_label;
  TbFoldingLabel *keep_label, *swap_label, *put_back_label;
  TbTitleButton *title;
  GtkInfoBar *message_bar;
  GtkLabel *message;
  TbColumns *columns;
  TbControlsPanel *controls;
  TbLanePanel *lane;
  TbResultsPanel *results;
  TbThrowBar *throw_bar;
  GMenu *recent_menu;

  /* Owned */
  TbSession *session;
  TbAutosave *autosave;
  GSettings *settings;
  GtkFileChooserNative *chooser; /* open at the moment; else NULL */
  GtkWidget *tour;               /* the tour's callout; NULL while there is none */
  GtkWidget *tour_bar;           /* what offers it; NULL while there is none */
  GFile *next_file;              /* to be loaded when the question is answered */
  void (*then) (TbWindow *self); /* to be done when the question is answered */
  int answer;                    /* to the question; a GtkResponseType */
  guint answer_idle;
  guint text_size_idle;
  GtkWindow *counter;            /* the ball counter's; NULL while there is none */
  GtkWindow *handout;            /* the handout's window; NULL while there is none */
  GtkWindow *lessons;            /* the lessons'; NULL while there is none */
  TbStudy *next_study;           /* from a lesson, to be opened when the question is answered */
  GtkWindow *lane_play;          /* the lane play window; NULL while there is none */
  GtkWindow *clinic_window;      /* the clinic's; NULL while there is none */
  TbClinic *clinic;              /* its talk, kept when it is closed; NULL before the first */
  TbStudy *clinic_study;         /* what the talk is about; owned */
  GtkWindow *loft_lab;           /* the loft lab's; NULL while there is none */
  gboolean closing;              /* the question about changes has been answered */
};

/* tb-window-actions.c */
void tb_window_class_install_actions (GtkWidgetClass *widget_class);
void tb_window_init_actions (TbWindow *self);
/* Before the window goes. */
void tb_window_remove_actions (TbWindow *self);
/* Makes what can be done agree with the session. */
void tb_window_update_actions (TbWindow *self);

/* tb-window-header.c */
void tb_window_class_bind_header (GtkWidgetClass *widget_class);
/* Chooses between words and pictures by the width of the window and of the words. Not inside a layout. */
void tb_window_fit_header (TbWindow *self);

/* tb-window-tour.c */
void tb_window_class_install_tour_actions (GtkWidgetClass *widget_class);
void tb_window_close_tour (TbWindow *self);
void tb_window_place_tour (TbWindow *self);

/* tb-window-files.c */
void tb_window_class_install_file_actions (GtkWidgetClass *widget_class);
void tb_window_init_files (TbWindow *self);
/* Does something that would lose changes, after asking if there are any. */
void tb_window_ask_then (TbWindow *self, void (*then) (TbWindow *self));

/* tb-window-counter.c */
void tb_window_class_install_counter_actions (GtkWidgetClass *widget_class);
void tb_window_close_counter (TbWindow *self);

/* tb-window-handout.c */
void tb_window_class_install_handout_actions (GtkWidgetClass *widget_class);
void tb_window_close_handout (TbWindow *self);

/* tb-window-lane.c */
void tb_window_class_install_lane_actions (GtkWidgetClass *widget_class);
void tb_window_close_lane_play (TbWindow *self);

/* tb-window-clinic.c */
void tb_window_class_install_clinic_actions (GtkWidgetClass *widget_class);
void tb_window_close_clinic (TbWindow *self);

/* tb-window-loft.c */
void tb_window_class_install_loft_actions (GtkWidgetClass *widget_class);
void tb_window_close_loft_lab (TbWindow *self);

/* tb-window-lessons.c */
void tb_window_class_install_lesson_actions (GtkWidgetClass *widget_class);
void tb_window_close_lessons (TbWindow *self);
/* Begins a lesson from a file in the lessons' window, which tells why if it cannot. */
gboolean tb_window_load_lesson (TbWindow *self, GFile *file);

/* tb-window-export.c */
void tb_window_class_install_export_actions (GtkWidgetClass *widget_class);

/* tb-window.c */
/* Opens the study that a new window has, with the hand that is preferred. */
void tb_window_start_study (TbWindow *self);
/* A sentence on top of the window; NULL takes it away. */
void tb_window_tell (TbWindow *self, const char *sentence);
/* The same for what was asked for and is no warning. */
void tb_window_say (TbWindow *self, const char *words);

G_END_DECLS
