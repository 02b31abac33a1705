/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-help.h"

#include <glib/gi18n-lib.h>

#include "tb-request.h"

/* Where the second column begins. */
#define COLUMN 34

static const char *
translated (const char *text)
{
  /* gettext() gives a translation's header for an empty text. */
  return text && text[0] ? _ (text) : "";
}

static void
add_line (GString *text, const char *name, const char *argument, const char *help)
{
  g_autofree char *left = g_strdup_printf ("  %s%s%s", name, argument ? " " : "", argument ? argument : "");
  glong width = g_utf8_strlen (left, -1);

  g_string_append (text, left);
  for (glong i = width; i < COLUMN; i++)
    g_string_append_c (text, ' ');
  g_string_append_printf (text, "%s%s\n", width >= COLUMN ? " " : "", help);
}

static void
add_commands (GString *text)
{
  g_string_append_printf (text, "\n%s\n", _ ("Commands:"));
  for (const TbCommand *command = tb_commands; command->option; command++)
    add_line (text, command->option, command->argument, translated (command->help));
  g_string_append_printf (text, "\n%s\n", _ ("Options:"));
  for (const TbOption *option = tb_request_options; option->option; option++)
    add_line (text, option->option, option->argument, translated (option->help));
}

static void
add_field (GString *text, const TbField *field)
{
  g_autofree char *name = g_strdup_printf ("%s.%s", tb_group_name (field->group), field->name);
  g_autofree char *expected = tb_field_expected (field);
  g_autofree char *help = g_strdup_printf ("%s: %s", translated (field->label), expected);

  add_line (text, name, NULL, help);
}

static void
add_assumed (GString *text, const TbAssumedInfo *info)
{
  g_autofree char *name = g_strdup_printf ("assumed.%s", info->name);
  g_autofree char *help = g_strdup_printf (_ ("%s: a number from %g to %g %s"), translated (info->label),
                                           info->low, info->high, translated (info->unit));

  add_line (text, name, NULL, g_strchomp (help));
}

static void
add_keys (GString *text)
{
  g_string_append_printf (text, "\n%s\n",
                          _ ("Keys, for both runs; before. or after. in front of a key means one of them:"));
  for (const TbField *field = tb_field_table; field->name; field++)
    add_field (text, field);
  add_line (text, "bowler, ball, lane.pattern", NULL,
            _ ("The id of a built-in or own bowler, ball or pattern"));
  for (const TbAssumedInfo *info = tb_assumed_table; info->name; info++)
    add_assumed (text, info);
}

static void
add_ids (GString *text, TbLibrary *library, TbDocumentKind kind, const char *heading)
{
  GListModel *entries = tb_library_get_entries (library, kind);

  g_string_append_printf (text, "\n%s\n", heading);
  for (guint i = 0; i < g_list_model_get_n_items (entries); i++)
    {
      g_autoptr (TbLibraryEntry) entry = g_list_model_get_item (entries, i);

      add_line (text, tb_library_entry_get_id (entry), NULL, tb_library_entry_get_name (entry));
    }
}

char *
tb_help_text (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, "%s\n\n", _ ("tenboard: why a bowling ball hooks as much as it does"));
  g_string_append_printf (text, "%s\n  tenboard [%s]\n  tenboard %s [%s] [%s]…\n", _ ("Usage:"), _ ("STUDY"),
                          _ ("COMMAND"), _ ("STUDY"), _ ("OPTION"));
  add_commands (text);
  add_keys (text);
  add_ids (text, library, TB_DOCUMENT_BOWLER, _ ("Bowlers:"));
  add_ids (text, library, TB_DOCUMENT_BALL, _ ("Balls:"));
  add_ids (text, library, TB_DOCUMENT_PATTERN, _ ("Patterns:"));
  return g_string_free (text, FALSE);
}
