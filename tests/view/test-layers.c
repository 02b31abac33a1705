/* A lane is drawn in two layers, of which the lower is kept as long as its key is the same; and texts that
 * were laid out are kept too. Nothing of this may be seen.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include "picture.h"
#include "scenes.h"
#include "tb-canvas.h"

#define WIDTH 480
#define HEIGHT 420
/* Texts enough to have those that are kept dropped twice. */
#define MANY_TEXTS 2500

static Scenes scenes;

typedef struct Variant
{
  TbLaneScene scene;
  double width, height;
} Variant;

static cairo_surface_t *
draw_layers (const Variant *variant, gboolean ground, gboolean runs)
{
  cairo_surface_t *picture = picture_new ((int) variant->width, (int) variant->height);
  cairo_t *cr = cairo_create (picture);

  if (ground)
    tb_lane_view_draw_ground (cr, variant->width, variant->height, &variant->scene);
  if (runs)
    tb_lane_view_draw_runs (cr, variant->width, variant->height, &variant->scene);
  cairo_destroy (cr);
  cairo_surface_flush (picture);
  return picture;
}

static cairo_surface_t *
draw_whole (const Variant *variant)
{
  cairo_surface_t *picture = picture_new ((int) variant->width, (int) variant->height);
  cairo_t *cr = cairo_create (picture);

  tb_lane_view_draw (cr, variant->width, variant->height, &variant->scene);
  cairo_destroy (cr);
  cairo_surface_flush (picture);
  return picture;
}

static gboolean
same_picture (cairo_surface_t *a, cairo_surface_t *b)
{
  PictureDifference difference = picture_compare (a, b);

  g_clear_pointer (&difference.picture, cairo_surface_destroy);
  return difference.same_size && difference.worst == 0;
}

static Variant
plain (TbLaneProjection projection)
{
  return (Variant){ scenes_lane (&scenes, projection), WIDTH, HEIGHT };
}

static void
test_layers_make_the_whole (void)
{
  for (int i = TB_LANE_PLAN; i <= TB_LANE_FROM_APPROACH; i++)
    for (int left = 0; left <= 1; left++)
      {
        Variant variant = plain ((TbLaneProjection) i);
        cairo_surface_t *whole, *layers;

        if (left)
          variant.scene = scenes_left_lane (&scenes, (TbLaneProjection) i);
        whole = draw_whole (&variant);
        layers = draw_layers (&variant, TRUE, TRUE);
        g_assert_true (same_picture (whole, layers));
        cairo_surface_destroy (whole);
        cairo_surface_destroy (layers);
      }
}

/* Every way in which a ground may be another, and two in which it may not. Returns how many. */
static int
list_variants (Variant *variant, TbOil *touched)
{
  int n = 0;

  for (int i = TB_LANE_PLAN; i <= TB_LANE_FROM_APPROACH; i++)
    variant[n++] = plain ((TbLaneProjection) i);
  *touched = *variant->scene.oil;
  tb_oil_set_cell (touched, 30, 20, 0);
  tb_oil_reflect (touched);
  for (int i = 0; i < 10; i++)
    variant[n + i] = plain (TB_LANE_PLAN);
  variant[n++].scene.after = &scenes.pocket->path;
  variant[n++].scene.oil = touched;
  variant[n++].scene.oil = NULL;
  variant[n++].scene.oil_scale = 0.5;
  variant[n++].scene.mirrored = true;
  variant[n++].scene.cursor_y = 9;
  variant[n++].scene.theme = tb_theme_dark (1);
  variant[n++].scene.theme.font = "DejaVu Serif";
  variant[n++].scene.show_legend = false;
  variant[n++].width += 8;
  return n;
}

/* The same key exactly where the ground is the same, pixel by pixel. */
static void
test_key_tells_the_ground (void)
{
  Variant variant[16];
  TbOil touched;
  int count = list_variants (variant, &touched), same = 0;

  for (int i = 0; i < count; i++)
    for (int j = 0; j <= i; j++)
      {
        g_autoptr (GBytes) a
            = tb_lane_view_ground_key (variant[i].width, variant[i].height, &variant[i].scene);
        g_autoptr (GBytes) b
            = tb_lane_view_ground_key (variant[j].width, variant[j].height, &variant[j].scene);
        cairo_surface_t *first = draw_layers (&variant[i], TRUE, FALSE);
        cairo_surface_t *second = draw_layers (&variant[j], TRUE, FALSE);

        g_assert_cmpint (g_bytes_equal (a, b), ==, same_picture (first, second));
        same += i != j && g_bytes_equal (a, b);
        cairo_surface_destroy (first);
        cairo_surface_destroy (second);
      }
  /* Another run on the same lane. */
  g_assert_cmpint (same, ==, 1);
}

typedef struct Measures
{
  cairo_rectangle_t box[5];
} Measures;

static Measures
measure_all (void)
{
  TbTheme theme = tb_theme_light (1), serif = tb_theme_light (1);
  g_auto (TbCanvas) canvas = { 0 }, other = { 0 };
  TbLabel label = { .text = "the ball that hooks" }, bold = label, large = label, narrow = label;

  serif.font = "DejaVu Serif";
  bold.bold = TRUE;
  large.size = 40;
  narrow.wrap = 50;
  tb_canvas_init (&canvas, NULL, WIDTH, HEIGHT, &theme);
  tb_canvas_init (&other, NULL, WIDTH, HEIGHT, &serif);
  return (Measures){ { tb_canvas_measure (&canvas, &label), tb_canvas_measure (&canvas, &bold),
                       tb_canvas_measure (&canvas, &large), tb_canvas_measure (&canvas, &narrow),
                       tb_canvas_measure (&other, &label) } };
}

/* A thread that has laid out nothing yet. */
static gpointer
measure_anew (gpointer data)
{
  *(Measures *) data = measure_all ();
  return NULL;
}

static void
test_texts_are_not_mixed_up (void)
{
  Measures anew, kept;

  g_thread_join (g_thread_new ("anew", measure_anew, &anew));
  measure_all ();
  kept = measure_all ();
  g_assert_cmpmem (&anew, sizeof anew, &kept, sizeof kept);
  for (guint i = 1; i < G_N_ELEMENTS (kept.box); i++)
    g_assert_cmpfloat (kept.box[i].width, !=, kept.box[0].width);
}

static void
test_many_texts (void)
{
  TbTheme theme = tb_theme_light (1);
  g_auto (TbCanvas) canvas = { 0 };
  Measures before = measure_all (), after;

  tb_canvas_init (&canvas, NULL, WIDTH, HEIGHT, &theme);
  for (int i = 0; i < MANY_TEXTS; i++)
    {
      g_autofree char *text = g_strdup_printf ("%d", 10000 + i);
      TbLabel label = { .text = text };

      g_assert_cmpfloat (tb_canvas_measure (&canvas, &label).width, >, 0);
    }
  after = measure_all ();
  g_assert_cmpmem (&before, sizeof before, &after, sizeof after);
}

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  scenes_init (&scenes);
  g_test_add_func ("/layers/whole", test_layers_make_the_whole);
  g_test_add_func ("/layers/key", test_key_tells_the_ground);
  g_test_add_func ("/layers/texts", test_texts_are_not_mixed_up);
  g_test_add_func ("/layers/many-texts", test_many_texts);
  status = g_test_run ();
  scenes_clear (&scenes);
  return status;
}
