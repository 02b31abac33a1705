/* Damaged and hostile documents: each gives its one sentence, and nothing else.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "tb-json-check.h"
#include "tb-study-document.h"

/* A pattern that is in order; the cases change one thing in it. */
#define PATTERN(body) \
  "{\n  \"tenboard\": \"pattern\",\n  \"version\": 1,\n  \"id\": \"p\",\n  \"name\": \"P\",\n" body "\n}\n"
#define PROFILE                                                                                 \
  "  \"profile\": {\"length_ft\": 40, \"fade_ft\": 2, \"front_units\": 45, \"back_units\": 5, " \
  "\"outside_share\": 0.125, \"outside_board\": 6, \"inside_board\": 14}"

typedef struct Case
{
  const char *name;
  const char *text;
  int code;
  const char *sentence; /* without the file's name and the full stop */
} Case;

static const Case texts[] = {
  { "empty", "", TB_STORE_ERROR_SYNTAX, "line 1: a value was expected, but the file ends" },
  { "cut-off", "{\n\"tenboard\": \"patt", TB_STORE_ERROR_SYNTAX,
    "line 2: the end of a string (\") was expected, but the file ends" },
  { "no-comma", "{\"a\": 1\n \"b\": 2}", TB_STORE_ERROR_SYNTAX,
    "line 2: a comma or } was expected, not “\"”" },
  { "last-comma", "{\"a\": [1, 2, ]}", TB_STORE_ERROR_SYNTAX, "line 1: a value was expected, not “]”" },
  { "no-colon", "{\"a\" 1}", TB_STORE_ERROR_SYNTAX, "line 1: a colon after the key was expected, not “1”" },
  { "bare-key", "{a: 1}", TB_STORE_ERROR_SYNTAX, "line 1: a key in quotation marks was expected, not “a”" },
  { "comment", "{\"a\": 1 /* one */}", TB_STORE_ERROR_SYNTAX, "line 1: a comma or } was expected, not “/”" },
  { "after-the-end", "{}\n\n[]", TB_STORE_ERROR_SYNTAX, "line 3: the end of the file was expected, not “[”" },
  { "twice", "{\"a\": 1,\n\"a\": 2}", TB_STORE_ERROR_SYNTAX, "line 2: the key “a” is given twice" },
  { "not-a-number", "{\"a\": NaN}", TB_STORE_ERROR_SYNTAX, "line 1: a value was expected, not “N”" },
  { "octal", "{\"a\": 017}", TB_STORE_ERROR_SYNTAX, "line 1: a comma or } was expected, not “1”" },
  { "hexadecimal", "{\"a\": 0x17}", TB_STORE_ERROR_SYNTAX, "line 1: a comma or } was expected, not “x”" },
  { "no-fraction", "{\"a\": 1.}", TB_STORE_ERROR_SYNTAX, "line 1: a digit was expected, not “}”" },
  { "no-exponent", "{\"a\": 1e+}", TB_STORE_ERROR_SYNTAX, "line 1: a digit was expected, not “}”" },
  { "no-digits", "{\"a\": -}", TB_STORE_ERROR_SYNTAX, "line 1: a digit was expected, not “}”" },
  { "too-many-digits", "{\"a\": 99999999999999999999}", TB_STORE_ERROR_SYNTAX,
    "line 1: a number has too many digits" },
  { "line-feed-in-string", "{\"a\": \"b\nc\"}", TB_STORE_ERROR_SYNTAX,
    "line 1: a string is not closed on its line" },
  { "bad-escape", "{\"a\": \"\\x\"}", TB_STORE_ERROR_SYNTAX,
    "line 1: one of \" \\ / b f n r t u was expected, not “x”" },
  { "bad-hexadecimal", "{\"a\": \"\\u12g4\"}", TB_STORE_ERROR_SYNTAX,
    "line 1: a hexadecimal digit was expected, not “g”" },
  { "nul-escape", "{\"a\": \"\\u0000\"}", TB_STORE_ERROR_SYNTAX,
    "line 1: a character that does not exist is written" },
  { "low-surrogate", "{\"a\": \"\\udc00\"}", TB_STORE_ERROR_SYNTAX,
    "line 1: a character that does not exist is written" },
  { "high-surrogate", "{\"a\": \"\\ud800\\u0041\"}", TB_STORE_ERROR_SYNTAX,
    "line 1: a character is written as half of a pair" },
  { "not-utf-8", "{\"a\": \"\xff\"}", TB_STORE_ERROR_NOT_TEXT, "this is not a text file in UTF-8" },
  { "list", "[1, 2]", TB_STORE_ERROR_NOT_OURS, "this is not a document of Tenboard" },
  { "foreign", "{\"name\": \"P\"}", TB_STORE_ERROR_NOT_OURS,
    "this is not a document of Tenboard: the key “tenboard” is missing" },
  { "other-kind", "{\"tenboard\": \"ball\", \"version\": 1}", TB_STORE_ERROR_NOT_OURS,
    "this is a ball; a pattern was expected" },
  { "unknown-kind", "{\"tenboard\": \"shoe\", \"version\": 1}", TB_STORE_ERROR_NOT_OURS,
    "tenboard: “pattern” was expected" },
  { "no-version", "{\"tenboard\": \"pattern\"}", TB_STORE_ERROR_MISSING_KEY,
    "version: this key is missing; a number was expected" },
  { "newer", "{\"tenboard\": \"pattern\", \"version\": 2}", TB_STORE_ERROR_VERSION,
    "version: this was written by a newer Tenboard (form 2; this one knows forms up to 1)" },
  { "version-zero", "{\"tenboard\": \"pattern\", \"version\": 0}", TB_STORE_ERROR_VALUE,
    "version: a whole number from 1 was expected" },
  { "no-id", "{\"tenboard\": \"pattern\", \"version\": 1}", TB_STORE_ERROR_MISSING_KEY,
    "id: this key is missing; a string in quotation marks was expected" },
  { "id-is-a-path", "{\"tenboard\": \"pattern\", \"version\": 1, \"id\": \"../../etc/passwd\"}",
    TB_STORE_ERROR_VALUE, "id: an id was expected: up to 64 lower-case letters, digits and hyphens" },
  { "name-on-two-lines", "{\"tenboard\": \"pattern\", \"version\": 1, \"id\": \"p\", \"name\": \"a\\nb\"}",
    TB_STORE_ERROR_VALUE, "name: a name on one line was expected" },
  { "unknown-key", PATTERN ("  \"colour\": \"red\",\n" PROFILE), TB_STORE_ERROR_UNKNOWN_KEY,
    "colour: this key is not known here" },
  { "no-description", "{\"tenboard\": \"pattern\", \"version\": 1, \"id\": \"p\", \"name\": \"P\"}",
    TB_STORE_ERROR_MISSING_KEY, "one of the keys profile, table and strips was expected" },
  { "two-descriptions", PATTERN (PROFILE ",\n\"strips\": []"), TB_STORE_ERROR_UNKNOWN_KEY,
    "one of the keys profile, table and strips was expected" },
  { "profile-is-a-list", PATTERN ("\"profile\": []"), TB_STORE_ERROR_TYPE,
    "profile: an object { … } was expected" },
  { "row-too-short", PATTERN ("\"table\": {\"spacing_ft\": 0.5, \"rows\": [[1, 2]]}"), TB_STORE_ERROR_TYPE,
    "table.rows[1]: a list of 39 numbers was expected" },
  { "odd-spacing", PATTERN ("\"table\": {\"spacing_ft\": 0.3, \"rows\": []}"), TB_STORE_ERROR_VALUE,
    "table.spacing_ft: a multiple of 0.5 was expected" },
  { "no-oil", PATTERN ("\"table\": {\"spacing_ft\": 0.5, \"rows\": []}"), TB_STORE_ERROR_VALUE,
    "The pattern has no oil in it" },
  { "strip-goes-no-way", PATTERN ("\"strips\": [{\"way\": \"up\"}]"), TB_STORE_ERROR_VALUE,
    "strips[1].way: one of out, back was expected" },
  { "strip-goes-nowhere",
    PATTERN ("\"strips\": [{\"way\": \"out\", \"right_board\": 3, \"left_board\": 37, \"start_ft\": 30, "
             "\"end_ft\": 5, "
             "\"microlitres_per_board\": 50, \"taper_ft\": 0}]"),
    TB_STORE_ERROR_VALUE,
    "strips[1]: a strip that goes its way, from right to left, and is longer than its taper was expected" },
  { "half-a-board",
    PATTERN ("\"strips\": [{\"way\": \"out\", \"right_board\": 3.5, \"left_board\": 37, \"start_ft\": 0, "
             "\"end_ft\": 5, "
             "\"microlitres_per_board\": 50, \"taper_ft\": 0}]"),
    TB_STORE_ERROR_VALUE, "strips[1].right_board: a whole number from 1 to 39 was expected" },
};

