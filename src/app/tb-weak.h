/* A weak reference to hand to what is under way: it keeps nothing that has been closed.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

G_BEGIN_DECLS

/* For tb_weak_take(), once. */
gpointer tb_weak_new (gpointer object);
/* A new reference to the object, and the end of the weak one; NULL where the object has gone. */
gpointer tb_weak_take (gpointer weak);

G_END_DECLS
