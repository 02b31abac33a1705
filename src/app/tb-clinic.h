/* A talk in front of a room: which slide is shown, what the room has voted, what a remote's key does.
 *
 * No widgets. The throw is that of a session of the clinic's own, so nothing here touches the study in the
 * window.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-next.h"
#include "tb-session.h"
#include "tb-talk.h"
#include "tb-why.h"

G_BEGIN_DECLS

typedef enum TbClinicSlide
{
  TB_CLINIC_START,    /* which talk */
  TB_CLINIC_QUESTION, /* what was changed */
  TB_CLINIC_VOTE,
  TB_CLINIC_THROW,
  TB_CLINIC_NUMBERS,
  TB_CLINIC_WHY,
  TB_CLINIC_TRY /* of a study only */
} TbClinicSlide;

typedef enum TbClinicAction
{
  TB_CLINIC_NOTHING,
  TB_CLINIC_ONWARD, /* the next thing: throw, to the throw's end, next slide */
  TB_CLINIC_BACK,
  TB_CLINIC_FIRST,
  TB_CLINIC_LAST,
  TB_CLINIC_RESTART, /* the talk's first slide, from wherever it is */
  TB_CLINIC_BLANK,
  TB_CLINIC_UP,   /* choose the one above; faster */
  TB_CLINIC_DOWN, /* choose the one below; slower */
  TB_CLINIC_FREEZE,
  TB_CLINIC_FRAME_ON,
  TB_CLINIC_FRAME_BACK,
  TB_CLINIC_REPLAY,
  TB_CLINIC_OVERLAY,
  TB_CLINIC_TAKE_BACK, /* the last vote */
  TB_CLINIC_SHOW_BAR,
  TB_CLINIC_PRESENTER,
  TB_CLINIC_FULLSCREEN,
  TB_CLINIC_LEAVE,
  TB_CLINIC_VOTE_FIRST, /* and the next five: a vote for that choice */
  TB_CLINIC_UNVOTE_FIRST = TB_CLINIC_VOTE_FIRST + TB_TALK_MAX_CHOICES, /* likewise: one taken back */
  TB_CLINIC_N_ACTIONS = TB_CLINIC_UNVOTE_FIRST + TB_TALK_MAX_CHOICES
} TbClinicAction;

/* What a key does. keyval is what it types, plain what it types without Shift; state are GDK's modifiers. */
TbClinicAction tb_clinic_action_for_key (guint keyval, guint plain, guint state);

#define TB_TYPE_CLINIC (tb_clinic_get_type ())
G_DECLARE_FINAL_TYPE (TbClinic, tb_clinic, TB, CLINIC, GObject)

/* Signal "changed": the slide, a vote, blankness, what is known of the reasons, or how the throw is shown. */

/* The talks are this study and the built-in lessons. */
TbClinic *tb_clinic_new (TbLibrary *library, TbStudy *study, TbUnits units);
/* Borrowed: what the throw is, its time and its rate. */
TbSession *tb_clinic_get_session (TbClinic *self);

/* Does it if it is one of the clinic's own; FALSE if there is nothing to be done here. While the picture is
 * blank any of them only brings it back. */
gboolean tb_clinic_do (TbClinic *self, TbClinicAction action);

/* The talks to choose from: the study first. Borrowed. */
guint tb_clinic_get_n_talks (TbClinic *self);
const char *tb_clinic_get_talk_name (TbClinic *self, guint talk);
const char *tb_clinic_get_talk_note (TbClinic *self, guint talk); /* NULL for none */
guint tb_clinic_get_chosen (TbClinic *self);
void tb_clinic_choose (TbClinic *self, guint talk);
/* What went wrong with the talk that was wanted; NULL for nothing. Borrowed. */
const char *tb_clinic_get_problem (TbClinic *self);
/* A talk is being prepared. */
gboolean tb_clinic_is_preparing (TbClinic *self);

/* Place of the slide in the talk, 0 for the first, and how many there are; both 0 at the start. */
guint tb_clinic_get_place (TbClinic *self);
guint tb_clinic_get_n_slides (TbClinic *self);
TbClinicSlide tb_clinic_get_slide (TbClinic *self);
/* The kind of the slide after it. TB_CLINIC_START where it is the last. */
TbClinicSlide tb_clinic_get_next_slide (TbClinic *self);
/* The step that the slide is of; NULL at the start. Borrowed, until the talk changes. */
const TbTalkStep *tb_clinic_get_step (TbClinic *self);
/* The step after this slide's: the same one or the next. NULL at the end. */
const TbTalkStep *tb_clinic_get_next_step (TbClinic *self);
/* Borrowed; NULL at the start. */
TbTalk *tb_clinic_get_talk (TbClinic *self);

/* Votes of the slide's step. */
guint tb_clinic_get_votes (TbClinic *self, guint choice);
guint tb_clinic_get_total (TbClinic *self);
/* One more, or one less, for a choice. FALSE where there is none to be given or taken. */
gboolean tb_clinic_vote (TbClinic *self, guint choice, int more);
void tb_clinic_clear_votes (TbClinic *self);

gboolean tb_clinic_is_blank (TbClinic *self);
/* Both throws on one lane, rather than each on its own. */
gboolean tb_clinic_is_overlaid (TbClinic *self);
/* Nothing is to move by itself: a throw goes from mark to mark (arrows, turn, roll, pins) by key. */
void tb_clinic_set_still (TbClinic *self, gboolean still);
gboolean tb_clinic_is_still (TbClinic *self);

/* What a study's talk tries to reach, and seen from which throw: what was wished in the window. Without it,
 * what the handout tries (tb_handout_wish()). */
void tb_clinic_set_wish (TbClinic *self, const TbWish *wish, TbSetup *from);
/* Of a study's talk, once they are known; else NULL. Borrowed. */
TbWhy *tb_clinic_get_why (TbClinic *self);
TbNext *tb_clinic_get_next (TbClinic *self);
/* Whether either is still being worked out. */
gboolean tb_clinic_is_busy (TbClinic *self);

G_END_DECLS