static void
check_error (const GError *error, int code, const char *sentence)
{
  g_assert_nonnull (error);
  g_assert_cmpstr (error->message, ==, sentence);
  g_assert_error (error, TB_STORE_ERROR, code);
}

static void
test_text (gconstpointer data)
{
  const Case *c = data;
  g_autoptr (GError) error = NULL;

  g_assert_null (tb_pattern_from_text (c->text, strlen (c->text), &error));
  check_error (error, c->code, c->sentence);
}

/* The same without asking why. */
static void
test_no_error_wanted (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    g_assert_null (tb_pattern_from_text (texts[i].text, strlen (texts[i].text), NULL));
}

/* One thing changed in the text of a study that is in order. */
typedef struct Change
{
  const char *name;
  const char *from, *to; /* the first of these in the text is replaced */
  int code;
  const char *sentence;
} Change;

static const Change changes[] = {
  { "speed-too-high", "\"speed_mph\": 17", "\"speed_mph\": 170", TB_STORE_ERROR_VALUE,
    "before.delivery.speed_mph: 170 is out of range; a number from 5 to 28 mph was expected" },
  { "speed-infinite", "\"speed_mph\": 17", "\"speed_mph\": 1e999", TB_STORE_ERROR_VALUE,
    "before.delivery.speed_mph: a number from 5 to 28 mph was expected" },
  { "speed-is-a-word", "\"speed_mph\": 17", "\"speed_mph\": \"fast\"", TB_STORE_ERROR_TYPE,
    "before.delivery.speed_mph: a number from 5 to 28 mph was expected" },
  { "speed-is-null", "\"speed_mph\": 17", "\"speed_mph\": null", TB_STORE_ERROR_TYPE,
    "before.delivery.speed_mph: a number from 5 to 28 mph was expected" },
  { "no-speed", "\"speed_mph\": 17,", "", TB_STORE_ERROR_MISSING_KEY,
    "before.delivery.speed_mph: this key is missing; a number from 5 to 28 mph was expected" },
  { "no-hand", "\"hand\": \"right\",", "", TB_STORE_ERROR_MISSING_KEY,
    "before.delivery.hand: this key is missing; one of right, left was expected" },
  { "no-such-hand", "\"hand\": \"right\"", "\"hand\": \"middle\"", TB_STORE_ERROR_VALUE,
    "before.delivery.hand: “middle” is not known; one of right, left was expected" },
  { "hand-is-a-number", "\"hand\": \"right\"", "\"hand\": 0", TB_STORE_ERROR_TYPE,
    "before.delivery.hand: one of right, left was expected" },
  { "hand-writes-on-the-terminal", "\"hand\": \"right\"", "\"hand\": \"\\u001b[2J\"", TB_STORE_ERROR_VALUE,
    "before.delivery.hand: “\xef\xbf\xbd[2J” is not known; one of right, left was expected" },
  { "unknown-field", "\"speed_mph\": 17", "\"speed_mph\": 17, \"spin\": 3", TB_STORE_ERROR_UNKNOWN_KEY,
    "before.delivery.spin: this key is not known here" },
  { "ball-too-heavy", "\"weight_lb\": 15", "\"weight_lb\": 16.5", TB_STORE_ERROR_VALUE,
    "before.ball.weight_lb: 16.5 is out of range; a number from 6 to 16 lb was expected" },
  { "no-such-cover", "\"cover\": \"reactive-hybrid\"", "\"cover\": \"wood\"", TB_STORE_ERROR_VALUE,
    "before.ball.cover: “wood” is not known; one of plastic, urethane, reactive-pearl, reactive-hybrid, "
    "reactive-solid was expected" },
  { "differentials", "\"intermediate_differential_in\": 0", "\"intermediate_differential_in\": 0.05",
    TB_STORE_ERROR_VALUE, "before.ball: The intermediate differential is larger than the differential" },
  { "holes-is-a-number", "\"holes\": []", "\"holes\": 3", TB_STORE_ERROR_TYPE,
    "before.ball.holes: a list [ … ] was expected" },
  { "hole-kind", "\"holes\": []", "\"holes\": [{\"kind\": \"vent\"}]", TB_STORE_ERROR_VALUE,
    "before.ball.holes[1].kind: one of finger, thumb was expected" },
  { "hole-unfinished", "\"holes\": []", "\"holes\": [{\"kind\": \"thumb\", \"over_in\": 0}]",
    TB_STORE_ERROR_MISSING_KEY, "before.ball.holes[1].up_in: this key is missing; a number was expected" },
  { "six-holes", "\"holes\": []", "\"holes\": [1, 2, 3, 4, 5, 6]", TB_STORE_ERROR_TYPE,
    "before.ball.holes[1]: an object { … } was expected" },
  { "no-length", "\"length_ft\": 40,", "", TB_STORE_ERROR_MISSING_KEY,
    "before.lane.pattern.profile.length_ft: this key is missing; a number was expected" },
  { "length-past-the-pins", "\"length_ft\": 40", "\"length_ft\": 70", TB_STORE_ERROR_VALUE,
    "before.lane.pattern.profile.length_ft: 70 is out of range; a number from 5 to 60 was expected" },
  { "fade-longer-than-the-oil", "\"fade_ft\": 2", "\"fade_ft\": 50", TB_STORE_ERROR_VALUE,
    "before.lane.pattern.profile.fade_ft: at most the length was expected" },
  { "inside-out", "\"inside_board\": 14", "\"inside_board\": 3", TB_STORE_ERROR_VALUE,
    "before.lane.pattern.profile.inside_board: at least outside_board was expected" },
  { "no-after", "\"after\": {", "\"later\": {", TB_STORE_ERROR_UNKNOWN_KEY,
    "later: this key is not known here" },
  { "title-too-long", "\"title\": \"\"", "\"title\": 5", TB_STORE_ERROR_TYPE,
    "title: a string in quotation marks was expected" },
  { "assumed", "\"delivery\"", "\"assumed\": {\"film_friction\": 1}, \"delivery\"", TB_STORE_ERROR_VALUE,
    "before.assumed.film_friction: 1 is out of range; a number from 0.004 to 0.04 was expected" },
  { "assumed-unknown", "\"delivery\"", "\"assumed\": {\"luck\": 1}, \"delivery\"", TB_STORE_ERROR_UNKNOWN_KEY,
    "before.assumed.luck: this key is not known here" },
  { "left-out", "\"delivery\"", "\"left_out\": [\"gravity\"], \"delivery\"", TB_STORE_ERROR_VALUE,
    "before.left_out[1]: the name of a part of the model was expected, such as edges" },
  { "embedded-newer", "\"ball\": {", "\"ball\": {\"tenboard\": \"ball\", \"version\": 9,",
    TB_STORE_ERROR_VERSION,
    "before.ball.version: this was written by a newer Tenboard (form 9; this one knows forms up to 1)" },
};

