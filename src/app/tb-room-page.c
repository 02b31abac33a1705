/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-room-page.h"

#include <glib/gi18n-lib.h>

#include "tb-quantity.h"
#include "tb-room-view.h"

/* Points of a map each way: one in the middle for the plan, and the coarsest map reaches all edges. */
#define MAP_SIDE 49
/* Shots for the pocket's share: half a percent of error or less would take ten thousand. */
#define CHANCE_SHOTS 1000
#define CHANCE_SEED 1
#define HOLD_BOARDS 2.0

typedef enum RoomRow
{
  ROW_ACROSS,
  ROW_UP,
  ROW_RECOVERED,
  ROW_HELD,
  ROW_CHANCE,
  ROW_SPREAD,
  N_ROOM_ROWS
} RoomRow;

struct _TbRoomPage
{
  TbLanePage parent_instance;

  GtkDropDown *miss[TB_ROOM_AXES];
  GtkDropDown *skill;
  GtkLabel *name[N_ROOM_ROWS];
  GtkLabel *number[N_ROOM_ROWS][TB_N_SIDES];

  TbRoomWorker *worker;
  TbRoomReport report[TB_N_SIDES]; /* with references to the maps */
  gboolean is_same;                /* before and after are alike: one map says it all */
};

G_DEFINE_FINAL_TYPE (TbRoomPage, tb_room_page, TB_TYPE_LANE_PAGE)

static TbRoomScene
scene_of (TbRoomPage *self, const TbTheme *theme)
{
  TbRoomScene scene = tb_room_scene_default ();

  scene.theme = *theme;
  scene.metric = tb_session_get_units (tb_lane_page_get_session (TB_LANE_PAGE (self))) == TB_UNITS_METRIC;
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      TbRoomPanel *panel = side == TB_SIDE_BEFORE ? &scene.before : &scene.after;
      const TbRoomReport *report = &self->report[side];

      if (side == TB_SIDE_BEFORE && self->is_same)
        continue;
      panel->map = report->map;
      panel->label = self->is_same            ? _ ("before and after")
                     : side == TB_SIDE_BEFORE ? _ ("before")
                                              : _ ("after");
      for (int axis = 0; report->has_widths && axis < TB_ROOM_AXES; axis++)
        panel->width[axis] = &report->width[axis];
    }
  /* Both or one, never first one and then both: nothing jumps. */
  if (!self->is_same && (!scene.before.map || !scene.after.map))
    scene.before.map = scene.after.map = NULL;
  return scene;
}

static void
draw (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page)
{
  TbRoomScene scene = scene_of (page, theme);

  tb_room_view_draw (cr, width, height, &scene);
}

/* Of a miss or a width. */
static const char *
unit_text (const TbQuantity *quantity)
{
  if (g_str_equal (quantity->unit, "board"))
    return _ ("boards");
  return quantity->unit[0] != '\0' ? _ (quantity->unit) : "";
}

static char *
width_text (const TbRoomAxis *axis, const TbRoomWidth *width, TbUnits units)
{
  TbQuantity quantity = tb_quantity_for_field (axis->field, units);
  g_autofree char *low = NULL, *high = NULL;

  if (!width->in_pocket)
    return g_strdup (_ ("not in the pocket"));
  low = tb_number_format_signed (width->low * quantity.factor, quantity.digits);
  high = tb_number_format_signed (width->high * quantity.factor, quantity.digits);
  /* Translators: from less to more, with a unit: "−0.9 to +0.8 mph". */
  return g_strdup_printf (_ ("%s to %s %s"), low, high, unit_text (&quantity));
}

static char *
boards_text (double boards)
{
  return isnan (boards) ? g_strdup ("–") : tb_number_with_unit (boards, 1, "");
}

static char *
row_text (TbRoomPage *self, RoomRow row, TbSide side)
{
  const TbRoomReport *report = &self->report[side];
  TbUnits units = tb_session_get_units (tb_lane_page_get_session (TB_LANE_PAGE (self)));
  g_autofree char *error = NULL;

  switch (row)
    {
    case ROW_ACROSS:
    case ROW_UP:
      return report->has_widths ? width_text (&report->map->axis[row], &report->width[row], units)
                                : g_strdup ("…");
    case ROW_RECOVERED:
      return report->has_widths ? boards_text (report->hold.recovered) : g_strdup ("…");
    case ROW_HELD:
      return report->has_widths ? boards_text (report->hold.held) : g_strdup ("…");
    case ROW_CHANCE:
      if (!report->has_chance)
        return g_strdup ("…");
      error = tb_number_format (100 * report->chance.standard_error, 1);
      return g_strdup_printf (_ ("%.0f %% ± %s"), 100 * report->chance.share, error);
    default:
      return report->has_chance ? boards_text (report->chance.deviation_x / TB_BOARD_WIDTH) : g_strdup ("…");
    }
}

