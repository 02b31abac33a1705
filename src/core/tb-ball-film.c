/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-ball-film.h"

#include <string.h>
#include "tb-spline.h"

/* The ball turns by this before what it took up is on it, rad: well past the patch, well short of a turn. */
#define EXCHANGE_DELAY (TB_PI / 3)

static inline void
map_place (const BallFilm *self, TbVec3 contact, MapPlace *place)
{
  double height = tb_vec3_dot (contact, self->axis);
  double row = fmin (fmax (0.5 * (height + 1), 0), 1) * BALL_FILM_ROWS - 0.5;
  double angle = atan2 (tb_vec3_dot (contact, self->second), tb_vec3_dot (contact, self->first));
  double column = (angle / (2 * TB_PI) + 0.5) * BALL_FILM_COLUMNS;
  int row_below = (int) (row + 1) - 1, column_below = (int) (column + 1) - 1; /* as floor(), both being over −1 */
  place->row = row_below - 1 + BALL_FILM_PAD;
  place->column = (column_below - 1 + BALL_FILM_COLUMNS) % BALL_FILM_COLUMNS;
  spline_weights (row - row_below, place->across);
  spline_weights (column - column_below, place->around);
}

void
ball_film_init (BallFilm *self, const TbFriction *friction, const TbAssumed *assumed, const TbBody *body, TbOil *change,
                double full_step)
{
  memset (self->cell, 0, sizeof self->cell);
  TbVec3 any = fabs (body->pap.x) < 0.5 ? tb_vec3 (1, 0, 0) : tb_vec3 (0, 1, 0);
  self->axis = body->pap;
  self->first = tb_vec3_unit (tb_vec3_cross (self->axis, any), any);
  self->second = tb_vec3_cross (self->axis, self->first);
  self->cell_area = 4 * TB_PI * body->radius * body->radius / (BALL_FILM_ROWS * BALL_FILM_COLUMNS);
  self->absorption = friction->cover.absorption;
  self->pick_up = assumed->pick_up;
  self->lay_down = assumed->lay_down;
  self->held = self->taken = self->left = self->on_surface = 0;
  self->wet = false;
  self->full_step = full_step;
  self->looks = 0;
  self->look_length = 0;
  self->queue_start = self->queue_count = 0;
  self->change = change;
  self->friction = friction;
  if (change)
    tb_oil_clear (change);
}

static double
map_read (const BallFilm *self, const MapPlace *place)
{
  double film = 0;
  for (int i = 0; i < 4; i++)
    {
      const double *cell = &self->cell[place->row + i][place->column];
      film += place->across[i]
              * (place->around[0] * cell[0] + place->around[1] * cell[1] + place->around[2] * cell[2]
                 + place->around[3] * cell[3]);
    }
  return film;
}

/* The classical Runge–Kutta step gives the right speed and the right way for a force that runs straight between the step's
 * ends; of all straight lines the one with the mean and the first moment of what was seen. */
static void
weigh_looks (BallFilm *self)
{
  int n = self->looks;
  /* Σ (s − 1/2)² over n evenly spaced places, over n, is (1 − 1/n²)/12. */
  double steepness = n > 1 ? 12.0 / (1 - 1.0 / (n * n)) : 0;
  for (int i = 0; i < n; i++)
    {
      double tilt = 0.5 * steepness * ((i + 0.5) / n - 0.5);
      self->weights[0][i] = (1 - tilt) / n;
      self->weights[1][i] = 1.0 / n;
      self->weights[2][i] = (1 + tilt) / n;
    }
}

void
ball_film_look (BallFilm *self, TbQuat attitude, TbVec3 spin, double time, double h)
{
  TbMat3 m = tb_quat_to_mat3 (attitude);
  int looks = h >= self->full_step ? BALL_FILM_LOOKS : 1 + (int) (h / self->full_step * (BALL_FILM_LOOKS - 1));
  if (looks != self->looks)
    {
      self->looks = looks;
      weigh_looks (self);
    }
  self->look_length = h;
  /* Seen from the ball, the contact turns backwards about the spin. */
  double each = h / self->looks;
  TbVec3 back = tb_vec3_scale (tb_mat3_apply_transposed (&m, spin), -each);
  TbMat3 half = tb_quat_to_mat3 (tb_quat_from_rotation (tb_vec3_scale (back, 0.5)));
  TbMat3 whole = tb_quat_to_mat3 (tb_quat_from_rotation (back));
  TbVec3 contact = tb_mat3_apply (&half, tb_vec3_scale (m.row[2], -1));
  self->growth = exp (self->absorption * (time + 0.5 * h));
  for (int i = 0; i < self->looks; i++)
    {
      map_place (self, contact, &self->ahead[i]);
      self->films[i] = self->wet ? fmax (map_read (self, &self->ahead[i]), 0) / self->growth : 0; /* rounding may be below */
      contact = tb_mat3_apply (&whole, contact);
    }
}

