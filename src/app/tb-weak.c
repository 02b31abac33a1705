/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-weak.h"

gpointer
tb_weak_new (gpointer object)
{
  GWeakRef *weak = g_new (GWeakRef, 1);

  g_weak_ref_init (weak, object);
  return weak;
}

gpointer
tb_weak_take (gpointer weak)
{
  gpointer object = g_weak_ref_get (weak);

  g_weak_ref_clear (weak);
  g_free (weak);
  return object;
}
