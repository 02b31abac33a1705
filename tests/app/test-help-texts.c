/* The texts of Help: each heading has something under it, and everything that is assumed is told with its
 * range.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib.h>
#include <locale.h>
#include <string.h>

#include "tb-core.h"
#include "tb-help-assumed.h"
#include "tb-help-texts.h"

static void
check_page (const TbHelpText *page)
{
  const char *const *paragraph = page->paragraphs;

  g_test_message ("%s", page->name);
  g_assert_nonnull (*paragraph);
  for (; *paragraph != NULL; paragraph++)
    if ((*paragraph)[0] == TB_HELP_HEADING)
      {
        g_assert_cmpuint (strlen (*paragraph), >, 1);
        g_assert_nonnull (paragraph[1]);
        g_assert_cmpint (paragraph[1][0], !=, TB_HELP_HEADING);
      }
    else
      g_assert_true (g_str_has_suffix (*paragraph, "."));
}

static void
test_pages (void)
{
  g_autoptr (GHashTable) names = g_hash_table_new (g_str_hash, g_str_equal);

  for (const TbHelpText *page = tb_help_texts; page->name != NULL; page++)
    {
      g_assert_true (g_hash_table_add (names, (gpointer) page->name));
      check_page (page);
    }
  g_assert_true (g_hash_table_contains (names, "cautions"));
}

typedef struct Told
{
  char *title, *text;
} Told;

static void
told_clear (gpointer data)
{
  Told *told = data;

  g_free (told->title);
  g_free (told->text);
}

static void
keep (const char *title, const char *text, gpointer data)
{
  Told told = { g_strdup (title), g_strdup (text) };

  g_array_append_val ((GArray *) data, told);
}

static GArray *
all_told (void)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (Told));

  g_array_set_clear_func (all, told_clear);
  tb_help_assumed_foreach (keep, all);
  return all;
}

static void G_GNUC_PRINTF (2, 3) assert_has (const char *text, const char *format, ...)
{
  g_autofree char *part = NULL;
  va_list values;

  va_start (values, format);
  part = g_strdup_vprintf (format, values);
  va_end (values);
  if (strstr (text, part) == NULL)
    g_error ("no “%s” in “%s”", part, text);
}

static void
test_constants (void)
{
  g_autoptr (GArray) all = all_told ();
  guint n = 0;

  for (const TbAssumedInfo *info = tb_assumed_table; info->name != NULL; info++, n++)
    {
      const Told *told = &g_array_index (all, Told, n);

      g_assert_true (g_str_has_prefix (told->title, info->label));
      assert_has (told->title, ": %g", info->value);
      assert_has (told->text, "from %g", info->low);
      assert_has (told->text, "to %g", info->high);
      g_assert_nonnull (strstr (told->text, info->source));
      g_assert_nonnull (strstr (told->text, info->consequence));
    }
  g_assert_cmpuint (all->len, ==, n + 2);
}

/* The tables say what the model takes. */
static void
test_tables (void)
{
  g_autoptr (GArray) all = all_told ();
  const char *covers = g_array_index (all, Told, all->len - 2).text;
  const char *surfaces = g_array_index (all, Told, all->len - 1).text;

  for (int kind = 0; kind < TB_N_COVER_KINDS; kind++)
    {
      TbCover cover = tb_cover_typical ((TbCoverKind) kind);

      assert_has (covers, "dry lane %g,", cover.dry_friction);
      assert_has (covers, "absorption %g 1/s", cover.absorption);
    }
  assert_has (surfaces, "500 grit: %.2f µm", tb_um_from_metres (tb_roughness_from_grit (500)));
  assert_has (surfaces, "Polish: %.2f µm", tb_um_from_metres (tb_roughness_from_grit (TB_GRIT_POLISH)));
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "C.UTF-8");
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/help-texts/pages", test_pages);
  g_test_add_func ("/help-texts/constants", test_constants);
  g_test_add_func ("/help-texts/tables", test_tables);
  return g_test_run ();
}
