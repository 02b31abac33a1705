/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tb-change.h"

#include <math.h>
#include <string.h>

static gsize
field_size (const TbField *field)
{
  return field->kind == TB_FIELD_CHOICE ? sizeof (int) : sizeof (double);
}

/* Compared and copied as core holds it: a change is a change, however small, and is taken over to the last
 * bit. */
static gboolean
field_differs (const TbField *field, const TbShot *a, const TbShot *b)
{
  const char *in_a = tb_shot_group_const (a, field->group), *in_b = tb_shot_group_const (b, field->group);

  return memcmp (in_a + field->offset, in_b + field->offset, field_size (field)) != 0;
}

static void
field_copy (const TbField *field, const TbShot *from, TbShot *to)
{
  const char *source = tb_shot_group_const (from, field->group);
  char *target = tb_shot_group (to, field->group);

  memcpy (target + field->offset, source + field->offset, field_size (field));
}

static const TbField *
cover_field (void)
{
  return tb_field_find (TB_GROUP_BALL, "cover");
}

/* Whether another kind of cover brings a field along: all of TbCover but the surface, which is sanded on. */
static gboolean
comes_with_cover (const TbField *field)
{
  return field->group == TB_GROUP_BALL && field->offset >= offsetof (TbBall, cover)
         && field->offset < offsetof (TbBall, cover) + sizeof (TbCover)
         && field->offset != offsetof (TbBall, cover.roughness);
}

static gboolean
holes_differ (const TbBall *a, const TbBall *b)
{
  if (a->n_holes != b->n_holes)
    return TRUE;
  for (int i = 0; i < a->n_holes; i++)
    {
      const TbHole *p = &a->hole[i], *q = &b->hole[i];

      if (p->kind != q->kind || p->over != q->over || p->up != q->up || p->diameter != q->diameter
          || p->depth != q->depth || p->pitch_over != q->pitch_over || p->pitch_up != q->pitch_up)
        return TRUE;
    }
  return FALSE;
}

static gboolean
options_differ (const TbOptions *a, const TbOptions *b)
{
  return a->no_landing_squeeze != b->no_landing_squeeze || a->no_film_on_ball != b->no_film_on_ball
         || a->no_rolling_resistance != b->no_rolling_resistance || a->no_air_drag != b->no_air_drag
         || a->no_pivot_friction != b->no_pivot_friction || a->no_cross_tilt != b->no_cross_tilt
         || a->step != b->step || a->gravity != b->gravity;
}

static gboolean
films_differ (const TbOil *a, const TbOil *b)
{
  return a != b && memcmp (a, b, sizeof *a) != 0;
}

/* What was played on a lane shows in its film, and is taken over with it. */
static gboolean
comes_with_film (const TbField *field)
{
  return field->group == TB_GROUP_LANE && field->offset == offsetof (TbLane, games_played);
}

typedef struct Finder
{
  TbChange *changes;
  guint count;
} Finder;

static void
note_change (Finder *finder, TbChangeKind kind, const TbField *field)
{
  if (finder->count < TB_MAX_CHANGES)
    finder->changes[finder->count++] = (TbChange){ kind, field };
}

static void
find_fields (Finder *finder, const TbShot *before, const TbShot *after)
{
  gboolean other_cover = before->ball.cover.kind != after->ball.cover.kind;

  for (const TbField *field = tb_field_table; field->name; field++)
    {
      if (field->alias_of || comes_with_film (field)
          || (other_cover && comes_with_cover (field) && field != cover_field ()))
        continue;
      if (field_differs (field, before, after))
        note_change (finder, field == cover_field () ? TB_CHANGE_COVER : TB_CHANGE_FIELD, field);
    }
}

guint
tb_changes_find (const TbSetup *before, const TbSetup *after, TbChange changes[TB_MAX_CHANGES])
{
  const TbShot *a = &before->shot, *b = &after->shot;
  Finder finder = { changes, 0 };

  find_fields (&finder, a, b);
  if (holes_differ (&a->ball, &b->ball))
    note_change (&finder, TB_CHANGE_HOLES, NULL);
  if (films_differ (a->lane.oil, b->lane.oil))
    note_change (&finder,
                 films_differ (&before->pattern->oil, &after->pattern->oil) ? TB_CHANGE_PATTERN
                                                                            : TB_CHANGE_WEAR,
                 NULL);
  if (memcmp (&a->assumed, &b->assumed, sizeof a->assumed) != 0)
    note_change (&finder, TB_CHANGE_ASSUMED, NULL);
  if (options_differ (&a->options, &b->options))
    note_change (&finder, TB_CHANGE_OPTIONS, NULL);
  return finder.count;
}

TbGroup
tb_change_group (const TbChange *change)
{
  switch (change->kind)
    {
    case TB_CHANGE_FIELD:
      return change->field->group;
    case TB_CHANGE_COVER:
    case TB_CHANGE_HOLES:
    case TB_CHANGE_BALL:
      return TB_GROUP_BALL;
    default:
      return TB_GROUP_LANE;
    }
}

guint
tb_changes_merge_ball (TbChange changes[TB_MAX_CHANGES], guint count)
{
  guint kept = 0;
  gboolean merged = FALSE;

  for (guint i = 0; i < count; i++)
    if (tb_change_group (&changes[i]) != TB_GROUP_BALL)
      changes[kept++] = changes[i];
    else if (!merged)
      {
        changes[kept++] = (TbChange){ TB_CHANGE_BALL, NULL };
        merged = TRUE;
      }
  return kept;
}

guint
tb_changes_merge_all (TbChange changes[TB_MAX_CHANGES], guint count)
{
  changes[0] = (TbChange){ TB_CHANGE_EVERYTHING, NULL };
  return MIN (count, 1);
}

static void
take_cover (const TbShot *from, TbShot *shot)
{
  double roughness = shot->ball.cover.roughness;

  shot->ball.cover = from->ball.cover;
  shot->ball.cover.roughness = roughness;
}

static void
take_holes (const TbShot *from, TbShot *shot)
{
  shot->ball.n_holes = from->ball.n_holes;
  memcpy (shot->ball.hole, from->ball.hole, sizeof shot->ball.hole);
}

void
tb_change_apply (const TbChange *change, const TbSetup *from, TbShot *shot)
{
  switch (change->kind)
    {
    case TB_CHANGE_FIELD:
      field_copy (change->field, &from->shot, shot);
      break;
    case TB_CHANGE_COVER:
      take_cover (&from->shot, shot);
      break;
    case TB_CHANGE_HOLES:
      take_holes (&from->shot, shot);
      break;
    case TB_CHANGE_PATTERN:
    case TB_CHANGE_WEAR:
      shot->lane.oil = from->shot.lane.oil;
      shot->lane.games_played = from->shot.lane.games_played;
      break;
    case TB_CHANGE_ASSUMED:
      shot->assumed = from->shot.assumed;
      break;
    case TB_CHANGE_OPTIONS:
      shot->options = from->shot.options;
      break;
    case TB_CHANGE_BALL:
      shot->ball = from->shot.ball;
      break;
    case TB_CHANGE_EVERYTHING:
      *shot = from->shot;
      break;
    }
}

const char *
tb_change_name (const TbChange *change)
{
  static const char *const names[]
      = { "", "", "holes", "pattern", "games_played", "assumed", "options", "ball", "everything" };

  return change->field ? change->field->name : names[change->kind];
}
