/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-loft-lab.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-accessible.h"
#include "tb-curve-view.h"
#include "tb-describe.h"
#include "tb-drawn-picture.h"
#include "tb-loft-grid.h"
#include "tb-loft-view.h"
#include "tb-loft-words.h"
#include "tb-style.h"

/* The side view goes on so far past the further landing, and ends at a whole multiple of the step, ft. */
#define BEYOND_FT 2.0
#define SHOWN_STEP_FT 5.0
/* Games on the worn lane where the study's has not been played on. */
#define USUAL_GAMES 6
/* Boards that a curve's scale spans at least. */
#define LEAST_SPAN 2.0

struct _TbLoftLab
{
  GtkWindow parent_instance;

  /* Template */
  GtkWidget *cautions;
  TbLoftControls *controls[TB_N_LOFTS];
  GtkSpinButton *games;
  GtkSpinner *spinner;
  GtkCheckButton *true_scale;
  TbDrawnPicture *side, *grid, *curve;
  TbLoftTable *table;
  GtkLabel *words;

  TbSession *session;
  TbLoftRuns *runs;
};

G_DEFINE_FINAL_TYPE (TbLoftLab, tb_loft_lab, GTK_TYPE_WINDOW)

/* Pictures. */

/* With samples; NULL where there is none. */
static const TbPath *
path_of (TbLoftLab *self, TbLoftStyle style, TbLoftLane lane)
{
  TbRun *run = tb_loft_runs_get_run (self->runs, style, lane);

  return run != NULL && run->status == TB_OK ? &run->path : NULL;
}

/* The air does not know the lane: the fresh one's flights are the worn one's. */
static void
draw_side (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page)
{
  TbLoftLab *self = page;
  TbLoftScene scene = tb_loft_scene_default ();

  scene.theme = *theme;
  scene.before = path_of (self, TB_LOFT_FLAT, TB_LOFT_FRESH);
  scene.after = path_of (self, TB_LOFT_ARC, TB_LOFT_FRESH);
  scene.before_name = tb_loft_style_name (TB_LOFT_FLAT);
  scene.after_name = tb_loft_style_name (TB_LOFT_ARC);
  scene.measured = true;
  scene.metric = tb_session_get_units (self->session) == TB_UNITS_METRIC;
  scene.true_scale = gtk_check_button_get_active (self->true_scale);
  for (int style = 0; style < TB_N_LOFTS; style++)
    {
      const TbPath *path = path_of (self, (TbLoftStyle) style, TB_LOFT_FRESH);
      double far = path != NULL ? tb_ft_from_metres (path->measures.landing_y) + BEYOND_FT : 0;

      /* A ball that is laid down does not land. */
      if (isnan (far))
        continue;
      scene.shown_to_ft = MAX (scene.shown_to_ft, SHOWN_STEP_FT * ceil (far / SHOWN_STEP_FT));
    }
  tb_loft_view_draw (cr, width, height, &scene);
}

static void
draw_grid (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page)
{
  TbLoftLab *self = page;
  TbLoftGridScene scene
      = { .theme = *theme, .metric = tb_session_get_units (self->session) == TB_UNITS_METRIC };
  char *owned[TB_N_LOFTS][TB_N_LOFT_LANES], *lanes[TB_N_LOFT_LANES];

  for (int lane = 0; lane < TB_N_LOFT_LANES; lane++)
    scene.lane_name[lane] = lanes[lane]
        = tb_loft_lane_name ((TbLoftLane) lane, tb_loft_runs_get_games (self->runs));
  for (int style = 0; style < TB_N_LOFTS; style++)
    {
      scene.throw_name[style] = tb_loft_style_name ((TbLoftStyle) style);
      for (int lane = 0; lane < TB_N_LOFT_LANES; lane++)
        {
          TbRun *run = tb_loft_runs_get_run (self->runs, (TbLoftStyle) style, (TbLoftLane) lane);

          scene.cell[style][lane].path = path_of (self, (TbLoftStyle) style, (TbLoftLane) lane);
          scene.cell[style][lane].words = owned[style][lane]
              = run != NULL ? tb_describe_end (run, tb_session_get_units (self->session))
                            : g_strdup (_ ("being played…"));
        }
    }
  tb_loft_grid_draw (cr, width, height, &scene);
  for (int lane = 0; lane < TB_N_LOFT_LANES; lane++)
    {
      g_free (lanes[lane]);
      for (int style = 0; style < TB_N_LOFTS; style++)
        g_free (owned[style][lane]);
    }
}