static void
show_numbers (TbRoomPage *self)
{
  for (int row = 0; row < N_ROOM_ROWS; row++)
    for (int side = 0; side < TB_N_SIDES; side++)
      {
        g_autofree char *text
            = self->report[side].map ? row_text (self, (RoomRow)row, (TbSide)side) : g_strdup ("…");

        gtk_label_set_text (self->number[row][side], text);
      }
}

/* What the picture shows, for those who cannot see it. */
static char *
describe (TbRoomPage *self)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (int row = 0; row < N_ROOM_ROWS; row++)
    g_string_append_printf (text, _ ("%s: before %s, after %s. "), gtk_label_get_text (self->name[row]),
                            gtk_label_get_text (self->number[row][TB_SIDE_BEFORE]),
                            gtk_label_get_text (self->number[row][TB_SIDE_AFTER]));
  return g_strdup (text->str);
}

static void
keep_report (TbRoomPage *self, TbSide side, const TbRoomReport *report)
{
  TbRoomReport *kept = &self->report[side];
  TbRoomMap *map = report->map ? tb_room_map_ref (report->map) : NULL;
  TbRoomReport old = *kept;

  *kept = *report;
  kept->map = map;
  /* The bars and numbers of a moment ago, until the new ones are there: they would blink otherwise. */
  if (!report->has_widths && old.map && memcmp (old.map->axis, report->map->axis, sizeof old.map->axis) == 0)
    {
      kept->has_widths = old.has_widths;
      memcpy (kept->width, old.width, sizeof old.width);
      kept->hold = old.hold;
    }
  if (!report->has_chance)
    {
      kept->has_chance = old.has_chance;
      kept->chance = old.chance;
    }
  g_clear_pointer (&old.map, tb_room_map_unref);
}

static void
on_news (TbSide side, const TbRoomReport *report, gpointer page)
{
  TbRoomPage *self = page;
  g_autofree char *description = NULL;

  keep_report (self, side, report);
  if (self->is_same)
    keep_report (self, TB_SIDE_BEFORE, report);
  show_numbers (self);
  description = describe (self);
  tb_drawn_picture_refresh (tb_lane_page_get_picture (TB_LANE_PAGE (self)), description);
}

static TbMiss
chosen_miss (TbRoomPage *self, int axis)
{
  return (TbMiss)MIN (gtk_drop_down_get_selected (self->miss[axis]), TB_N_MISSES - 1);
}

static TbRoomRequest
make_request (TbRoomPage *self)
{
  TbSession *session = tb_lane_page_get_session (TB_LANE_PAGE (self));
  TbRoomRequest request = { .hold_miss = TB_MISS_PARALLEL,
                            .hold_boards = HOLD_BOARDS,
                            .scatter = tb_scatter_typical ((TbSkill)gtk_drop_down_get_selected (self->skill)),
                            .seed = CHANCE_SEED,
                            .shots = CHANCE_SHOTS };

  for (int side = 0; side < TB_N_SIDES; side++)
    request.side[side] = tb_session_get_setup (session, side);
  if (self->is_same)
    request.side[TB_SIDE_BEFORE] = NULL;
  for (int axis = 0; axis < TB_ROOM_AXES; axis++)
    request.axis[axis] = tb_room_axis (chosen_miss (self, axis), MAP_SIDE);
  return request;
}

