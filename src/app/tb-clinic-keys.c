/* What the keys of a keyboard and of a presenter's remote do in the clinic.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic.h"

#include <gdk/gdk.h>

static const struct
{
  guint key;
  TbClinicAction action;
} keys[] = {
  { GDK_KEY_Page_Down, TB_CLINIC_ONWARD },
  { GDK_KEY_KP_Page_Down, TB_CLINIC_ONWARD },
  { GDK_KEY_Right, TB_CLINIC_ONWARD },
  { GDK_KEY_space, TB_CLINIC_ONWARD },
  { GDK_KEY_Return, TB_CLINIC_ONWARD },
  { GDK_KEY_KP_Enter, TB_CLINIC_ONWARD },
  { GDK_KEY_Page_Up, TB_CLINIC_BACK },
  { GDK_KEY_KP_Page_Up, TB_CLINIC_BACK },
  { GDK_KEY_Left, TB_CLINIC_BACK },
  { GDK_KEY_Home, TB_CLINIC_FIRST },
  { GDK_KEY_End, TB_CLINIC_LAST },
  { GDK_KEY_F5, TB_CLINIC_RESTART },
  { GDK_KEY_b, TB_CLINIC_BLANK },
  { GDK_KEY_period, TB_CLINIC_BLANK },
  { GDK_KEY_Up, TB_CLINIC_UP },
  { GDK_KEY_Down, TB_CLINIC_DOWN },
  { GDK_KEY_f, TB_CLINIC_FREEZE },
  { GDK_KEY_k, TB_CLINIC_FREEZE },
  { GDK_KEY_l, TB_CLINIC_FRAME_ON },
  { GDK_KEY_j, TB_CLINIC_FRAME_BACK },
  { GDK_KEY_r, TB_CLINIC_REPLAY },
  { GDK_KEY_o, TB_CLINIC_OVERLAY },
  { GDK_KEY_BackSpace, TB_CLINIC_TAKE_BACK },
  { GDK_KEY_Escape, TB_CLINIC_LEAVE },
  { GDK_KEY_h, TB_CLINIC_SHOW_BAR },
  { GDK_KEY_F1, TB_CLINIC_SHOW_BAR },
  { GDK_KEY_n, TB_CLINIC_PRESENTER },
  { GDK_KEY_F11, TB_CLINIC_FULLSCREEN },
};

/* Which digit of the votes a key is, from 0; −1 for none. */
static int
digit_of (guint key)
{
  if (key >= GDK_KEY_1 && key < GDK_KEY_1 + TB_TALK_MAX_CHOICES)
    return (int) (key - GDK_KEY_1);
  if (key >= GDK_KEY_KP_1 && key < GDK_KEY_KP_1 + TB_TALK_MAX_CHOICES)
    return (int) (key - GDK_KEY_KP_1);
  return -1;
}

/* A digit that needs Shift on its keyboard still votes. */
static TbClinicAction
vote_for_key (guint keyval, guint plain, guint state)
{
  int digit = digit_of (keyval), under = digit_of (plain);

  if (digit >= 0)
    return (TbClinicAction) (TB_CLINIC_VOTE_FIRST + digit);
  if (under >= 0 && (state & GDK_SHIFT_MASK) != 0)
    return (TbClinicAction) (TB_CLINIC_UNVOTE_FIRST + under);
  return TB_CLINIC_NOTHING;
}

TbClinicAction
tb_clinic_action_for_key (guint keyval, guint plain, guint state)
{
  guint lower = gdk_keyval_to_lower (keyval);

  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK | GDK_META_MASK)) != 0)
    return TB_CLINIC_NOTHING;
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    if (keys[i].key == lower)
      return keys[i].action;
  return vote_for_key (keyval, plain, state);
}
