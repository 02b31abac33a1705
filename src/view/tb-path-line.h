/* A run's line in a picture, from its samples.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-core.h"
#include "tb-draw.h"

G_BEGIN_DECLS

/* Where a sample is in the picture; `data` is the caller's. */
typedef TbPoint (*TbSamplePoint) (const TbPath *path, const TbSample *sample, const void *data);

/* The part of the run up to a distance down the lane, m, that is in the air, or the part that is not. Bends are
 * smooth: between samples that are far apart in the picture the path is interpolated. */
TbPolyline *tb_path_line (const TbPath *path, gboolean flight, double end_y, TbSamplePoint point, const void *data);

G_END_DECLS
