/* What the parts of the session share: the object (tb-session.c), its changes and the way back
 * (tb-session-edit.c), and the moment that is looked at (tb-session-time.c).
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-history.h"
#include "tb-session.h"

G_BEGIN_DECLS

/* Slowest and fastest time. */
#define TB_SESSION_MIN_RATE 0.01
#define TB_SESSION_MAX_RATE 1.0

struct _TbSession
{
  GObject parent_instance;

  TbLibrary *library;
  TbStudy *study;
  TbRun *run[TB_N_SIDES];
  TbHistory *history;
  TbStudy *saved; /* what the file holds, or what a new study began as */
  GFile *file;

  double time;
  double rate;
  gboolean playing;
  TbUnits units;
  gboolean reaim;
  TbWish wish;
  TbSetup *wished_from; /* NULL while nothing was wished */

  /* What was last told by notify. */
  gboolean told_modified, told_can_undo, told_can_redo;
};

typedef enum TbSessionProperty
{
  TB_SESSION_PROP_0,
  TB_SESSION_PROP_TITLE,
  TB_SESSION_PROP_MODIFIED,
  TB_SESSION_PROP_CAN_UNDO,
  TB_SESSION_PROP_CAN_REDO,
  TB_SESSION_PROP_FILE,
  TB_SESSION_PROP_TIME,
  TB_SESSION_PROP_PLAYING,
  TB_SESSION_PROP_RATE,
  TB_SESSION_PROP_UNITS,
  TB_SESSION_PROP_REAIM,
  TB_SESSION_N_PROPS
} TbSessionProperty;

void tb_session_notify (TbSession *self, TbSessionProperty property);
/* Shows another study, of which there is nothing to undo yet; takes it over. */
void tb_session_show (TbSession *self, TbStudy *study);
/* Makes a change that can be undone; takes the study over. Changes with one key that follow each other
 * quickly, or lie in one gesture, are undone together; key NULL never. */
void tb_session_change (TbSession *self, TbStudy *study, const char *key);

G_END_DECLS
