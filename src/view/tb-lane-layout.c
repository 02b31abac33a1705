/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gi18n-lib.h>
#include "tb-lane-layout.h"

/* Distances in em unless said otherwise. */
#define PAD 0.9
#define TICK 0.6
#define ROW 1.35
#define GUTTER 1.1
#define APPROACH 0.7
#define PIT_EDGE 0.8
#define ENDS_ROOM 2.3    /* between the end labels and the lane: leaders, and the pocket's bracket */
#define STRIP_GAP 0.9
#define FOOTER_GAP 0.8
#define LEGEND_HEIGHT 2.3
#define LEGEND_WIDTH 22.0
#define FOOTER_SPACE 3.0 /* between note and legend side by side */
/* The lane's width for its length, and the height for its length lying down, at most. */
#define WIDEST 0.86
#define HIGHEST 0.5
/* Shares of the picture that the lane keeps, or something else is left out. */
#define KEPT_WIDTH 0.5
#define KEPT_HEIGHT 0.55
/* The lane is at least so many em wide, or marks on it are drawn smaller than in em, but not by more than this. */
#define MARKS_ACROSS 28.0
#define SMALLEST_MARKS 0.55
/* The stretch that room is kept for until the lane's size is known: none takes more digits. */
#define TYPICAL_STRETCH 2.8

static double
gutter_px (double em)
{
  return floor (GUTTER * em);
}

static double
approach_px (double em)
{
  return floor (APPROACH * em);
}

double
tb_lane_x (bool mirrored, double x)
{
  return mirrored ? -x : x;
}

double
tb_scene_board (const TbLaneScene *scene, double x)
{
  return tb_board_from_x (tb_lane_x (scene->mirrored, x));
}

char *
tb_lane_layout_note (TbLaneProjection projection, double stretch)
{
  g_autofree char *times = NULL;

  if (projection == TB_LANE_FROM_APPROACH)
    return g_strdup_printf (_("boards; true perspective from %.0f ft behind the foul line, eyes %.0f in high"),
                            tb_ft_from_metres (TB_EYE_BEHIND),
                            tb_in_from_metres (TB_EYE_HEIGHT));
  times = g_strdup_printf (stretch < 3 ? "%.1f" : "%.0f", stretch);
  return g_strdup_printf (_("boards; across drawn %s times wider than along, ball and pins not to scale"), times);
}

static double
text_width (TbCanvas *canvas, const char *text, gboolean bold)
{
  TbLabel label = { .text = text, .bold = bold };

  return tb_canvas_measure (canvas, &label).width;
}

static double
phase_names_width (TbCanvas *canvas)
{
  double width = 0;
  const char *names[] = { _("skid"), _("hook"), _("roll") };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    width = MAX (width, text_width (canvas, names[i], FALSE));
  /* Under each name stands where it begins. */
  return MAX (width, text_width (canvas, _("60 ft"), FALSE));
}

/* Width of the label at a run's end. */
static double
end_width (TbCanvas *canvas, const TbPath *path, const char *label)
{
  g_autofree char *text = NULL;

  if (path == NULL)
    return 0;
  if (path->result == TB_RESULT_PINS)
    text = g_strdup_printf ("%s 88.8", label);
  else
    text = g_strdup_printf (_("%s: gutter at %.0f ft"), label, TB_HEAD_PIN_FT);
  return text_width (canvas, text, TRUE);
}

/* The labels beyond the pins, lying down, never take more than a third of the picture. */
static double
ends_width (TbCanvas *canvas, const TbLaneScene *scene)
{
  double width = text_width (canvas, _("pocket"), FALSE);

  width = MAX (width, end_width (canvas, scene->before, scene->before_label ? scene->before_label : _("before")));
  width = MAX (width, end_width (canvas, scene->after, scene->after_label ? scene->after_label : _("after")));
  if (scene->other_label != NULL)
    width = MAX (width, end_width (canvas, scene->before ? scene->before : scene->after, scene->other_label));
  return MIN (width, canvas->width / 3);
}

static TbLabel
note_label (const char *text, double wrap)
{
  return (TbLabel){ .text = text, .across = TB_ALIGN_MIDDLE, .wrap = wrap };
}

/* Note and legend at the picture's bottom: side by side where they fit, else one under the other. Returns their
 * height; `free` is the height that they may take. */
