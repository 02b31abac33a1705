/* One job at a time: a new question cancels the job that runs and starts when that has ended, so that two
 * never share the processors. Every job has a number; news of an older one are dropped when they arrive.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-room-worker.h"
#include "tb-task.h"

struct TbRoomWorker
{
  gatomicrefcount ref_count;
  TbRoomNews news; /* NULL once the caller has gone */
  gpointer user_data;
  GMainContext *context;
  /* The rest belongs to the caller's thread. */
  guint64 asked;             /* number of the last question; news of others are old */
  GCancellable *cancellable; /* of the job that runs; NULL: none does */
  TbRoomRequest *waiting;    /* asked while another ran */
};

typedef struct Job
{
  TbRoomWorker *worker;
  guint64 number;
  TbRoomRequest *request;
  GCancellable *cancellable;
  TbRoomReport report[TB_N_SIDES]; /* of the thread that works */
} Job;

/* On its way to the caller. */
typedef struct Letter
{
  TbRoomWorker *worker;
  guint64 number;
  TbSide side;
  TbRoomReport report; /* holds a reference to its map */
} Letter;

static void start_waiting (TbRoomWorker *self);

static TbRoomWorker *
worker_ref (TbRoomWorker *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

static TbRoomRequest *
request_copy (const TbRoomRequest *request)
{
  TbRoomRequest *copy = g_memdup2 (request, sizeof *request);

  for (int side = 0; side < TB_N_SIDES; side++)
    if (copy->side[side])
      tb_setup_ref (copy->side[side]);
  return copy;
}

static void
request_free (TbRoomRequest *request)
{
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&request->side[side], tb_setup_unref);
  g_free (request);
}

static void
worker_unref (TbRoomWorker *self)
{
  if (!g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_clear_pointer (&self->waiting, request_free);
  g_clear_object (&self->cancellable);
  g_main_context_unref (self->context);
  g_free (self);
}

static void
job_free (Job *job)
{
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&job->report[side].map, tb_room_map_unref);
  request_free (job->request);
  g_object_unref (job->cancellable);
  worker_unref (job->worker);
  g_free (job);
}

static void
letter_free (gpointer data)
{
  Letter *letter = data;

  g_clear_pointer (&letter->report.map, tb_room_map_unref);
  worker_unref (letter->worker);
  g_free (letter);
}

static gboolean
letter_deliver (gpointer data)
{
  Letter *letter = data;
  TbRoomWorker *worker = letter->worker;

  if (worker->news && letter->number == worker->asked)
    worker->news (letter->side, &letter->report, worker->user_data);
  return G_SOURCE_REMOVE;
}

/* From the working thread. A source of its own: g_main_context_invoke() would run it here while the caller's
 * loop is not running. */
static void
post (Job *job, TbSide side)
{
  g_autoptr (GSource) source = g_idle_source_new ();
  Letter *letter = g_new0 (Letter, 1);

  letter->worker = worker_ref (job->worker);
  letter->number = job->number;
  letter->side = side;
  letter->report = job->report[side];
  if (letter->report.map)
    tb_room_map_ref (letter->report.map);
  g_source_set_priority (source, G_PRIORITY_DEFAULT);
  g_source_set_callback (source, letter_deliver, letter, letter_free);
  g_source_attach (source, job->worker->context);
}

typedef struct Step
{
  Job *job;
  TbSide side;
} Step;

static void
map_grew (TbRoomMap *map, gpointer user_data)
{
  Step *step = user_data;
  TbRoomReport *report = &step->job->report[step->side];

  g_clear_pointer (&report->map, tb_room_map_unref);
  report->map = tb_room_map_ref (map);
  post (step->job, step->side);
}

typedef void (*Work) (Job *job, TbSide side);

static void
work_map (Job *job, TbSide side)
{
  Step step = { job, side };
  TbRoomMap *map
      = tb_room_map_new (job->request->side[side], job->request->axis, 0, map_grew, &step, job->cancellable);

  g_clear_pointer (&map, tb_room_map_unref);
}

static void
work_widths (Job *job, TbSide side)
{
  const TbRoomRequest *request = job->request;
  TbRoomReport *report = &job->report[side];

  for (int i = 0; i < TB_ROOM_AXES; i++)
    if (!tb_room_width (request->side[side], &request->axis[i], 0, &report->width[i], job->cancellable))
      return;
  report->hold = tb_hold (request->side[side], request->hold_miss, request->hold_boards);
  report->has_widths = TRUE;
  post (job, side);
}

static void
work_chance (Job *job, TbSide side)
{
  const TbRoomRequest *request = job->request;
  TbRoomReport *report = &job->report[side];

  if (request->shots == 0)
    return;
  report->has_chance = tb_pocket_chance (request->side[side], &request->scatter, request->seed,
                                         request->shots, 0, &report->chance, job->cancellable);
  if (report->has_chance)
    post (job, side);
}

/* "After" first: it is what changes under the hand. */
static void
work (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  static const Work works[] = { work_map, work_widths, work_chance };
  Job *job = data;

  for (guint i = 0; i < G_N_ELEMENTS (works); i++)
    for (int side = TB_N_SIDES - 1; side >= 0; side--)
      if (job->request->side[side] && (i == 0 || !g_cancellable_is_cancelled (job->cancellable)))
        works[i](job, (TbSide)side);
  g_task_return_boolean (task, TRUE);
}

static void
job_done (GObject *source, GAsyncResult *result, gpointer user_data)
{
  TbRoomWorker *self = user_data;

  g_clear_object (&self->cancellable);
  start_waiting (self);
  worker_unref (self);
}

static void
start (TbRoomWorker *self, TbRoomRequest *request)
{
  g_autoptr (GTask) task = NULL;
  Job *job = g_new0 (Job, 1);

  self->cancellable = g_cancellable_new ();
  job->worker = worker_ref (self);
  job->number = self->asked;
  job->request = request;
  job->cancellable = g_object_ref (self->cancellable);
  task = g_task_new (NULL, NULL, job_done, worker_ref (self));
  g_task_set_task_data (task, job, (GDestroyNotify)job_free);
  tb_task_run (task, work);
}

static void
start_waiting (TbRoomWorker *self)
{
  TbRoomRequest *request = g_steal_pointer (&self->waiting);

  if (request)
    start (self, request);
}

TbRoomWorker *
tb_room_worker_new (TbRoomNews news, gpointer user_data)
{
  TbRoomWorker *self = g_new0 (TbRoomWorker, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->news = news;
  self->user_data = user_data;
  self->context = g_main_context_ref_thread_default ();
  return self;
}

void
tb_room_worker_ask (TbRoomWorker *self, const TbRoomRequest *request)
{
  self->asked++;
  g_clear_pointer (&self->waiting, request_free);
  if (!self->cancellable)
    {
      start (self, request_copy (request));
      return;
    }
  g_cancellable_cancel (self->cancellable);
  self->waiting = request_copy (request);
}

void
tb_room_worker_stop (TbRoomWorker *self)
{
  self->asked++;
  g_clear_pointer (&self->waiting, request_free);
  if (self->cancellable)
    g_cancellable_cancel (self->cancellable);
}

gboolean
tb_room_worker_is_busy (TbRoomWorker *self)
{
  return self->cancellable != NULL;
}

void
tb_room_worker_free (TbRoomWorker *self)
{
  tb_room_worker_stop (self);
  self->news = NULL;
  worker_unref (self);
}
