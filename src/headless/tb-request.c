/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-request.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "tb-assign.h"
#include "tb-clip.h"

#define DEFAULT_WIDTH 1280
#define DEFAULT_HEIGHT 800
/* Nothing can be seen in a smaller picture. */
#define MIN_SIDE 16
/* Five digits of each side are more than any picture has. */
#define MAX_SIZE_TEXT 11

G_DEFINE_QUARK (tb - headless - error - quark, tb_headless_error)

static gboolean take_change (TbRequest *request, const char *value, GError **error);
static gboolean take_view (TbRequest *request, const char *value, GError **error);
static gboolean take_size (TbRequest *request, const char *value, GError **error);
static gboolean take_rate (TbRequest *request, const char *value, GError **error);
static gboolean take_fps (TbRequest *request, const char *value, GError **error);
static gboolean take_format (TbRequest *request, const char *value, GError **error);
static gboolean take_stretch (TbRequest *request, const char *value, GError **error);
static gboolean take_line (TbRequest *request, const char *value, GError **error);
static gboolean take_paper (TbRequest *request, const char *value, GError **error);

const TbOption tb_request_options[] = {
  { "--set", "KEY=VALUE", N_ ("Change a field first; may be given again, the last one wins") },
  { "--view", N_ ("NAME"),
    N_ ("What the picture or clip shows: lane (as the shape suits), plan, sideways, approach, ball, ball-side, loft, "
        "both (lane)") },
  { "--size", N_ ("WIDTHxHEIGHT"), N_ ("Size of the picture or clip in pixels (1280x800)") },
  { "--rate", "1|0.5|0.25", N_ ("How fast time passes in a clip (1)") },
  { "--fps", N_ ("NUMBER"), N_ ("Pictures a second in a clip, 5 to 60 (25)") },
  { "--format", "json|text", N_ ("How --why, --next and --pocket-line answer (json)") },
  { "--stretch", N_ ("FEET"), N_ ("Length of the stretches of lane that --why tells apart (20)") },
  { "--line", "same|pocket", N_ ("Whether --next judges a change on the same line or on its own pocket line") },
  { "--paper", "a4|letter", N_ ("Size of the handout (a4)") },
  { NULL, NULL, NULL },
};
/* What each of them does. */
static gboolean (*const take_option[]) (TbRequest *request, const char *value, GError **error)
    = { take_change, take_view, take_size, take_rate, take_fps, take_format, take_stretch, take_line, take_paper };

static gboolean
fail_usage (GError **error, const char *format, const char *text)
{
  g_autofree char *shown = tb_quotable (text);
  g_autoptr (GString) sentence = g_string_new (format);

  g_string_replace (sentence, "%s", shown, 1);
  g_set_error_literal (error, TB_HEADLESS_ERROR, TB_EXIT_USAGE, sentence->str);
  return FALSE;
}

static gboolean
take_change (TbRequest *request, const char *value, GError **error)
{
  g_ptr_array_add (request->changes, (gpointer) value);
  return TRUE;
}

static gboolean
parse_side (const char *text, int *side)
{
  guint64 number;

  if (!g_ascii_string_to_unsigned (text, 10, MIN_SIDE, G_MAXINT, &number, NULL))
    return FALSE;
  *side = (int) number;
  return TRUE;
}

static gboolean
take_size (TbRequest *request, const char *value, GError **error)
{
  g_auto (GStrv) sides = g_strsplit (strlen (value) <= MAX_SIZE_TEXT ? value : "", "x", 0);

  request->picture_options = TRUE;
  if (g_strv_length (sides) == 2 && parse_side (sides[0], &request->width)
      && parse_side (sides[1], &request->height))
    return TRUE;
  return fail_usage (
      error, _ ("--size %s: a width and a height of 16 pixels or more were expected, such as 1280x800."), value);
}

/* The place of a word in a list; −1 if it is not in it. */
static int
find_word (const char *const words[], const char *word)
{
  for (int i = 0; words[i]; i++)
    if (g_str_equal (words[i], word))
      return i;
  return -1;
}

static gboolean
take_view (TbRequest *request, const char *value, GError **error)
{
  int word = find_word (tb_throw_view_names, value);

  request->picture_options = TRUE;
  request->view = (TbThrowView) MAX (word, 0);
  return word >= 0
         || fail_usage (
             error,
             _ ("--view %s: lane, plan, sideways, approach, ball, ball-side, loft or both was expected."),
             value);
}

static gboolean
take_rate (TbRequest *request, const char *value, GError **error)
{
  static const char *const words[] = { "1", "0.5", "0.25", NULL };
  int word = find_word (words, value);

  request->clip_options = TRUE;
  if (word < 0)
    return fail_usage (error, _ ("--rate %s: 1, 0.5 or 0.25 was expected."), value);
  request->rate = g_ascii_strtod (words[word], NULL);
  return TRUE;
}

