/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-flare-page.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>

#include "tb-drawn-picture.h"
#include "tb-flare-view.h"
#include "tb-follower.h"

struct _TbFlarePage
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *box;
  TbDrawnPicture *rings;
  TbDrawnPicture *cases_picture;
  GtkLabel *words;

  TbSession *session;
  TbFollower *follower;
  TbFlare *flare;   /* of the session's run */
  GPtrArray *cases; /* of TbFlareCase; NULL until they are there */
  double present;   /* m, pin-to-PAP distance they were made for */
};

G_DEFINE_FINAL_TYPE (TbFlarePage, tb_flare_page, GTK_TYPE_WIDGET)

static gboolean
is_metric (TbFlarePage *self)
{
  return tb_session_get_units (self->session) == TB_UNITS_METRIC;
}

static void
draw_rings (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page)
{
  TbFlarePage *self = page;
  TbFlareScene scene
      = { .theme = *theme, .run = tb_session_get_run (self->session, TB_SIDE_AFTER), .flare = self->flare };

  scene.metric = is_metric (self);
  tb_flare_view_draw (cr, width, height, &scene);
}

static void
draw_cases (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page)
{
  TbFlarePage *self = page;
  TbFlareCasesScene scene = { .theme = *theme, .cases = self->cases, .present = self->present };

  scene.metric = is_metric (self);
  if (self->cases != NULL)
    tb_flare_cases_draw (cr, width, height, &scene);
}

static void
show_rings (TbFlarePage *self)
{
  TbRun *run = tb_session_get_run (self->session, TB_SIDE_AFTER);
  g_autofree char *statement = NULL;

  g_clear_pointer (&self->flare, tb_flare_free);
  self->flare = tb_flare_new (run);
  statement = tb_flare_statement (self->flare, &run->setup->shot.assumed, is_metric (self));
  gtk_label_set_text (self->words, statement);
  tb_drawn_picture_refresh (self->rings, statement);
}

/* The pin elsewhere. */

typedef struct Cases
{
  TbSetup *setup;
  GPtrArray *cases;
} Cases;

static gpointer
prepare (GtkWidget *page)
{
  return tb_setup_ref (tb_session_get_setup (TB_FLARE_PAGE (page)->session, TB_SIDE_AFTER));
}

static void
free_prepared (gpointer setup)
{
  tb_setup_unref (setup);
}

static void
free_cases (gpointer data)
{
  Cases *cases = data;

  g_clear_pointer (&cases->cases, g_ptr_array_unref);
  tb_setup_unref (cases->setup);
  g_free (cases);
}

static int
compare_distances (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;

  return x < y ? -1 : x > y;
}

/* Nearer to one of the usual distances than this, m, the present one takes its place. */
#define SAME_DISTANCE (0.3 * TB_METRES_PER_INCH)

/* The usual distances with the present one among them, in order; the count is returned. */
static guint
choose_distances (double present, double distances[TB_FLARE_N_DISTANCES + 1])
{
  guint count = TB_FLARE_N_DISTANCES;
  gboolean placed = FALSE;

  for (guint i = 0; i < count; i++)
    {
      distances[i] = tb_flare_distances[i];
      if (!placed && fabs (distances[i] - present) < SAME_DISTANCE)
        {
          distances[i] = present;
          placed = TRUE;
        }
    }
  if (!placed)
    distances[count++] = present;
  qsort (distances, count, sizeof (double), compare_distances);
  return count;
}

static gpointer
compute (gpointer data, GCancellable *cancellable)
{
  TbSetup *setup = data;
  double distances[TB_FLARE_N_DISTANCES + 1];
  guint count = choose_distances (setup->shot.ball.pin_to_pap, distances);
  Cases *cases = g_new0 (Cases, 1);

  cases->setup = tb_setup_ref (setup);
  cases->cases = tb_flare_cases_new (setup, distances, count);
  return cases;
}

static void
show_cases (GtkWidget *page, gpointer result)
{
  TbFlarePage *self = TB_FLARE_PAGE (page);
  Cases *cases = result;

  g_clear_pointer (&self->cases, g_ptr_array_unref);
  self->cases = g_steal_pointer (&cases->cases);
  self->present = cases->setup->shot.ball.pin_to_pap;
  free_cases (cases);
  tb_drawn_picture_refresh (self->cases_picture,
                            _ ("The same ball, thrown alike, with the pin at other distances."));
}

static const TbFollowerWork work = { prepare, free_prepared, compute, free_cases, show_cases };

const char *
tb_flare_page_get_words (TbFlarePage *self)
{
  return gtk_label_get_text (self->words);
}

void
tb_flare_page_set_session (TbFlarePage *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "changed", G_CALLBACK (show_rings), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (show_rings), self, G_CONNECT_SWAPPED);
  show_rings (self);
  tb_picture_set_session (TB_PICTURE (self->rings), session);
  tb_picture_set_session (TB_PICTURE (self->cases_picture), session);
  self->follower = tb_follower_new (GTK_WIDGET (self), session, &work);
}

static void
tb_flare_page_dispose (GObject *object)
{
  TbFlarePage *self = TB_FLARE_PAGE (object);

  g_clear_pointer (&self->follower, tb_follower_free);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_pointer (&self->flare, tb_flare_free);
  g_clear_pointer (&self->cases, g_ptr_array_unref);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_flare_page_parent_class)->dispose (object);
}

static void
tb_flare_page_class_init (TbFlarePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_flare_page_dispose;
  g_type_ensure (TB_TYPE_DRAWN_PICTURE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-flare-page.ui");
  gtk_widget_class_bind_template_child (widget_class, TbFlarePage, box);
  gtk_widget_class_bind_template_child (widget_class, TbFlarePage, rings);
  gtk_widget_class_bind_template_child (widget_class, TbFlarePage, cases_picture);
  gtk_widget_class_bind_template_child (widget_class, TbFlarePage, words);
}

static void
tb_flare_page_init (TbFlarePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  tb_drawn_picture_set_draw (self->rings, _ ("Rings on the ball"), draw_rings, self);
  tb_drawn_picture_set_draw (self->cases_picture, _ ("Rings with the pin elsewhere"), draw_cases, self);
}
