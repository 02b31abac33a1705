/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-lines-page.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-lines-view.h"
#include "tb-lines-words.h"
#include "tb-quantity.h"

/* Misses drawn to either side, boards apart. */
#define FAMILY_EACH 3
#define FAMILY_SPACING 1.0
/* Dragged boards snap to this. */
#define SNAP_BOARDS 0.5

struct _TbLinesPage
{
  TbLanePage parent_instance;

  GtkSpinButton *slide, *drift, *offset;
  GtkLabel *feet_words, *spare_words, *oil_words;
  GtkCheckButton *family_shown, *parallel;
  GtkWidget *spare_aim;

  GtkWidget *keep;
  GtkLabel *kept_words;

  TbStance stance;
  char *bowler_id; /* whose drift and offset the stance has; NULL for nobody's */
  gboolean showing;
  TbFamily *family; /* of the present line; NULL while none is shown */
  int spare_pin;    /* −1 for none */
  TbSpare spare;
  gboolean spare_found; /* the aim of this very ball, beside the straight one */
  double spare_aim_board;
  TbLineHandle dragged;
};

G_DEFINE_FINAL_TYPE (TbLinesPage, tb_lines_page, TB_TYPE_LANE_PAGE)

static TbSetup *
setup_of (TbLinesPage *self)
{
  return tb_lane_page_get_setup (TB_LANE_PAGE (self));
}

TbStance
tb_lines_page_get_stance (TbLinesPage *self)
{
  return self->stance;
}

static TbLinesScene
scene_of (TbLinesPage *self, const TbTheme *theme)
{
  TbSession *session = tb_lane_page_get_session (TB_LANE_PAGE (self));
  const TbSetup *setup = setup_of (self);
  TbLaneScene lane = tb_lane_scene_default ();

  lane.theme = *theme;
  lane.oil = setup->shot.lane.oil;
  lane.oil_scale = setup->shot.lane.pattern_scale;
  lane.after = tb_session_get_path (session, TB_SIDE_AFTER);
  lane.after_label = _ ("after");
  lane.pocket_low = setup->shot.assumed.pocket_low;
  lane.pocket_high = setup->shot.assumed.pocket_high;
  lane.mirrored = setup->shot.delivery.hand == TB_HAND_LEFT;
  lane.show_phases = false;
  return (TbLinesScene){ .lane = lane,
                         .family = self->family,
                         .delivery = &setup->shot.delivery,
                         .spare = self->spare_pin >= 0 ? &self->spare : NULL };
}

static void
draw (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page)
{
  TbLinesScene scene = scene_of (page, theme);

  tb_lines_view_draw (cr, width, height, &scene);
}

/* Showing the session. */

static void
update_family (TbLinesPage *self)
{
  g_clear_pointer (&self->family, tb_family_free);
  if (gtk_check_button_get_active (self->family_shown))
    self->family = tb_family_new (setup_of (self), FAMILY_EACH, FAMILY_SPACING,
                                  gtk_check_button_get_active (self->parallel));
}

static void
update_spare (TbLinesPage *self)
{
  TbSetup *setup = setup_of (self);
  double laydown;
  TbSpare aimed;

  if (self->spare_pin < 0)
    return;
  laydown = tb_spare_laydown_board (setup->shot.delivery.hand, self->spare_pin);
  self->spare = tb_spare_straight (setup, self->spare_pin, laydown);
  self->spare_found = tb_spare_aimed (setup, self->spare_pin, laydown, &aimed);
  self->spare_aim_board = aimed.aim_board;
}

static void
refresh (TbLinesPage *self)
{
  TbSession *session = tb_lane_page_get_session (TB_LANE_PAGE (self));
  g_autofree char *feet = tb_lines_feet_text (&self->stance, &setup_of (self)->shot.delivery);
  g_autofree char *oil = tb_lines_oil_text (session);
  g_autofree char *family = NULL;
  g_autofree char *spare = NULL;

  update_family (self);
  update_spare (self);
  family = self->family ? tb_lines_family_text (self->family) : g_strdup ("");
  spare = self->spare_pin >= 0
              ? tb_lines_spare_text (&self->spare, self->spare_found ? self->spare_aim_board : (double) NAN)
              : g_strdup (_ ("Choose the pin that is left."));
  gtk_label_set_text (self->feet_words, feet);
  gtk_label_set_text (self->oil_words, oil);
  gtk_label_set_text (self->spare_words, spare);
  gtk_widget_set_sensitive (self->spare_aim, self->spare_pin >= 0 && self->spare_found);
  tb_lane_page_set_words (TB_LANE_PAGE (self), family);
  tb_drawn_picture_refresh (tb_lane_page_get_picture (TB_LANE_PAGE (self)), family);
}

