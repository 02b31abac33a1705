/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-tour.h"

#include <glib/gi18n-lib.h>

/* What a stop waits for. */
typedef enum Wait
{
  WAIT_NEXT, /* only to be read */
  WAIT_THROW,
  WAIT_SPEED,
  WAIT_WHY_PAGE,
  WAIT_NEXT_PAGE,
  WAIT_KEPT
} Wait;

typedef struct Stop
{
  Wait wait;
  gboolean stays; /* once done it is left with Next: what was done goes on under the pointer */
  GtkPositionType side;
  const char *title, *text;
} Stop;

/* By target. */
static const Stop stops[TB_TOUR_N_STOPS] = {
  { WAIT_THROW, FALSE, GTK_POS_TOP, N_ ("Throw"),
    N_ ("Press Throw (Ctrl+T). A bowler of 17 mph throws on a house pattern, and finds the pocket.") },
  { WAIT_NEXT, FALSE, GTK_POS_LEFT, N_ ("What the lane shows"),
    N_ ("The tint is oil; the line is the ball’s path. It skids, hooks, then rolls: the strips beside the "
        "lane say "
        "where. Point anywhere to read it.") },
  { WAIT_SPEED, TRUE, GTK_POS_RIGHT, N_ ("Change one thing"),
    N_ ("Drag Speed, or type another number. The line moves as you drag; the tick stays where “before” "
        "is.") },
  { WAIT_NEXT, FALSE, GTK_POS_LEFT, N_ ("Before and after"),
    N_ ("Every number of both throws, and the difference. Dashed is before, solid is after.") },
  { WAIT_WHY_PAGE, FALSE, GTK_POS_LEFT, N_ ("Why it differs"),
    N_ ("Open Why. It splits the difference by what you changed, and by stretch of lane: computed, not "
        "canned.") },
  { WAIT_NEXT_PAGE, FALSE, GTK_POS_LEFT, N_ ("What to try next"),
    N_ ("Open Next. Say what you wish for, and it looks for the smallest change that does it, with what it "
        "costs.") },
  { WAIT_KEPT, FALSE, GTK_POS_BOTTOM, N_ ("Keep as before"),
    N_ ("Press Keep as before (Ctrl+K). What you have becomes the new “before”, and the next change is "
        "measured against "
        "it. Ctrl+Z takes back anything.") },
  { WAIT_NEXT, FALSE, GTK_POS_BOTTOM, N_ ("Lessons and help"),
    N_ ("Up here are lessons, the loft lab, and Help (F1), which says where every number comes from. This "
        "tour is in the "
        "menu too.") },
};

#define HIGHLIGHT "tour-target"
/* A control that is higher than this is pointed at near its top, px and share of its height. */
#define TALL 200
#define TALL_SHARE 0.3

struct _TbTour
{
  GtkPopover parent_instance;

  /* Template */
  GtkLabel *progress, *title, *text, *done_words;
  GtkWidget *go, *next;

  TbTourStage stage;
  TbSession *session;
  TbTourTarget stop;
  GtkWidget *target; /* weak */
  double speed;      /* of "after" when the stop began */
  gboolean done;
};

enum
{
  ENDED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbTour, tb_tour, GTK_TYPE_POPOVER)

static double
speed_of (TbTour *self)
{
  return tb_session_get_field (self->session, TB_SIDE_AFTER, tb_field_find (TB_GROUP_DELIVERY, "speed_mph"));
}

static gboolean
is_kept (TbTour *self)
{
  TbStudy *study = tb_session_get_study (self->session);

  return tb_setup_equal (study->side[TB_SIDE_BEFORE], study->side[TB_SIDE_AFTER]);
}

static gboolean
has_happened (TbTour *self)
{
  switch (stops[self->stop].wait)
    {
    case WAIT_THROW:
      return tb_session_get_playing (self->session) || tb_session_get_time (self->session) > 0;
    case WAIT_SPEED:
      return speed_of (self) != self->speed;
    case WAIT_WHY_PAGE:
      return g_str_equal (self->stage.page (self->stage.owner), "why");
    case WAIT_NEXT_PAGE:
      return g_str_equal (self->stage.page (self->stage.owner), "next");
    case WAIT_KEPT:
      return is_kept (self);
    default:
      return FALSE;
    }
}

static void
set_target (TbTour *self, GtkWidget *target)
{
  if (self->target != NULL)
    gtk_widget_remove_css_class (self->target, HIGHLIGHT);
  g_set_weak_pointer (&self->target, target);
  if (target != NULL)
    gtk_widget_add_css_class (target, HIGHLIGHT);
}

void
tb_tour_place (TbTour *self)
{
  GtkWidget *parent = gtk_widget_get_parent (GTK_WIDGET (self));
  graphene_rect_t bounds;
  GdkRectangle at;

  if (self->target == NULL || parent == NULL || !gtk_widget_compute_bounds (self->target, parent, &bounds))
    return;
  if (bounds.size.height > TALL)
    {
      bounds.origin.y += (float) TALL_SHARE * bounds.size.height;
      bounds.size.height = 1;
    }
  at = (GdkRectangle){ (int) bounds.origin.x, (int) bounds.origin.y, (int) bounds.size.width,
                       (int) bounds.size.height };
  gtk_popover_set_pointing_to (GTK_POPOVER (self), &at);
  gtk_popover_present (GTK_POPOVER (self));
}

static void
show_done (TbTour *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->done_words), self->done);
  if (self->done)
    gtk_widget_add_css_class (self->next, "suggested-action");
  else
    gtk_widget_remove_css_class (self->next, "suggested-action");
}