/* A curve in the numbers that are shown. */
typedef struct ShownLine
{
  double x[TB_LOFT_POINTS], y[TB_LOFT_POINTS];
} ShownLine;

static TbCurveLine
curve_line (TbLoftLab *self, TbLoftStyle style, TbLoftLane lane, ShownLine *shown)
{
  const TbLoftCurve *curve = &tb_loft_runs_get_curves (self->runs)[style];
  TbLoftThrow loft = tb_loft_runs_get_throw (self->runs, style);
  const TbPath *path = path_of (self, style, lane);

  for (int i = 0; i < TB_LOFT_POINTS; i++)
    {
      shown->x[i] = tb_in_from_metres (curve->reach[i]);
      shown->y[i] = tb_boards_from_width (curve->hook[lane][i]);
    }
  return (TbCurveLine){ .x = shown->x,
                        .y = shown->y,
                        .count = TB_LOFT_POINTS,
                        .place = tb_in_from_metres (loft.reach),
                        .present = path != NULL ? tb_boards_from_width (path->measures.hook) : (double) NAN };
}

static void
draw_curve (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page)
{
  TbLoftLab *self = page;
  static const TbCurveTick ticks[] = { { 0, "0" }, { 12, "12" }, { 24, "24" }, { 36, "36" } };
  ShownLine shown[TB_N_LOFTS][TB_N_LOFT_LANES];
  TbCurvePanel panels[TB_N_LOFT_LANES];
  char *title[TB_N_LOFT_LANES];
  TbCurveScene scene = { .theme = *theme,
                         .panels = panels,
                         .ticks = ticks,
                         .n_ticks = G_N_ELEMENTS (ticks),
                         .low = ticks[0].x,
                         .high = ticks[G_N_ELEMENTS (ticks) - 1].x,
                         .own_places = TRUE,
                         .x_title = _ ("let go past the line, in"),
                         .dashed_label = tb_loft_style_name (TB_LOFT_FLAT),
                         .solid_label = tb_loft_style_name (TB_LOFT_ARC) };

  for (int lane = 0; lane < TB_N_LOFT_LANES; lane++)
    {
      g_autofree char *name = tb_loft_lane_name ((TbLoftLane) lane, tb_loft_runs_get_games (self->runs));

      /* Translators: %s is a lane, such as "fresh" or "after 6 games". */
      title[lane] = g_strdup_printf (_ ("Boards hooked, %s"), name);
      panels[lane]
          = (TbCurvePanel){ .title = title[lane], .unit = "", .digits = 1, .least_span = LEAST_SPAN };
      if (tb_loft_runs_get_curves (self->runs) == NULL)
        continue;
      panels[lane].dashed = curve_line (self, TB_LOFT_FLAT, (TbLoftLane) lane, &shown[TB_LOFT_FLAT][lane]);
      panels[lane].solid = curve_line (self, TB_LOFT_ARC, (TbLoftLane) lane, &shown[TB_LOFT_ARC][lane]);
    }
  scene.n_panels = TB_N_LOFT_LANES;
  tb_curve_view_draw (cr, width, height, &scene);
  for (int lane = 0; lane < TB_N_LOFT_LANES; lane++)
    g_free (title[lane]);
}

/* What is shown follows. */

