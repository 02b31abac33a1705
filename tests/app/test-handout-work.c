/* What a page to take home tells, worked out in threads: the facts before what else to try, and only of the
 * study that was asked about last. Without a display.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <locale.h>

#include "../scratch.h"
#include "../waiting.h"
#include "tb-handout-work.h"
#include "tb-task.h"

typedef struct Fixture
{
  TbSession *session;
  TbHandoutWork *work;
  guint facts, next;        /* how often each was told */
  gboolean had_next;        /* when the facts were told */
  gboolean facts_came_last; /* of the two */
} Fixture;

static void
on_facts (Fixture *self)
{
  self->facts++;
  self->had_next = tb_handout_work_get_next (self->work) != NULL;
  self->facts_came_last = TRUE;
}

static void
on_next (Fixture *self)
{
  self->next++;
  self->facts_came_last = FALSE;
}

static void
set_up (Fixture *self, gconstpointer data)
{
  g_autoptr (TbLibrary) library = tb_library_new ();

  self->session = tb_session_new (library);
  self->work = tb_handout_work_new (self->session);
  g_signal_connect_swapped (self->work, "facts", G_CALLBACK (on_facts), self);
  g_signal_connect_swapped (self->work, "next", G_CALLBACK (on_next), self);
}

static void
tear_down (Fixture *self, gconstpointer data)
{
  g_clear_object (&self->work);
  g_object_unref (self->session);
}

static void
set_speed (Fixture *self, double mph)
{
  g_assert_true (
      tb_session_set_field (self->session, tb_field_find (TB_GROUP_DELIVERY, "speed_mph"), mph, NULL));
}

static gboolean
tells_of_the_study (Fixture *self)
{
  return tb_study_equal (tb_handout_work_get_facts (self->work)->study, tb_session_get_study (self->session));
}

static void
finish (Fixture *self)
{
  tb_handout_work_start (self->work);
  g_assert_true (tb_handout_work_is_busy (self->work));
  WAIT_UNTIL (!tb_handout_work_is_busy (self->work));
}

static void
test_order (Fixture *self, gconstpointer data)
{
  g_assert_null (tb_handout_work_get_facts (self->work));
  for (guint round = 1; round <= 2; round++)
    {
      set_speed (self, 17 + round);
      finish (self);
      g_assert_cmpuint (self->facts, ==, round);
      g_assert_cmpuint (self->next, ==, round);
      g_assert_false (self->facts_came_last);
      /* What was to be tried before is nothing to try now. */
      g_assert_false (self->had_next);
      g_assert_true (tells_of_the_study (self));
      g_assert_nonnull (tb_handout_work_get_next (self->work));
    }
}

/* Nothing is told of what was asked before. */
static void
test_last_counts (Fixture *self, gconstpointer data)
{
  for (int speed = 15; speed <= 20; speed++)
    {
      set_speed (self, speed);
      tb_handout_work_start (self->work);
    }
  WAIT_UNTIL (!tb_handout_work_is_busy (self->work));
  g_assert_cmpuint (self->facts, ==, 1);
  g_assert_cmpuint (self->next, ==, 1);
  g_assert_true (tells_of_the_study (self));
}

static void
wait_for_threads (void)
{
  g_assert_true (tb_task_wait_for_all (PATIENCE_S));
  do_pending ();
}

/* The last facts stay. */
static void
test_cancel (Fixture *self, gconstpointer data)
{
  const TbHandoutFacts *facts;

  finish (self);
  facts = tb_handout_work_get_facts (self->work);
  set_speed (self, 20);
  tb_handout_work_start (self->work);
  tb_handout_work_cancel (self->work);
  g_assert_false (tb_handout_work_is_busy (self->work));
  wait_for_threads ();
  g_assert_cmpuint (self->facts, ==, 1);
  g_assert_true (tb_handout_work_get_facts (self->work) == facts);
}

/* What nobody waits for keeps nothing. */
static void
test_left_alone (Fixture *self, gconstpointer data)
{
  gpointer gone = self->work;

  g_object_add_weak_pointer (G_OBJECT (self->work), &gone);
  tb_handout_work_start (self->work);
  g_clear_object (&self->work);
  g_assert_null (gone);
  wait_for_threads ();
  g_assert_cmpuint (self->facts, ==, 0);
}

int
main (int argc, char **argv)
{
  int status;

  /* Not the user's own documents. */
  g_setenv ("XDG_DATA_HOME", scratch_folder (), TRUE);
  setlocale (LC_ALL, "C.UTF-8");
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/handout-work/order", Fixture, NULL, set_up, test_order, tear_down);
  g_test_add ("/handout-work/last-counts", Fixture, NULL, set_up, test_last_counts, tear_down);
  g_test_add ("/handout-work/cancel", Fixture, NULL, set_up, test_cancel, tear_down);
  g_test_add ("/handout-work/left-alone", Fixture, NULL, set_up, test_left_alone, tear_down);
  status = g_test_run ();
  g_assert_true (tb_task_wait_for_all (PATIENCE_S));
  return status;
}
