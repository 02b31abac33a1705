/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-loft-trial.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-batch.h"
#include "tb-task.h"

/* Numbers that are as near as this are the preset's. */
#define SAME 0.01

const TbLoftPreset tb_loft_presets[] = {
  { "placed", N_ ("Placed at the line"), N_ ("Laid on the lane at the foul line, without any drop."), 0, 0,
    0 },
  { "usual", N_ ("Usual"), N_ ("Let go 6 in past the line and 2 in up, level."), 6, 2, 0 },
  { "flat", N_ ("Flat over the line"), N_ ("Carried far out over the line and let go level."), 30, 2, 0 },
  { "arc", N_ ("High arc"), N_ ("Thrown upwards, so that it comes down well past the line."), 24, 4, 6 },
  { NULL, NULL, NULL, 0, 0, 0 },
};

TbLoftThrow
tb_loft_throw_of (const TbDelivery *delivery)
{
  return (TbLoftThrow){ .reach = delivery->loft_reach,
                        .height = delivery->release_height,
                        .angle = delivery->loft_angle };
}

static void
let_go (TbDelivery *delivery, const TbLoftThrow *loft)
{
  delivery->loft_reach = loft->reach;
  delivery->release_height = loft->height;
  delivery->loft_angle = loft->angle;
}

TbSetup *
tb_setup_with_loft (const TbSetup *setup, const TbLoftThrow *loft)
{
  TbShot shot = setup->shot;

  let_go (&shot.delivery, loft);
  return tb_setup_with_shot (setup, &shot);
}

const TbLoftPreset *
tb_loft_preset_find (const char *id)
{
  for (const TbLoftPreset *preset = tb_loft_presets; preset->id; preset++)
    if (g_str_equal (preset->id, id))
      return preset;
  return NULL;
}

TbLoftThrow
tb_loft_preset_throw (const TbLoftPreset *preset)
{
  return (TbLoftThrow){ .reach = tb_metres_from_in (preset->reach_in),
                        .height = tb_metres_from_in (preset->height_in),
                        .angle = tb_radians_from_deg (preset->angle_deg) };
}

const TbLoftPreset *
tb_loft_preset_of (const TbLoftThrow *loft)
{
  for (const TbLoftPreset *preset = tb_loft_presets; preset->id; preset++)
    if (fabs (tb_in_from_metres (loft->reach) - preset->reach_in) < SAME
        && fabs (tb_in_from_metres (loft->height) - preset->height_in) < SAME
        && fabs (tb_deg_from_radians (loft->angle) - preset->angle_deg) < SAME)
      return preset;
  return NULL;
}

/* Of the centre of mass, which is as good as the sphere's here, and of the spin, J. */
static double
energy_of_motion (const TbSample *sample, const TbBody *body)
{
  TbVec3 spin = tb_quat_rotate_back (sample->attitude, sample->spin);
  double along = body->mass * tb_vec3_dot (sample->velocity, sample->velocity);

  return 0.5
         * (along + body->moment.x * spin.x * spin.x + body->moment.y * spin.y * spin.y
            + body->moment.z * spin.z * spin.z);
}

double
tb_run_landing_share (const TbRun *run)
{
  const TbPath *path = &run->path;

  if (run->status != TB_OK || path->count == 0)
    return (double) NAN;
  return path->measures.landing_loss / energy_of_motion (&path->samples[0], &path->body);
}

/* Curves. */

typedef struct CurveJob
{
  TbSetup *const *lane;
  const TbLoftThrow *loft;
  const TbLoftCurve *curve;
} CurveJob;

/* All of the fresh lane first. A lane that is not known is thrown on as if it were fresh, and left out after.
 */
static void
make_shot (TbShot *shot, guint index, gpointer user_data)
{
  const CurveJob *job = user_data;
  const TbSetup *lane = job->lane[index / TB_LOFT_POINTS];
  TbLoftThrow loft = *job->loft;

  *shot = (lane ? lane : job->lane[TB_LOFT_FRESH])->shot;
  loft.reach = job->curve->reach[index % TB_LOFT_POINTS];
  let_go (&shot->delivery, &loft);
  shot->options.edgeless = true;
}

static void
lay_scale (TbLoftCurve *curve)
{
  const TbField *field = tb_field_find (TB_GROUP_DELIVERY, "loft_reach_in");

  for (int i = 0; i < TB_LOFT_POINTS; i++)
    curve->reach[i] = field->to_si (field->min + (field->max - field->min) * i / (TB_LOFT_POINTS - 1));
}

gboolean
tb_loft_curve_fill (TbLoftCurve *curve,
                    TbSetup *const lane[TB_N_LOFT_LANES],
                    const TbLoftThrow *loft,
                    GCancellable *cancellable)
{
  CurveJob job = { .lane = lane, .loft = loft, .curve = curve };
  g_autofree TbBatchItem *items = g_new (TbBatchItem, TB_N_LOFT_LANES * TB_LOFT_POINTS);

  lay_scale (curve);
  if (!tb_batch_run (TB_N_LOFT_LANES * TB_LOFT_POINTS, make_shot, &job, items, 0, cancellable))
    return FALSE;
  for (int k = 0; k < TB_N_LOFT_LANES; k++)
    for (int i = 0; i < TB_LOFT_POINTS; i++)
      {
        const TbBatchItem *item = &items[k * TB_LOFT_POINTS + i];

        curve->hook[k][i] = item->status == TB_OK && lane[k] ? item->measures.hook : (double) NAN;
      }
  return TRUE;
}

typedef struct Order
{
  TbSetup *lane[TB_N_LOFT_LANES];
  TbLoftThrow loft[TB_N_LOFTS];
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  for (int k = 0; k < TB_N_LOFT_LANES; k++)
    g_clear_pointer (&order->lane[k], tb_setup_unref);
  g_free (order);
}

static void
work (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Order *order = data;
  g_autofree TbLoftCurve *curves = g_new0 (TbLoftCurve, TB_N_LOFTS);

  for (int i = 0; i < TB_N_LOFTS; i++)
    if (!tb_loft_curve_fill (&curves[i], order->lane, &order->loft[i], cancellable))
      {
        g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_CANCELLED, "cancelled");
        return;
      }
  g_task_return_pointer (task, g_steal_pointer (&curves), g_free);
}

void
tb_loft_curves_new_async (TbSetup *const lane[TB_N_LOFT_LANES],
                          const TbLoftThrow loft[TB_N_LOFTS],
                          GCancellable *cancellable,
                          GAsyncReadyCallback callback,
                          gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Order *order = g_new0 (Order, 1);

  for (int k = 0; k < TB_N_LOFT_LANES; k++)
    order->lane[k] = lane[k] ? tb_setup_ref (lane[k]) : NULL;
  for (int i = 0; i < TB_N_LOFTS; i++)
    order->loft[i] = loft[i];
  g_task_set_task_data (task, order, order_free);
  tb_task_run (task, work);
}

TbLoftCurve *
tb_loft_curves_new_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
