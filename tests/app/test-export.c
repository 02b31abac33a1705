/* Taking away from inside: every view gives a file of the right size that shows something; clips show how far
 * they are and can be called off; what cannot be written is told.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <glib/gstdio.h>
#include <string.h>

#include "tb-ball-picture.h"
#include "tb-export-window.h"
#include "tb-lane-picture.h"
#include "tb-picture-menu.h"
#include "tb-throw-view.h"
#include "window-support.h"

#define WIDTH 320
#define HEIGHT 240
/* A picture with fewer colours than this shows nothing. Measured: 90 and more. */
#define COLORS 30
/* A picture is saved so often before it is said to show nothing. */
#define TRIES 1000

static char *folder;

static TbExportWindow *
new_export (TbWindow *window, TbExportKind kind)
{
  TbExportWindow *export = tb_export_window_new (GTK_WINDOW (window), tb_window_get_session (window), kind);

  show_window (export);
  tb_export_window_set_size (export, WIDTH, HEIGHT);
  return export;
}

static char *
in_folder (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

static void
save (TbExportWindow *export, const char *path)
{
  tb_export_window_save_to (export, path);
  WAIT_UNTIL (!tb_export_window_is_busy (export));
}

static guint
count_colors (cairo_surface_t *surface)
{
  g_autoptr (GHashTable) colors = g_hash_table_new (NULL, NULL);
  const unsigned char *row = cairo_image_surface_get_data (surface);

  for (int y = 0; y < cairo_image_surface_get_height (surface); y++)
    for (int x = 0; x < cairo_image_surface_get_width (surface); x++)
      {
        guint32 pixel
            = ((const guint32 *) (const void *) (row + y * cairo_image_surface_get_stride (surface)))[x];

        g_hash_table_add (colors, GUINT_TO_POINTER (pixel));
      }
  return g_hash_table_size (colors);
}

static guint
check_picture (const char *path)
{
  cairo_surface_t *surface = cairo_image_surface_create_from_png (path);
  guint colors;

  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (cairo_image_surface_get_width (surface), ==, WIDTH);
  g_assert_cmpint (cairo_image_surface_get_height (surface), ==, HEIGHT);
  colors = count_colors (surface);
  cairo_surface_destroy (surface);
  return colors;
}

static guint
save_view (TbExportWindow *export)
{
  g_autofree char *path = in_folder ("view.png");
  guint colors;

  save (export, path);
  g_assert_cmpstr (tb_export_window_get_answer (export), ==, "Saved as “view.png”.");
  colors = check_picture (path);
  g_assert_cmpint (g_unlink (path), ==, 0);
  return colors;
}

/* Some pages draw nothing until they have computed it. */
static void
check_view (TbExportWindow *export, guint view)
{
  guint colors = 0;

  tb_export_window_set_view (export, view);
  for (int i = 0; i < TRIES && colors <= COLORS; i++)
    colors = save_view (export);
  g_test_message ("%s: %u colours", tb_export_window_get_view_name (export, view), colors);
  g_assert_cmpuint (colors, >, COLORS);
}

static void
check_views_from (TbExportWindow *export, guint first)
{
  for (guint view = first; view < tb_export_window_get_n_views (export); view++)
    check_view (export, view);
}

static gboolean
has_view (TbExportWindow *export, const char *name)
{
  for (guint view = 0; view < tb_export_window_get_n_views (export); view++)
    if (g_str_equal (tb_export_window_get_view_name (export, view), name))
      return TRUE;
  return FALSE;
}

static void
test_views_of_the_throw (void)
{
  TbWindow *window = new_window ();
  TbExportWindow *export = new_export (window, TB_EXPORT_PICTURE);

  g_assert_cmpuint (tb_export_window_get_n_views (export), >=, TB_N_THROW_VIEWS - 1);
  g_assert_true (has_view (export, "Lane and ball"));
  check_views_from (export, 0);
  gtk_window_destroy (GTK_WINDOW (export));
  gtk_window_destroy (GTK_WINDOW (window));
}

static gboolean
is_drawn (GtkWidget *widget)
{
  return TB_IS_PICTURE (widget) && gtk_widget_get_mapped (widget) && gtk_widget_get_width (widget) > 1;
}

/* The window that an action has opened. */
static GtkWindow *
opened_by (TbWindow *window, const char *action, const char *page)
{
  GtkWindow *opened = NULL;

  choose_action (window, action, page);
  for (guint i = 0; i < g_list_model_get_n_items (gtk_window_get_toplevels ()); i++)
    {
      g_autoptr (GtkWindow) candidate = g_list_model_get_item (gtk_window_get_toplevels (), i);

      if (gtk_window_get_transient_for (candidate) == GTK_WINDOW (window))
        opened = candidate;
    }
  g_assert_nonnull (opened);
  WAIT_UNTIL (find_with (opened, is_drawn) != NULL);
  return opened;
}

static void
check_page (const char *action, const char *page, const char *name)
{
  TbWindow *window = new_window ();
  GtkWindow *opened = opened_by (window, action, page);
  TbExportWindow *export = new_export (window, TB_EXPORT_PICTURE);

  g_assert_true (has_view (export, name));
  check_views_from (export, TB_N_THROW_VIEWS - 1);
  gtk_window_destroy (GTK_WINDOW (export));
  gtk_window_destroy (opened);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_views_of_lane_play (void)
{
  check_page ("win.lane-play", "room", "Room to miss");
  check_page ("win.lane-play", "lines", "Line and misses");
  check_page ("win.lane-play", "pattern", "Pattern");
  check_page ("win.lane-play", "wear", "Film, fresh and worn");
}

static void
test_views_of_the_counter (void)
{
  check_page ("win.ball-counter", "layout", "Layout");
  check_page ("win.ball-counter", "flare", "Rings on the ball");
  check_page ("win.ball-counter", "surface", "Curves against the surface");
}

/* The other forms, by how the name ends. */
static void
test_forms (void)
{
  static const char *const names[] = { "form.svg", "form.pdf" }, *const beginnings[] = { "<?xml", "%PDF-" };
  TbWindow *window = new_window ();
  TbExportWindow *export = new_export (window, TB_EXPORT_PICTURE);

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = in_folder (names[i]), *content = NULL;

      save (export, path);
      g_assert_true (g_file_get_contents (path, &content, NULL, NULL));
      g_assert_true (g_str_has_prefix (content, beginnings[i]));
      g_assert_cmpint (g_unlink (path), ==, 0);
    }
  gtk_window_destroy (GTK_WINDOW (export));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_clip (void)
{
  TbWindow *window = new_window ();
  TbExportWindow *export = new_export (window, TB_EXPORT_CLIP);
  g_autofree char *path = in_folder ("a.webp"), *content = NULL;
  gsize length;

  save (export, path);
  g_assert_cmpstr (tb_export_window_get_answer (export), ==, "Saved as “a.webp”.");
  g_assert_true (g_file_get_contents (path, &content, &length, NULL));
  g_assert_cmpmem (content, 4, "RIFF", 4);
  g_assert_cmpmem (content + 8, 4, "WEBP", 4);
  g_assert_cmpuint (length, >, 20000);
  g_assert_cmpint (g_unlink (path), ==, 0);
  gtk_window_destroy (GTK_WINDOW (export));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
check_folder_is_empty (void)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);

  g_assert_null (g_dir_read_name (dir));
}

/* Cancelled, and closed while it is being saved: no file either way. */
static void
test_clip_is_called_off (void)
{
  TbWindow *window = new_window ();
  TbExportWindow *export = new_export (window, TB_EXPORT_CLIP);
  g_autofree char *path = in_folder ("b.webp");

  tb_export_window_set_size (export, 1280, 800);
  tb_export_window_save_to (export, path);
  g_assert_true (tb_export_window_is_busy (export));
  tb_export_window_cancel (export);
  WAIT_UNTIL (!tb_export_window_is_busy (export));
  g_assert_cmpstr (tb_export_window_get_answer (export), ==, "Cancelled; nothing was saved.");
  check_folder_is_empty ();

  tb_export_window_save_to (export, path);
  close_for_good (export);
  check_folder_is_empty ();
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
check_told (TbExportWindow *export, const char *path, const char *has)
{
  save (export, path);
  g_assert_nonnull (strstr (tb_export_window_get_answer (export), has));
  g_assert_true (g_str_has_suffix (tb_export_window_get_answer (export), "."));
}

static void
test_what_cannot_be_written_is_told (void)
{
  TbWindow *window = new_window ();
  TbExportWindow *picture = new_export (window, TB_EXPORT_PICTURE),
                 *clip = new_export (window, TB_EXPORT_CLIP);
  g_autofree char *bad = in_folder ("a.gif"), *nowhere = g_build_filename (folder, "none", "a.png", NULL);
  g_autofree char *no_clip = g_build_filename (folder, "none", "a.webp", NULL);

  check_told (picture, bad, "a.gif: the name of a picture ends in .png, .svg or .pdf.");
  check_told (picture, nowhere, "a.png");
  tb_export_window_set_size (clip, 64, 64);
  check_told (clip, no_clip, "a.webp: the file cannot be saved: No such file or directory.");
  check_folder_is_empty ();
  gtk_window_destroy (GTK_WINDOW (picture));
  gtk_window_destroy (GTK_WINDOW (clip));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The same table as the command writes. */
static void
test_path (void)
{
  TbWindow *window = new_window ();
  g_autofree char *csv = in_folder ("a.csv"), *json = in_folder ("a.json"), *table = NULL, *data = NULL;

  tb_window_save_path_to (window, csv);
  tb_window_save_path_to (window, json);
  g_assert_true (g_file_get_contents (csv, &table, NULL, NULL));
  g_assert_true (g_file_get_contents (json, &data, NULL, NULL));
  g_assert_true (g_str_has_prefix (table, "run,time_s,distance_ft,board,"));
  g_assert_nonnull (strstr (table, "\nafter,"));
  g_assert_true (g_str_has_prefix (data, "{"));
  g_unlink (csv);
  g_unlink (json);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
on_texture (GObject *clipboard, GAsyncResult *result, gpointer texture)
{
  g_autoptr (GError) error = NULL;

  *(GdkTexture **) texture = gdk_clipboard_read_texture_finish (GDK_CLIPBOARD (clipboard), result, &error);
  g_assert_no_error (error);
}

/* What is pasted is the lane, twice as fine as on the screen. */
static void
test_copy (void)
{
  TbWindow *window = new_window ();
  GtkWidget *lane = find (window, TB_TYPE_LANE_PICTURE);
  GdkTexture *texture = NULL;

  gtk_widget_activate_action (GTK_WIDGET (window), "win.copy-picture", NULL);
  gdk_clipboard_read_texture_async (gtk_widget_get_clipboard (lane), NULL, on_texture, &texture);
  WAIT_UNTIL (texture != NULL);
  g_assert_cmpint (gdk_texture_get_width (texture), ==, 2 * gtk_widget_get_width (lane));
  g_assert_cmpint (gdk_texture_get_height (texture), ==, 2 * gtk_widget_get_height (lane));
  g_object_unref (texture);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Saving from a picture's own menu chooses what it shows. */
static void
test_choose (void)
{
  TbWindow *window = new_window ();
  GtkWidget *ball = find (window, TB_TYPE_BALL_PICTURE);
  TbExportWindow *export;
  GtkWidget *shows;

  g_assert_true (gtk_widget_get_focusable (ball));
  g_assert_true (gtk_widget_activate_action (ball, "picture.save", NULL));
  export = find_window (TB_TYPE_EXPORT_WINDOW);
  g_assert_nonnull (export);
  shows = find (export, GTK_TYPE_DROP_DOWN);
  g_assert_cmpstr (
      tb_export_window_get_view_name (export, gtk_drop_down_get_selected (GTK_DROP_DOWN (shows))), ==,
      "Ball from behind");
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (shows), GTK_ACCESSIBLE_PROPERTY_LABEL, "Shows");
  gtk_window_destroy (GTK_WINDOW (export));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
add_tests (void)
{
  g_test_add_func ("/export/views-of-the-throw", test_views_of_the_throw);
  g_test_add_func ("/export/views-of-lane-play", test_views_of_lane_play);
  g_test_add_func ("/export/views-of-the-counter", test_views_of_the_counter);
  g_test_add_func ("/export/forms", test_forms);
  g_test_add_func ("/export/clip", test_clip);
  g_test_add_func ("/export/clip-is-called-off", test_clip_is_called_off);
  g_test_add_func ("/export/what-cannot-be-written-is-told", test_what_cannot_be_written_is_told);
  g_test_add_func ("/export/path", test_path);
  g_test_add_func ("/export/copy", test_copy);
  g_test_add_func ("/export/choose", test_choose);
}

int
main (int argc, char **argv)
{
  int status;

  start_tests (&argc, &argv);
  folder = g_build_filename (scratch_folder (), "taken-away", NULL);
  g_assert_cmpint (g_mkdir (folder, 0700), ==, 0);
  start_application ();
  add_tests ();
  status = run_tests ();
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  g_free (folder);
  return status;
}