/* The bowler of "after" in the library; NULL if there is none. */
static TbBowler *
bowler_of (TbLinesPage *self)
{
  TbLibrary *library = tb_session_get_library (tb_lane_page_get_session (TB_LANE_PAGE (self)));
  const char *id = setup_of (self)->bowler_id;
  TbLibraryEntry *entry = id ? tb_library_find (library, TB_DOCUMENT_BOWLER, id, NULL) : NULL;

  return entry ? tb_library_entry_get_bowler (entry) : NULL;
}

/* Another bowler brings other feet. */
static void
take_bowlers_feet (TbLinesPage *self)
{
  const char *id = setup_of (self)->bowler_id;
  const TbBowler *bowler = bowler_of (self);

  if (g_strcmp0 (id, self->bowler_id) == 0 || !bowler)
    return;
  g_free (self->bowler_id);
  self->bowler_id = g_strdup (id);
  self->stance.drift = bowler->drift;
  self->stance.offset = bowler->foot_offset;
}

static void
tb_lines_page_session_changed (TbLanePage *page)
{
  TbLinesPage *self = TB_LINES_PAGE (page);
  const TbBowler *bowler = bowler_of (self);

  take_bowlers_feet (self);
  self->stance
      = tb_stance_for_laydown (&self->stance, tb_board_from_x (setup_of (self)->shot.delivery.laydown));
  self->showing = TRUE;
  gtk_spin_button_set_value (self->slide, self->stance.slide_board);
  gtk_spin_button_set_value (self->drift, self->stance.drift);
  gtk_spin_button_set_value (self->offset, self->stance.offset);
  gtk_widget_set_sensitive (
      self->keep,
      bowler && (bowler->drift != self->stance.drift || bowler->foot_offset != self->stance.offset));
  self->showing = FALSE;
  refresh (self);
}

/* Changing it. */

static void
put_delivery (TbLinesPage *self, const TbDelivery *delivery, const char *key)
{
  TbSession *session = tb_lane_page_get_session (TB_LANE_PAGE (self));
  const TbSetup *setup = setup_of (self);
  TbShot shot = setup->shot;
  g_autoptr (TbSetup) moved = NULL;

  shot.delivery = *delivery;
  moved = tb_setup_with_shot (setup, &shot);
  tb_session_set_after_as (session, moved, key);
}

static void
on_slide (TbLinesPage *self)
{
  TbDelivery delivery = setup_of (self)->shot.delivery;
  TbStance stance = self->stance;

  if (self->showing)
    return;
  stance.slide_board = gtk_spin_button_get_value (self->slide);
  delivery.laydown = tb_x_from_board (CLAMP (tb_stance_laydown_board (&stance), 1, TB_LANE_BOARDS));
  put_delivery (self, &delivery, "lines-stance");
}

/* Drift and offset are the bowler's: the ball is laid down where it was, and the feet stand elsewhere. */
static void
on_habits (TbLinesPage *self)
{
  if (self->showing)
    return;
  self->stance.drift = gtk_spin_button_get_value (self->drift);
  self->stance.offset = gtk_spin_button_get_value (self->offset);
  tb_lines_page_session_changed (TB_LANE_PAGE (self));
}

/* For good, among the user's own bowlers. */
static void
on_keep (TbLinesPage *self)
{
  TbLibrary *library = tb_session_get_library (tb_lane_page_get_session (TB_LANE_PAGE (self)));
  const TbBowler *old = bowler_of (self);
  g_autoptr (TbBowler) bowler = old ? tb_bowler_new (old) : NULL;
  g_autoptr (GError) error = NULL;

  if (!bowler)
    return;
  bowler->drift = self->stance.drift;
  bowler->foot_offset = self->stance.offset;
  if (tb_library_save_bowler (library, bowler, &error))
    gtk_label_set_text (self->kept_words, _ ("Kept."));
  else
    gtk_label_set_text (self->kept_words, error->message);
  tb_lines_page_session_changed (TB_LANE_PAGE (self));
}

static void
make_move (TbLinesPage *self, GtkButton *button, int sign)
{
  const TbMove *move = g_object_get_data (G_OBJECT (button), "move");
  TbDelivery delivery = tb_move_delivery (&setup_of (self)->shot.delivery, move, sign);

  put_delivery (self, &delivery, "lines-move");
}

static void
on_move_in (TbLinesPage *self, GtkButton *button)
{
  make_move (self, button, 1);
}

static void
on_move_out (TbLinesPage *self, GtkButton *button)
{
  make_move (self, button, -1);
}

void
tb_lines_page_show_spare (TbLinesPage *self, int pin)
{
  self->spare_pin = pin;
  refresh (self);
}

static void
on_pin (TbLinesPage *self, GtkToggleButton *button)
{
  int pin = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "pin"));

  if (gtk_toggle_button_get_active (button))
    tb_lines_page_show_spare (self, pin);
  else if (self->spare_pin == pin)
    tb_lines_page_show_spare (self, -1);
}

