/* What one window is about: a study, its two runs, the moment that is looked at, and the way back.
 *
 * The study and the runs are immutable snapshots; a change makes new ones and keeps the old ones for undo.
 * Both runs are thrown at once when a setup changes (some tens of microseconds). Widgets know the session and
 * nothing of each other.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>
#include "tb-library.h"
#include "tb-wish.h"

G_BEGIN_DECLS

typedef enum TbUnits
{
  TB_UNITS_IMPERIAL,
  TB_UNITS_METRIC
} TbUnits;

#define TB_TYPE_SESSION (tb_session_get_type ())
G_DECLARE_FINAL_TYPE (TbSession, tb_session, TB, SESSION, GObject)

/* Properties, all with notify: "title" (of the study), "modified", "can-undo", "can-redo", "file", "time" (s
 * since release), "playing", "rate" (of time, 1 is true), "units" (TbUnits), "reaim" (every change of "after"
 * is judged on its own pocket line: the target follows, the laydown stays).
 *
 * Signals: "changed" when the study, and so perhaps a run, is another; "opened" when another document took
 * the place of the one before; "wished" when something else is asked of the next throw. */

/* Begins with the library's own study. */
TbSession *tb_session_new (TbLibrary *library);
/* Borrowed. */
TbLibrary *tb_session_get_library (TbSession *self);

/* Puts another document in place of the present one. There is nothing to undo afterwards. file may be NULL.
 */
void tb_session_open (TbSession *self, TbStudy *study, GFile *file);
/* The study as it stands is what is in the file. */
void tb_session_mark_saved (TbSession *self, GFile *file);

/* All borrowed, never NULL, until the next change. */
TbStudy *tb_session_get_study (TbSession *self);
TbSetup *tb_session_get_setup (TbSession *self, TbSide side);
TbRun *tb_session_get_run (TbSession *self, TbSide side);
/* The path to draw; NULL where the run has none. */
const TbPath *tb_session_get_path (TbSession *self, TbSide side);

/* A field of "after", in the field's unit. On a value that will not do nothing changes and *problem says what
 * is wrong. Changes of one field that follow each other quickly, or lie in one gesture, are undone together.
 */
gboolean tb_session_set_field (TbSession *self, const TbField *field, double value, TbProblem *problem);
double tb_session_get_field (TbSession *self, TbSide side, const TbField *field);
/* Takes a bowler, ball or pattern of the library for "after". */
gboolean tb_session_choose (TbSession *self, TbDocumentKind kind, const char *id, GError **error);
/* Another "after", as one step. */
void tb_session_set_after (TbSession *self, TbSetup *setup);
/* The same; changes with one key that follow each other quickly, or lie in one gesture, are undone together.
 */
void tb_session_set_after_as (TbSession *self, TbSetup *setup, const char *key);
/* Another study altogether, as one step; the file stays. */
void tb_session_set_study (TbSession *self, TbStudy *study);
void tb_session_set_texts (TbSession *self, const char *title, const char *notes);

/* A press of the pointer and what follows until it is let go: one step to undo. */
void tb_session_begin_gesture (TbSession *self);
void tb_session_end_gesture (TbSession *self);

/* "Before" becomes what "after" is; they change places; "after" becomes what "before" is. */
void tb_session_keep_as_before (TbSession *self);
void tb_session_swap (TbSession *self);
void tb_session_put_back (TbSession *self);

gboolean tb_session_can_undo (TbSession *self);
gboolean tb_session_can_redo (TbSession *self);
void tb_session_undo (TbSession *self);
void tb_session_redo (TbSession *self);

/* Whether anything would be lost by closing. */
gboolean tb_session_get_modified (TbSession *self);
/* Borrowed; NULL where the study has no file yet. */
GFile *tb_session_get_file (TbSession *self);

/* The moment looked at, s since release, held to 0 … duration. */
double tb_session_get_time (TbSession *self);
void tb_session_set_time (TbSession *self, double time);
/* Of the longer run, s. */
double tb_session_get_duration (TbSession *self);
gboolean tb_session_get_playing (TbSession *self);
void tb_session_set_playing (TbSession *self, gboolean playing);
double tb_session_get_rate (TbSession *self);
void tb_session_set_rate (TbSession *self, double rate);
/* From the release on; from here on, or from the release if the throw is over. */
void tb_session_throw (TbSession *self);
void tb_session_resume (TbSession *self);
/* Lets the throw go on by seconds of the clock on the wall. */
void tb_session_advance (TbSession *self, double seconds);

/* Setting it moves the target of "after" to the pocket, as one step; from then on every change takes the
 * target along, where there is a target that leads to the pocket. */
gboolean tb_session_get_reaim (TbSession *self);
void tb_session_set_reaim (TbSession *self, gboolean reaim);

/* What was asked of the next throw last, and seen from which throw; the latter is NULL while nothing was.
 * Borrowed. It is no part of the study. */
TbSetup *tb_session_get_wish (TbSession *self, TbWish *wish);
void tb_session_set_wish (TbSession *self, const TbWish *wish, TbSetup *from);

TbUnits tb_session_get_units (TbSession *self);
void tb_session_set_units (TbSession *self, TbUnits units);

G_END_DECLS
