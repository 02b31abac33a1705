/* The pages of Help that are plain text: how the ball moves, what the model is measured against, sources,
 * cautions.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A paragraph that begins with this is a heading, over those that follow. */
#define TB_HELP_HEADING '#'

/* All but the name are untranslated. */
typedef struct TbHelpText
{
  const char *name; /* of the page, for programs */
  const char *title;
  const char *const *paragraphs; /* end with NULL */
} TbHelpText;

/* In the order of Help; ends with a NULL name. */
extern const TbHelpText tb_help_texts[];
