/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-spin.h"

#include "tb-quantity.h"

/* What is no number changes nothing. GTK would go on with whatever is in *value after an error. */
static int
on_input (GtkSpinButton *spin, double *value)
{
  g_autofree char *rest = NULL;
  gboolean read = tb_number_parse (gtk_editable_get_text (GTK_EDITABLE (spin)),
                                   (int) gtk_spin_button_get_digits (spin), value, &rest);

  if (!read || rest[0] != '\0')
    *value = gtk_spin_button_get_value (spin);
  return TRUE;
}

void
tb_spin_take_either_mark (GtkSpinButton *spin)
{
  gtk_spin_button_set_numeric (spin, FALSE);
  g_signal_connect (spin, "input", G_CALLBACK (on_input), NULL);
}
