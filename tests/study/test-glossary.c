/* The trade's words: every input and every measure has one, and no word points nowhere.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "tb-core.h"
#include "tb-glossary.h"

static void
test_every_name_has_a_word (void)
{
  for (const TbField *field = tb_field_table; field->name != NULL; field++)
    if (tb_glossary_for_name (field->name) == NULL)
      g_error ("no word for the field %s", field->name);
  for (const TbMeasureInfo *info = tb_measure_table; info->name != NULL; info++)
    if (tb_glossary_for_name (info->name) == NULL)
      g_error ("no word for the measure %s", info->name);
}

static gboolean
is_field_or_measure (const char *name)
{
  for (const TbField *field = tb_field_table; field->name != NULL; field++)
    if (strcmp (field->name, name) == 0)
      return TRUE;
  return tb_measure_find (name) != NULL;
}

static void
test_names_are_known_and_used_once (void)
{
  for (const TbTerm *term = tb_glossary; term->id != NULL; term++)
    for (const char *const *name = term->names; *name != NULL; name++)
      {
        if (!is_field_or_measure (*name))
          g_error ("%s belongs to %s, which is no field and no measure", term->id, *name);
        g_assert_true (tb_glossary_for_name (*name) == term);
      }
}

static void
test_sorted_without_doubles (void)
{
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);

  for (const TbTerm *term = tb_glossary; term->id != NULL; term++)
    {
      if (!g_hash_table_add (ids, (gpointer) term->id))
        g_error ("%s stands there twice", term->id);
      if (term > tb_glossary && g_ascii_strcasecmp (term[-1].word, term->word) >= 0)
        g_error ("%s stands behind %s", term->word, term[-1].word);
    }
  /* As many as a glossary of the trade should have at least. */
  g_assert_cmpuint (g_hash_table_size (ids), >=, 60);
}

static void
test_see_also (void)
{
  for (const TbTerm *term = tb_glossary; term->id != NULL; term++)
    {
      g_assert_nonnull (term->see[0]);
      for (const char *const *see = term->see; *see != NULL; see++)
        {
          if (tb_glossary_find (*see) == NULL)
            g_error ("%s points to %s, which is not there", term->id, *see);
          g_assert_cmpstr (*see, !=, term->id);
        }
    }
}

/* Anything longer is read by nobody who wanted to know a word. */
#define LONGEST_TEXT 260

static void
test_texts_are_short_sentences (void)
{
  for (const TbTerm *term = tb_glossary; term->id != NULL; term++)
    {
      glong length = g_utf8_strlen (term->text, -1);

      if (length < 20 || length > LONGEST_TEXT || !g_str_has_suffix (term->text, "."))
        g_error ("%s: %ld characters: %s", term->id, length, term->text);
      g_assert_null (strstr (term->text, "  "));
      g_assert_null (strchr (term->text, '\''));
    }
}

static void
test_search (void)
{
  const TbTerm *tilt = tb_glossary_find ("axis-tilt");

  g_assert_true (tb_term_matches_word (tilt, "tilt"));
  g_assert_true (tb_term_matches_word (tilt, "TILT axis"));
  g_assert_false (tb_term_matches_word (tilt, "top"));
  g_assert_true (tb_term_matches (tilt, "like a top"));
  g_assert_true (tb_term_matches (tilt, ""));
  g_assert_false (tb_term_matches (tilt, "oil"));
  g_assert_null (tb_glossary_find ("tilt"));
  g_assert_null (tb_glossary_for_name ("no_such_field"));
}

static void
test_sorted_for_reading (void)
{
  g_autoptr (GPtrArray) terms = tb_glossary_sorted ();
  guint count = 0;

  for (const TbTerm *term = tb_glossary; term->id != NULL; term++, count++)
    g_assert_true (g_ptr_array_find (terms, term, NULL));
  g_assert_cmpuint (terms->len, ==, count);
  for (guint i = 1; i < terms->len; i++)
    {
      const TbTerm *one = terms->pdata[i - 1], *other = terms->pdata[i];

      g_assert_cmpint (g_utf8_collate (one->word, other->word), <=, 0);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/glossary/every-name-has-a-word", test_every_name_has_a_word);
  g_test_add_func ("/glossary/names-are-known-and-used-once", test_names_are_known_and_used_once);
  g_test_add_func ("/glossary/sorted-without-doubles", test_sorted_without_doubles);
  g_test_add_func ("/glossary/see-also", test_see_also);
  g_test_add_func ("/glossary/texts-are-short-sentences", test_texts_are_short_sentences);
  g_test_add_func ("/glossary/search", test_search);
  g_test_add_func ("/glossary/sorted-for-reading", test_sorted_for_reading);
  return g_test_run ();
}
