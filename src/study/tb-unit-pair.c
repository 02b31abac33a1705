/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-unit-pair.h"

#include <glib/gi18n-lib.h>
#include <string.h>
#include "tb-units.h"

#define CM_PER_INCH (TB_METRES_PER_INCH * 100.0)
#define KMH_PER_MPH (TB_METRES_PER_SECOND_PER_MPH * 3.6)
#define GRAMS_PER_OUNCE (TB_KILOGRAMS_PER_POUND / TB_OUNCES_PER_POUND * 1000.0)

/* Pounds stay: a ball is sold by them everywhere. */
static const TbUnitPair unit_pairs[] = {
  { N_ ("mph"), N_ ("km/h"), KMH_PER_MPH, 0 }, { N_ ("ft"), N_ ("m"), TB_METRES_PER_FOOT, -1 },
  { N_ ("in"), N_ ("cm"), CM_PER_INCH, 0 },    { N_ ("µin"), N_ ("µm"), TB_METRES_PER_INCH, -2 },
  { N_ ("oz"), N_ ("g"), GRAMS_PER_OUNCE, 1 },
};

const TbUnitPair *
tb_unit_pair (const char *imperial)
{
  for (gsize i = 0; i < G_N_ELEMENTS (unit_pairs); i++)
    if (strcmp (unit_pairs[i].imperial, imperial) == 0)
      return &unit_pairs[i];
  return NULL;
}

TbToldUnit
tb_told_unit (const char *imperial, int digits, gboolean metric)
{
  const TbUnitPair *pair = metric ? tb_unit_pair (imperial) : NULL;

  /* gettext() gives a translation's header for an empty text. */
  if (imperial[0] == '\0')
    return (TbToldUnit){ "", 1, digits };
  if (!pair)
    return (TbToldUnit){ _ (imperial), 1, digits };
  return (TbToldUnit){ _ (pair->metric), pair->factor, MAX (0, digits - pair->fewer_digits) };
}