static gboolean
take_fps (TbRequest *request, const char *value, GError **error)
{
  guint64 number;

  request->clip_options = TRUE;
  if (!g_ascii_string_to_unsigned (value, 10, TB_CLIP_MIN_FPS, TB_CLIP_MAX_FPS, &number, NULL))
    return fail_usage (error, _ ("--fps %s: a whole number from 5 to 60 was expected."), value);
  request->fps = (int) number;
  return TRUE;
}

static gboolean
take_format (TbRequest *request, const char *value, GError **error)
{
  static const char *const words[] = { "json", "text", NULL };
  int word = find_word (words, value);

  request->study_options = TRUE;
  request->plain_text = word == 1;
  return word >= 0 || fail_usage (error, _ ("--format %s: json or text was expected."), value);
}

static gboolean
take_stretch (TbRequest *request, const char *value, GError **error)
{
  char *end = NULL;

  request->study_options = TRUE;
  request->stretch_ft = g_ascii_strtod (value, &end);
  if (end != value && *end == '\0' && request->stretch_ft >= 1 && request->stretch_ft <= TB_HEAD_PIN_FT)
    return TRUE;
  return fail_usage (error, _ ("--stretch %s: a number of feet from 1 to 60 was expected."), value);
}

static gboolean
take_line (TbRequest *request, const char *value, GError **error)
{
  static const char *const words[] = { "same", "pocket", NULL };
  int word = find_word (words, value);

  request->study_options = TRUE;
  request->line = word == 0 ? TB_LINE_SAME : TB_LINE_POCKET;
  return word >= 0 || fail_usage (error, _ ("--line %s: same or pocket was expected."), value);
}

static gboolean
take_paper (TbRequest *request, const char *value, GError **error)
{
  request->handout_options = TRUE;
  for (int paper = 0; paper < TB_N_PAPERS; paper++)
    if (g_str_equal (value, tb_paper_name ((TbPaper) paper)))
      {
        request->paper = (TbPaper) paper;
        return TRUE;
      }
  return fail_usage (error, _ ("--paper %s: a4 or letter was expected."), value);
}

/* Whether an argument is an option, with its value after it or attached to it. */
static gboolean
is_option (const char *argument, const char *option)
{
  gsize length = strlen (option);

  return strncmp (argument, option, length) == 0 && (argument[length] == '\0' || argument[length] == '=');
}

static const TbCommand *
find_command (const char *argument)
{
  for (const TbCommand *command = tb_commands; command->option; command++)
    if (is_option (argument, command->option))
      return command;
  return NULL;
}

static int
find_option (const char *argument)
{
  for (int i = 0; tb_request_options[i].option; i++)
    if (is_option (argument, tb_request_options[i].option))
      return i;
  return -1;
}

gboolean
tb_request_knows (const char *argument)
{
  return find_command (argument) || find_option (argument) >= 0;
}

/* What is left to read of the command line. */
typedef struct Arguments
{
  int count;
  char **next;
} Arguments;

/* The value attached to an option, or the next argument. */
static const char *
take_value (Arguments *arguments, const char *argument, GError **error)
{
  const char *equals = strchr (argument, '=');

  if (equals)
    return equals + 1;
  if (arguments->count == 0)
    {
      fail_usage (error, _ ("%s: a value was expected after it."), argument);
      return NULL;
    }
  arguments->count--;
  return *arguments->next++;
}

static gboolean
take_command (TbRequest *request,
              const TbCommand *command,
              Arguments *arguments,
              const char *argument,
              GError **error)
{
  TbOrder order = { .command = command };

  if (!command->argument && strchr (argument, '='))
    return fail_usage (error, _ ("%s: no value was expected."), argument);
  if (command->argument && !(order.argument = take_value (arguments, argument, error)))
    return FALSE;
  g_array_append_val (request->orders, order);
  return TRUE;
}

static gboolean
take_path (TbRequest *request, const char *argument, GError **error)
{
  if (request->path)
    return fail_usage (error, _ ("“%s”: only one study was expected."), argument);
  request->path = argument;
  return TRUE;
}

static gboolean
take_argument (TbRequest *request, Arguments *arguments, const char *argument, GError **error)
{
  const TbCommand *command = find_command (argument);
  int option = find_option (argument);
  const char *value;

  if (command)
    return take_command (request, command, arguments, argument, error);
  if (option >= 0)
    {
      value = take_value (arguments, argument, error);
      return value && take_option[option](request, value, error);
    }
  if (argument[0] == '-')
    return fail_usage (error, _ ("“%s” is not an option; --help lists them."), argument);
  return take_path (request, argument, error);
}

