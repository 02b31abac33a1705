/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-decimal.h"

#include <math.h>
#include <string.h>

/* Digits with which every double can be told from its neighbours. */
#define MAX_DIGITS 17
/* How far from the way back the right number is looked for, in steps of the last bit: a unit that is an
 * offset from something (a board is one from the middle of the lane) loses a few. */
#define NEIGHBOURS 24

static double
same (double number)
{
  return number;
}

/* Whether `number` with so many digits reads back as `si`. */
static gboolean
try_digits (double number, int digits, double si, double (*to_si) (double), char *buffer)
{
  char format[] = "%.00g";

  format[2] = (char) ('0' + digits / 10);
  format[3] = (char) ('0' + digits % 10);
  g_ascii_formatd (buffer, TB_DECIMAL_SIZE, format, number);
  return to_si (g_ascii_strtod (buffer, NULL)) == si;
}

/* "300" rather than "3e+02": whole numbers of so many digits stand as they are. */
static void
write_out (char *buffer)
{
  double whole = g_ascii_strtod (buffer, NULL);

  if (strchr (buffer, 'e') && fabs (whole) >= 1.0 && fabs (whole) < 1e15)
    g_ascii_formatd (buffer, TB_DECIMAL_SIZE, "%.15g", whole);
}

static gboolean
try_number (double number, double si, double (*to_si) (double), char *buffer)
{
  for (int digits = 1; digits <= MAX_DIGITS; digits++)
    if (try_digits (number, digits, si, to_si, buffer))
      {
        write_out (buffer);
        return TRUE;
      }
  return FALSE;
}

static gboolean
try_neighbours (double number, double si, double (*to_si) (double), char *buffer)
{
  double up = number, down = number;

  for (int i = 0; i < NEIGHBOURS; i++)
    {
      up = nextafter (up, HUGE_VAL);
      down = nextafter (down, -HUGE_VAL);
      if (try_digits (up, MAX_DIGITS, si, to_si, buffer) || try_digits (down, MAX_DIGITS, si, to_si, buffer))
        return TRUE;
    }
  return FALSE;
}

gboolean
tb_decimal_format_si (double si,
                      double (*to_si) (double),
                      double (*from_si) (double),
                      char buffer[TB_DECIMAL_SIZE])
{
  double number = from_si (si) + 0.0; /* never "-0" */

  if (try_number (number, si, to_si, buffer) || try_neighbours (number, si, to_si, buffer))
    return TRUE;
  try_digits (number, MAX_DIGITS, si, to_si, buffer);
  return FALSE;
}

const char *
tb_decimal_format (double number, char buffer[TB_DECIMAL_SIZE])
{
  tb_decimal_format_si (number, same, same, buffer);
  return buffer;
}

gboolean
tb_decimal_parse (const char *text, double *number)
{
  char *end = NULL;
  double value;

  /* strtod() would also take words, hexadecimal numbers and space. */
  if (text[0] == '\0' || text[strspn (text, "0123456789+-.eE")] != '\0')
    return FALSE;
  value = g_ascii_strtod (text, &end);
  if (*end != '\0' || !isfinite (value))
    return FALSE;
  *number = value;
  return TRUE;
}