static char *
start_text (void)
{
  g_autoptr (TbStudy) study = tb_library_start_study ();

  return tb_study_to_text (study);
}

static char *
replace_first (const char *text, const char *from, const char *to)
{
  g_autoptr (GString) changed = g_string_new (text);

  g_assert_cmpuint (g_string_replace (changed, from, to, 1), ==, 1);
  return g_string_free (g_steal_pointer (&changed), FALSE);
}

static void
test_change (gconstpointer data)
{
  const Change *change = data;
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *text = start_text ();
  g_autofree char *damaged = replace_first (text, change->from, change->to);

  g_assert_null (tb_study_from_text (library, damaged, strlen (damaged), &error));
  check_error (error, change->code, change->sentence);
}

static void
test_unknown_ids (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *text = start_text ();
  g_autofree char *start = g_strndup (text, (gsize) (strstr (text, "\"ball\": {") - text));
  g_autofree char *ball
      = g_strconcat (start, "\"ball\": \"nobody-made-it\", \"lane\": {}}, \"after\": {}}", NULL);

  g_assert_null (tb_study_from_text (library, ball, strlen (ball), &error));
  check_error (error, TB_STORE_ERROR_UNKNOWN_ID,
               "before.ball: there is no ball with the id “nobody-made-it”");
}

