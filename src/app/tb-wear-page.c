/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-wear-page.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-pattern-view.h"
#include "tb-quantity.h"
#include "tb-wear-life.h"
#include "tb-wear-words.h"

/* Games that a line is followed over. */
#define LIFE_GAMES 15
#define FIRST_BOARD 15.0
#define MAX_TYPICAL 12

struct _TbWearPage
{
  TbLanePage parent_instance;

  GtkScale *games;
  GtkSpinButton *count[MAX_TYPICAL]; /* in the order of tb_typical_bowlers */
  GtkSpinButton *mine;
  GtkCheckButton *moves;
  GtkSpinButton *seed;
  GtkLabel *numbers, *life_words;
  GtkWidget *follow, *move;
  GtkSpinner *spinner;

  gboolean showing;
  GCancellable *playing;   /* games on their way; else NULL */
  GCancellable *following; /* a line's life on its way; else NULL */
  double wanted;           /* games */
  TbWearLife *life;        /* last known; NULL before that */
  double cursor_x, cursor_y;
};

G_DEFINE_FINAL_TYPE (TbWearPage, tb_wear_page, TB_TYPE_LANE_PAGE)

static TbSetup *
setup_of (TbWearPage *self)
{
  return tb_lane_page_get_setup (TB_LANE_PAGE (self));
}

static TbMix *
mix_of (const TbSetup *setup)
{
  return setup->mix ? tb_mix_ref (setup->mix) : tb_mix_new_league ();
}

/* Picture. */

static TbPatternScene
scene_of (TbWearPage *self, const TbTheme *theme, const char *label)
{
  const TbSetup *setup = setup_of (self);
  TbPatternScene scene = tb_pattern_scene_default ();

  scene.theme = *theme;
  scene.oil = setup->shot.lane.oil;
  scene.earlier = &setup->pattern->oil;
  scene.earlier_label = _ ("fresh");
  scene.label = label;
  scene.oil_scale = setup->shot.lane.pattern_scale;
  scene.cursor_x = self->cursor_x;
  scene.cursor_y = self->cursor_y;
  scene.mirrored = setup->shot.delivery.hand == TB_HAND_LEFT;
  return scene;
}

static void
draw (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page)
{
  g_autofree char *label = tb_wear_games_text (setup_of (page)->shot.lane.games_played);
  TbPatternScene scene = scene_of (page, theme, label);

  tb_pattern_view_draw (cr, width, height, &scene);
}

static void
redraw (TbWearPage *self)
{
  const TbSetup *setup = setup_of (self);
  g_autofree char *text = tb_wear_numbers_text (setup);
  double x = setup->shot.delivery.hand == TB_HAND_LEFT ? -self->cursor_x : self->cursor_x;
  double scale = setup->shot.lane.pattern_scale;
  g_autofree char *words = g_strdup_printf (
      _ ("Board %.1f, %.1f ft: %.1f units fresh, %.1f now."), tb_board_from_x (x),
      tb_ft_from_metres (self->cursor_y),
      tb_units_from_film (scale * tb_oil_film (&setup->pattern->oil, self->cursor_x, self->cursor_y)),
      tb_units_from_film (scale * tb_oil_film (setup->shot.lane.oil, self->cursor_x, self->cursor_y)));

  gtk_label_set_text (self->numbers, text);
  tb_lane_page_set_words (TB_LANE_PAGE (self), words);
  tb_drawn_picture_refresh (tb_lane_page_get_picture (TB_LANE_PAGE (self)), text);
}

/* Showing the session. */

static guint
count_mine (const TbMix *mix)
{
  guint count = 0;

  for (guint i = 0; i < mix->n_bowlers; i++)
    if (!mix->bowlers[i].id)
      count += mix->bowlers[i].count;
  return count;
}

static void
show_mix (TbWearPage *self, const TbMix *mix)
{
  for (guint i = 0; i < MAX_TYPICAL && tb_typical_bowlers[i].id; i++)
    gtk_spin_button_set_value (self->count[i], tb_mix_count_of (mix, tb_typical_bowlers[i].id));
  gtk_spin_button_set_value (self->mine, count_mine (mix));
  gtk_check_button_set_active (self->moves, mix->moves);
  gtk_spin_button_set_value (self->seed, (double)mix->seed);
}