static double
lay_footer (TbLaneLayout *self, TbCanvas *canvas, const TbLaneScene *scene, double free)
{
  double pad = PAD * self->em, inner = canvas->width - 2 * pad;
  g_autofree char *text = tb_lane_layout_note (scene->projection, TYPICAL_STRETCH);
  TbLabel label = note_label (text, inner);
  cairo_rectangle_t note = tb_canvas_measure (canvas, &label);
  gboolean legend = scene->show_legend && scene->oil != NULL;
  double legend_width = MIN (LEGEND_WIDTH * self->em, inner), legend_height = LEGEND_HEIGHT * self->em;
  double single = text_width (canvas, text, FALSE), height = note.height;
  double space = FOOTER_SPACE * self->em;

  /* Without both there is still the name of the foul line. */
  if (!scene->show_note && !legend)
    return 0.5 * ROW * self->em;
  if (legend && single + space + legend_width <= inner)
    {
      double start = 0.5 * (canvas->width - single - space - legend_width), top = canvas->height - pad - legend_height;

      self->note = (cairo_rectangle_t){ start, top + 0.5 * (TB_LEGEND_BAR * self->em - height), single, height };
      self->legend = (cairo_rectangle_t){ start + single + space, top, legend_width, legend_height };
      return legend_height + pad;
    }
  if (legend && height + legend_height + FOOTER_GAP * self->em <= free)
    {
      self->legend = (cairo_rectangle_t){ 0.5 * (canvas->width - legend_width),
                                          canvas->height - pad - legend_height,
                                          legend_width,
                                          legend_height };
      height += legend_height + FOOTER_GAP * self->em;
    }
  self->note = (cairo_rectangle_t){ pad, canvas->height - pad - height, inner, note.height };
  return height + pad;
}

/* Moves the lane and what goes with it so that the whole stands in the middle of the room it was given. */
static void
centre_block (TbLaneLayout *self, double dx, double dy)
{
  cairo_rectangle_t *moved[] = { &self->lane, &self->ends, &self->feet, &self->boards, &self->phases };

  for (guint i = 0; i < G_N_ELEMENTS (moved); i++)
    {
      moved[i]->x += dx;
      moved[i]->y += dy;
    }
}

/* The parts that are drawn as large as it takes to see them. */
static void
size_parts (TbLaneLayout *self)
{
  double across = self->projection == TB_LANE_PLAN_SIDEWAYS ? self->lane.height : self->lane.width;

  self->mark_em = MIN (self->em, MAX (across / MARKS_ACROSS, SMALLEST_MARKS * self->em));
  if (self->projection == TB_LANE_FROM_APPROACH)
    {
      self->gutter_width = TB_GUTTER_WIDTH;
      self->approach_depth = TB_APPROACH_SHOWN;
      return;
    }
  self->gutter_width = tb_lane_layout_across_from_px (self, gutter_px (self->em));
  self->approach_depth = tb_lane_layout_along_from_px (self, approach_px (self->em));
  self->pit_depth = tb_lane_layout_along_from_px (self, ceil (PIT_EDGE * self->em));
}

static void
lay_plan (TbLaneLayout *self, TbCanvas *canvas, const TbLaneScene *scene, double footer)
{
  double em = self->em, pad = PAD * em;
  double feet = text_width (canvas, _("60 ft"), FALSE), left = pad + feet + TICK * em;
  double phases = STRIP_GAP * em + TB_STRIP_NAMES * em + phase_names_width (canvas);
  double top = 0.6 * pad + ROW * em + ENDS_ROOM * em;
  double bottom = footer + 0.5 * em + ROW * em + approach_px (em);
  double free = canvas->width - left - pad - 2 * gutter_px (em);
  double height = canvas->height - top - bottom, width;

  if (!scene->show_phases || free - phases < KEPT_WIDTH * canvas->width)
    phases = 0;
  width = MIN (free - phases, WIDEST * height);
  self->lane = (cairo_rectangle_t){ floor (left + gutter_px (em)), floor (top), floor (width), floor (height) };
  self->feet = (cairo_rectangle_t){ pad, self->lane.y, feet, self->lane.height };
  self->boards = (cairo_rectangle_t){ self->lane.x,
                                      self->lane.y + self->lane.height + approach_px (em),
                                      self->lane.width,
                                      ROW * em };
  self->phases = (cairo_rectangle_t){ self->lane.x + self->lane.width + gutter_px (em) + STRIP_GAP * em,
                                      self->lane.y,
                                      MAX (phases - STRIP_GAP * em, 0),
                                      self->lane.height };
  centre_block (self, floor (0.5 * (free - phases - width)), 0);
  self->ends = (cairo_rectangle_t){ pad, 0.6 * pad, canvas->width - 2 * pad, ROW * em };
}

