/* How a clinic's throw is shown: thrown, frozen, frame by frame, or from mark to mark.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-session.h"

G_BEGIN_DECLS

typedef struct TbClinicThrow
{
  TbSession *session; /* borrowed: what the throw is, its time and its rate */
  gboolean thrown;    /* since the slide of the throw was come to */
  gboolean still;     /* nothing is to move by itself: a key takes the throw from mark to mark */
} TbClinicThrow;

/* All of these are FALSE where there is nothing to be done. */

/* What onward does before it goes to the next slide: throws, goes to the throw's end, or to the next mark
 * (arrows, turn, roll, pins). */
gboolean tb_clinic_throw_onward (TbClinicThrow *self);
/* From the start. */
gboolean tb_clinic_throw_again (TbClinicThrow *self);
/* Stops time, or lets it go on. */
gboolean tb_clinic_throw_freeze (TbClinicThrow *self);
/* That many frames of ordinary video on, or back. */
gboolean tb_clinic_throw_step (TbClinicThrow *self, int frames);
/* To the next rate of time that is slower, or, with -1, faster. */
gboolean tb_clinic_throw_slower (TbClinicThrow *self, int steps);

G_END_DECLS
