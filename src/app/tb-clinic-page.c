/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-clinic-page.h"

#include <glib/gi18n-lib.h>

#include "tb-clinic-words.h"

/* Stands where a throw has no number. */
#define NOTHING "–"

static TbUnits
units_of (TbClinic *clinic)
{
  return tb_session_get_units (tb_clinic_get_session (clinic));
}

/* The page keeps the text; NULL stays NULL. */
static const char *
keep (TbClinicPage *page, char *text)
{
  if (text != NULL)
    g_ptr_array_add (page->texts, text);
  return text;
}

static TbSlideItem *
add_item (TbClinicPage *page, const char *name)
{
  TbSlideItem *item;

  g_return_val_if_fail (page->slide.n_items < TB_SLIDE_MAX_ITEMS, NULL);
  item = &page->items[page->slide.n_items++];
  *item = (TbSlideItem){ .name = name, .from = NAN, .to = NAN };
  return item;
}

static void
make_start (TbClinicPage *page, TbClinic *clinic)
{
  guint chosen = tb_clinic_get_chosen (clinic);

  page->slide.kind = TB_SLIDE_LIST;
  page->slide.headline = _ ("What shall we look at?");
  page->slide.body = tb_clinic_get_talk_note (clinic, chosen);
  page->slide.caution = tb_clinic_get_problem (clinic);
  if (tb_clinic_is_preparing (clinic))
    page->slide.body = _ ("The throws are being made…");
  for (guint i = 0; i < tb_clinic_get_n_talks (clinic) && i < TB_SLIDE_MAX_ITEMS; i++)
    add_item (page, tb_clinic_get_talk_name (clinic, i))->chosen = i == chosen;
}

static void
make_question (TbClinicPage *page, TbClinic *clinic)
{
  const TbTalkStep *step = tb_clinic_get_step (clinic);
  TbClinicChange changes[TB_CLINIC_MOST_CHANGES];
  guint more, n = tb_clinic_changes (step->study, units_of (clinic), changes, &more);

  page->slide.kind = TB_SLIDE_CHANGES;
  page->slide.headline = step->name[0] != '\0' ? step->name : _ ("What was changed?");
  page->slide.body = step->text;
  page->slide.caution = step->caution;
  if (n == 0 && step->text == NULL)
    page->slide.body
        = _ ("Nothing: before and after are the same throw. Change something in the study first.");
  if (more > 0)
    page->slide.body
        = keep (page, g_strdup_printf (ngettext ("And %u change more.", "And %u changes more.", more), more));
  for (guint i = 0; i < n; i++)
    {
      TbSlideItem *item = add_item (page, changes[i].name);

      item->before = keep (page, changes[i].before);
      item->after = keep (page, changes[i].after);
      item->from = changes[i].from;
      item->to = changes[i].to;
    }
}

static void
make_vote (TbClinicPage *page, TbClinic *clinic)
{
  const TbTalkStep *step = tb_clinic_get_step (clinic);

  page->slide.kind = TB_SLIDE_VOTES;
  page->slide.headline = step->question;
  for (guint i = 0; i < step->choices->len && i < TB_TALK_MAX_CHOICES; i++)
    add_item (page, step->choices->pdata[i])->count = tb_clinic_get_votes (clinic, i);
}

static void
make_throw (TbClinicPage *page, TbClinic *clinic)
{
  page->slide.headline = tb_clinic_get_step (clinic)->question;
}

/* What a room wants to know, the asked one first. */
static const char *const shown[] = { "board_at_pins", "angle_at_pins_deg", "breakpoint_ft", "hook_board" };

static void
add_number (TbClinicPage *page, TbClinic *clinic, const TbMeasureInfo *info)
{
  TbSession *session = tb_clinic_get_session (clinic);
  const TbMeasures *before = &tb_session_get_run (session, TB_SIDE_BEFORE)->path.measures;
  const TbMeasures *after = &tb_session_get_run (session, TB_SIDE_AFTER)->path.measures;
  gboolean has_before = tb_session_get_path (session, TB_SIDE_BEFORE) != NULL;
  gboolean has_after = tb_session_get_path (session, TB_SIDE_AFTER) != NULL;
  TbUnits units = units_of (clinic);
  const char *unit = tb_describe_measure_unit (info, units);
  gboolean plain = unit[0] == '\0' || strcmp (info->unit, "board") == 0;
  TbSlideItem *item = add_item (page, plain ? _ (info->label)
                                            : keep (page, g_strdup_printf ("%s, %s", _ (info->label), unit)));

  item->before = has_before ? keep (page, tb_describe_measure_number (info, before, units)) : NOTHING;
  item->after = has_after ? keep (page, tb_describe_measure_number (info, after, units)) : NOTHING;
  item->detail
      = has_before && has_after ? keep (page, tb_describe_difference (info, before, after, units)) : NOTHING;
}

/* Why there are no numbers of a throw; NULL where there are of both. */
static char *
problem_text (TbClinic *clinic)
{
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      TbRun *run = tb_session_get_run (tb_clinic_get_session (clinic), (TbSide) side);

      if (run->status != TB_OK)
        return tb_describe_problem (run);
    }
  return NULL;
}

