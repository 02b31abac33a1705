/* Taking hold of strips, and of the places that are read, on the pattern's picture.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-pattern-editor-private.h"

#include <math.h>

/* Distances snap to this, ft. */
#define SNAP_FT 0.5
/* Steps of the arrow keys: a board, and a half foot. */
#define KEY_BOARDS 1
#define KEY_FT 0.5

static double
snapped (double y)
{
  return tb_metres_from_ft (SNAP_FT * round (tb_ft_from_metres (y) / SNAP_FT));
}

/* A board's number, from the right edge, at an x. */
static int
board_at (double x)
{
  return CLAMP ((int)lround (tb_board_from_x (x)), 1, TB_LANE_BOARDS);
}

static TbPatternHit
hit_at (TbPatternEditor *self, double px, double py)
{
  GtkWidget *picture = GTK_WIDGET (tb_lane_page_get_picture (TB_LANE_PAGE (self)));
  TbTheme theme = tb_picture_get_theme (TB_PICTURE (picture));
  TbPatternScene scene = tb_pattern_editor_scene (self, &theme);
  const double at[2] = { px, py };

  return tb_pattern_view_hit (gtk_widget_get_width (picture), gtk_widget_get_height (picture), &scene, at);
}

static void
lane_at (TbPatternEditor *self, double px, double py, double lane[2])
{
  GtkWidget *picture = GTK_WIDGET (tb_lane_page_get_picture (TB_LANE_PAGE (self)));
  TbTheme theme = tb_picture_get_theme (TB_PICTURE (picture));
  TbPatternScene scene = tb_pattern_editor_scene (self, &theme);
  const double at[2] = { px, py };

  tb_pattern_view_to_lane (gtk_widget_get_width (picture), gtk_widget_get_height (picture), &scene, at, lane);
}

static void
read_at (TbPatternEditor *self, double x, double y)
{
  self->cursor_x = CLAMP (x, -TB_LANE_HALF_WIDTH, TB_LANE_HALF_WIDTH);
  self->cursor_y = CLAMP (y, 0, TB_HEAD_PIN_Y);
  tb_pattern_editor_redraw (self);
}

/* The chosen strip with the dragged edge at a place. */
static TbStrip
strip_at (TbPatternEditor *self, const double lane[2])
{
  TbStrip strip = self->at_start;
  double shift = strip.end - (strip.way == TB_STRIP_OUT ? strip.taper : -strip.taper);

  switch (self->dragged)
    {
    case TB_PATTERN_START:
      strip.start = snapped (lane[1]);
      break;
    case TB_PATTERN_END:
      strip.end = snapped (lane[1]);
      break;
    case TB_PATTERN_TAPER:
      shift = snapped (lane[1]);
      strip.taper = MAX (strip.way == TB_STRIP_OUT ? strip.end - shift : shift - strip.end, 0);
      break;
    case TB_PATTERN_RIGHT:
      strip.right_board = MIN (board_at (lane[0]), strip.left_board);
      break;
    default:
      strip.left_board = MAX (board_at (lane[0]), strip.right_board);
    }
  return strip;
}

/* An end that is pulled over the other stops there. */
static void
keep_way (TbStrip *strip, gboolean start_moved)
{
  double least = strip->way == TB_STRIP_OUT ? TB_STRIP_MIN_LENGTH : -TB_STRIP_MIN_LENGTH;

  if ((strip->end - strip->start) * least >= least * least)
    return;
  if (start_moved)
    strip->start = strip->end - least;
  else
    strip->end = strip->start + least;
}

static void
drag_strip (TbPatternEditor *self, const double lane[2])
{
  TbStrip strip = strip_at (self, lane);

  keep_way (&strip, self->dragged == TB_PATTERN_START);
  tb_strip_tidy (&strip);
  tb_pattern_editor_change (self, &strip);
}

