/* What has the focus is seen: every control of every window that Tab reaches looks other with the focus than
 * without, by enough for weak eyes, in every look: test-focus [--tap]. With FOCUS_PICTURES=FOLDER it leaves a
 * picture of each there, to look at.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <math.h>

#include "tb-clinic-window.h"
#include "tb-slide-picture.h"
#include "tb-tick-scale.h"
#include "window-support.h"

/* WCAG 2.2, 1.4.11 and 2.4.13: contrast of what tells of the focus. */
#define LEAST_CONTRAST 3.0
/* Of the way round the control, how much has to look other: half of it, a pixel wide. */
#define LEAST_SHARE 0.5
/* Around the control, px: a ring may lie outside. */
#define AROUND 14
/* The longest way round a window. */
#define MOST_STOPS 150

typedef struct Look
{
  const char *name, *scheme;
  gboolean high_contrast;
} Look;

typedef struct Way
{
  const char *action;
  const char *target; /* NULL: the action has none */
} Way;

static const Look looks[] = {
  { "light", "light", FALSE },
  { "dark", "dark", FALSE },
  { "contrast-light", "light", TRUE },
  { "contrast-dark", "dark", TRUE },
};

static const Way ways[] = {
  { "win.ball-counter", "ball" }, { "win.lane-play", "room" }, { "win.loft-lab", NULL },
  { "win.lessons", NULL },        { "win.handout", NULL },     { "win.save-picture", NULL },
  { "win.clinic", NULL },         { "app.preferences", NULL }, { "app.contents", NULL },
};

static GSettings *settings;

/* Of controls that are alike one is enough. */
static GHashTable *seen;

static double
linear (double value)
{
  return value <= 0.04045 ? value / 12.92 : pow ((value + 0.055) / 1.055, 2.4);
}

static double
luminance (guint32 pixel)
{
  return 0.2126 * linear ((pixel >> 16 & 0xff) / 255.0) + 0.7152 * linear ((pixel >> 8 & 0xff) / 255.0)
         + 0.0722 * linear ((pixel & 0xff) / 255.0);
}

static double
contrast (guint32 a, guint32 b)
{
  double la = luminance (a), lb = luminance (b);

  return (MAX (la, lb) + 0.05) / (MIN (la, lb) + 0.05);
}

/* A part of a window as it is drawn now. */
static cairo_surface_t *
picture_of (GtkWidget *native, const graphene_rect_t *part)
{
  g_autoptr (GdkPaintable) paintable = NULL;
  g_autoptr (GtkSnapshot) snapshot = gtk_snapshot_new ();
  GskRenderNode *node;
  cairo_surface_t *surface
      = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) part->size.width, (int) part->size.height);
  cairo_t *cr = cairo_create (surface);

  gtk_test_widget_wait_for_draw (native);
  paintable = gtk_widget_paintable_new (native);
  gdk_paintable_snapshot (paintable, snapshot, gdk_paintable_get_intrinsic_width (paintable),
                          gdk_paintable_get_intrinsic_height (paintable));
  node = gtk_snapshot_to_node (snapshot);
  cairo_translate (cr, -part->origin.x, -part->origin.y);
  if (node != NULL)
    gsk_render_node_draw (node, cr);
  g_clear_pointer (&node, gsk_render_node_unref);
  cairo_destroy (cr);
  return surface;
}

static guint
count_changed (cairo_surface_t *a, cairo_surface_t *b)
{
  int stride = cairo_image_surface_get_stride (a);
  guint n = 0;

  cairo_surface_flush (a);
  cairo_surface_flush (b);
  for (int y = 0; y < cairo_image_surface_get_height (a); y++)
    {
      const guint32 *row_a = (const guint32 *) (cairo_image_surface_get_data (a) + y * stride);
      const guint32 *row_b = (const guint32 *) (cairo_image_surface_get_data (b) + y * stride);

      for (int x = 0; x < cairo_image_surface_get_width (a); x++)
        n += row_a[x] != row_b[x] && contrast (row_a[x], row_b[x]) >= LEAST_CONTRAST;
    }
  return n;
}

/* Types and style classes, from the control outwards. */
static char *
kind_of (GtkWidget *widget)
{
  GString *kind = g_string_new (NULL);

  for (int i = 0; i < 4 && widget != NULL && !GTK_IS_ROOT (widget);
       i++, widget = gtk_widget_get_parent (widget))
    {
      g_auto (GStrv) classes = gtk_widget_get_css_classes (widget);
      g_autofree char *all = g_strjoinv (".", classes);

      g_string_append_printf (kind, "%s%s%s%s", i == 0 ? "" : " < ", G_OBJECT_TYPE_NAME (widget),
                              all[0] != '\0' ? "." : "", all);
    }
  return g_string_free (kind, FALSE);
}