static void
on_spare_aim (TbLinesPage *self)
{
  TbSpare aimed = self->spare;
  g_autoptr (TbSetup) setup = NULL;

  aimed.aim_board = self->spare_aim_board;
  setup = tb_spare_setup (setup_of (self), &aimed);
  tb_session_set_after (tb_lane_page_get_session (TB_LANE_PAGE (self)), setup);
}

/* Dragging. */

static double
board_at (TbLinesPage *self, double x, double y, TbLineHandle *handle)
{
  GtkWidget *picture = GTK_WIDGET (tb_lane_page_get_picture (TB_LANE_PAGE (self)));
  TbTheme theme = tb_picture_get_theme (TB_PICTURE (picture));
  TbLinesScene scene = scene_of (self, &theme);
  double width = gtk_widget_get_width (picture), height = gtk_widget_get_height (picture);
  const double at[2] = { x, y };

  if (handle)
    *handle = tb_lines_view_handle_at (width, height, &scene, at);
  return tb_lines_view_board (width, height, &scene, at);
}

static void
on_drag_begin (TbLinesPage *self, double x, double y)
{
  board_at (self, x, y, &self->dragged);
  tb_session_begin_gesture (tb_lane_page_get_session (TB_LANE_PAGE (self)));
}

static void
on_drag_update (TbLinesPage *self, double dx, double dy, GtkGestureDrag *gesture)
{
  TbDelivery delivery = setup_of (self)->shot.delivery;
  double x, y, board;

  if (self->dragged == TB_LINE_NOWHERE)
    return;
  gtk_gesture_drag_get_start_point (gesture, &x, &y);
  board = SNAP_BOARDS * round (board_at (self, x + dx, y + dy, NULL) / SNAP_BOARDS);
  if (self->dragged == TB_LINE_LAYDOWN)
    delivery.laydown = tb_x_from_board (CLAMP (board, 1, TB_LANE_BOARDS));
  else
    delivery.aim = tb_x_from_board (CLAMP (board, 1, TB_LANE_BOARDS));
  put_delivery (self, &delivery, "lines-drag");
}

static void
on_drag_end (TbLinesPage *self)
{
  self->dragged = TB_LINE_NOWHERE;
  tb_session_end_gesture (tb_lane_page_get_session (TB_LANE_PAGE (self)));
}

/* Building. */

static void
add_feet (TbLinesPage *self, GtkBox *box)
{
  static const TbSpinRange slides = { -10, 60, 0.5, 5, 1 };
  static const TbSpinRange drifts = { -TB_BOWLER_MAX_DRIFT, TB_BOWLER_MAX_DRIFT, 0.5, 2, 1 };
  static const TbSpinRange offsets = { 0, TB_BOWLER_MAX_FOOT_OFFSET, 0.5, 1, 1 };

  GtkBox *row;

  tb_lane_page_add_title (box, _ ("Feet"));
  self->slide = tb_lane_page_add_spin (box, _ ("Stance, board of the slide foot"), &slides);
  self->drift = tb_lane_page_add_spin (box, _ ("Drift on the approach, boards"), &drifts);
  self->offset = tb_lane_page_add_spin (box, _ ("Ball outside of the foot, boards"), &offsets);
  tb_lane_page_explain (self->slide, "stance");
  tb_lane_page_explain (self->drift, "drift");
  tb_lane_page_explain (self->offset, "laydown");
  row = tb_lane_page_add_row (box, "");
  self->kept_words = GTK_LABEL (gtk_widget_get_first_child (GTK_WIDGET (row)));
  self->keep = GTK_WIDGET (tb_lane_page_add_button (
      row, _ ("_Keep for this bowler"), _ ("Drift and offset, for whenever this bowler is chosen")));
  self->feet_words = tb_lane_page_add_note (box, "");
  self->oil_words = tb_lane_page_add_note (box, "");
  g_signal_connect_swapped (self->slide, "value-changed", G_CALLBACK (on_slide), self);
  g_signal_connect_swapped (self->keep, "clicked", G_CALLBACK (on_keep), self);
  g_signal_connect_swapped (self->drift, "value-changed", G_CALLBACK (on_habits), self);
  g_signal_connect_swapped (self->offset, "value-changed", G_CALLBACK (on_habits), self);
}

static void
add_move_button (TbLinesPage *self, GtkBox *row, const TbMove *move, int sign)
{
  GtkButton *button = tb_lane_page_add_button (row, sign > 0 ? "+" : "−", _ (move->help));
  /* Translators: a move such as "Feet 2, target 1"; towards higher or lower boards. */
  g_autofree char *name = g_strdup_printf (
      sign > 0 ? _ ("%s, towards higher boards") : _ ("%s, towards lower boards"), _ (move->label));

  tb_accessible_set_name (GTK_WIDGET (button), name);
  g_object_set_data (G_OBJECT (button), "move", (gpointer) move);
  g_signal_connect_swapped (button, "clicked", sign > 0 ? G_CALLBACK (on_move_in) : G_CALLBACK (on_move_out),
                            self);
}

