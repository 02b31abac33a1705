/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-handout-command.h"

#include <glib/gi18n-lib.h>

#include "tb-atomic-file.h"
#include "tb-handout.h"
#include "tb-next-balls.h"

static gboolean
check_name (const char *filename, GError **error)
{
  g_autofree char *lower = g_ascii_strdown (filename, -1);

  if (g_str_has_suffix (lower, ".pdf"))
    return TRUE;
  g_set_error (error, TB_HEADLESS_ERROR, TB_EXIT_USAGE, _ ("%s: the name of a handout ends in .pdf."),
               filename);
  return FALSE;
}

static gboolean
write_page (const TbHandout *handout, const char *filename, GError **error)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (GBytes) bytes = tb_handout_pdf (handout, &problem);
  gsize length = 0;
  const void *data = bytes ? g_bytes_get_data (bytes, &length) : NULL;

  if (!bytes)
    g_set_error_literal (error, TB_HEADLESS_ERROR, TB_EXIT_FILE, problem->message);
  else if (!tb_atomic_write (filename, data, length, NULL, &problem))
    g_set_error (error, TB_HEADLESS_ERROR, TB_EXIT_FILE, "%s: %s.", filename, problem->message);
  return problem == NULL;
}

/* The day it is made on, as this locale writes it. */
static char *
today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  return g_date_time_format (now, "%x");
}

static TbNext *
find_next (TbRequest *request, const TbRun *after)
{
  g_autoptr (GArray) balls = tb_next_balls (request->library, after->setup);
  TbWish wish = tb_handout_wish (after);

  return tb_next_find (&(TbNextQuestion){ .start = after->setup,
                                          .wish = &wish,
                                          .balls = (const TbNextBall *) (gconstpointer) balls->data,
                                          .n_balls = balls->len },
                       NULL);
}

static gboolean
make_page (TbRequest *request, TbStudy *study, const char *filename, GError **error)
{
  g_autoptr (TbHandoutFacts) facts = tb_handout_facts_new (study, FALSE, NULL);
  g_autoptr (TbNext) next = find_next (request, facts->run[TB_SIDE_AFTER]);
  g_autoptr (GPtrArray) options = tb_handout_best_options (next);
  const char *bowler = study->side[TB_SIDE_AFTER]->bowler_name;
  g_autofree char *date = today ();
  const TbHandout handout = { .facts = facts,
                              .paper = request->paper,
                              .bowler = bowler ? tb_document_display_name (bowler) : NULL,
                              .date = date,
                              .next = next,
                              .options = options };

  return write_page (&handout, filename, error);
}

gboolean
tb_handout_command (TbRequest *request, const char *filename, GError **error)
{
  TbRun *runs[TB_N_SIDES] = { NULL };
  g_autoptr (TbStudy) study = NULL;
  gboolean done = FALSE;

  if (check_name (filename, error) && tb_request_throw (request, runs, error)
      && (study = tb_request_study (request, error)))
    done = make_page (request, study, filename, error);
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&runs[side], tb_run_unref);
  return done;
}
