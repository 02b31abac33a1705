/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-headless.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <signal.h>

#include "tb-clip-command.h"
#include "tb-constants-command.h"
#include "tb-handout-command.h"
#include "tb-help.h"
#include "tb-lesson-command.h"
#include "tb-numbers.h"
#include "tb-output.h"
#include "tb-path-command.h"
#include "tb-picture-command.h"
#include "tb-request.h"
#include "tb-study-commands.h"
#include "tb-words-command.h"

static gboolean
numbers_command (TbRequest *request, const char *argument, GError **error)
{
  TbRun *runs[TB_N_SIDES] = { NULL };
  gboolean done = FALSE;

  if (tb_request_throw (request, runs, error))
    {
      g_autofree char *text = tb_numbers_text (runs[TB_SIDE_BEFORE], runs[TB_SIDE_AFTER]);
      done = tb_output_write (text, error);
    }
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&runs[side], tb_run_unref);
  return done;
}

static gboolean
help_command (TbRequest *request, const char *argument, GError **error)
{
  g_autofree char *text = tb_help_text ();

  return tb_output_write (text, error);
}

static gboolean
version_command (TbRequest *request, const char *argument, GError **error)
{
  return tb_output_write ("tenboard " PACKAGE_VERSION "\n", error);
}

const TbCommand tb_commands[] = {
  { "--numbers", NULL, N_ ("Print the numbers of both runs and their difference as JSON"), numbers_command },
  { "--picture", "OUT.png|svg|pdf", N_ ("Draw the runs into a file"), tb_picture_command },
  { "--clip", "OUT.webp", N_ ("Draw the throw into a file as it happens"), tb_clip_command },
  { "--path", "OUT.csv|json", N_ ("Write where the balls are, every hundredth of a second, into a file"), tb_path_command },
  { "--say", NULL, N_ ("Print what both throws do and how they differ, to be read out"), tb_say_command },
  { "--why", NULL, N_ ("Print why the two runs differ"), tb_why_command },
  { "--next", "WISH", N_ ("Print what to try after “after”: boards=-3, pocket, angle=5, turn=2, roll=50, forgiving"),
    tb_next_command },
  { "--handout", "OUT.pdf", N_ ("Write the page that a bowler takes home into a file"), tb_handout_command },
  { "--pocket-line", NULL, N_ ("Print the lines that lead to the pocket"), tb_pocket_line_command },
  { "--lesson-check", "FILE|all", N_ ("Throw a lesson, or the built-in ones, and print what each step shows"),
    tb_lesson_check_command },
  { "--lesson-texts", "FILE|all", N_ ("Print a lesson’s texts for translators"), tb_lesson_texts_command },
  { "--words", NULL, N_ ("Print the trade’s words and what they mean as JSON"), tb_words_command },
  { "--constants", NULL, N_ ("Print what the model assumes as JSON"), tb_constants_command },
  { "--help", NULL, N_ ("Print this"), help_command },
  { "--version", NULL, N_ ("Print the version"), version_command },
  { NULL, NULL, NULL, NULL },
};

gboolean
tb_headless_is_asked (int argc, char **argv)
{
  for (int i = 1; i < argc && !g_str_equal (argv[i], "--"); i++)
    if (tb_request_knows (argv[i]))
      return TRUE;
  return FALSE;
}

/* What a person looks at is written as that person writes numbers; all else is read by programs, and has the decimal
 * point whatever the locale. */
static void
set_decimal_mark (const TbCommand *command)
{
  static const char *const pictures[] = { "--picture", "--clip", "--handout", NULL };

  setlocale (LC_NUMERIC, command != NULL && g_strv_contains (pictures, command->option) ? "" : "C");
}

static gboolean
run_all (TbRequest *request, GError **error)
{
  for (guint i = 0; i < request->orders->len; i++)
    {
      const TbOrder *order = &g_array_index (request->orders, TbOrder, i);

      set_decimal_mark (order->command);
      if (!order->command->run (request, order->argument, error))
        return FALSE;
    }
  return TRUE;
}

/* Whatever a name on the command line holds, what is wrong with it is told in one line. */
static void
print_error (char *message)
{
  for (char *at = message; *at; at++)
    if (g_ascii_iscntrl (*at))
      *at = '?';
  g_printerr ("tenboard: %s\n", message);
}

int
tb_headless_run (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TbRequest) request = tb_request_new (argc, argv, &error);

  /* A pipe that nobody reads any more is told of like a full disk, rather than ending us without a word. */
  signal (SIGPIPE, SIG_IGN);
  set_decimal_mark (NULL);
  if (request && run_all (request, &error))
    return TB_EXIT_DONE;
  print_error (error->message);
  return error->code;
}