static gboolean
take_all (TbRequest *request, Arguments *arguments, GError **error)
{
  gboolean options = TRUE;

  while (arguments->count > 0)
    {
      const char *argument = *arguments->next++;

      arguments->count--;
      if (options && g_str_equal (argument, "--"))
        options = FALSE;
      else if (options ? !take_argument (request, arguments, argument, error)
                       : !take_path (request, argument, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
has_command (const TbRequest *request, const char *const options[])
{
  for (guint i = 0; i < request->orders->len; i++)
    if (find_word (options, g_array_index (request->orders, TbOrder, i).command->option) >= 0)
      return TRUE;
  return FALSE;
}

/* What each option needs to make sense. */
static gboolean
check_sense (const TbRequest *request, GError **error)
{
  static const char *const pictures[] = { "--picture", "--clip", NULL };
  static const char *const clips[] = { "--clip", NULL };
  static const char *const handouts[] = { "--handout", NULL };
  static const char *const studies[] = { "--why", "--next", "--pocket-line", NULL };

  if (request->orders->len == 0)
    return fail_usage (error, _ ("--set, --view and --size go with a command such as %s."),
                       tb_commands[0].option);
  if (request->picture_options && !has_command (request, pictures))
    return fail_usage (error, _ ("--view and --size go with %s."), "--picture, --clip");
  if (request->clip_options && !has_command (request, clips))
    return fail_usage (error, _ ("--rate and --fps go with %s."), clips[0]);
  if (request->handout_options && !has_command (request, handouts))
    return fail_usage (error, _ ("--paper goes with %s."), handouts[0]);
  if (request->study_options && !has_command (request, studies))
    return fail_usage (error, _ ("--format, --stretch and --line go with %s."), "--why, --next, --pocket-line");
  return TRUE;
}

TbRequest *
tb_request_new (int argc, char **argv, GError **error)
{
  g_autoptr (TbRequest) request = g_new0 (TbRequest, 1);
  Arguments arguments = { .count = argc - 1, .next = argv + 1 };

  request->orders = g_array_new (FALSE, TRUE, sizeof (TbOrder));
  request->changes = g_ptr_array_new ();
  request->width = DEFAULT_WIDTH;
  request->height = DEFAULT_HEIGHT;
  request->rate = 1;
  request->fps = TB_CLIP_DEFAULT_FPS;
  if (!take_all (request, &arguments, error) || !check_sense (request, error))
    return NULL;
  return g_steal_pointer (&request);
}

void
tb_request_free (TbRequest *request)
{
  g_clear_object (&request->library);
  g_array_unref (request->orders);
  g_ptr_array_unref (request->changes);
  g_free (request);
}

static TbStudy *
load (TbRequest *request, GError **error)
{
  g_autoptr (GError) problem = NULL;
  TbStudy *study;

  if (!request->path)
    return tb_library_start_study ();
  study = tb_study_load (request->library, request->path, &problem);
  if (!study)
    g_set_error_literal (error, TB_HEADLESS_ERROR, TB_EXIT_FILE, problem->message);
  return study;
}

TbStudy *
tb_request_study (TbRequest *request, GError **error)
{
  g_autoptr (TbStudy) study = NULL;

  if (!request->library)
    request->library = tb_library_new ();
  study = load (request, error);
  for (guint i = 0; study && i < request->changes->len; i++)
    {
      TbStudy *changed = tb_assign (study, request->library, g_ptr_array_index (request->changes, i), error);

      tb_study_unref (study);
      study = changed;
    }
  return g_steal_pointer (&study);
}

/* A study that was accepted when it was read can only fail by what was changed since, or because the ball
 * does not get there. */
static gboolean
fail_run (const TbRequest *request, const TbRun *run, const char *side, GError **error)
{
  g_autofree char *sentence = NULL;
  TbProblem problem = run->problem;

  problem.status = run->status;
  sentence = tb_problem_sentence (&problem);
  g_set_error (error, TB_HEADLESS_ERROR, request->changes->len > 0 ? TB_EXIT_USAGE : TB_EXIT_FILE, "%s: %s.",
               side, sentence);
  return FALSE;
}

gboolean
tb_request_throw (TbRequest *request, TbRun *runs[TB_N_SIDES], GError **error)
{
  static const char *const sides[TB_N_SIDES] = { "before", "after" };
  g_autoptr (TbStudy) study = tb_request_study (request, error);

  if (!study)
    return FALSE;
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      runs[side] = tb_run_new (study->side[side]);
      if (runs[side]->status != TB_OK)
        return fail_run (request, runs[side], sides[side], error);
    }
  return TRUE;
}