/* One thing changed in the text of a built-in bowler. */
static const Change bowler_changes[] = {
  { "unknown-key", "\"ball\":", "\"shoes\":", TB_STORE_ERROR_UNKNOWN_KEY,
    "shoes: this key is not known here" },
  { "no-pap", "\"pap_up_in\": 0.5,", "", TB_STORE_ERROR_MISSING_KEY,
    "pap_up_in: this key is missing; a number from -3 to 3 in was expected" },
  { "delivery", "\"speed_mph\": 13.5", "\"speed_mph\": true", TB_STORE_ERROR_TYPE,
    "delivery.speed_mph: a number from 5 to 28 mph was expected" },
  { "note-is-a-list", "\"delivery\"", "\"note\": [], \"delivery\"", TB_STORE_ERROR_SYNTAX,
    "line 7: the key “note” is given twice" },
  { "ball-is-no-id", "\"hybrid-light\"", "\"Hybrid Light\"", TB_STORE_ERROR_VALUE,
    "ball: an id was expected: up to 64 lower-case letters, digits and hyphens" },
};

static void
test_bowler (gconstpointer data)
{
  const Change *change = data;
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autofree char *text = tb_bowler_to_text (
      tb_library_entry_get_bowler (tb_library_find (library, TB_DOCUMENT_BOWLER, "senior", NULL)));
  g_autofree char *damaged = replace_first (text, change->from, change->to);
  g_autoptr (GError) error = NULL;

  g_assert_null (tb_bowler_from_text (damaged, strlen (damaged), &error));
  check_error (error, change->code, change->sentence);
}