/* A row past a pole is the mirror image of the row before it. */
static inline int
fold_row (int row)
{
  row -= BALL_FILM_PAD;
  row = row < 0 ? -1 - row : row >= BALL_FILM_ROWS ? 2 * BALL_FILM_ROWS - 1 - row : row;
  return row + BALL_FILM_PAD;
}

static void
mirror_poles (BallFilm *self)
{
  for (int i = 0; i < BALL_FILM_PAD; i++)
    {
      memcpy (self->cell[BALL_FILM_PAD - 1 - i], self->cell[BALL_FILM_PAD + i], sizeof self->cell[0]);
      memcpy (self->cell[BALL_FILM_PAD + BALL_FILM_ROWS + i], self->cell[BALL_FILM_PAD + BALL_FILM_ROWS - 1 - i],
              sizeof self->cell[0]);
    }
}

/* The columns that repeat. */
static void
wrap_rows (BallFilm *self, int row)
{
  for (int i = 0; i < 4; i++)
    for (int k = 0; k < BALL_FILM_WRAP; k++)
      self->cell[row + i][BALL_FILM_COLUMNS + k] = self->cell[row + i][k];
}

/* The same where rows or columns repeat: what goes is a share of the map as it was; only then is anything written. */
static void
map_exchange_at_edge (BallFilm *self, const MapPlace *place, double add, double share)
{
  double change[4][4];
  for (int i = 0; i < 4; i++)
    for (int j = 0; j < 4; j++)
      change[i][j] = place->across[i] * place->around[j] * (add - share * self->cell[place->row + i][place->column + j]);
  for (int i = 0; i < 4; i++)
    for (int j = 0; j < 4; j++)
      self->cell[fold_row (place->row + i)][(place->column + j) % BALL_FILM_COLUMNS] += change[i][j];
  wrap_rows (self, place->row);
  if (place->row >= 2 * BALL_FILM_PAD && place->row + 3 < BALL_FILM_ROWS)
    return;
  /* Rows past a pole were not written themselves, but what they mirror. */
  for (int row = 0; row + 3 < BALL_FILM_ROWS + 2 * BALL_FILM_PAD; row += 4)
    wrap_rows (self, row);
  mirror_poles (self);
}

/* Adds film (m, at the map's time scale) around a place, and takes away a share of what is there. */
static void
map_exchange (BallFilm *self, const MapPlace *place, double add, double share)
{
  bool at_pole = place->row < 2 * BALL_FILM_PAD || place->row + 3 >= BALL_FILM_ROWS;
  bool at_seam = place->column < BALL_FILM_WRAP || place->column + 3 >= BALL_FILM_COLUMNS;
  if (at_pole || at_seam)
    {
      map_exchange_at_edge (self, place, add, share);
      return;
    }
  for (int i = 0; i < 4; i++)
    {
      double *cell = &self->cell[place->row + i][place->column];
      for (int j = 0; j < 4; j++)
        cell[j] += place->across[i] * place->around[j] * (add - share * cell[j]);
    }
}

static void
write_passing (BallFilm *self, const Passing *p)
{
  double growth = p->growth;
  /* A spot leaves a share of what it brought, not of what it has just taken up with its neighbours; and no more than is
   * there. */
  double now = map_read (self, &p->place) / growth, up = self->pick_up * p->lane_film * p->lane_area;
  double share = now > 0 ? fmin (self->lay_down * p->ball_film * p->ball_area / (now * self->cell_area), 1) : 0;
  double down = share * now * self->cell_area;
  map_exchange (self, &p->place, up / self->cell_area * growth, share);
  self->held += (up - down) * growth;
  self->taken += up;
  self->left += down;
  self->wet = self->wet || up > 0;
  if (self->change)
    tb_oil_exchange (self->change, self->friction->oil,
                     &(TbOilExchange){ .mirrored = self->friction->mirrored,
                                       .x = p->x,
                                       .y = p->y,
                                       .take_area = self->pick_up * p->lane_area,
                                       .give = down / (self->friction->oil_scale > 0 ? self->friction->oil_scale : 1) });
}

static void
write_oldest (BallFilm *self)
{
  write_passing (self, &self->queue[self->queue_start]);
  self->queue_start = (self->queue_start + 1) % BALL_FILM_QUEUE;
  self->queue_count--;
}

void
ball_film_pass (BallFilm *self, const Passing *passing)
{
  while (self->queue_count > 0
         && (self->queue_count == BALL_FILM_QUEUE
             || passing->turned - self->queue[self->queue_start].turned > EXCHANGE_DELAY))
    write_oldest (self);
  self->queue[(self->queue_start + self->queue_count) % BALL_FILM_QUEUE] = *passing;
  self->queue_count++;
}

void
ball_film_finish (BallFilm *self, double time)
{
  while (self->queue_count > 0)
    write_oldest (self);
  self->on_surface = self->held * exp (-self->absorption * time);
}
