/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-setup-assign.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "tb-decimal.h"
#include "tb-store-error.h"

/* Keys that stand for a whole document. */
static const struct
{
  const char *key;
  TbDocumentKind kind;
} documents[] = {
  { "bowler", TB_DOCUMENT_BOWLER },
  { "ball", TB_DOCUMENT_BALL },
  { "lane.pattern", TB_DOCUMENT_PATTERN },
};

/* "speed_mph" of "delivery.speed_mph". */
static const TbField *
find_field (const char *key)
{
  for (int group = 0; group < TB_N_GROUPS; group++)
    {
      const char *name = tb_group_name ((TbGroup) group);
      gsize length = strlen (name);

      if (strncmp (key, name, length) == 0 && key[length] == '.')
        return tb_field_find ((TbGroup) group, key + length + 1);
    }
  return NULL;
}

static TbSetup *
assign_field (const TbSetup *setup, const TbField *field, const char *value, GError **error)
{
  TbShot shot = setup->shot;
  void *group = tb_shot_group (&shot, field->group);
  double number = 0;
  gboolean counted = field->kind == TB_FIELD_REAL && tb_decimal_parse (value, &number);
  TbStatus status = counted ? tb_field_set (field, group, number) : tb_field_set_word (field, group, value);
  g_autofree char *sentence = NULL;

  if (status == TB_OK)
    return tb_setup_with_shot (setup, &shot);
  sentence = tb_field_sentence (field, status, number);
  g_set_error_literal (error, TB_STORE_ERROR, TB_STORE_ERROR_VALUE, sentence);
  return NULL;
}

TbSetup *
tb_setup_assign (const TbSetup *setup, TbLibrary *library, const char *key, const char *value, GError **error)
{
  const TbField *field = find_field (key);

  if (field)
    return assign_field (setup, field, value, error);
  for (gsize i = 0; i < G_N_ELEMENTS (documents); i++)
    if (g_str_equal (key, documents[i].key))
      return tb_library_choose (library, setup, documents[i].kind, value, error);
  g_set_error_literal (error, TB_STORE_ERROR, TB_STORE_ERROR_UNKNOWN_KEY, _ ("this key is not known here"));
  return NULL;
}
