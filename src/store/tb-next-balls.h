/* The library's balls as something that could be thrown instead.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-library.h"
#include "tb-next.h"

G_BEGIN_DECLS

/* All of them, drilled for the setup's bowler as the library does it: TbNextBall; ids and names are the
 * library's and last until it is read again. */
GArray *tb_next_balls (TbLibrary *library, const TbSetup *setup);

G_END_DECLS