static void
drag_to (TbPatternEditor *self, double px, double py)
{
  TbPatternHit hit;
  double lane[2];

  switch (self->dragged)
    {
    case TB_PATTERN_ACROSS:
    case TB_PATTERN_ALONG:
    case TB_PATTERN_LANE:
      hit = hit_at (self, px, py);
      read_at (self, hit.x, hit.y);
      break;
    case TB_PATTERN_NOTHING:
    case TB_PATTERN_STRIP:
      break;
    default:
      lane_at (self, px, py, lane);
      drag_strip (self, lane);
    }
}

static void
on_begin (TbPatternEditor *self, double px, double py)
{
  TbPatternHit hit = hit_at (self, px, py);

  gtk_widget_grab_focus (GTK_WIDGET (tb_lane_page_get_picture (TB_LANE_PAGE (self))));
  if (hit.part == TB_PATTERN_STRIP)
    tb_pattern_editor_select (self, hit.strip);
  self->dragged = hit.part;
  if (self->selected >= 0)
    self->at_start = tb_pattern_editor_get_pattern (self)->strips[self->selected];
  tb_session_begin_gesture (tb_lane_page_get_session (TB_LANE_PAGE (self)));
  if (hit.part == TB_PATTERN_ACROSS || hit.part == TB_PATTERN_ALONG || hit.part == TB_PATTERN_LANE)
    read_at (self, hit.x, hit.y);
}

static void
on_update (TbPatternEditor *self, double dx, double dy, GtkGestureDrag *gesture)
{
  double x, y;

  gtk_gesture_drag_get_start_point (gesture, &x, &y);
  drag_to (self, x + dx, y + dy);
}

static void
on_end (TbPatternEditor *self)
{
  self->dragged = TB_PATTERN_NOTHING;
  tb_session_end_gesture (tb_lane_page_get_session (TB_LANE_PAGE (self)));
}

/* The arrow keys move the place that is read. */
static gboolean
on_key (TbPatternEditor *self, guint keyval)
{
  double x = self->cursor_x, y = self->cursor_y;

  switch (keyval)
    {
    case GDK_KEY_Up:
      x -= KEY_BOARDS * TB_BOARD_WIDTH;
      break;
    case GDK_KEY_Down:
      x += KEY_BOARDS * TB_BOARD_WIDTH;
      break;
    case GDK_KEY_Left:
      y -= tb_metres_from_ft (KEY_FT);
      break;
    case GDK_KEY_Right:
      y += tb_metres_from_ft (KEY_FT);
      break;
    default:
      return GDK_EVENT_PROPAGATE;
    }
  read_at (self, x, y);
  return GDK_EVENT_STOP;
}

static void
on_motion (TbPatternEditor *self, double x, double y)
{
  GtkWidget *picture = GTK_WIDGET (tb_lane_page_get_picture (TB_LANE_PAGE (self)));
  const char *cursor = NULL;

  switch (hit_at (self, x, y).part)
    {
    case TB_PATTERN_START:
    case TB_PATTERN_END:
    case TB_PATTERN_TAPER:
      cursor = "ew-resize";
      break;
    case TB_PATTERN_RIGHT:
    case TB_PATTERN_LEFT:
      cursor = "ns-resize";
      break;
    case TB_PATTERN_STRIP:
      cursor = "pointer";
      break;
    default:
      break;
    }
  gtk_widget_set_cursor_from_name (picture, cursor);
}

void
tb_pattern_editor_init_drag (TbPatternEditor *self)
{
  GtkWidget *picture = GTK_WIDGET (tb_lane_page_get_picture (TB_LANE_PAGE (self)));
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *keys = gtk_event_controller_key_new (), *motion = gtk_event_controller_motion_new ();

  gtk_widget_set_focusable (picture, TRUE);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (on_begin), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (on_update), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (on_end), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (on_key), self);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion), self);
  gtk_widget_add_controller (picture, GTK_EVENT_CONTROLLER (drag));
  gtk_widget_add_controller (picture, keys);
  gtk_widget_add_controller (picture, motion);
}
