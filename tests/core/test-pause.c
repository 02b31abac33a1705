/* A run that is paused, copied and continued ends in the same bits as one that was not.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>
#include "support.h"

static TbMotion
lofted_motion (TbFriction *friction)
{
  TbShot shot = check_house_shot ();
  TbMotion motion;

  shot.delivery.release_height = tb_metres_from_in (4.0);
  shot.ball.top_weight = tb_kilograms_from_oz (2.0);
  check_status ("motion", tb_shot_motion (&shot, friction, &motion, NULL), TB_OK);
  return motion;
}

static void
check_same (const TbPath *a, const TbPath *b)
{
  g_assert_cmpint (a->count, ==, b->count);
  g_assert_cmpint (a->result, ==, b->result);
  g_assert_cmpint (memcmp (&a->measures, &b->measures, sizeof a->measures), ==, 0);
  for (int i = 0; i < a->count; i++)
    {
      const TbSample *s = &a->samples[i], *t = &b->samples[i];

      g_assert_cmpmem (&s->position, sizeof s->position, &t->position, sizeof t->position);
      g_assert_cmpmem (&s->attitude, sizeof s->attitude, &t->attitude, sizeof t->attitude);
      g_assert_cmpmem (&s->spin, sizeof s->spin, &t->spin, sizeof t->spin);
      g_assert_cmpfloat (s->time, ==, t->time);
    }
}

static void
test_in_pieces (void)
{
  g_autoptr (CheckRun) through = check_run_new ();
  g_autoptr (CheckRun) pieces = check_run_new ();
  TbFriction friction;
  TbMotion motion = lofted_motion (&friction);
  gboolean over = FALSE;

  check_run_motion (through, &motion);
  check_status ("begin", tb_motion_begin (&motion, pieces->workspace, &pieces->path), TB_OK);
  for (double until = 0.1; until < 60.0 && !over; until += 0.13)
    over = tb_motion_continue (pieces->workspace, until);
  g_assert_true (over);
  check_status ("end", tb_motion_end (pieces->workspace), TB_OK);
  check_same (&through->path, &pieces->path);
}

/* The path so far, in memory of its own. */
static void
copy_path (TbPath *to, const TbPath *from)
{
  TbSample *samples = to->samples;

  memcpy (samples, from->samples, (gsize)from->count * sizeof *samples);
  *to = *from;
  to->samples = samples;
}

/* Paused in flight, while sliding and in the roll, and gone on with from a copy, twice. */
static void
check_copied_at (double pause)
{
  g_autoptr (CheckRun) through = check_run_new ();
  g_autoptr (CheckRun) first = check_run_new ();
  TbFriction friction;
  TbMotion motion = lofted_motion (&friction);

  check_run_motion (through, &motion);
  check_status ("begin", tb_motion_begin (&motion, first->workspace, &first->path), TB_OK);
  g_assert_false (tb_motion_continue (first->workspace, pause));
  for (int i = 0; i < 2; i++)
    {
      g_autoptr (CheckRun) copy = check_run_new ();

      copy_path (&copy->path, &first->path);
      tb_workspace_copy (copy->workspace, first->workspace, &copy->path);
      g_assert_true (tb_motion_continue (copy->workspace, INFINITY));
      check_status ("end of a copy", tb_motion_end (copy->workspace), TB_OK);
      check_same (&through->path, &copy->path);
    }
  g_assert_true (tb_motion_continue (first->workspace, INFINITY));
  check_status ("end", tb_motion_end (first->workspace), TB_OK);
  check_same (&through->path, &first->path);
}

static void
test_copied (void)
{
  check_copied_at (0.05);
  check_copied_at (1.0);
  check_copied_at (2.5);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pause/in-pieces", test_in_pieces);
  g_test_add_func ("/pause/copied", test_copied);
  return g_test_run ();
}
