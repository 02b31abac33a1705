/* What the parts of the clinic share.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-ballot.h"
#include "tb-clinic-throw.h"
#include "tb-clinic.h"

G_BEGIN_DECLS

struct _TbClinic
{
  GObject parent_instance;

  TbSession *session;
  TbStudy *study;
  GPtrArray *lessons; /* of TbLesson */
  guint chosen;       /* of the talks; 0 is the study */
  TbTalk *talk;       /* NULL at the start */
  guint talk_is;      /* which of the talks it is */
  guint place;
  gboolean started;    /* past the start slide */
  GArray *ballots;     /* of TbBallot, one a step */
  TbClinicThrow shown; /* the throw of the slide */
  gboolean blank, overlaid;
  char *problem;

  GCancellable *preparing; /* a lesson's talk; else NULL */
  GCancellable *reasons;   /* of the study's why and next; NULL before they are asked for */
  guint n_reasons;         /* still to come */
  TbWish wish;
  TbSetup *wished_from; /* NULL: nothing was wished */
  TbWhy *why;
  TbNext *next;
};

/* Says that something is to be shown anew. */
void tb_clinic_changed (TbClinic *self);
/* The votes of the slide's step; NULL at the start. */
TbBallot *tb_clinic_ballot (TbClinic *self);
/* FALSE where the talk, which there is, has no such slide. */
gboolean tb_clinic_show_place (TbClinic *self, guint place);
/* Begins the chosen talk; FALSE while one is being prepared. The talk that was shown goes on from its first
 * slide, with its votes. */
gboolean tb_clinic_start (TbClinic *self);
/* Begins to work out why and next of the study, unless that was done before. */
void tb_clinic_ask_reasons (TbClinic *self);

G_END_DECLS