static void
make_numbers (TbClinicPage *page, TbClinic *clinic)
{
  const TbTalkStep *step = tb_clinic_get_step (clinic);
  const char *answer = tb_clinic_answer (step);
  g_autofree char *room = tb_clinic_room_verdict (clinic);

  page->slide.kind = TB_SLIDE_NUMBERS;
  page->slide.headline = answer != NULL ? answer : _ ("The numbers");
  page->slide.body = room[0] != '\0' ? keep (page, g_steal_pointer (&room)) : NULL;
  page->slide.caution = keep (page, problem_text (clinic));
  add_number (page, clinic, step->asked);
  for (gsize i = 0; i < G_N_ELEMENTS (shown); i++)
    if (!g_str_equal (shown[i], step->asked->name))
      add_number (page, clinic, tb_measure_find (shown[i]));
}

static void
make_why (TbClinicPage *page, TbClinic *clinic)
{
  const TbTalkStep *step = tb_clinic_get_step (clinic);
  TbWhy *why = tb_clinic_get_why (clinic);
  TbClinicPart parts[TB_CLINIC_MOST_PARTS];
  guint n;

  page->slide.headline = _ ("Why?");
  if (step->explain != NULL)
    {
      page->slide.body = step->explain;
      page->slide.caution = step->caution;
      return;
    }
  if (why == NULL)
    {
      page->slide.body = _ ("The difference is still being split…");
      return;
    }
  page->slide.kind = TB_SLIDE_PARTS;
  page->slide.body = keep (page, tb_clinic_why_words (why, units_of (clinic)));
  n = tb_clinic_parts (why, parts);
  for (guint i = 0; i < n; i++)
    {
      TbSlideItem *item = add_item (page, parts[i].name);

      item->to = parts[i].part;
      item->detail = keep (page, parts[i].number);
    }
}

static void
make_try (TbClinicPage *page, TbClinic *clinic)
{
  TbNext *next = tb_clinic_get_next (clinic);

  page->slide.headline = _ ("What to try");
  if (next == NULL)
    page->slide.body = _ ("What could be changed is still being worked out…");
  else
    {
      page->slide.body = keep (page, tb_clinic_try_words (next, units_of (clinic)));
      page->slide.caution = keep (page, tb_clinic_try_caution (next));
    }
}

TbClinicPage *
tb_clinic_page_new (TbClinic *clinic)
{
  static void (*const make[]) (TbClinicPage *, TbClinic *)
      = { make_start, make_question, make_vote, make_throw, make_numbers, make_why, make_try };
  TbClinicPage *page = g_new0 (TbClinicPage, 1);

  page->texts = g_ptr_array_new_with_free_func (g_free);
  page->slide.kind = TB_SLIDE_WORDS;
  page->slide.headline = "";
  page->slide.items = page->items;
  make[tb_clinic_get_slide (clinic)](page, clinic);
  return page;
}

void
tb_clinic_page_free (TbClinicPage *page)
{
  g_ptr_array_unref (page->texts);
  g_free (page);
}

static void
add_sentence (GString *text, const char *sentence)
{
  if (sentence == NULL || sentence[0] == '\0')
    return;
  g_string_append_printf (text, text->len > 0 ? " %s" : "%s", sentence);
  if (strchr (".!?…:", sentence[strlen (sentence) - 1]) == NULL && !g_str_has_suffix (sentence, "…"))
    g_string_append_c (text, '.');
}

static char *
item_sentence (TbSlideKind kind, const TbSlideItem *item)
{
  switch (kind)
    {
    case TB_SLIDE_LIST:
      /* Translators: %s is what is chosen in a list. */
      return item->chosen ? g_strdup_printf (_ ("Chosen: %s"), item->name) : NULL;
    case TB_SLIDE_VOTES:
      /* Translators: a choice and how many voted for it. */
      return g_strdup_printf (ngettext ("%s: %u vote", "%s: %u votes", item->count), item->name, item->count);
    case TB_SLIDE_CHANGES:
    case TB_SLIDE_NUMBERS:
      /* Translators: what, its value before, its value after. */
      return g_strdup_printf (_ ("%s: %s before, %s after"), item->name, item->before, item->after);
    case TB_SLIDE_PARTS:
      return g_strdup_printf ("%s: %s", item->name, item->detail);
    default:
      return NULL;
    }
}

char *
tb_clinic_page_sentences (const TbClinicPage *page)
{
  g_autoptr (GString) text = g_string_new (NULL);

  add_sentence (text, page->slide.headline);
  add_sentence (text, page->slide.body);
  for (guint i = 0; i < page->slide.n_items; i++)
    {
      g_autofree char *sentence = item_sentence (page->slide.kind, &page->items[i]);

      add_sentence (text, sentence);
    }
  add_sentence (text, page->slide.caution);
  return g_string_free (g_steal_pointer (&text), FALSE);
}
