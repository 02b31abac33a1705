/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-surface-page.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-caution-button.h"
#include "tb-curve-view.h"
#include "tb-drawn-picture.h"
#include "tb-follower.h"
#include "tb-spin.h"
#include "tb-surface-curve.h"
#include "tb-surface-log-editor.h"
#include "tb-surface.h"

struct _TbSurfacePage
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *box;
  TbDrawnPicture *picture;
  GtkLabel *words;
  GtkLabel *now;
  GtkSpinButton *games;
  GtkLabel *after_games;
  GtkDropDown *pad;
  GtkLabel *after_pad;
  TbSurfaceLogEditor *log;
  TbCautionButton *caution;

  TbSession *session;
  TbFollower *follower;
  TbSurfaceCurve *curves[TB_N_BALL_LINES]; /* NULL until they are there */
};

G_DEFINE_FINAL_TYPE (TbSurfacePage, tb_surface_page, GTK_TYPE_WIDGET)

/* The quantities that are drawn. */
static const TbSurfaceQuantity shown[] = { TB_SURFACE_HOOK,  TB_SURFACE_BREAKPOINT, TB_SURFACE_TURNS,
                                           TB_SURFACE_ROLLS, TB_SURFACE_ANGLE,      TB_SURFACE_ROOM };
#define N_SHOWN G_N_ELEMENTS (shown)
/* Surfaces that are named on the scale. */
static const double named[] = { 500, 1000, 2000, 3000, TB_GRIT_POLISH };
#define N_NAMED G_N_ELEMENTS (named)
/* The scale reaches this factor beyond its ends; a change this many times a noticeable one fills a curve's
 * height. */
#define SCALE_MARGIN 1.08
#define LEAST_SPANS 3.0

static TbSetup *
setup_of (TbSurfacePage *self)
{
  return tb_session_get_setup (self->session, TB_SIDE_AFTER);
}

static gboolean
is_metric (TbSurfacePage *self)
{
  return tb_session_get_units (self->session) == TB_UNITS_METRIC;
}

/* Curves. */

/* Numbers of one line of one panel. */
typedef struct Line
{
  double x[32], y[32];
} Line;

/* What one unit of a quantity is in the unit that is shown. */
static double
shown_unit (TbSurfacePage *self, TbSurfaceQuantity quantity)
{
  return tb_surface_quantity_info (quantity)->distance && is_metric (self) ? TB_METRES_PER_FOOT : 1;
}

static TbCurveLine
make_line (const TbSurfaceCurve *curve, TbSurfaceQuantity quantity, double unit, Line *line)
{
  guint count = MIN (curve->points->len, G_N_ELEMENTS (line->x));

  for (guint i = 0; i < count; i++)
    {
      const TbSurfacePoint *point = &g_array_index (curve->points, TbSurfacePoint, i);

      line->x[i] = log (point->grit);
      line->y[i] = unit * tb_surface_point_value (point, quantity);
    }
  return (TbCurveLine){ line->x, line->y, count, unit * tb_surface_point_value (&curve->present, quantity) };
}

/* The ticks of the grits that people know, and room for their labels. */
typedef struct Ticks
{
  TbCurveTick tick[N_NAMED];
  char label[N_NAMED][16];
} Ticks;

static void
set_ticks (Ticks *ticks)
{
  for (gsize i = 0; i < N_NAMED; i++)
    {
      g_snprintf (ticks->label[i], sizeof ticks->label[i], "%.0f", named[i]);
      ticks->tick[i]
          = (TbCurveTick){ log (named[i]), named[i] >= TB_GRIT_POLISH ? _ ("polish") : ticks->label[i] };
    }
}

static TbCurvePanel
make_panel (TbSurfacePage *self, guint place, Line lines[TB_N_BALL_LINES][N_SHOWN])
{
  TbSurfaceQuantity quantity = shown[place];
  const TbSurfaceQuantityInfo *info = tb_surface_quantity_info (quantity);
  double unit = shown_unit (self, quantity);
  TbCurvePanel panel = { .title = _ (info->label),
                         .unit = info->unit[0] != '\0' ? _ (info->unit) : "",
                         .digits = info->digits,
                         .least_span = LEAST_SPANS * unit * info->noticeable };

  if (info->distance && is_metric (self))
    panel.unit = _ (" m");
  panel.dashed
      = make_line (self->curves[TB_BALL_SAME_LINE], quantity, unit, &lines[TB_BALL_SAME_LINE][place]);
  panel.solid
      = make_line (self->curves[TB_BALL_POCKET_LINE], quantity, unit, &lines[TB_BALL_POCKET_LINE][place]);
  return panel;
}

