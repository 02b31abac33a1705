/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "tb-request.h"

G_BEGIN_DECLS

/* --picture: draws the runs of the study into a file. */
gboolean tb_picture_command (TbRequest *request, const char *filename, GError **error);

G_END_DECLS