static void
keep_picture (cairo_surface_t *picture, const char *look, guint n)
{
  const char *folder = g_getenv ("FOCUS_PICTURES");
  g_autofree char *name = g_strdup_printf ("%s-%03u.png", look, n);
  g_autofree char *path = folder != NULL ? g_build_filename (folder, name, NULL) : NULL;

  if (path != NULL)
    cairo_surface_write_to_png (picture, path);
}

/* Where the focus is looked for: the box around the text that is typed, or the control itself. */
static GtkWidget *
shown_by (GtkWidget *focus)
{
  GtkWidget *entry = GTK_IS_TEXT (focus) ? gtk_widget_get_parent (focus) : focus;

  return entry;
}

static void
check_focus (GtkWindow *window, GtkWidget *focus, const Look *look)
{
  GtkWidget *native = GTK_WIDGET (gtk_widget_get_native (focus));
  graphene_rect_t bounds, all, part;
  g_autofree char *kind = kind_of (focus);
  cairo_surface_t *with, *without;
  guint changed, least, n = g_hash_table_size (seen);

  /* A slide fills what the room looks at, and has nothing beside it that could have the focus instead. */
  if (TB_IS_SLIDE_PICTURE (focus) || !g_hash_table_add (seen, g_strdup (kind)))
    return;
  /* It has been scrolled to. */
  gtk_test_widget_wait_for_draw (native);
  g_assert_true (gtk_widget_compute_bounds (shown_by (focus), native, &bounds));
  least = (guint) (LEAST_SHARE * 2 * (bounds.size.width + bounds.size.height));
  graphene_rect_init (&all, 0, 0, (float) gtk_widget_get_width (native),
                      (float) gtk_widget_get_height (native));
  graphene_rect_inset (&bounds, -AROUND, -AROUND);
  graphene_rect_round_extents (&bounds, &bounds);
  if (!graphene_rect_intersection (&bounds, &all, &part))
    return;
  with = picture_of (native, &part);
  gtk_window_set_focus (window, NULL);
  without = picture_of (native, &part);
  gtk_window_set_focus (window, focus);
  gtk_window_set_focus_visible (window, TRUE);
  changed = count_changed (with, without);
  keep_picture (with, look->name, n);
  if (changed < least)
    {
      g_test_message ("%s, %s, %u: %u px of at least %u tell of the focus: %s", look->name,
                      gtk_window_get_title (window), n, changed, least, kind);
      g_test_fail ();
    }
  cairo_surface_destroy (with);
  cairo_surface_destroy (without);
}

/* Round the window with Tab. */
static void
check_stops (GtkWindow *window, const Look *look)
{
  GtkWidget *first = NULL;

  gtk_window_set_focus (window, NULL);
  gtk_widget_unset_state_flags (GTK_WIDGET (window), GTK_STATE_FLAG_BACKDROP);
  for (int i = 0; i < MOST_STOPS; i++)
    {
      GtkWidget *focus;

      gtk_widget_child_focus (GTK_WIDGET (window), GTK_DIR_TAB_FORWARD);
      gtk_window_set_focus_visible (window, TRUE);
      focus = gtk_window_get_focus (window);
      if (focus == NULL || focus == first)
        break;
      first = first != NULL ? first : focus;
      check_focus (window, focus, look);
    }
}

static void
check_pages (GtkWindow *window, const Look *look)
{
  GtkStack *stack = find_stack (GTK_WIDGET (window));
  g_autoptr (GListModel) pages = stack != NULL ? G_LIST_MODEL (gtk_stack_get_pages (stack)) : NULL;

  if (stack == NULL)
    check_stops (window, look);
  for (guint i = 0; pages != NULL && i < g_list_model_get_n_items (pages); i++)
    {
      g_autoptr (GObject) page = g_list_model_get_item (pages, i);

      gtk_stack_set_visible_child (stack, gtk_stack_page_get_child (GTK_STACK_PAGE (page)));
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
      check_stops (window, look);
    }
}

/* A window that was not there before and is seen; NULL when there is none. */
static GtkWindow *
new_toplevel (GHashTable *old)
{
  g_autoptr (GList) all = gtk_window_list_toplevels ();

  for (GList *link = all; link != NULL; link = link->next)
    if (!g_hash_table_contains (old, link->data) && gtk_widget_get_visible (link->data))
      return link->data;
  return NULL;
}