static void
draw_curves (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page)
{
  TbSurfacePage *self = page;
  TbCurvePanel panels[N_SHOWN] = { 0 };
  Line lines[TB_N_BALL_LINES][N_SHOWN];
  Ticks ticks;
  TbCurveScene scene = { .theme = *theme,
                         .panels = panels,
                         .ticks = ticks.tick,
                         .n_ticks = N_NAMED,
                         .x_title = _ ("surface, grit"),
                         .low = log (named[0] / SCALE_MARGIN),
                         .high = log (named[N_NAMED - 1] * SCALE_MARGIN) };

  set_ticks (&ticks);
  if (self->curves[TB_BALL_SAME_LINE] != NULL)
    {
      scene.n_panels = N_SHOWN;
      scene.present = log (self->curves[TB_BALL_SAME_LINE]->present.grit);
      scene.dashed_label = _ (tb_ball_line_label (TB_BALL_SAME_LINE));
      scene.solid_label = _ (tb_ball_line_label (TB_BALL_POCKET_LINE));
    }
  for (guint i = 0; i < scene.n_panels; i++)
    panels[i] = make_panel (self, i, lines);
  tb_curve_view_draw (cr, width, height, &scene);
}

static gpointer
prepare (GtkWidget *page)
{
  return tb_setup_ref (setup_of (TB_SURFACE_PAGE (page)));
}

static void
free_prepared (gpointer setup)
{
  tb_setup_unref (setup);
}

typedef struct Curves
{
  TbSurfaceCurve *line[TB_N_BALL_LINES];
} Curves;

static void
free_curves (gpointer data)
{
  Curves *curves = data;

  for (int i = 0; i < TB_N_BALL_LINES; i++)
    g_clear_pointer (&curves->line[i], tb_surface_curve_free);
  g_free (curves);
}

static gpointer
compute (gpointer setup, GCancellable *cancellable)
{
  Curves *curves = g_new0 (Curves, 1);

  for (int i = 0; i < TB_N_BALL_LINES; i++)
    {
      curves->line[i] = tb_surface_curve_new (setup, (TbBallLine)i, cancellable);
      if (curves->line[i] == NULL)
        {
          free_curves (curves);
          return NULL;
        }
    }
  return curves;
}