static void
show_stop (TbTour *self)
{
  const Stop *stop = &stops[self->stop];
  gboolean last = self->stop == TB_TOUR_N_STOPS - 1;
  /* Translators: how far a tour has come, such as "2 of 8". */
  g_autofree char *progress = g_strdup_printf (_ ("%d of %d"), (int) self->stop + 1, (int) TB_TOUR_N_STOPS);
  g_autofree char *spoken = g_strdup_printf ("%s: %s. %s", progress, _ (stop->title), _ (stop->text));

  gtk_label_set_text (self->progress, progress);
  gtk_label_set_text (self->title, _ (stop->title));
  gtk_label_set_text (self->text, _ (stop->text));
  gtk_button_set_label (GTK_BUTTON (self->next), last ? _ ("_Done") : _ ("_Next"));
  gtk_widget_set_visible (self->go, stop->wait != WAIT_NEXT);
  /* Read out with the button that gets the focus. */
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->next), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, spoken,
                                  -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  show_done (self);
}

static void
begin_stop (TbTour *self, TbTourTarget stop)
{
  self->stop = stop;
  self->speed = speed_of (self);
  self->done = FALSE;
  set_target (self, self->stage.show (self->stage.owner, stop));
  gtk_popover_set_position (GTK_POPOVER (self), stops[stop].side);
  show_stop (self);
  tb_tour_place (self);
  gtk_popover_popup (GTK_POPOVER (self));
  gtk_widget_grab_focus (self->next);
}

static void
end (TbTour *self)
{
  if (self->stop == TB_TOUR_N_STOPS)
    return;
  self->stop = TB_TOUR_N_STOPS;
  set_target (self, NULL);
  gtk_popover_popdown (GTK_POPOVER (self));
  g_signal_emit (self, signals[ENDED], 0);
}

void
tb_tour_next (TbTour *self)
{
  if (self->stop + 1 >= TB_TOUR_N_STOPS)
    end (self);
  else
    begin_stop (self, self->stop + 1);
}

void
tb_tour_skip (TbTour *self)
{
  end (self);
}

void
tb_tour_look (TbTour *self)
{
  if (self->stop == TB_TOUR_N_STOPS || self->done || !has_happened (self))
    return;
  self->done = TRUE;
  if (stops[self->stop].stays)
    show_done (self);
  else
    tb_tour_next (self);
}

void
tb_tour_start (TbTour *self)
{
  begin_stop (self, TB_TOUR_THROW);
}

TbTourTarget
tb_tour_get_stop (TbTour *self)
{
  return self->stop;
}

gboolean
tb_tour_is_done (TbTour *self)
{
  return self->done;
}

const char *
tb_tour_get_progress (TbTour *self)
{
  return gtk_label_get_text (self->progress);
}

const char *
tb_tour_get_text (TbTour *self)
{
  return gtk_label_get_text (self->text);
}

TbTour *
tb_tour_new (GtkWindow *window, TbSession *session, const TbTourStage *stage)
{
  TbTour *self = g_object_new (TB_TYPE_TOUR, NULL);

  self->stage = *stage;
  self->session = g_object_ref (session);
  gtk_widget_set_parent (GTK_WIDGET (self), GTK_WIDGET (window));
  g_signal_connect_object (session, "changed", G_CALLBACK (tb_tour_look), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::playing", G_CALLBACK (tb_tour_look), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::time", G_CALLBACK (tb_tour_look), self, G_CONNECT_SWAPPED);
  return self;
}

/* Keys that the callout has no use for are the window's: its shortcuts go on working. */
static gboolean
on_key (GtkEventControllerKey *keys, guint keyval, guint keycode, GdkModifierType state, TbTour *self)
{
  return gtk_event_controller_key_forward (keys, gtk_widget_get_parent (GTK_WIDGET (self)));
}

/* To the control itself, for whoever works with the keys. */
static void
on_go (TbTour *self)
{
  if (self->target != NULL && !gtk_widget_grab_focus (self->target))
    gtk_widget_child_focus (self->target, GTK_DIR_TAB_FORWARD);
}

static void
skip_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  tb_tour_skip (TB_TOUR (widget));
}

static void
next_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  tb_tour_next (TB_TOUR (widget));
}

static void
tb_tour_dispose (GObject *object)
{
  TbTour *self = TB_TOUR (object);

  set_target (self, NULL);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_tour_parent_class)->dispose (object);
}

static void
tb_tour_class_init (TbTourClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_tour_dispose;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_DIALOG);
  signals[ENDED] = g_signal_new ("ended", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/github/tenboard/Tenboard/ui/tb-tour.ui");
  gtk_widget_class_bind_template_child (widget_class, TbTour, progress);
  gtk_widget_class_bind_template_child (widget_class, TbTour, title);
  gtk_widget_class_bind_template_child (widget_class, TbTour, text);
  gtk_widget_class_bind_template_child (widget_class, TbTour, done_words);
  gtk_widget_class_bind_template_child (widget_class, TbTour, go);
  gtk_widget_class_bind_template_child (widget_class, TbTour, next);
  gtk_widget_class_bind_template_callback (widget_class, on_go);
  gtk_widget_class_install_action (widget_class, "tour.skip", NULL, skip_action);
  gtk_widget_class_install_action (widget_class, "tour.next", NULL, next_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "tour.skip", NULL);
}

static void
tb_tour_init (TbTour *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->stop = TB_TOUR_N_STOPS;
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}