static void
check_presenter (TbClinicWindow *clinic, const Look *look)
{
  tb_clinic_window_act (clinic, TB_CLINIC_PRESENTER);
  check_stops (GTK_WINDOW (tb_clinic_window_get_presenter (clinic)), look);
}

static void
check_new_window (GHashTable *old, const Look *look)
{
  GtkWindow *window = new_toplevel (old);

  g_assert_nonnull (window);
  for (; window != NULL; window = new_toplevel (old))
    {
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
      check_pages (window, look);
      if (TB_IS_CLINIC_WINDOW (window))
        check_presenter (TB_CLINIC_WINDOW (window), look);
      gtk_window_destroy (window);
      do_pending ();
    }
}

/* Beside a knob, px: there the page is seen above it, and the empty trough right of it. */
#define BESIDE 10
/* 64 in light, where the edge stands out, and 264 in dark, where all of it does; 41 are the tick under it,
 * and little else. */
#define LEAST_KNOB 50

/* Pixels of a knob that stand out from the page and from the empty trough. */
static guint
count_standing_out (cairo_surface_t *surface)
{
  int stride = cairo_image_surface_get_stride (surface), height = cairo_image_surface_get_height (surface),
      width = cairo_image_surface_get_width (surface);
  const guchar *data = cairo_image_surface_get_data (surface);
  guint32 page = ((const guint32 *) data)[0];
  guint32 trough = ((const guint32 *) (data + height / 2 * stride))[width - 2];
  guint n = 0;

  for (int y = 0; y < height; y++)
    for (int x = BESIDE; x < width - BESIDE; x++)
      {
        guint32 pixel = ((const guint32 *) (data + y * stride))[x];

        n += contrast (pixel, page) >= LEAST_CONTRAST && contrast (pixel, trough) >= LEAST_CONTRAST;
      }
  return n;
}

static gboolean
is_knob (GtkWidget *widget)
{
  return g_str_equal (gtk_widget_get_css_name (widget), "slider");
}

/* Where a slider stands is seen from the back of a room: its knob stands out, or an edge all round it. */
static void
check_knob (GtkWindow *window, const Look *look)
{
  GtkWidget *knob = find_with (find (window, TB_TYPE_TICK_SCALE), is_knob);
  graphene_rect_t place;
  cairo_surface_t *surface;
  guint n;

  gtk_window_set_focus (window, NULL);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  g_assert_true (gtk_widget_compute_bounds (knob, GTK_WIDGET (window), &place));
  graphene_rect_inset (&place, -BESIDE, -BESIDE);
  surface = picture_of (GTK_WIDGET (window), &place);
  cairo_surface_flush (surface);
  n = count_standing_out (surface);
  g_test_message ("%s: %u pixels of a knob stand out", look->name, n);
  g_assert_cmpuint (n, >, LEAST_KNOB);
  cairo_surface_destroy (surface);
}

static void
test_look (gconstpointer data)
{
  const Look *look = data;
  g_autoptr (GHashTable) old = g_hash_table_new (NULL, NULL);
  g_autoptr (GList) all = NULL;
  TbWindow *window;

  g_settings_set_string (settings, "color-scheme", look->scheme);
  g_settings_set_boolean (settings, "high-contrast", look->high_contrast);
  seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  window = new_window ();
  all = gtk_window_list_toplevels ();
  for (GList *link = all; link != NULL; link = link->next)
    g_hash_table_add (old, link->data);
  /* In high contrast the trough has an edge of its own. */
  if (!look->high_contrast)
    check_knob (GTK_WINDOW (window), look);
  check_pages (GTK_WINDOW (window), look);
  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      choose_action (window, ways[i].action, ways[i].target);
      check_new_window (old, look);
    }
  g_test_message ("%s: %u kinds of control", look->name, g_hash_table_size (seen));
  g_assert_cmpuint (g_hash_table_size (seen), >, 50);
  gtk_window_destroy (GTK_WINDOW (window));
  g_clear_pointer (&seen, g_hash_table_unref);
}

int
main (int argc, char **argv)
{
  int status;

  start_tests (&argc, &argv);
  start_application ();
  settings = g_settings_new (APP_ID);
  for (gsize i = 0; i < G_N_ELEMENTS (looks); i++)
    {
      g_autofree char *path = g_strdup_printf ("/focus/%s", looks[i].name);

      g_test_add_data_func (path, &looks[i], test_look);
    }
  status = run_tests ();
  g_object_unref (settings);
  return status;
}
