/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-fill.h"

#include <math.h>
#include <stdarg.h>

#define MAX_TEXTS 9
#define MINUS "\xe2\x88\x92"

/* Reads what follows a % and says which text it asks for; the number of characters read is returned, 0 if it
 * is none. */
static int
read_gap (const char *after, guint *next, guint *which)
{
  if (after[0] == 's')
    {
      *which = (*next)++;
      return 1;
    }
  if (after[0] >= '1' && after[0] <= '9' && after[1] == '$' && after[2] == 's')
    {
      *which = (guint) (after[0] - '1');
      return 3;
    }
  return 0;
}

char *
tb_fill (const char *sentence, const char *const *texts)
{
  GString *filled = g_string_new (NULL);
  guint next = 0, which = 0, count = g_strv_length ((char **) texts);

  for (const char *at = sentence; *at; at++)
    {
      int length = *at == '%' ? read_gap (at + 1, &next, &which) : 0;

      if (length > 0 && which < count)
        g_string_append (filled, texts[which]);
      else if (length == 0)
        g_string_append_c (filled, *at);
      at += length + (length == 0 && at[0] == '%' && at[1] == '%' ? 1 : 0);
    }
  return g_string_free (filled, FALSE);
}

char *
tb_fill_with (const char *sentence, ...)
{
  const char *texts[MAX_TEXTS + 1] = { NULL };
  va_list list;

  va_start (list, sentence);
  for (int i = 0; i < MAX_TEXTS; i++)
    if (!(texts[i] = va_arg (list, const char *)))
      break;
  va_end (list);
  return tb_fill (sentence, texts);
}

static char *
number_with_sign (double value, int digits, const char *plus)
{
  g_autofree char *size = g_strdup_printf ("%.*f", digits, fabs (value));
  gboolean nothing = strtod (size, NULL) == 0;

  if (nothing)
    return g_steal_pointer (&size);
  return g_strconcat (value < 0 ? MINUS : plus, size, NULL);
}

char *
tb_number_text (double value, int digits)
{
  return number_with_sign (value, digits, "");
}

char *
tb_signed_text (double value, int digits)
{
  return number_with_sign (value, digits, "+");
}

int
tb_digits_apart (double one, double other, int digits, int most)
{
  for (; digits < most; digits++)
    {
      g_autofree char *a = tb_number_text (one, digits), *b = tb_number_text (other, digits);

      if (!g_str_equal (a, b))
        break;
    }
  return digits;
}