static void
show (TbLoftLab *self)
{
  TbUnits units = tb_session_get_units (self->session);
  g_autofree char *text = tb_loft_runs_text (self->runs, units);

  tb_loft_table_show (self->table, self->runs, units);
  gtk_label_set_text (self->words, text);
  gtk_spinner_set_spinning (self->spinner, tb_loft_runs_is_busy (self->runs));
  tb_drawn_picture_refresh (self->side, text);
  tb_drawn_picture_refresh (self->grid, text);
  tb_drawn_picture_refresh (self->curve, text);
}

static void
on_session_changed (TbLoftLab *self)
{
  tb_loft_runs_set_setup (self->runs, tb_session_get_setup (self->session, TB_SIDE_AFTER));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "loft.undo", tb_session_can_undo (self->session));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "loft.redo", tb_session_can_redo (self->session));
}

static TbLoftStyle
style_of (TbLoftLab *self, TbLoftControls *controls)
{
  return controls == self->controls[TB_LOFT_FLAT] ? TB_LOFT_FLAT : TB_LOFT_ARC;
}

static void
on_throw (TbLoftLab *self, TbLoftControls *controls)
{
  TbLoftThrow loft = tb_loft_controls_get_throw (controls);

  tb_loft_runs_set_throw (self->runs, style_of (self, controls), &loft);
}

/* One step to undo in the trainer. */
static void
on_take (TbLoftLab *self, TbLoftControls *controls)
{
  TbLoftThrow loft = tb_loft_controls_get_throw (controls);
  g_autoptr (TbSetup) setup = tb_setup_with_loft (tb_session_get_setup (self->session, TB_SIDE_AFTER), &loft);

  tb_session_set_after (self->session, setup);
}

static void
on_games (TbLoftLab *self)
{
  if (self->runs != NULL)
    tb_loft_runs_set_games (self->runs, gtk_spin_button_get_value (self->games));
}

static void
on_scale (TbLoftLab *self)
{
  tb_picture_invalidate (TB_PICTURE (self->side));
}

static void
undo (GtkWidget *widget, const char *action, GVariant *parameter)
{
  tb_session_undo (TB_LOFT_LAB (widget)->session);
}

static void
redo (GtkWidget *widget, const char *action, GVariant *parameter)
{
  tb_session_redo (TB_LOFT_LAB (widget)->session);
}

TbLoftRuns *
tb_loft_lab_get_runs (TbLoftLab *self)
{
  return self->runs;
}

TbLoftControls *
tb_loft_lab_get_controls (TbLoftLab *self, TbLoftStyle style)
{
  return self->controls[style];
}

TbLoftTable *
tb_loft_lab_get_table (TbLoftLab *self)
{
  return self->table;
}

GtkSpinButton *
tb_loft_lab_get_games (TbLoftLab *self)
{
  return self->games;
}

GtkWidget *
tb_loft_lab_get_cautions (TbLoftLab *self)
{
  return self->cautions;
}

static void
set_up_controls (TbLoftLab *self)
{
  for (int style = 0; style < TB_N_LOFTS; style++)
    {
      TbLoftThrow loft = tb_loft_runs_get_throw (self->runs, (TbLoftStyle) style);

      tb_loft_controls_set_up (self->controls[style], self->session, tb_loft_style_name ((TbLoftStyle) style),
                               &loft);
      g_signal_connect_object (self->controls[style], "changed", G_CALLBACK (on_throw), self,
                               G_CONNECT_SWAPPED);
      g_signal_connect_object (self->controls[style], "take", G_CALLBACK (on_take), self, G_CONNECT_SWAPPED);
    }
}

static void
set_up_pictures (TbLoftLab *self)
{
  TbDrawnPicture *const pictures[] = { self->side, self->grid, self->curve };

  tb_drawn_picture_set_draw (self->side, _ ("Both throws from the side"), draw_side, self);
  tb_drawn_picture_set_draw (self->grid, _ ("Both throws on both lanes"), draw_grid, self);
  tb_drawn_picture_set_draw (self->curve, _ ("Boards hooked against reach"), draw_curve, self);
  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++)
    tb_picture_set_session (TB_PICTURE (pictures[i]), self->session);
}

