/* Numbers as people read and type them: in their units, with their decimal sign.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-session.h"

G_BEGIN_DECLS

/* How a field's numbers are shown. shown = value in the field's unit × factor. */
typedef struct TbQuantity
{
  const TbField *field;
  const char *unit; /* untranslated; "" where there is none */
  double factor;
  int digits;
} TbQuantity;

TbQuantity tb_quantity_for_field (const TbField *field, TbUnits units);

/* A number with the locale's decimal sign and a true minus sign; never "−0". */
char *tb_number_format (double number, int digits);
/* The same with a plus sign where it is positive. */
char *tb_number_format_signed (double number, int digits);
/* A number with its unit, as it stands in running text: "17.0 mph", "50°". unit is untranslated. */
char *tb_number_with_unit (double number, int digits, const char *unit);

/* Reads a number at the start of what somebody typed, with a point or a comma as its decimal mark whatever
 * the locale, and with a true minus or a hyphen. `digits` is how many the number is shown with: where there
 * are none, three digits behind a mark are thousands. `rest` is what follows, without spaces at its ends, to
 * be freed; FALSE if there is no number. */
gboolean tb_number_parse (const char *text, int digits, double *number, char **rest);

/* A number as shown to the field's unit; the ends of the range are met to the digit shown. FALSE outside of
 * it. */
gboolean tb_quantity_from_shown (const TbQuantity *self, double shown, double *value);
/* The value (field's unit) with its unit; a word where the field has one for it ("polish"). */
char *tb_quantity_format (const TbQuantity *self, double value);
/* Reads what somebody typed: "17", "17.5 mph", "28 km/h", "polish". NULL and the value in the field's unit,
 * or one sentence that says what was expected. The value is inside the field's range. */
char *tb_quantity_parse (const TbQuantity *self, const char *text, double *value);

G_END_DECLS
