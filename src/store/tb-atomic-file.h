/* Writing a file so that a crash, a power cut or a full disk leaves the old file or the new one, whole.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <sys/types.h>

G_BEGIN_DECLS

/* The calls to the system that can fail, so that a test can make each of them fail. */
typedef struct TbFileCalls
{
  int (*make_temporary) (char *pattern, int flags, int mode); /* as g_mkstemp_full() */
  ssize_t (*write) (int fd, const void *bytes, size_t length);
  int (*sync) (int fd);
  int (*close) (int fd);
  int (*rename) (const char *from, const char *to);
  int (*sync_folder) (const char *folder);
} TbFileCalls;
/* The system's own. */
extern const TbFileCalls tb_file_calls;

/* Writes a temporary file beside the old one, syncs it, renames it over the old one and syncs the folder. A
 * symbolic link is followed and kept; anything that is not an ordinary file is refused. calls NULL: the
 * system's. On an error (TB_STORE_ERROR_WRITE, a clause without the file's name) the old file is as it was,
 * and nothing is left behind; only when syncing the folder fails is the new file there already, and may be
 * lost if the power fails now. */
gboolean
tb_atomic_write (const char *path, const void *bytes, gsize length, const TbFileCalls *calls, GError **error);

G_END_DECLS