static void
ask (TbRoomPage *self)
{
  TbSession *session = tb_lane_page_get_session (TB_LANE_PAGE (self));
  TbRoomRequest request;

  if (!session || !self->skill || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  self->is_same = tb_setup_equal (tb_session_get_setup (session, TB_SIDE_BEFORE),
                                  tb_session_get_setup (session, TB_SIDE_AFTER));
  request = make_request (self);
  tb_room_worker_ask (self->worker, &request);
}

static void
on_miss (TbRoomPage *self)
{
  for (int axis = 0; axis < TB_ROOM_AXES; axis++)
    gtk_label_set_text (self->name[axis], _ (tb_miss_label (chosen_miss (self, axis))));
  ask (self);
}

/* Both axes alike would be a map of nothing: the other one gives way. */
static void
on_miss_chosen (TbRoomPage *self, GParamSpec *pspec, GtkDropDown *chosen)
{
  int axis = chosen == self->miss[1];

  if (gtk_drop_down_get_selected (self->miss[0]) == gtk_drop_down_get_selected (self->miss[1]))
    gtk_drop_down_set_selected (self->miss[1 - axis], axis == 0 ? TB_MISS_SPEED : TB_MISS_AIM);
  if (gtk_drop_down_get_selected (self->miss[0]) == gtk_drop_down_get_selected (self->miss[1]))
    gtk_drop_down_set_selected (self->miss[1 - axis], TB_MISS_REV_RATE);
  on_miss (self);
}

static void
tb_room_page_session_changed (TbLanePage *page)
{
  ask (TB_ROOM_PAGE (page));
}

static void
tb_room_page_hidden (TbLanePage *page)
{
  tb_room_worker_stop (TB_ROOM_PAGE (page)->worker);
}

static void
add_choices (TbRoomPage *self, GtkBox *box)
{
  const char *misses[TB_N_MISSES + 1] = { NULL }, *skills[TB_N_SKILLS + 1] = { NULL };

  for (int i = 0; i < TB_N_MISSES; i++)
    misses[i] = tb_miss_label ((TbMiss)i);
  for (int i = 0; i < TB_N_SKILLS; i++)
    skills[i] = tb_skill_label ((TbSkill)i);
  tb_lane_page_add_title (box, _ ("Missed by"));
  self->miss[0] = tb_lane_page_add_choice (box, _ ("Across"), misses);
  self->miss[1] = tb_lane_page_add_choice (box, _ ("Up"), misses);
  gtk_drop_down_set_selected (self->miss[1], TB_MISS_SPEED);
  self->skill = tb_lane_page_add_choice (box, _ ("Bowler"), skills);
  gtk_drop_down_set_selected (self->skill, TB_SKILL_LEAGUE);
}

static GtkLabel *
add_cell (GtkGrid *grid, const char *text, int column, int row)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0 : 1);
  gtk_label_set_wrap (GTK_LABEL (label), column == 0);
  gtk_label_set_max_width_chars (GTK_LABEL (label), column == 0 ? 18 : 14);
  gtk_widget_set_hexpand (label, column == 0);
  if (column == 0)
    gtk_widget_add_css_class (label, "name");
  else
    gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_grid_attach (grid, label, column, row, 1, 1);
  return GTK_LABEL (label);
}

static void
add_numbers (TbRoomPage *self, GtkBox *box)
{
  static const char *const names[N_ROOM_ROWS] = { "",
                                                  "",
                                                  N_ ("2 boards outside: given back"),
                                                  N_ ("2 boards inside: held"),
                                                  N_ ("Shots in the pocket"),
                                                  N_ ("Spread at the pins, boards") };
  GtkGrid *grid = GTK_GRID (gtk_grid_new ());
  const char *const headings[] = { N_ ("Room"), N_ ("Before"), N_ ("After") };

  tb_lane_page_add_title (box, _ ("Room to miss"));
  for (int column = 0; column < 3; column++)
    gtk_widget_add_css_class (GTK_WIDGET (add_cell (grid, _ (headings[column]), column, 0)), "heading");
  for (int row = 0; row < N_ROOM_ROWS; row++)
    {
      self->name[row] = add_cell (grid, names[row][0] ? _ (names[row]) : "", 0, row + 1);
      for (int side = 0; side < TB_N_SIDES; side++)
        self->number[row][side] = add_cell (grid, "…", 1 + side, row + 1);
    }
  gtk_widget_add_css_class (GTK_WIDGET (grid), "measures");
  gtk_box_append (box, GTK_WIDGET (grid));
}

static void
tb_room_page_session_set (TbLanePage *page)
{
  TbRoomPage *self = TB_ROOM_PAGE (page);
  GtkBox *box = tb_lane_page_get_controls (page);

  add_choices (self, box);
  add_numbers (self, box);
  tb_lane_page_add_note (
      box, _ ("Each point of a map is a whole throw, without gutters. How far a bowler scatters is assumed; "
              "“practised” is held to the 1.45 to 1.6 boards at 37 ft that were published for skilled "
              "bowlers (US Bowler, winter 2010). The shots in the pocket are counted among 1000; the "
              "figure behind ± is the standard error."));
  for (int axis = 0; axis < TB_ROOM_AXES; axis++)
    g_signal_connect_object (self->miss[axis], "notify::selected", G_CALLBACK (on_miss_chosen), self,
                             G_CONNECT_SWAPPED);
  g_signal_connect_object (self->skill, "notify::selected", G_CALLBACK (ask), self, G_CONNECT_SWAPPED);
  tb_drawn_picture_set_draw (tb_lane_page_get_picture (page), _ ("Room to miss"), draw, self);
  on_miss (self);
}

