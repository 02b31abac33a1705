/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-projector.h"

/* Window managers answer late, and some not at all: how long to wait before looking again, ms, and how often.
 */
#define LOOK_AGAIN 150
#define MOST_LOOKS 24

struct _TbProjector
{
  GObject parent_instance;

  GtkWindow *window;
  GtkWindow *beside; /* may be NULL */
  GListModel *monitors;
  guint timer;
  int looks;           /* since something changed */
  gboolean kept;       /* the person has not taken it in hand */
  gboolean stale;      /* where the screens were is not where they are */
  gboolean own_screen; /* when it was last seen where it belongs */
};

enum
{
  ARRIVED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TbProjector, tb_projector, G_TYPE_OBJECT)

int
tb_projector_choose (const GdkRectangle *screens, int n, int own)
{
  for (int i = 0; own >= 0 && i < n; i++)
    if (!gdk_rectangle_intersect (&screens[i], &screens[own], NULL))
      return i;
  return -1;
}

/* The screen that a window is on; NULL while it is on none. Borrowed. */
static GdkMonitor *
monitor_of (GtkWindow *window)
{
  GdkSurface *surface = window != NULL && gtk_widget_get_realized (GTK_WIDGET (window))
                            ? gtk_native_get_surface (GTK_NATIVE (window))
                            : NULL;

  return surface != NULL ? gdk_display_get_monitor_at_surface (gdk_surface_get_display (surface), surface)
                         : NULL;
}

/* The screen for the room; NULL while there is but one. Owned by the caller. */
static GdkMonitor *
rooms_monitor (TbProjector *self)
{
  guint n = g_list_model_get_n_items (self->monitors);
  g_autofree GdkRectangle *screens = g_new0 (GdkRectangle, MAX (n, 1));
  GdkMonitor *beside = monitor_of (self->beside);
  int own = -1, chosen;

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GdkMonitor) monitor = g_list_model_get_item (self->monitors, i);

      gdk_monitor_get_geometry (monitor, &screens[i]);
      if (monitor == beside)
        own = (int) i;
    }
  chosen = tb_projector_choose (screens, (int) n, own);
  return chosen >= 0 ? g_list_model_get_item (self->monitors, (guint) chosen) : NULL;
}

static gboolean
is_there (TbProjector *self, GdkMonitor *wanted)
{
  return !self->stale && gtk_window_is_fullscreen (self->window)
         && (wanted == NULL || monitor_of (self->window) == wanted);
}

/* Of a window that covers a screen already, window managers ask where it is only after it has left that. */
static void
send (TbProjector *self, GdkMonitor *wanted)
{
  if (gtk_window_is_fullscreen (self->window))
    gtk_window_unfullscreen (self->window);
  else if (wanted != NULL)
    gtk_window_fullscreen_on_monitor (self->window, wanted);
  else
    gtk_window_fullscreen (self->window);
  self->stale = FALSE;
}

static void
arrive (TbProjector *self, gboolean own_screen)
{
  self->own_screen = own_screen;
  g_signal_emit (self, signals[ARRIVED], 0);
}

static gboolean
look (gpointer data)
{
  TbProjector *self = data;
  g_autoptr (GdkMonitor) wanted = rooms_monitor (self);
  gboolean there = is_there (self, wanted), done = there || ++self->looks > MOST_LOOKS;

  if (!done)
    {
      send (self, wanted);
      return G_SOURCE_CONTINUE;
    }
  self->timer = 0;
  arrive (self, there && wanted != NULL);
  return G_SOURCE_REMOVE;
}

static void
begin_to_look (TbProjector *self)
{
  self->looks = 0;
  if (self->timer == 0)
    self->timer = g_timeout_add (LOOK_AGAIN, look, self);
}

static void
on_screens_changed (TbProjector *self)
{
  self->stale = TRUE;
  if (self->kept)
    begin_to_look (self);
}

static void
on_monitors_changed (TbProjector *self, guint position, guint removed, guint added)
{
  for (guint i = position; i < position + added; i++)
    {
      g_autoptr (GdkMonitor) monitor = g_list_model_get_item (self->monitors, i);

      g_signal_connect_object (monitor, "notify::geometry", G_CALLBACK (on_screens_changed), self,
                               G_CONNECT_SWAPPED);
    }
  on_screens_changed (self);
}

TbProjector *
tb_projector_new (GtkWindow *window, GtkWindow *beside)
{
  TbProjector *self = g_object_new (TB_TYPE_PROJECTOR, NULL);
  GdkDisplay *display = gtk_widget_get_display (GTK_WIDGET (window));

  self->window = window;
  self->beside = beside;
  self->monitors = g_object_ref (gdk_display_get_monitors (display));
  g_signal_connect_object (self->monitors, "items-changed", G_CALLBACK (on_monitors_changed), self,
                           G_CONNECT_SWAPPED);
  on_monitors_changed (self, 0, 0, g_list_model_get_n_items (self->monitors));
  return self;
}

static void
tb_projector_dispose (GObject *object)
{
  TbProjector *self = TB_PROJECTOR (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  g_clear_object (&self->monitors);
  G_OBJECT_CLASS (tb_projector_parent_class)->dispose (object);
}

static void
tb_projector_class_init (TbProjectorClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_projector_dispose;
  signals[ARRIVED]
      = g_signal_new ("arrived", TB_TYPE_PROJECTOR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
tb_projector_init (TbProjector *self)
{
}

/* With two screens the window goes to its own only once it is seen: some window managers size it for the
 * wrong one else. */
void
tb_projector_present (TbProjector *self)
{
  g_autoptr (GdkMonitor) wanted = rooms_monitor (self);

  self->kept = TRUE;
  self->stale = FALSE;
  if (wanted == NULL)
    gtk_window_fullscreen (self->window);
  gtk_window_present (self->window);
  begin_to_look (self);
}

void
tb_projector_let_go (TbProjector *self)
{
  self->kept = FALSE;
  g_clear_handle_id (&self->timer, g_source_remove);
}

gboolean
tb_projector_has_own_screen (TbProjector *self)
{
  return self->own_screen;
}
