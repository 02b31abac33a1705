/* Who played on a lane, in a file: "mix", with "seed", "moves" (left out for false), and "bowlers": a list of
 * typical bowlers by their id
 * ("bowler": "track") or described ("name", "delivery", "ball", "skill"), each with a "count".
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-json-reader.h"
#include "tb-json-writer.h"
#include "tb-mix.h"

G_BEGIN_DECLS

/* NULL with the error set if the object is no mix. */
TbMix *tb_mix_read (TbReader *reader, JsonObject *object);
void tb_mix_write (TbJsonWriter *writer, const char *key, const TbMix *mix);

G_END_DECLS
