/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-wish.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>
#include "tb-fill.h"

static const TbWishInfo infos[TB_N_WISHES] = {
  { "boards", N_ ("Boards more or less"), N_ ("board"), -20, 20, 0.5, -3, FALSE },
  { "pocket", N_ ("Reach the pocket"), N_ ("board"), 0, 0, 0, 0, FALSE },
  { "angle", N_ ("Angle at the pins"), N_ ("°"), -2, 12, 0.1, 5, TRUE },
  { "turn", N_ ("Turn later or earlier"), N_ ("ft"), -20, 20, 0.5, 2, TRUE },
  { "roll", N_ ("Roll before the pins, from"), N_ ("ft"), 20, 60, 0.5, 50, TRUE },
  { "forgiving", N_ ("As it is, but more forgiving"), N_ ("board"), 0, 0, 0, 0, TRUE },
};

const TbWishInfo *
tb_wish_info (TbWishKind kind)
{
  return &infos[kind];
}

TbWish
tb_wish_default (TbWishKind kind)
{
  return (TbWish){ kind, infos[kind].standard, infos[kind].can_reaim };
}

gboolean
tb_wish_reaims (const TbWish *wish)
{
  return wish->reaim && infos[wish->kind].can_reaim;
}

static char *
all_names (void)
{
  GString *names = g_string_new (NULL);

  for (int kind = 0; kind < TB_N_WISHES; kind++)
    {
      const TbWishInfo *info = &infos[kind];

      g_string_append (names, kind > 0 ? ", " : "");
      g_string_append (names, info->name);
      if (info->min < info->max)
        g_string_append_printf (names, "=%g", info->standard);
    }
  return g_string_free (names, FALSE);
}

static gboolean
read_amount (const TbWishInfo *info, const char *text, double *amount, char **problem)
{
  char *end = NULL;
  double number = g_ascii_strtod (text, &end);
  g_autofree char *low = tb_number_text (info->min, 0), *high = tb_number_text (info->max, 0);

  if (end != text && *end == '\0' && number >= info->min && number <= info->max)
    {
      *amount = number;
      return TRUE;
    }
  *problem = tb_fill_with (_ ("The wish “%1$s” takes a number from %2$s to %3$s, not “%4$s”."), info->name,
                           low, high, text, NULL);
  return FALSE;
}

gboolean
tb_wish_equal (const TbWish *a, const TbWish *b)
{
  return a->kind == b->kind && a->amount == b->amount && a->reaim == b->reaim;
}

gboolean
tb_wish_parse (const char *text, TbWish *wish, char **problem)
{
  g_autofree char *names = NULL;
  gsize length = strcspn (text, "=");

  for (int kind = 0; kind < TB_N_WISHES; kind++)
    {
      const TbWishInfo *info = &infos[kind];

      if (strlen (info->name) != length || strncmp (text, info->name, length) != 0)
        continue;
      *wish = tb_wish_default ((TbWishKind) kind);
      if (text[length] == '\0')
        return TRUE;
      if (info->min < info->max)
        return read_amount (info, text + length + 1, &wish->amount, problem);
    }
  names = all_names ();
  *problem = tb_fill_with (_ ("“%1$s” is no wish; one of these is: %2$s."), text, names, NULL);
  return FALSE;
}

static double
room_of (TbThrower *thrower, const TbShot *shot)
{
  double out, in;

  tb_pocket_room (thrower, shot, &out, &in);
  return out + in;
}

double
tb_wish_value (const TbWish *wish, TbThrower *thrower, const TbShot *shot, const TbMeasures *measures)
{
  switch (wish->kind)
    {
    case TB_WISH_ANGLE:
      return tb_deg_from_radians (measures->angle_at_pins);
    case TB_WISH_TURN:
      return tb_breakpoint_ft_held (measures);
    case TB_WISH_ROLL:
      return tb_roll_start_ft_held (measures);
    case TB_WISH_FORGIVING:
      return isnan (measures->x_at_pins) ? NAN : room_of (thrower, shot);
    default:
      return tb_board_from_x (measures->x_at_pins);
    }
}

double
tb_wish_target (const TbWish *wish, const TbAssumed *assumed, double now)
{
  switch (wish->kind)
    {
    case TB_WISH_BOARDS:
    case TB_WISH_TURN:
      return now + wish->amount;
    case TB_WISH_POCKET:
      return tb_pocket_middle (assumed);
    case TB_WISH_FORGIVING:
      return INFINITY;
    default:
      return wish->amount;
    }
}
