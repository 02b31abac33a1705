/* A sliding, spinning ball on a plane by a packaged rigid-body engine, the Open Dynamics Engine (R. Smith,
 * "Open Dynamics Engine User Guide"). Its friction directions are set along and across the slip. The engine
 * takes first-order steps, so the difference is reported and only loosely bounded.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <ode/ode.h>
#include "support.h"

#define MU 0.12
#define ENGINE_STEP 1e-4

typedef struct Engine
{
  dWorldID world;
  dJointGroupID contacts;
  dBodyID ball;
  double radius;
} Engine;

static void
engine_init (Engine *engine, const TbMotion *motion)
{
  const TbBody *body = &motion->body;
  const TbState *state = &motion->state;
  TbVec3 spin = tb_state_spin (state, body);
  dMass mass;

  dInitODE2 (0);
  engine->world = dWorldCreate ();
  dWorldSetGravity (engine->world, 0, 0, -TB_STANDARD_GRAVITY);
  engine->contacts = dJointGroupCreate (0);
  engine->ball = dBodyCreate (engine->world);
  engine->radius = body->radius;
  dMassSetParameters (&mass, body->mass, 0, 0, 0, body->moment.x, body->moment.y, body->moment.z, 0, 0, 0);
  dBodySetMass (engine->ball, &mass);
  dBodySetPosition (engine->ball, state->position.x, state->position.y, body->radius);
  dBodySetLinearVel (engine->ball, state->velocity.x, state->velocity.y, 0);
  dBodySetAngularVel (engine->ball, spin.x, spin.y, spin.z);
}

static void
engine_free (Engine *engine)
{
  dJointGroupDestroy (engine->contacts);
  dWorldDestroy (engine->world);
  dCloseODE ();
}

static void
engine_slip (const Engine *engine, double slip[2])
{
  const dReal *v = dBodyGetLinearVel (engine->ball), *w = dBodyGetAngularVel (engine->ball);

  slip[0] = v[0] - engine->radius * w[1];
  slip[1] = v[1] + engine->radius * w[0];
}

static void
engine_step (const Engine *engine)
{
  const dReal *p = dBodyGetPosition (engine->ball);
  double slip[2], size;
  dContact contact = { 0 };
  dJointID joint;

  engine_slip (engine, slip);
  size = hypot (slip[0], slip[1]);
  contact.geom.pos[0] = p[0];
  contact.geom.pos[1] = p[1];
  contact.geom.normal[2] = 1.0;
  contact.geom.depth = engine->radius - p[2];
  contact.surface.mode = dContactApprox1 | dContactFDir1;
  contact.surface.mu = MU;
  contact.fdir1[0] = size > 0.0 ? slip[0] / size : 1.0;
  contact.fdir1[1] = size > 0.0 ? slip[1] / size : 0.0;
  joint = dJointCreateContact (engine->world, engine->contacts, &contact);
  dJointAttach (joint, engine->ball, NULL);
  dWorldStep (engine->world, ENGINE_STEP);
  dJointGroupEmpty (engine->contacts);
}

static void
test_slide_and_roll (void)
{
  const CheckThrow release = { .speed = 8.0, .heading = -1.5, .rpm = 400.0, .rotation = 45.0, .tilt = 15.0 };
  g_autoptr (CheckRun) run = check_run_new ();
  TbBody body = check_plain_ball ();
  const TbSample *end;
  CheckLane lane;
  TbMotion motion;
  Engine engine;
  const dReal *p, *v;

  check_lane_uniform (&lane, MU);
  motion = check_motion (&body, &lane.friction);
  motion.end_y = 1e3;
  motion.time_limit = 2.3;
  motion.options.edgeless = true;
  check_throw (&motion, &release);
  check_run_motion (run, &motion);
  end = check_last (run);
  check_true ("rolls at the end", end->phase == TB_PHASE_ROLL);

  engine_init (&engine, &motion);
  for (int i = 0; i < (int)lrint (motion.time_limit / ENGINE_STEP); i++)
    engine_step (&engine);
  p = dBodyGetPosition (engine.ball);
  v = dBodyGetLinearVel (engine.ball);
  check_near ("down the lane, m", p[1], end->position.y, 0.01);
  check_near ("across the lane, boards", p[0] / TB_BOARD_WIDTH, end->position.x / TB_BOARD_WIDTH, 0.1);
  check_near ("heading, °", tb_deg_from_radians (atan2 (-v[0], v[1])),
              tb_deg_from_radians (tb_sample_heading (end)), 0.05);
  engine_free (&engine);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rigid-body-engine/slide-and-roll", test_slide_and_roll);
  return g_test_run ();
}