static void
lay_sideways (TbLaneLayout *self, TbCanvas *canvas, const TbLaneScene *scene, double footer)
{
  double em = self->em, pad = PAD * em;
  double boards = text_width (canvas, "35", FALSE), left = pad + boards + 0.5 * em + approach_px (em);
  double ends = ends_width (canvas, scene), right = pad + ends + ENDS_ROOM * em;
  double top = pad + ROW * em + TICK * em + gutter_px (em);
  double phases = STRIP_GAP * em + TB_STRIP_NAMES * em + ROW * em;
  double free = canvas->height - top - footer - FOOTER_GAP * em - gutter_px (em), width, height;

  if (!scene->show_phases || free - phases < KEPT_HEIGHT * 0.7 * canvas->height)
    phases = 0;
  width = canvas->width - left - right;
  height = MIN (free - phases, HIGHEST * width);
  self->lane = (cairo_rectangle_t){ floor (left), floor (top), floor (width), floor (height) };
  self->feet = (cairo_rectangle_t){ self->lane.x, pad, self->lane.width, ROW * em };
  self->boards = (cairo_rectangle_t){ pad, self->lane.y, boards, self->lane.height };
  self->phases = (cairo_rectangle_t){ self->lane.x,
                                      self->lane.y + self->lane.height + gutter_px (em) + STRIP_GAP * em,
                                      self->lane.width,
                                      MAX (phases - STRIP_GAP * em, 0) };
  self->ends = (cairo_rectangle_t){ canvas->width - pad - ends, self->lane.y, ends, self->lane.height };
  centre_block (self, 0, floor (0.5 * (free - phases - height)));
}

static void
lay_perspective (TbLaneLayout *self, TbCanvas *canvas, const TbLaneScene *scene, double footer)
{
  const double near = TB_EYE_BEHIND - TB_APPROACH_SHOWN, far = TB_EYE_BEHIND + TB_PIT_Y;
  double em = self->em, pad = PAD * em, top = 0.6 * pad + ROW * em + ENDS_ROOM * em;
  double beside = MAX (text_width (canvas, _("60 ft"), FALSE), phase_names_width (canvas)) + TICK * em;
  double free_width = canvas->width - 2 * pad, free_height = canvas->height - top - footer - FOOTER_GAP * em;
  /* What a focal length of 1 px shows. The names beside the lane stand where it has become narrower. */
  double half = TB_PHASES_NEAR + TB_PHASES_WIDTH, low = TB_EYE_HEIGHT / near;
  double high = (TB_EYE_HEIGHT - TB_PIT_HEIGHT) / far, slack;

  self->focal = MIN (free_width * 0.5 / (half / TB_EYE_BEHIND), free_height / (low - high));
  self->focal = MIN (self->focal, (0.5 * canvas->width - pad - beside) * (TB_EYE_BEHIND + 6) / half);
  slack = free_height - self->focal * (low - high);
  self->ahead = (TbPoint){ floor (0.5 * canvas->width), floor (top + 0.5 * slack - self->focal * high) };
  self->lane.x = self->ahead.x - self->focal * TB_LANE_HALF_WIDTH / TB_EYE_BEHIND;
  self->lane.width = 2 * (self->ahead.x - self->lane.x);
  self->lane.y = self->ahead.y + self->focal * TB_EYE_HEIGHT / far;
  self->lane.height = self->ahead.y + self->focal * TB_EYE_HEIGHT / TB_EYE_BEHIND - self->lane.y;
  self->ends = (cairo_rectangle_t){ pad, 0.6 * pad + 0.5 * slack, free_width, ROW * em };
}