static void
show_busy (TbWearPage *self)
{
  gboolean busy = tb_wear_page_is_busy (self);

  gtk_spinner_set_spinning (self->spinner, busy);
  gtk_widget_set_sensitive (self->follow, self->following == NULL);
}

static void
tb_wear_page_session_changed (TbLanePage *page)
{
  TbWearPage *self = TB_WEAR_PAGE (page);
  const TbSetup *setup = setup_of (self);
  g_autoptr (TbMix) mix = mix_of (setup);

  self->showing = TRUE;
  show_mix (self, mix);
  if (!self->playing)
    gtk_range_set_value (GTK_RANGE (self->games), setup->shot.lane.games_played);
  self->showing = FALSE;
  show_busy (self);
  redraw (self);
}

/* Playing. */

static void
put_games (TbWearPage *self, double games)
{
  TbSession *session = tb_lane_page_get_session (TB_LANE_PAGE (self));

  tb_session_set_field (session, tb_field_find (TB_GROUP_LANE, "games_played"), games, NULL);
}

static void play_wanted (TbWearPage *self);

static void
on_played (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (TbWearPage) self = user_data;
  g_autoptr (TbWorn) worn = tb_worn_new_finish (result, NULL);

  g_clear_object (&self->playing);
  if (!tb_lane_page_get_session (TB_LANE_PAGE (self)))
    return;
  /* What was played is remembered: the wish may be another by now. */
  if (worn)
    play_wanted (self);
  show_busy (self);
}

/* At once where it is known, and after it has been played in a thread where not. */
static void
play_wanted (TbWearPage *self)
{
  TbWearKey key = tb_setup_wear_key (setup_of (self));

  if (tb_worn_is_at_hand (&key, self->wanted))
    put_games (self, self->wanted);
  else if (!self->playing)
    {
      self->playing = g_cancellable_new ();
      tb_worn_new_async (&key, self->wanted, self->playing, on_played, g_object_ref (self));
    }
  tb_wear_key_clear (&key);
  show_busy (self);
}

void
tb_wear_page_set_games (TbWearPage *self, double games)
{
  self->wanted = games;
  play_wanted (self);
}

static void
on_games (TbWearPage *self)
{
  if (!self->showing)
    tb_wear_page_set_games (self, gtk_range_get_value (GTK_RANGE (self->games)));
}

gboolean
tb_wear_page_is_busy (TbWearPage *self)
{
  return self->playing || self->following;
}

/* Another mix: the lane is played on from fresh, in the thread; until then it is taken as fresh. */
static void
put_mix (TbWearPage *self, TbMix *mix)
{
  TbSession *session = tb_lane_page_get_session (TB_LANE_PAGE (self));
  const TbSetup *setup = setup_of (self);
  TbShot fresh = setup->shot;
  g_autoptr (TbMix) taken = mix;
  g_autoptr (TbSetup) bare = NULL;
  g_autoptr (TbSetup) mixed = NULL;

  self->wanted = setup->shot.lane.games_played;
  fresh.lane.games_played = 0;
  bare = tb_setup_with_shot (setup, &fresh);
  mixed = tb_setup_with_mix (bare, taken);
  tb_session_begin_gesture (session);
  tb_session_set_after_as (session, mixed, "wear-mix");
  play_wanted (self);
  tb_session_end_gesture (session);
}

static void
on_count (TbWearPage *self, GtkSpinButton *spin)
{
  g_autoptr (TbMix) mix = mix_of (setup_of (self));

  if (self->showing)
    return;
  for (guint i = 0; i < MAX_TYPICAL && tb_typical_bowlers[i].id; i++)
    if (self->count[i] == spin)
      put_mix (self, tb_mix_with_count (mix, tb_typical_bowlers[i].id,
                                        (guint)gtk_spin_button_get_value_as_int (spin)));
}

static void
on_mine (TbWearPage *self)
{
  const TbSetup *setup = setup_of (self);
  g_autoptr (TbMix) mix = mix_of (setup);
  guint count = (guint)gtk_spin_button_get_value_as_int (self->mine);

  if (!self->showing)
    put_mix (self,
             tb_mix_with_bowler (mix, _ ("This bowler"), &setup->shot.delivery, &setup->shot.ball, count));
}

