/* The words and numbers of the clinic's present slide, for the picture, for the presenter and for a screen
 * reader.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-clinic.h"
#include "tb-slide-view.h"

G_BEGIN_DECLS

typedef struct TbClinicPage
{
  TbSlide slide; /* its theme is the caller's to set */
  TbSlideItem items[TB_SLIDE_MAX_ITEMS];
  GPtrArray *texts; /* owned by the page, borrowed by the slide */
} TbClinicPage;

/* Of a slide of the throw it has only the headline. */
TbClinicPage *tb_clinic_page_new (TbClinic *clinic);
void tb_clinic_page_free (TbClinicPage *page);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TbClinicPage, tb_clinic_page_free)
/* All of it in words; free it. */
char *tb_clinic_page_sentences (const TbClinicPage *page);

/* What a kind of slide is called: "The vote". Borrowed. */
const char *tb_clinic_slide_name (TbClinicSlide slide);
/* How the room did: "12 of 20 had it right."; "" where nobody voted or nothing can be told; free it. */
char *tb_clinic_room_verdict (TbClinic *clinic);
/* The right choice; NULL where the throws do not tell. Borrowed. */
const char *tb_clinic_answer (const TbTalkStep *step);
/* What can be done with the keys just now, for the bar; free it. */
char *tb_clinic_hint (TbClinic *clinic);
/* Time's rate: "¼ of the speed"; "" for the true one. Borrowed. */
const char *tb_clinic_rate_words (double rate);

G_END_DECLS