void
tb_lane_layout_init (TbLaneLayout *self, TbCanvas *canvas, const TbLaneScene *scene)
{
  double em = canvas->em, footer;

  *self = (TbLaneLayout){ .projection = scene->projection, .em = em };
  footer = lay_footer (self, canvas, scene, (1 - KEPT_HEIGHT) * canvas->height - 5 * em);
  switch (scene->projection)
    {
    case TB_LANE_PLAN_SIDEWAYS:
      lay_sideways (self, canvas, scene, footer);
      break;
    case TB_LANE_FROM_APPROACH:
      lay_perspective (self, canvas, scene, footer);
      break;
    case TB_LANE_PLAN:
    default:
      lay_plan (self, canvas, scene, footer);
      break;
    }
  /* Where there is no room the way from lane to picture is still a way. */
  self->lane.width = MAX (self->lane.width, 1);
  self->lane.height = MAX (self->lane.height, 1);
  self->focal = MAX (self->focal, 1);
  size_parts (self);
}

TbPoint
tb_lane_layout_point (const TbLaneLayout *self, double x, double y, double z)
{
  double across = (x + TB_LANE_HALF_WIDTH) / (2 * TB_LANE_HALF_WIDTH), along = y / TB_PIT_Y;

  switch (self->projection)
    {
    case TB_LANE_FROM_APPROACH:
      {
        double scale = tb_lane_layout_scale (self, y);

        return (TbPoint){ self->ahead.x + scale * x, self->ahead.y + scale * (TB_EYE_HEIGHT - z) };
      }
    case TB_LANE_PLAN_SIDEWAYS:
      return (TbPoint){ self->lane.x + along * self->lane.width, self->lane.y + across * self->lane.height };
    case TB_LANE_PLAN:
    default:
      return (TbPoint){ self->lane.x + across * self->lane.width, self->lane.y + (1 - along) * self->lane.height };
    }
}

/* Picture to floor, wherever that is; above the perspective's horizon there is none. */
static gboolean
find_floor (const TbLaneLayout *self, TbPoint point, TbMark *mark)
{
  double right = (point.x - self->lane.x) / self->lane.width, down = (point.y - self->lane.y) / self->lane.height;

  switch (self->projection)
    {
    case TB_LANE_FROM_APPROACH:
      if (point.y <= self->ahead.y)
        return FALSE;
      mark->y = self->focal * TB_EYE_HEIGHT / (point.y - self->ahead.y) - TB_EYE_BEHIND;
      mark->x = (point.x - self->ahead.x) / tb_lane_layout_scale (self, mark->y);
      return TRUE;
    case TB_LANE_PLAN_SIDEWAYS:
      *mark = (TbMark){ (2 * down - 1) * TB_LANE_HALF_WIDTH, right * TB_PIT_Y };
      return TRUE;
    case TB_LANE_PLAN:
    default:
      *mark = (TbMark){ (2 * right - 1) * TB_LANE_HALF_WIDTH, (1 - down) * TB_PIT_Y };
      return TRUE;
    }
}

gboolean
tb_lane_layout_floor (const TbLaneLayout *self, TbPoint point, double *x, double *y)
{
  TbMark mark;

  if (!find_floor (self, point, &mark))
    return FALSE;
  if (fabs (mark.x) > TB_LANE_HALF_WIDTH || mark.y < 0 || mark.y > TB_PIT_Y)
    return FALSE;
  *x = mark.x;
  *y = mark.y;
  return TRUE;
}

double
tb_lane_layout_scale (const TbLaneLayout *self, double y)
{
  switch (self->projection)
    {
    case TB_LANE_FROM_APPROACH:
      return self->focal / (y + TB_EYE_BEHIND);
    case TB_LANE_PLAN_SIDEWAYS:
      return self->lane.height / (2 * TB_LANE_HALF_WIDTH);
    case TB_LANE_PLAN:
    default:
      return self->lane.width / (2 * TB_LANE_HALF_WIDTH);
    }
}

double
tb_lane_layout_along (const TbLaneLayout *self)
{
  return (self->projection == TB_LANE_PLAN_SIDEWAYS ? self->lane.width : self->lane.height) / TB_PIT_Y;
}

double
tb_lane_layout_across_from_px (const TbLaneLayout *self, double px)
{
  return px / tb_lane_layout_scale (self, 0);
}

double
tb_lane_layout_along_from_px (const TbLaneLayout *self, double px)
{
  return px / tb_lane_layout_along (self);
}

double
tb_lane_layout_stretch (const TbLaneLayout *self)
{
  if (self->projection == TB_LANE_FROM_APPROACH)
    return 1;
  return tb_lane_layout_scale (self, 0) / tb_lane_layout_along (self);
}