static void
on_moves (TbWearPage *self)
{
  g_autoptr (TbMix) mix = mix_of (setup_of (self));

  if (!self->showing)
    put_mix (self, tb_mix_with_moves (mix, gtk_check_button_get_active (self->moves)));
}

static void
on_seed (TbWearPage *self)
{
  g_autoptr (TbMix) mix = mix_of (setup_of (self));

  if (!self->showing)
    put_mix (self, tb_mix_with_seed (mix, (guint64)gtk_spin_button_get_value (self->seed)));
}

/* The line's life. */

static void
on_followed (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (TbWearPage) self = user_data;
  TbWearLife *life = tb_wear_life_new_finish (result, NULL);
  g_autofree char *text = NULL;

  g_clear_object (&self->following);
  if (!tb_lane_page_get_session (TB_LANE_PAGE (self)) || !life)
    {
      g_clear_pointer (&life, tb_wear_life_unref);
      return;
    }
  g_clear_pointer (&self->life, tb_wear_life_unref);
  self->life = life;
  text = tb_wear_life_text (life);
  gtk_label_set_text (self->life_words, text);
  gtk_widget_set_visible (self->move, life->has_move);
  show_busy (self);
}

static void
on_follow (TbWearPage *self)
{
  self->following = g_cancellable_new ();
  gtk_label_set_text (self->life_words, _ ("Bowling…"));
  gtk_widget_set_visible (self->move, FALSE);
  tb_wear_life_new_async (setup_of (self), LIFE_GAMES, self->following, on_followed, g_object_ref (self));
  show_busy (self);
}

/* The moved line on the lane on which the old one was lost. */
static void
on_move (TbWearPage *self)
{
  TbSession *session = tb_lane_page_get_session (TB_LANE_PAGE (self));
  const TbSetup *setup = setup_of (self);
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) moved = NULL;

  shot.delivery.laydown = self->life->moved.laydown;
  shot.delivery.aim = self->life->moved.aim;
  shot.lane.games_played = self->life->lost;
  moved = tb_setup_with_shot (setup, &shot);
  tb_session_set_after (session, moved);
}

/* Building. */

static void
add_games (TbWearPage *self, GtkBox *box)
{
  GtkBox *row;

  tb_lane_page_add_title (box, _ ("Games on the lane of “after”"));
  self->games = GTK_SCALE (gtk_scale_new_with_range (GTK_ORIENTATION_HORIZONTAL, 0, TB_MAX_GAMES, 0.5));
  gtk_scale_set_draw_value (self->games, TRUE);
  gtk_scale_set_value_pos (self->games, GTK_POS_RIGHT);
  gtk_widget_set_hexpand (GTK_WIDGET (self->games), TRUE);
  tb_accessible_set_name (GTK_WIDGET (self->games), _ ("Games played"));
  row = tb_lane_page_add_row (box, _ ("Games"));
  self->spinner = GTK_SPINNER (gtk_spinner_new ());
  gtk_box_append (row, GTK_WIDGET (self->spinner));
  gtk_box_append (box, GTK_WIDGET (self->games));
  self->numbers = tb_lane_page_add_note (box, "");
  g_signal_connect_swapped (self->games, "value-changed", G_CALLBACK (on_games), self);
}