/* A table with `rows` rows of 39 times the same film, 10 ft each. */
static char *
table_text (guint rows, const char *film)
{
  GString *text = g_string_new ("{\"tenboard\": \"pattern\", \"version\": 1, \"id\": \"p\", \"name\": \"P\", "
                                "\"table\": {\"spacing_ft\": 10, \"rows\": [");

  for (guint row = 0; row < rows; row++)
    for (int column = 0; column < TB_OIL_COLUMNS; column++)
      g_string_append_printf (text, "%s%s%s",
                              column ? ","
                              : row  ? ",["
                                     : "[",
                              film, column == TB_OIL_COLUMNS - 1 ? "]" : "");
  g_string_append (text, "]}}");
  return g_string_free (text, FALSE);
}

static void
test_table (void)
{
  static const struct
  {
    guint rows;
    const char *film;
    int code;
    const char *sentence;
  } cases[] = {
    { 7, "20", TB_STORE_ERROR_TOO_LARGE, "table.rows[7]: at most 63 ft of rows were expected" },
    { 1, "-1", TB_STORE_ERROR_VALUE,
      "table.rows[1][1]: -1 is out of range; a number from 0 to 500 was expected" },
    { 1, "1e300", TB_STORE_ERROR_VALUE,
      "table.rows[1][1]: 1e+300 is out of range; a number from 0 to 500 was expected" },
    { 1, "\"2\"", TB_STORE_ERROR_TYPE, "table.rows[1][1]: a number was expected" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *text = table_text (cases[i].rows, cases[i].film);

      g_assert_null (tb_pattern_from_text (text, strlen (text), &error));
      check_error (error, cases[i].code, cases[i].sentence);
    }
}

/* So many times the same item in the place of a list that is empty, and what is said of it. */
static void
check_too_many (const char *list, const char *item, guint count, const char *sentence)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) items = g_string_new (list);
  g_autofree char *text = start_text ();
  g_autofree char *from = g_strconcat (list, "[]", NULL);
  g_autofree char *damaged = NULL;

  for (guint i = 0; i < count; i++)
    g_string_append_printf (items, "%s%s", i ? "," : "[", item);
  g_string_append_c (items, ']');
  damaged = replace_first (text, from, items->str);
  g_assert_null (tb_study_from_text (library, damaged, strlen (damaged), &error));
  check_error (error, TB_STORE_ERROR_TOO_LARGE, sentence);
}