static void
append_words (GString *text, const TbSurfaceCurve *curve, gboolean metric)
{
  g_autoptr (GPtrArray) sentences = tb_surface_curve_explain (curve, metric);

  for (guint i = 0; i < sentences->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", (const char *)sentences->pdata[i]);
}

static void
show_words (TbSurfacePage *self)
{
  g_autoptr (GString) text = g_string_new (NULL);

  if (self->curves[TB_BALL_SAME_LINE] == NULL)
    return;
  append_words (text, self->curves[TB_BALL_POCKET_LINE], is_metric (self));
  g_string_append (text, "\n\n");
  append_words (text, self->curves[TB_BALL_SAME_LINE], is_metric (self));
  gtk_label_set_text (self->words, text->str);
  tb_drawn_picture_refresh (self->picture, text->str);
}

static void
show_curves (GtkWidget *page, gpointer result)
{
  TbSurfacePage *self = TB_SURFACE_PAGE (page);
  Curves *curves = result;

  for (int i = 0; i < TB_N_BALL_LINES; i++)
    {
      g_clear_pointer (&self->curves[i], tb_surface_curve_free);
      self->curves[i] = g_steal_pointer (&curves->line[i]);
    }
  free_curves (curves);
  show_words (self);
}

static const TbFollowerWork work = { prepare, free_prepared, compute, free_curves, show_curves };

gboolean
tb_surface_page_is_busy (TbSurfacePage *self)
{
  return tb_follower_is_busy (self->follower);
}

const char *
tb_surface_page_get_words (TbSurfacePage *self)
{
  return gtk_label_get_text (self->words);
}

/* What becomes of a surface. */

static char *
roughness_text (double roughness)
{
  g_autofree char *surface = tb_surface_text (roughness);

  /* Translators: a surface such as "2000 grit", then its roughness. */
  return g_strdup_printf (_ ("%s, Ra %.1f µin"), surface, tb_uin_from_metres (roughness));
}

static double
chosen_pad (TbSurfacePage *self)
{
  static const double pads[] = { 500, 1000, 2000, 3000, 4000 };

  return pads[MIN (gtk_drop_down_get_selected (self->pad), G_N_ELEMENTS (pads) - 1)];
}

static double
roughness_after_games (TbSurfacePage *self)
{
  return tb_surface_after_games (setup_of (self)->shot.ball.cover.roughness,
                                 gtk_spin_button_get_value (self->games));
}

static double
roughness_after_pad (TbSurfacePage *self)
{
  return tb_surface_touched_up (setup_of (self)->shot.ball.cover.roughness, chosen_pad (self));
}

static void
show_surface (TbSurfacePage *self)
{
  g_autofree char *now = NULL, *games = NULL, *pad = NULL;

  if (self->session == NULL)
    return;
  now = roughness_text (setup_of (self)->shot.ball.cover.roughness);
  games = roughness_text (roughness_after_games (self));
  pad = roughness_text (roughness_after_pad (self));
  gtk_label_set_text (self->now, now);
  gtk_label_set_text (self->after_games, games);
  gtk_label_set_text (self->after_pad, pad);
}

static void
take_roughness (TbSurfacePage *self, double roughness)
{
  const TbField *field = tb_field_find (TB_GROUP_BALL, "roughness_uin");
  double uin = CLAMP (field->from_si (roughness), field->min, field->max);

  tb_session_set_field (self->session, field, uin, NULL);
}

static void
take_games (GtkWidget *widget, const char *action, GVariant *parameter)
{
  take_roughness (TB_SURFACE_PAGE (widget), roughness_after_games (TB_SURFACE_PAGE (widget)));
}

static void
take_pad (GtkWidget *widget, const char *action, GVariant *parameter)
{
  take_roughness (TB_SURFACE_PAGE (widget), roughness_after_pad (TB_SURFACE_PAGE (widget)));
}

void
tb_surface_page_set_session (TbSurfacePage *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  tb_picture_set_session (TB_PICTURE (self->picture), session);
  tb_surface_log_editor_set_session (self->log, session);
  tb_caution_button_set_caution (self->caution, tb_caution_for_field ("grit"));
  self->follower = tb_follower_new (GTK_WIDGET (self), session, &work);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_surface), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (show_words), self, G_CONNECT_SWAPPED);
  show_surface (self);
}

static void
tb_surface_page_dispose (GObject *object)
{
  TbSurfacePage *self = TB_SURFACE_PAGE (object);

  g_clear_pointer (&self->follower, tb_follower_free);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  for (int i = 0; i < TB_N_BALL_LINES; i++)
    g_clear_pointer (&self->curves[i], tb_surface_curve_free);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_surface_page_parent_class)->dispose (object);
}

static void
tb_surface_page_class_init (TbSurfacePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_surface_page_dispose;
  g_type_ensure (TB_TYPE_DRAWN_PICTURE);
  g_type_ensure (TB_TYPE_CAUTION_BUTTON);
  g_type_ensure (TB_TYPE_SURFACE_LOG_EDITOR);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-surface-page.ui");
  gtk_widget_class_bind_template_child (widget_class, TbSurfacePage, box);
  gtk_widget_class_bind_template_child (widget_class, TbSurfacePage, picture);
  gtk_widget_class_bind_template_child (widget_class, TbSurfacePage, words);
  gtk_widget_class_bind_template_child (widget_class, TbSurfacePage, now);
  gtk_widget_class_bind_template_child (widget_class, TbSurfacePage, games);
  gtk_widget_class_bind_template_child (widget_class, TbSurfacePage, after_games);
  gtk_widget_class_bind_template_child (widget_class, TbSurfacePage, pad);
  gtk_widget_class_bind_template_child (widget_class, TbSurfacePage, after_pad);
  gtk_widget_class_bind_template_child (widget_class, TbSurfacePage, log);
  gtk_widget_class_bind_template_child (widget_class, TbSurfacePage, caution);
  gtk_widget_class_bind_template_callback (widget_class, show_surface);
  gtk_widget_class_install_action (widget_class, "surface.take-games", NULL, take_games);
  gtk_widget_class_install_action (widget_class, "surface.take-pad", NULL, take_pad);
}

static void
tb_surface_page_init (TbSurfacePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  tb_accessible_set_drop_down_name (self->pad, _ ("Pad, grit"));
  tb_spin_take_either_mark (self->games);
  tb_drawn_picture_set_draw (self->picture, _ ("Curves against the surface"), draw_curves, self);
}