/* Reading. */

static char *
miss_text (const TbRoomAxis *axis, double miss, TbUnits units)
{
  TbQuantity quantity = tb_quantity_for_field (axis->field, units);
  g_autofree char *number = tb_number_format_signed (miss * quantity.factor, quantity.digits);

  return g_strdup_printf ("%s %s", number, unit_text (&quantity));
}

/* The shot of the map that is nearest to a pair of misses, in words. */
static char *
point_text (TbRoomPage *self, const TbRoomMap *map, const double miss[TB_ROOM_AXES])
{
  TbUnits units = tb_session_get_units (tb_lane_page_get_session (TB_LANE_PAGE (self)));
  int at[TB_ROOM_AXES];
  const TbRoomPoint *point;
  g_autofree char *across = NULL, *up = NULL, *board = NULL, *angle = NULL;

  for (int i = 0; i < TB_ROOM_AXES; i++)
    at[i] = (int)lround ((miss[i] - map->axis[i].low) / (map->axis[i].high - map->axis[i].low)
                         * (map->axis[i].count - 1));
  point = tb_room_map_point (map, at[0], at[1]);
  across = miss_text (&map->axis[0], tb_room_axis_at (&map->axis[0], at[0]), units);
  up = miss_text (&map->axis[1], tb_room_axis_at (&map->axis[1], at[1]), units);
  if (point->status != TB_OK)
    return g_strdup_printf (_ ("%s, %s: no shot. %s"), across, up, _ (tb_status_sentence (point->status)));
  board = tb_number_format (tb_board_from_x (point->x_at_pins), 1);
  angle = tb_number_with_unit (tb_deg_from_radians (point->angle_at_pins), 1, "°");
  /* Translators: two misses with their signs and units, then a board and an angle at the pins. */
  return g_strdup_printf (isnan (point->gutter_y)
                              ? _ ("%s, %s: board %s at the pins, %s.")
                              : _ ("%s, %s: in the gutter (without it board %s at the pins, %s)."),
                          across, up, board, angle);
}

static void
on_motion (TbRoomPage *self, double x, double y)
{
  GtkWidget *picture = GTK_WIDGET (tb_lane_page_get_picture (TB_LANE_PAGE (self)));
  TbTheme theme = tb_picture_get_theme (TB_PICTURE (picture));
  TbRoomScene scene = scene_of (self, &theme);
  const double at[2] = { x, y };
  double miss[TB_ROOM_AXES];
  gboolean is_before;
  g_autofree char *text = NULL;

  if (tb_room_view_to_miss (gtk_widget_get_width (picture), gtk_widget_get_height (picture), &scene, at, miss,
                            &is_before))
    text = point_text (self, is_before ? scene.before.map : scene.after.map, miss);
  tb_lane_page_set_words (TB_LANE_PAGE (self), text ? text : "");
}

static void
on_leave (TbRoomPage *self)
{
  tb_lane_page_set_words (TB_LANE_PAGE (self), "");
}

void
tb_room_page_set_misses (TbRoomPage *self, TbMiss across, TbMiss up)
{
  gtk_drop_down_set_selected (self->miss[0], across);
  gtk_drop_down_set_selected (self->miss[1], up);
}

gboolean
tb_room_page_is_busy (TbRoomPage *self)
{
  return tb_room_worker_is_busy (self->worker);
}

const TbRoomMap *
tb_room_page_get_map (TbRoomPage *self, TbSide side)
{
  return self->report[side].map;
}

static void
tb_room_page_dispose (GObject *object)
{
  TbRoomPage *self = TB_ROOM_PAGE (object);

  g_clear_pointer (&self->worker, tb_room_worker_free);
  for (int side = 0; side < TB_N_SIDES; side++)
    g_clear_pointer (&self->report[side].map, tb_room_map_unref);
  G_OBJECT_CLASS (tb_room_page_parent_class)->dispose (object);
}

static void
tb_room_page_class_init (TbRoomPageClass *klass)
{
  TbLanePageClass *page_class = TB_LANE_PAGE_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_room_page_dispose;
  page_class->session_set = tb_room_page_session_set;
  page_class->session_changed = tb_room_page_session_changed;
  page_class->hidden = tb_room_page_hidden;
}

static void
tb_room_page_init (TbRoomPage *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();

  self->worker = tb_room_worker_new (on_news, self);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (on_leave), self);
  gtk_widget_add_controller (GTK_WIDGET (tb_lane_page_get_picture (TB_LANE_PAGE (self))), motion);
}