static void
test_too_many_holes (void)
{
  check_too_many (
      "\"holes\": ",
      "{\"kind\": \"finger\", \"over_in\": 0, \"up_in\": 2, \"diameter_in\": 0.8, \"depth_in\": 1, "
      "\"pitch_over_in\": 0, \"pitch_up_in\": 0}",
      TB_MAX_HOLES + 1, "before.ball.holes[6]: a ball has at most 5 holes");
}

static void
test_too_many_strips (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) text = g_string_new ("{\"tenboard\": \"pattern\", \"version\": 1, \"id\": \"p\", "
                                           "\"name\": \"P\", \"strips\": [");

  for (guint i = 0; i <= TB_STRIPS_MAX; i++)
    g_string_append_printf (text,
                            "%s{\"way\": \"out\", \"right_board\": 3, \"left_board\": 37, \"start_ft\": 0, "
                            "\"end_ft\": 5, \"microlitres_per_board\": 5, \"taper_ft\": 0}",
                            i ? "," : "");
  g_string_append (text, "]}");
  g_assert_null (tb_pattern_from_text (text->str, text->len, &error));
  check_error (error, TB_STORE_ERROR_TOO_LARGE, "strips[65]: a pattern has at most 64 strips");
}

/* A name that is longer than any. */
static void
test_long_text (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *name = g_strnfill (TB_NAME_MAX + 1, 'a');
  g_autofree char *text = g_strdup_printf (
      "{\"tenboard\": \"pattern\", \"version\": 1, \"id\": \"p\", \"name\": \"%s\"}", name);

  g_assert_null (tb_pattern_from_text (text, strlen (text), &error));
  check_error (error, TB_STORE_ERROR_TOO_LARGE, "name: the text is longer than 200 bytes");
}

/* The library's parser runs out of stack on this; it never sees it, whatever hides the brackets. */
static void
test_deep (void)
{
  static const char *const beginnings[] = { "", "{\"a\": ", "[1, \"\\\"\", " };

  for (gsize i = 0; i < G_N_ELEMENTS (beginnings); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *brackets = g_strnfill (1000000, '[');
      g_autofree char *text = g_strconcat (beginnings[i], brackets, NULL);

      g_assert_null (tb_pattern_from_text (text, strlen (text), &error));
      check_error (error, TB_STORE_ERROR_TOO_LARGE, "line 1: the brackets are nested too deeply");
    }
}