static void
add_moves (TbLinesPage *self, GtkBox *box)
{
  tb_lane_page_add_title (box, _ ("Moves: + towards higher boards"));
  for (const TbMove *move = tb_moves; move->label; move++)
    {
      GtkBox *row = tb_lane_page_add_row (box, _ (move->label));

      add_move_button (self, row, move, -1);
      add_move_button (self, row, move, 1);
    }
}

static void
add_family (TbLinesPage *self, GtkBox *box)
{
  tb_lane_page_add_title (box, _ ("Misses, one to three boards"));
  self->family_shown
      = GTK_CHECK_BUTTON (gtk_check_button_new_with_label (_ ("Show them; dotted if they miss the pocket")));
  self->parallel
      = GTK_CHECK_BUTTON (gtk_check_button_new_with_label (_ ("In parallel, not at the target alone")));
  gtk_check_button_set_active (self->family_shown, TRUE);
  gtk_check_button_set_active (self->parallel, TRUE);
  gtk_box_append (box, GTK_WIDGET (self->family_shown));
  gtk_box_append (box, GTK_WIDGET (self->parallel));
  g_signal_connect_swapped (self->family_shown, "toggled", G_CALLBACK (refresh), self);
  g_signal_connect_swapped (self->parallel, "toggled", G_CALLBACK (refresh), self);
}

/* Pins as they stand: the back row on top. */
static void
add_spares (TbLinesPage *self, GtkBox *box)
{
  static const int rows[][4] = { { 6, 7, 8, 9 }, { 3, 4, 5, -1 }, { 1, 2, -1, -1 }, { 0, -1, -1, -1 } };
  GtkToggleButton *first = NULL;

  tb_lane_page_add_title (box, _ ("A spare"));
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);

      gtk_widget_set_halign (row, GTK_ALIGN_CENTER);
      for (int j = 0; j < 4 && rows[i][j] >= 0; j++)
        {
          g_autofree char *label = g_strdup_printf ("%d", rows[i][j] + 1);
          GtkWidget *pin = gtk_toggle_button_new_with_label (label);
          g_autofree char *name = g_strdup_printf (_ ("%d pin"), rows[i][j] + 1);

          tb_accessible_set_name (pin, name);
          gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (pin), first);
          first = first ? first : GTK_TOGGLE_BUTTON (pin);
          g_object_set_data (G_OBJECT (pin), "pin", GINT_TO_POINTER (rows[i][j]));
          g_signal_connect_swapped (pin, "toggled", G_CALLBACK (on_pin), self);
          gtk_box_append (GTK_BOX (row), pin);
        }
      gtk_box_append (box, row);
    }
  self->spare_words = tb_lane_page_add_note (box, "");
  self->spare_aim = GTK_WIDGET (
      tb_lane_page_add_button (box, _ ("_Throw this ball at it"), _ ("“After” becomes that shot")));
  g_signal_connect_swapped (self->spare_aim, "clicked", G_CALLBACK (on_spare_aim), self);
}

static void
tb_lines_page_session_set (TbLanePage *page)
{
  TbLinesPage *self = TB_LINES_PAGE (page);
  GtkBox *box = tb_lane_page_get_controls (page);

  add_feet (self, box);
  add_moves (self, box);
  add_family (self, box);
  add_spares (self, box);
  tb_drawn_picture_set_draw (tb_lane_page_get_picture (page), _ ("Line and misses"), draw, self);
}

static void
tb_lines_page_dispose (GObject *object)
{
  g_clear_pointer (&TB_LINES_PAGE (object)->family, tb_family_free);
  g_clear_pointer (&TB_LINES_PAGE (object)->bowler_id, g_free);
  G_OBJECT_CLASS (tb_lines_page_parent_class)->dispose (object);
}

static void
tb_lines_page_class_init (TbLinesPageClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_lines_page_dispose;
  TB_LANE_PAGE_CLASS (klass)->session_set = tb_lines_page_session_set;
  TB_LANE_PAGE_CLASS (klass)->session_changed = tb_lines_page_session_changed;
}

static void
tb_lines_page_init (TbLinesPage *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();

  self->stance = tb_stance_default ();
  self->spare_pin = -1;
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (on_drag_begin), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (on_drag_update), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (on_drag_end), self);
  gtk_widget_add_controller (GTK_WIDGET (tb_lane_page_get_picture (TB_LANE_PAGE (self))),
                             GTK_EVENT_CONTROLLER (drag));
}
