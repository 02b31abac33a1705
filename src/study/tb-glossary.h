/* The trade's words, each in a sentence or two, and which inputs and measures they belong to.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define TB_TERM_MAX_SEE 5
#define TB_TERM_MAX_NAMES 6

typedef struct TbTerm
{
  const char *id;                       /* "rev-rate"; never shown */
  const char *word;                     /* for people, untranslated */
  const char *text;                     /* a sentence or two, untranslated */
  const char *see[TB_TERM_MAX_SEE + 1]; /* ids of words that belong to it; ends with NULL */
  /* Fields and measures that the word explains, by their names in tb_field_table and tb_measure_table; ends
   * with NULL. */
  const char *names[TB_TERM_MAX_NAMES + 1];
} TbTerm;

/* By their English words; ends with a NULL id. */
extern const TbTerm tb_glossary[];

/* NULL if there is no such id. */
const TbTerm *tb_glossary_find (const char *id);
/* The word behind a field or a measure; NULL for a name that is neither. */
const TbTerm *tb_glossary_for_name (const char *name);
/* All of them as the reader's language sorts them. */
GPtrArray *tb_glossary_sorted (void);
/* Whether what somebody looks for ("axis", "rev ra") is in the word or in its text, in the reader's language,
 * whatever the case and the accents. An empty search finds everything. */
gboolean tb_term_matches_word (const TbTerm *self, const char *search);
gboolean tb_term_matches (const TbTerm *self, const char *search);

G_END_DECLS