static void
test_many (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) text = g_string_new ("[0");

  for (guint i = 0; i < TB_JSON_MAX_VALUES; i++)
    g_string_append (text, ",0");
  g_string_append (text, "]");
  g_assert_false (tb_json_check (text->str, text->len, &error));
  check_error (error, TB_STORE_ERROR_TOO_LARGE, "line 1: there are more values than a document can have");
}

static void
test_large (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = g_strnfill (TB_JSON_MAX_BYTES + 1, ' ');

  g_assert_false (tb_json_check (text, strlen (text), &error));
  check_error (error, TB_STORE_ERROR_TOO_LARGE, "a document has at most 4.2\xc2\xa0MB");
}

static void
test_nul (void)
{
  static const char text[] = "{\"a\":\0 1}";
  g_autoptr (GError) error = NULL;

  g_assert_false (tb_json_check (text, sizeof text - 1, &error));
  check_error (error, TB_STORE_ERROR_NOT_TEXT, "this is not a text file in UTF-8");
}

/* Cut off anywhere, a study is refused with a sentence, never half taken. */
static void
test_cut_anywhere (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autofree char *text = start_text ();
  gsize length = strlen (g_strchomp (text));

  for (gsize cut = 0; cut < length; cut++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (tb_study_from_text (library, text, cut, &error));
      g_assert_error (error, TB_STORE_ERROR, TB_STORE_ERROR_SYNTAX);
    }
}

/* Any byte changed to any other: read or refused, never worse. The seed is the test's. */
static void
test_bytes_changed (void)
{
  g_autoptr (TbLibrary) library = tb_library_new ();
  g_autofree char *text = start_text ();
  gsize length = strlen (text);

  for (int i = 0; i < 5000; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *damaged = g_memdup2 (text, length + 1);
      g_autoptr (TbStudy) study = NULL;

      for (int changed = g_test_rand_int_range (1, 4); changed > 0; changed--)
        damaged[g_test_rand_int_range (0, (gint32) length)] = (char) g_test_rand_int_range (0, 256);
      study = tb_study_from_text (library, damaged, length, &error);
      g_assert_true ((study == NULL) == (error != NULL));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, G_TEST_OPTION_ISOLATE_DIRS, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *path = g_strconcat ("/damaged/text/", texts[i].name, NULL);
      g_test_add_data_func (path, &texts[i], test_text);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (changes); i++)
    {
      g_autofree char *path = g_strconcat ("/damaged/study/", changes[i].name, NULL);
      g_test_add_data_func (path, &changes[i], test_change);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (bowler_changes); i++)
    {
      g_autofree char *path = g_strconcat ("/damaged/bowler/", bowler_changes[i].name, NULL);
      g_test_add_data_func (path, &bowler_changes[i], test_bowler);
    }
  g_test_add_func ("/damaged/table", test_table);
  g_test_add_func ("/damaged/too-many-holes", test_too_many_holes);
  g_test_add_func ("/damaged/too-many-strips", test_too_many_strips);
  g_test_add_func ("/damaged/no-error-wanted", test_no_error_wanted);
  g_test_add_func ("/damaged/unknown-ids", test_unknown_ids);
  g_test_add_func ("/damaged/long-text", test_long_text);
  g_test_add_func ("/damaged/deep", test_deep);
  g_test_add_func ("/damaged/many", test_many);
  g_test_add_func ("/damaged/large", test_large);
  g_test_add_func ("/damaged/nul", test_nul);
  g_test_add_func ("/damaged/cut-anywhere", test_cut_anywhere);
  g_test_add_func ("/damaged/bytes-changed", test_bytes_changed);
  return g_test_run ();
}
