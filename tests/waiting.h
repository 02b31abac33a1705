/* Waiting for what the main loop or a thread will do.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Longest wait for anything, s: for a machine that does much else, under sanitizers. */
#define PATIENCE_S 120

static inline void
keep_waiting (gint64 end, const char *where, const char *condition)
{
  if (g_get_monotonic_time () > end)
    g_error ("%s: waited in vain until %s", where, condition);
  if (!g_main_context_iteration (NULL, FALSE))
    g_usleep (1000);
}

/* Lets the main loop run until the condition holds; the test ends when it does not within PATIENCE_S. */
#define WAIT_UNTIL(condition)                                                   \
  G_STMT_START                                                                  \
  {                                                                             \
    gint64 waiting_end = g_get_monotonic_time () + PATIENCE_S * G_USEC_PER_SEC; \
                                                                                \
    while (!(condition))                                                        \
      keep_waiting (waiting_end, G_STRLOC, #condition);                         \
  }                                                                             \
  G_STMT_END

/* Lets the main loop do what it has to do now. */
static inline void
do_pending (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}
