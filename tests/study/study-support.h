/* Short ways of making setups for the tests of Why, pocket line and Next.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <string.h>

#include "house-setup.h"

static inline const TbField *
any_field (const char *name)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    if (g_str_equal (field->name, name))
      return field;
  g_assert_not_reached ();
}

/* Sets one field of a setup that the caller owns, in the field's unit. */
static inline void
put (TbSetup **setup, const char *name, double value)
{
  TbSetup *changed = tb_setup_with_field (*setup, any_field (name), value, NULL);

  g_assert_nonnull (changed);
  tb_setup_unref (*setup);
  *setup = changed;
}

/* "speed_mph=19 grit=500": a house setup with these fields changed. */
static inline TbSetup *
setup_with (const char *changes)
{
  TbSetup *setup = house_setup ();
  g_auto (GStrv) words = g_strsplit (changes, " ", -1);

  for (char **word = words; *word; word++)
    {
      char *equals = strchr (*word, '=');

      if (!equals)
        continue;
      *equals = '\0';
      put (&setup, *word, g_ascii_strtod (equals + 1, NULL));
    }
  return setup;
}

/* A generator that gives the same numbers everywhere: uniform in [low, high). */
static inline double
uniform (guint64 *state, double low, double high)
{
  *state += G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);
  guint64 z = *state;

  z = (z ^ z >> 30) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  z = (z ^ z >> 27) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  z ^= z >> 31;
  return low + (high - low) * (double) (z >> 11) / (double) (G_GUINT64_CONSTANT (1) << 53);
}