static void
add_bowlers (TbWearPage *self, GtkBox *box)
{
  static const TbSpinRange counts = { 0, TB_MIX_MAX_COUNT, 1, 2, 0 }, seeds = { 0, 999999, 1, 10, 0 };

  tb_lane_page_add_title (box, _ ("Who bowls on it"));
  for (guint i = 0; i < MAX_TYPICAL && tb_typical_bowlers[i].id; i++)
    {
      self->count[i] = tb_lane_page_add_spin (box, _ (tb_typical_bowlers[i].label), &counts);
      gtk_widget_set_tooltip_text (GTK_WIDGET (self->count[i]), _ (tb_typical_bowlers[i].help));
      g_signal_connect_swapped (self->count[i], "value-changed", G_CALLBACK (on_count), self);
    }
  self->mine = tb_lane_page_add_spin (box, _ ("This bowler, ball and line"), &counts);
  self->moves = GTK_CHECK_BUTTON (gtk_check_button_new_with_label (_ ("They move as the lane changes")));
  gtk_box_append (box, GTK_WIDGET (self->moves));
  self->seed = tb_lane_page_add_spin (box, _ ("Seed of their scatter"), &seeds);
  tb_lane_page_add_note (
      box, _ ("Five on a lane are half of a pair’s ten. Each throws 17 balls a game, 11 on the line and 6 "
              "straight at spares. The bowlers are typical, not measured; how much oil a ball takes is "
              "assumed, and held to half of the heads’ oil being gone after 12 to 15 games (Bowlers "
              "Journal, August 2015)."));
  g_signal_connect_swapped (self->mine, "value-changed", G_CALLBACK (on_mine), self);
  g_signal_connect_swapped (self->moves, "toggled", G_CALLBACK (on_moves), self);
  g_signal_connect_swapped (self->seed, "value-changed", G_CALLBACK (on_seed), self);
}

static void
add_life (TbWearPage *self, GtkBox *box)
{
  tb_lane_page_add_title (box, _ ("When does this line stop working?"));
  self->life_words = tb_lane_page_add_note (box, "");
  self->follow = GTK_WIDGET (tb_lane_page_add_button (
      box, _ ("_Bowl 15 games and see"), _ ("Throws this line after every game, from fresh on")));
  self->move = GTK_WIDGET (tb_lane_page_add_button (
      box, _ ("_Make that move"), _ ("The moved line, on the lane on which the old one was lost")));
  gtk_widget_set_visible (self->move, FALSE);
  gtk_widget_set_margin_top (self->move, 6);
  g_signal_connect_swapped (self->follow, "clicked", G_CALLBACK (on_follow), self);
  g_signal_connect_swapped (self->move, "clicked", G_CALLBACK (on_move), self);
}

static void
tb_wear_page_session_set (TbLanePage *page)
{
  TbWearPage *self = TB_WEAR_PAGE (page);
  GtkBox *box = tb_lane_page_get_controls (page);

  add_games (self, box);
  add_life (self, box);
  add_bowlers (self, box);
  tb_drawn_picture_set_draw (tb_lane_page_get_picture (page), _ ("Film, fresh and worn"), draw, self);
}

static void
on_press (TbWearPage *self, double dx, double dy, GtkGestureDrag *gesture)
{
  GtkWidget *picture = GTK_WIDGET (tb_lane_page_get_picture (TB_LANE_PAGE (self)));
  TbTheme theme = tb_picture_get_theme (TB_PICTURE (picture));
  TbPatternScene scene = scene_of (self, &theme, "");
  double start[2], at[2];
  TbPatternHit hit;

  gtk_gesture_drag_get_start_point (gesture, &start[0], &start[1]);
  at[0] = start[0] + dx;
  at[1] = start[1] + dy;
  hit = tb_pattern_view_hit (gtk_widget_get_width (picture), gtk_widget_get_height (picture), &scene, at);
  self->cursor_x = hit.x;
  self->cursor_y = hit.y;
  redraw (self);
}

static void
tb_wear_page_dispose (GObject *object)
{
  TbWearPage *self = TB_WEAR_PAGE (object);

  if (self->playing)
    g_cancellable_cancel (self->playing);
  if (self->following)
    g_cancellable_cancel (self->following);
  g_clear_pointer (&self->life, tb_wear_life_unref);
  G_OBJECT_CLASS (tb_wear_page_parent_class)->dispose (object);
}

static void
tb_wear_page_class_init (TbWearPageClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_wear_page_dispose;
  TB_LANE_PAGE_CLASS (klass)->session_set = tb_wear_page_session_set;
  TB_LANE_PAGE_CLASS (klass)->session_changed = tb_wear_page_session_changed;
}

static void
tb_wear_page_init (TbWearPage *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();

  self->cursor_x = tb_x_from_board (FIRST_BOARD);
  self->cursor_y = TB_ARROWS_Y;
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (on_press), self);
  gtk_widget_add_controller (GTK_WIDGET (tb_lane_page_get_picture (TB_LANE_PAGE (self))),
                             GTK_EVENT_CONTROLLER (drag));
}
