/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-atomic-file.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include "tb-store-error.h"

/* What a new file may be, before the user's mask. */
#define NEW_FILE_MODE 0666
/* The bits of an old file's mode that are kept. */
#define KEPT_MODE 0777

static int
sync_folder (const char *folder)
{
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  int result;

  if (fd < 0)
    return -1;
  result = fsync (fd);
  /* Some file systems cannot sync a folder, and say so; they have nothing to lose. */
  if (result < 0 && (errno == EINVAL || errno == ENOTSUP))
    result = 0;
  close (fd);
  return result;
}

const TbFileCalls tb_file_calls = {
  .make_temporary = g_mkstemp_full,
  .write = write,
  .sync = fsync,
  .close = close,
  .rename = rename,
  .sync_folder = sync_folder,
};

static gboolean
fail (GError **error, int code)
{
  g_set_error (error, TB_STORE_ERROR, TB_STORE_ERROR_WRITE, _ ("the file cannot be saved: %s"),
               g_strerror (code));
  return FALSE;
}

static gboolean
write_all (int fd, const char *bytes, gsize length, const TbFileCalls *calls)
{
  while (length > 0)
    {
      ssize_t written = calls->write (fd, bytes, length);

      if (written < 0 && errno == EINTR)
        continue;
      if (written < 0)
        return FALSE;
      bytes += written;
      length -= (gsize) written;
    }
  return TRUE;
}

/* A file that is replaced keeps who may read it. */
static gboolean
keep_mode (int fd, const char *target)
{
  struct stat old;

  return stat (target, &old) < 0 || fchmod (fd, old.st_mode & KEPT_MODE) == 0;
}

typedef struct Job
{
  const char *target;
  const char *temporary;
  const char *bytes;
  gsize length;
} Job;

/* Fills, syncs and closes the temporary file. */
static gboolean
fill (int fd, const Job *job, const TbFileCalls *calls)
{
  gboolean filled = keep_mode (fd, job->target) && write_all (fd, job->bytes, job->length, calls)
                    && calls->sync (fd) == 0;
  int problem = errno;

  if (calls->close (fd) < 0 && filled)
    return FALSE;
  errno = problem;
  return filled;
}

static gboolean
replace (const Job *job, int fd, const TbFileCalls *calls, GError **error)
{
  if (fill (fd, job, calls) && calls->rename (job->temporary, job->target) == 0)
    return TRUE;
  fail (error, errno);
  g_unlink (job->temporary);
  return FALSE;
}

/* Where the bytes really go: the end of a chain of links, or the path itself if nothing is there yet. */
static char *
find_target (const char *path, GError **error)
{
  g_autofree char *absolute = g_canonicalize_filename (path, NULL);
  char *resolved = realpath (absolute, NULL);
  struct stat info;

  if (!resolved)
    {
      if (errno == ENOENT && lstat (absolute, &info) < 0)
        return g_steal_pointer (&absolute);
      fail (error, errno);
      return NULL;
    }
  g_free (absolute);
  absolute = g_strdup (resolved);
  free (resolved);
  if (stat (absolute, &info) == 0 && S_ISREG (info.st_mode))
    return g_steal_pointer (&absolute);
  g_set_error_literal (error, TB_STORE_ERROR, TB_STORE_ERROR_WRITE,
                       _ ("the file cannot be saved: there is something that is not an ordinary file"));
  return NULL;
}

gboolean
tb_atomic_write (const char *path, const void *bytes, gsize length, const TbFileCalls *calls, GError **error)
{
  g_autofree char *target = find_target (path, error);
  g_autofree char *folder = target ? g_path_get_dirname (target) : NULL;
  g_autofree char *temporary = folder ? g_build_filename (folder, ".tenboard-XXXXXX", NULL) : NULL;
  Job job = { .target = target, .temporary = temporary, .bytes = bytes, .length = length };
  int fd;

  if (!target)
    return FALSE;
  if (!calls)
    calls = &tb_file_calls;
  fd = calls->make_temporary (temporary, O_WRONLY | O_CLOEXEC, NEW_FILE_MODE);
  if (fd < 0)
    return fail (error, errno);
  if (!replace (&job, fd, calls, error))
    return FALSE;
  if (calls->sync_folder (folder) < 0)
    return fail (error, errno);
  return TRUE;
}
