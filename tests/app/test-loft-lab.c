/* The loft lab from inside: its numbers are those of runs thrown here, presets, cautions, the way to the
 * trainer.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <string.h>

#include "tb-describe.h"
#include "tb-loft-lab.h"
#include "tb-style.h"
#include "window-support.h"

typedef struct Fixture
{
  TbLibrary *library;
  TbSession *session;
  TbLoftLab *window;
} Fixture;

static void
settle (Fixture *self)
{
  WAIT_UNTIL (!tb_loft_runs_is_busy (tb_loft_lab_get_runs (self->window)));
}

static void
set_up (Fixture *self, gconstpointer data)
{
  self->library = tb_library_new ();
  self->session = tb_session_new (self->library);
  self->window = tb_loft_lab_new (NULL, self->session);
  show_window (self->window);
}

static void
tear_down (Fixture *self, gconstpointer data)
{
  close_for_good (self->window);
  g_object_unref (self->session);
  g_object_unref (self->library);
}

static double
field_of (Fixture *self, const char *name)
{
  return tb_session_get_field (self->session, TB_SIDE_AFTER, tb_field_find (TB_GROUP_DELIVERY, name));
}

/* The run that the headless commands would throw: the study's shot with these numbers. */
static TbRun *
thrown (Fixture *self, const TbLoftThrow *loft, double games)
{
  TbShot shot = tb_session_get_setup (self->session, TB_SIDE_AFTER)->shot;
  g_autoptr (TbSetup) setup = NULL;

  shot.delivery.loft_reach = loft->reach;
  shot.delivery.release_height = loft->height;
  shot.delivery.loft_angle = loft->angle;
  shot.lane.games_played = games;
  setup = tb_setup_new (&shot, tb_session_get_setup (self->session, TB_SIDE_AFTER)->pattern);
  return tb_run_new (setup);
}

static void
check_column (Fixture *self, TbLoftStyle style, TbLoftLane lane)
{
  static const char *const names[]
      = { "landing_ft",    "landing_speed_mph", "landing_load",  "landing_loss_j", "landing_slowed_mph",
          "hook_start_ft", "roll_start_ft",     "board_at_pins", "hook_board",     "speed_at_pins_mph" };
  TbLoftThrow loft = tb_loft_controls_get_throw (tb_loft_lab_get_controls (self->window, style));
  double games = lane == TB_LOFT_WORN ? gtk_spin_button_get_value (tb_loft_lab_get_games (self->window)) : 0;
  TbRun *run = thrown (self, &loft, games);

  g_assert_cmpint (run->status, ==, TB_OK);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *want
          = tb_describe_measure_number (tb_measure_find (names[i]), &run->path.measures, TB_UNITS_IMPERIAL);

      g_assert_cmpstr (tb_loft_table_get_cell (tb_loft_lab_get_table (self->window), names[i], style, lane),
                       ==, want);
    }
  tb_run_unref (run);
}

static void
check_all (Fixture *self)
{
  settle (self);
  for (int style = 0; style < TB_N_LOFTS; style++)
    for (int lane = 0; lane < TB_N_LOFT_LANES; lane++)
      check_column (self, (TbLoftStyle) style, (TbLoftLane) lane);
}

static void
test_numbers (Fixture *self, gconstpointer data)
{
  check_all (self);
  gtk_spin_button_set_value (tb_loft_lab_get_games (self->window), 2);
  check_all (self);
  set_speed (self->session, 18.5);
  check_all (self);
}

/* The arc comes down harder than the flat throw, and costs more. */
static void
test_arc_costs_more (Fixture *self, gconstpointer data)
{
  TbLoftRuns *runs = tb_loft_lab_get_runs (self->window);
  const TbMeasures *flat, *arc;

  settle (self);
  flat = &tb_loft_runs_get_run (runs, TB_LOFT_FLAT, TB_LOFT_FRESH)->path.measures;
  arc = &tb_loft_runs_get_run (runs, TB_LOFT_ARC, TB_LOFT_FRESH)->path.measures;
  g_assert_cmpfloat (arc->landing_speed, >, flat->landing_speed);
  g_assert_cmpfloat (arc->landing_loss, >, flat->landing_loss);
  g_assert_cmpfloat (arc->landing_slowed, >, flat->landing_slowed);
}

static void
test_presets (Fixture *self, gconstpointer data)
{
  static const double want[][3] = { { 0, 0, 0 }, { 6, 2, 0 }, { 30, 2, 0 }, { 24, 4, 6 } };
  TbLoftControls *controls = tb_loft_lab_get_controls (self->window, TB_LOFT_FLAT);

  for (guint i = 0; tb_loft_presets[i].id != NULL; i++)
    {
      TbLoftThrow loft;

      gtk_drop_down_set_selected (tb_loft_controls_get_presets (controls), i);
      loft = tb_loft_controls_get_throw (controls);
      g_assert_cmpfloat_with_epsilon (tb_in_from_metres (loft.reach), want[i][0], 1e-9);
      g_assert_cmpfloat_with_epsilon (tb_in_from_metres (loft.height), want[i][1], 1e-9);
      g_assert_cmpfloat_with_epsilon (tb_deg_from_radians (loft.angle), want[i][2], 1e-9);
      g_assert_true (tb_loft_preset_of (&loft) == &tb_loft_presets[i]);
      check_column (self, TB_LOFT_FLAT, TB_LOFT_FRESH);
    }
}