TbLoftLab *
tb_loft_lab_new (GtkWindow *parent, TbSession *session)
{
  TbLoftLab *self
      = g_object_new (TB_TYPE_LOFT_LAB, "transient-for", parent, "destroy-with-parent", TRUE, NULL);
  double games = tb_session_get_setup (session, TB_SIDE_AFTER)->shot.lane.games_played;

  self->session = g_object_ref (session);
  self->runs = tb_loft_runs_new ();
  set_up_controls (self);
  set_up_pictures (self);
  g_signal_connect_object (self->runs, "changed", G_CALLBACK (show), self, G_CONNECT_SWAPPED);
  gtk_spin_button_set_value (self->games, games > 0 ? games : USUAL_GAMES);
  tb_loft_runs_set_games (self->runs, gtk_spin_button_get_value (self->games));
  g_signal_connect_object (session, "changed", G_CALLBACK (on_session_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (show), self, G_CONNECT_SWAPPED);
  on_session_changed (self);
  if (parent != NULL)
    tb_style_set_text_size (GTK_WIDGET (self), tb_style_get_text_size (GTK_WIDGET (parent)));
  return self;
}

static void
tb_loft_lab_dispose (GObject *object)
{
  TbLoftLab *self = TB_LOFT_LAB (object);

  /* What is being typed is taken, while there is somebody to take it. */
  gtk_window_set_focus (GTK_WINDOW (object), NULL);
  if (self->runs != NULL)
    tb_loft_runs_stop (self->runs);
  G_OBJECT_CLASS (tb_loft_lab_parent_class)->dispose (object);
}

static void
tb_loft_lab_finalize (GObject *object)
{
  g_clear_object (&TB_LOFT_LAB (object)->runs);
  g_clear_object (&TB_LOFT_LAB (object)->session);
  G_OBJECT_CLASS (tb_loft_lab_parent_class)->finalize (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-loft-lab.ui");
  gtk_widget_class_bind_template_child (widget_class, TbLoftLab, cautions);
  gtk_widget_class_bind_template_child_full (widget_class, "flat", FALSE,
                                             G_STRUCT_OFFSET (TbLoftLab, controls[TB_LOFT_FLAT]));
  gtk_widget_class_bind_template_child_full (widget_class, "arc", FALSE,
                                             G_STRUCT_OFFSET (TbLoftLab, controls[TB_LOFT_ARC]));
  gtk_widget_class_bind_template_child (widget_class, TbLoftLab, games);
  gtk_widget_class_bind_template_child (widget_class, TbLoftLab, spinner);
  gtk_widget_class_bind_template_child (widget_class, TbLoftLab, true_scale);
  gtk_widget_class_bind_template_child (widget_class, TbLoftLab, side);
  gtk_widget_class_bind_template_child (widget_class, TbLoftLab, grid);
  gtk_widget_class_bind_template_child (widget_class, TbLoftLab, curve);
  gtk_widget_class_bind_template_child (widget_class, TbLoftLab, table);
  gtk_widget_class_bind_template_child (widget_class, TbLoftLab, words);
  gtk_widget_class_bind_template_callback (widget_class, on_games);
  gtk_widget_class_bind_template_callback (widget_class, on_scale);
}

static void
tb_loft_lab_class_init (TbLoftLabClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_loft_lab_dispose;
  G_OBJECT_CLASS (klass)->finalize = tb_loft_lab_finalize;
  g_type_ensure (TB_TYPE_DRAWN_PICTURE);
  g_type_ensure (TB_TYPE_LOFT_CONTROLS);
  g_type_ensure (TB_TYPE_LOFT_TABLE);
  bind_template (widget_class);
  gtk_widget_class_install_action (widget_class, "loft.undo", NULL, undo);
  gtk_widget_class_install_action (widget_class, "loft.redo", NULL, redo);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK, "loft.undo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "loft.redo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
tb_loft_lab_init (TbLoftLab *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
