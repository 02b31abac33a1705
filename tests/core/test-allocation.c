/* Core asks for no memory while it runs.
 *
 * malloc() and its kin are replaced in this program by ones that count; the count must not move between the beginning
 * of a shot and its end, whatever the shot is like.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdlib.h>
#include "support.h"

/* Shots with fields drawn at random. */
#define RANDOM_SHOTS 60

#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
#  define HAVE_COUNT 0
#elif defined(__has_feature)
#  if __has_feature(address_sanitizer) || __has_feature(thread_sanitizer)
#    define HAVE_COUNT 0
#  endif
#endif
#ifndef HAVE_COUNT
#  define HAVE_COUNT 1
#endif

static volatile unsigned long asked;

#if HAVE_COUNT
/* The C library's own, which its malloc() is another name of. */
void *__libc_malloc (size_t size);
void *__libc_calloc (size_t count, size_t size);
void *__libc_realloc (void *memory, size_t size);
void *__libc_memalign (size_t alignment, size_t size);

void *
malloc (size_t size)
{
  asked++;
  return __libc_malloc (size);
}

void *
calloc (size_t count, size_t size)
{
  asked++;
  return __libc_calloc (count, size);
}

void *
realloc (void *memory, size_t size)
{
  asked++;
  return __libc_realloc (memory, size);
}

void *
aligned_alloc (size_t alignment, size_t size)
{
  asked++;
  return __libc_memalign (alignment, size);
}
#endif

/* The counter counts. */
static void
test_counter (void)
{
  unsigned long before = asked;
  void *volatile memory = malloc (16);

  free (memory);
  g_assert_cmpuint (asked - before, ==, 1);
}

static void
check_silent (CheckRun *run, const TbShot *shot, TbOil *wear)
{
  TbProblem problem;
  double carried;
  unsigned long before = asked;
  TbStatus status = tb_shot_check (shot, &problem);

  if (status == TB_OK)
    status = tb_shot_run_and_wear (shot, run->workspace, &run->path, wear, &carried, &problem);
  g_assert_cmpuint (asked - before, ==, 0);
  if (status != TB_OK)
    g_test_message ("refused: %s", tb_status_sentence (status));
}

static void
put_random (TbShot *shot, guint64 *state)
{
  for (const TbField *field = tb_field_table; field->name; field++)
    if (field->kind != TB_FIELD_CHOICE)
      tb_field_set (field, tb_shot_group (shot, field->group), check_uniform (state, field->min, field->max));
}

static void
test_shots (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = check_house_shot ();
  TbOil *wear = g_memdup2 (check_house_oil (), sizeof *wear);
  guint64 state = 8;

  check_silent (run, &shot, wear);
  shot.options.edgeless = true;
  check_silent (run, &shot, wear);
  for (int i = 0; i < RANDOM_SHOTS; i++)
    {
      put_random (&shot, &state);
      check_silent (run, &shot, wear);
    }
  g_free (wear);
}

static void
test_looking_at_it (void)
{
  g_autoptr (CheckRun) run = check_run_new ();
  TbShot shot = check_house_shot ();
  TbFriction friction;
  TbMotion motion;
  TbSample sample;
  unsigned long before;

  check_run_shot (run, &shot);
  before = asked;
  tb_path_at_time (&run->path, 1.0, &sample);
  tb_path_at_distance (&run->path, 10.0, &sample);
  tb_shot_motion (&shot, &friction, &motion, NULL);
  tb_motion_forces (&motion, &motion.state, false);
  g_assert_cmpuint (asked - before, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  if (HAVE_COUNT)
    {
      g_test_add_func ("/allocation/counter", test_counter);
      g_test_add_func ("/allocation/shots", test_shots);
      g_test_add_func ("/allocation/looking-at-it", test_looking_at_it);
    }
  else
    g_print ("# The sanitizer's own memory functions are in the way.\n");
  return g_test_run ();
}