/* Numbers that are no preset's are called one's own; the slider changes what is thrown, and not the trainer.
 */
static void
test_own_numbers (Fixture *self, gconstpointer data)
{
  TbLoftControls *controls = tb_loft_lab_get_controls (self->window, TB_LOFT_ARC);
  GtkWidget *row = tb_loft_controls_get_row (controls, "loft_angle_deg");
  gboolean handled = FALSE;

  g_signal_emit_by_name (tb_field_row_get_scale (TB_FIELD_ROW (row)), "change-value", GTK_SCROLL_JUMP, 9.0,
                         &handled);
  g_assert_true (handled);
  g_assert_cmpfloat_with_epsilon (tb_deg_from_radians (tb_loft_controls_get_throw (controls).angle), 9, 1e-9);
  g_assert_cmpuint (gtk_drop_down_get_selected (tb_loft_controls_get_presets (controls)), ==, 4);
  check_column (self, TB_LOFT_ARC, TB_LOFT_FRESH);
  g_assert_cmpfloat_with_epsilon (field_of (self, "loft_angle_deg"), 0, 1e-9);
  g_assert_false (tb_session_get_modified (self->session));
}

static void
test_take (Fixture *self, gconstpointer data)
{
  TbLoftControls *controls = tb_loft_lab_get_controls (self->window, TB_LOFT_ARC);

  g_signal_emit_by_name (tb_loft_controls_get_take (controls), "clicked");
  g_assert_cmpfloat_with_epsilon (field_of (self, "loft_angle_deg"), 6, 1e-9);
  g_assert_cmpfloat_with_epsilon (field_of (self, "loft_reach_in"), 24, 1e-9);
  g_assert_cmpfloat_with_epsilon (field_of (self, "release_height_in"), 4, 1e-9);
  tb_session_undo (self->session);
  g_assert_cmpfloat_with_epsilon (field_of (self, "loft_angle_deg"), 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (field_of (self, "loft_reach_in"), 6, 1e-9);
  g_assert_false (tb_session_can_undo (self->session));
}

/* In plain sight as the window opens, above everything else. */
static void
test_cautions (Fixture *self, gconstpointer data)
{
  GtkWidget *cautions = tb_loft_lab_get_cautions (self->window);
  graphene_rect_t bounds, table;

  g_assert_true (says (cautions, "dents the lane"));
  g_assert_true (says (cautions, "Ask the house"));
  g_assert_true (says (cautions, "back, wrist and fingers"));
  g_assert_true (says (cautions, "qualified coach"));
  g_assert_true (says (cautions, "no source"));
  g_assert_true (gtk_widget_compute_bounds (cautions, GTK_WIDGET (self->window), &bounds));
  g_assert_true (gtk_widget_compute_bounds (GTK_WIDGET (tb_loft_lab_get_table (self->window)),
                                            GTK_WIDGET (self->window), &table));
  g_assert_cmpfloat (bounds.origin.y + bounds.size.height, <=, table.origin.y);
  g_assert_cmpfloat (bounds.origin.y, >=, 0);
}

/* The curve goes through what the table shows. */
static void
test_curve (Fixture *self, gconstpointer data)
{
  TbLoftRuns *runs = tb_loft_lab_get_runs (self->window);
  const TbLoftCurve *curves;

  settle (self);
  curves = tb_loft_runs_get_curves (runs);
  g_assert_nonnull (curves);
  for (int style = 0; style < TB_N_LOFTS; style++)
    for (int lane = 0; lane < TB_N_LOFT_LANES; lane++)
      for (int i = 0; i < TB_LOFT_POINTS; i++)
        {
          TbLoftThrow loft = tb_loft_runs_get_throw (runs, (TbLoftStyle) style);
          const TbRun *run = tb_loft_runs_get_run (runs, (TbLoftStyle) style, (TbLoftLane) lane);

          g_assert_false (isnan (curves[style].hook[lane][i]));
          /* The scale's points may differ from the throw's reach by rounding. */
          if (fabs (curves[style].reach[i] - loft.reach) < 1e-9)
            g_assert_cmpfloat_with_epsilon (curves[style].hook[lane][i], run->path.measures.hook, 1e-6);
        }
}

int
main (int argc, char **argv)
{
  start_tests (&argc, &argv);
  tb_style_init (gdk_display_get_default ());
#define ADD(name, test) g_test_add ("/loft-lab/" name, Fixture, NULL, set_up, test, tear_down)
  ADD ("numbers", test_numbers);
  ADD ("arc-costs-more", test_arc_costs_more);
  ADD ("presets", test_presets);
  ADD ("own-numbers", test_own_numbers);
  ADD ("take", test_take);
  ADD ("cautions", test_cautions);
  ADD ("curve", test_curve);
  return run_tests ();
}
