/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"
#include "tb-layout-sheet.h"

#include <glib/gi18n-lib.h>

#include "tb-ball-limits.h"
#include "tb-drilling.h"
#include "tb-layout-view.h"

/* Of the page's width. */
#define MARGIN 0.06
#define TEXT 0.0145
#define BALL 0.46
/* Distances, in lines of text. */
#define LINE 1.45
#define GAP 1.0
#define HEAD 1.25
#define COLUMN_GAP 2.0

/* The page while it is being filled from above. */
typedef struct Page
{
  TbCanvas *canvas;
  const TbLayoutSheet *sheet;
  double left, width; /* px, of the column that is being filled */
  double y;           /* px, where the next line goes */
} Page;

static void
write_text (Page *page, const char *text, gboolean bold, TbColor color)
{
  TbLabel label
      = { .text = text, .x = page->left, .y = page->y, .color = color, .bold = bold, .wrap = page->width };

  page->y += tb_canvas_measure (page->canvas, &label).height + (LINE - 1.2) * page->canvas->em;
  tb_canvas_label (page->canvas, &label);
}

static void
write_head (Page *page, const char *text)
{
  TbCanvas *canvas = page->canvas;
  TbLabel label = {
    .text = text, .x = page->left, .y = page->y + 0.4 * canvas->em, .bold = TRUE, .size = HEAD * canvas->em
  };

  label.color = canvas->theme.text;
  tb_canvas_label (canvas, &label);
  page->y += (0.4 + 1.35 * HEAD) * canvas->em;
  tb_draw_color (canvas->cr, canvas->theme.rule);
  cairo_set_line_width (canvas->cr, 1);
  tb_draw_line (canvas->cr, (TbPoint){ page->left, tb_draw_crisp (page->y) },
                (TbPoint){ page->left + page->width, tb_draw_crisp (page->y) });
  page->y += 0.4 * canvas->em;
}

/* Cells of one line, spread over the column: the first to the left, the others to the right of theirs. */
static void
write_cells (Page *page, const char *const *cells, guint count, gboolean quiet)
{
  TbCanvas *canvas = page->canvas;
  double first = count > 2 ? 0.34 : 0.6;

  for (guint i = 0; i < count; i++)
    {
      TbLabel label = { .text = cells[i], .x = page->left, .y = page->y };

      label.color = quiet ? canvas->theme.quiet : canvas->theme.text;
      if (i > 0)
        {
          label.x += page->width * (first + (1 - first) * i / (count - 1));
          label.across = TB_ALIGN_END;
        }
      tb_canvas_label (canvas, &label);
    }
  page->y += LINE * canvas->em;
}

static void
write_pair (Page *page, const char *name, char *value)
{
  write_cells (page, (const char *const[]){ name, value }, 2, FALSE);
  g_free (value);
}

static void
write_field (Page *page, const char *name)
{
  const TbField *field = tb_field_find (TB_GROUP_BALL, name);
  double value = tb_field_get (field, page->sheet->ball);
  const char *unit = _ (field->unit), *space = g_str_equal (field->unit, "°") ? "" : " ";

  write_pair (page, _ (field->label), g_strdup_printf ("%.*f%s%s", field->digits, value, space, unit));
}

static void
write_title (Page *page)
{
  const TbLayoutSheet *sheet = page->sheet;
  TbCanvas *canvas = page->canvas;
  TbLabel title
      = { .text = _ ("Layout sheet"), .x = page->left, .y = page->y, .bold = TRUE, .size = 1.9 * canvas->em };
  g_autofree char *who = g_strdup_printf (_ ("Ball: %s     Bowler: %s, %s     Date: %s"),
                                          sheet->ball_name != NULL ? sheet->ball_name : "__________",
                                          sheet->bowler_name != NULL ? sheet->bowler_name : "__________",
                                          sheet->mirrored ? _ ("left-handed") : _ ("right-handed"),
                                          sheet->date != NULL ? sheet->date : "__________");

  title.color = canvas->theme.text;
  tb_canvas_label (canvas, &title);
  page->y += 2.8 * canvas->em;
  write_text (page, who, FALSE, canvas->theme.text);
  page->y += GAP * canvas->em;
}

static void
write_layout (Page *page)
{
  g_autofree char *layout = tb_layout_text (page->sheet->ball);
  TbCanvas *canvas = page->canvas;
  TbLabel big = {
    .text = layout, .x = page->left, .bold = TRUE, .size = 1.5 * canvas->em, .color = canvas->theme.text
  };

  write_head (page, _ ("Layout"));
  big.y = page->y;
  tb_canvas_label (canvas, &big);
  page->y += 2.3 * canvas->em;
  write_field (page, "drilling_angle_deg");
  write_field (page, "pin_to_pap_in");
  write_field (page, "val_angle_deg");
  write_field (page, "pap_over_in");
  write_field (page, "pap_up_in");
  page->y += GAP * canvas->em;
}

static void
write_ball (Page *page)
{
  write_head (page, _ ("Ball before drilling"));
  write_field (page, "weight_lb");
  write_field (page, "diameter_in");
  write_field (page, "rg_in");
  write_field (page, "differential_in");
  write_field (page, "intermediate_differential_in");
  write_field (page, "top_weight_oz");
  page->y += GAP * page->canvas->em;
}

/* With a true minus sign. */
static char *
figure_text (double value, int digits, const char *unit)
{
  return g_strdup_printf ("%s%.*f%s", value < 0 ? "−" : "", digits, fabs (value), unit);
}

static void
write_hole (Page *page, const char *name, const TbGripHole *hole, double span)
{
  g_autofree char *length
      = isnan (span) ? g_strdup ("") : g_strdup_printf (_ ("%.3f in"), tb_in_from_metres (span));
  g_autofree char *diameter = g_strdup_printf (_ ("%.3f in"), tb_in_from_metres (hole->diameter));
  g_autofree char *depth = g_strdup_printf (_ ("%.2f in"), tb_in_from_metres (hole->depth));
  g_autofree char *over = figure_text (tb_in_from_metres (hole->pitch_over), 3, _ (" in"));
  g_autofree char *up = figure_text (tb_in_from_metres (hole->pitch_up), 3, _ (" in"));

  write_cells (page, (const char *const[]){ name, length, diameter, depth, over, up }, 6, FALSE);
}

static void
write_holes (Page *page)
{
  TbGrip grip;

  write_head (page, _ ("Grip"));
  if (!tb_grip_from_ball (page->sheet->ball, &grip))
    {
      write_text (page,
                  page->sheet->ball->n_holes == 0 ? _ ("No holes are given.")
                                                  : _ ("The holes are not those of an ordinary grip."),
                  FALSE, page->canvas->theme.quiet);
      page->y += GAP * page->canvas->em;
      return;
    }
  write_cells (page,
               (const char *const[]){ _ ("hole"), _ ("span"), _ ("diameter"), _ ("depth"), _ ("pitch to PAP"),
                                      _ ("pitch up") },
               6, TRUE);
  write_hole (page, _ ("Middle finger"), &grip.finger[TB_GRIP_MIDDLE], grip.span[TB_GRIP_MIDDLE]);
  write_hole (page, _ ("Ring finger"), &grip.finger[TB_GRIP_RING], grip.span[TB_GRIP_RING]);
  if (!grip.no_thumb)
    write_hole (page, _ ("Thumb"), &grip.thumb, NAN);
  g_autofree char *bridge = g_strdup_printf (
      _ ("Bridge %.3f in. Spans run along the surface from edge to edge; a pitch is the distance by which "
         "the hole's line "
         "passes the centre of the ball, towards the PAP and away from the thumb where it is positive."),
      tb_in_from_metres (grip.bridge));

  write_text (page, bridge, FALSE, page->canvas->theme.quiet);
  page->y += GAP * page->canvas->em;
}

static void
write_figure (Page *page, const char *name, int digits, const double values[2], const char *unit)
{
  g_autofree char *before = figure_text (values[0], digits, unit),
                  *after = figure_text (values[1], digits, unit);

  write_cells (page, (const char *const[]){ name, before, after }, 3, FALSE);
}

static void
write_figures (Page *page)
{
  TbBallFigures before, after;

  write_head (page, _ ("What drilling makes of it"));
  if (tb_drilling_figures (page->sheet->ball, &before, &after) != TB_OK)
    {
      write_text (page, _ ("A ball with these numbers cannot be."), FALSE, page->canvas->theme.warning);
      return;
    }
#define INCHES(member) (const double[]){ tb_in_from_metres (before.member), tb_in_from_metres (after.member) }
#define OUNCES(member)                                                                                      \
  (const double[])                                                                                          \
  {                                                                                                         \
    tb_oz_from_kilograms (before.static_weights.member), tb_oz_from_kilograms (after.static_weights.member) \
  }
  write_cells (page, (const char *const[]){ "", _ ("before"), _ ("drilled") }, 3, TRUE);
  write_figure (page, _ ("Weight"), 2,
                (const double[]){ tb_lb_from_kilograms (before.mass), tb_lb_from_kilograms (after.mass) },
                _ (" lb"));
  write_figure (page, _ ("RG"), 3, INCHES (rg), _ (" in"));
  write_figure (page, _ ("Differential"), 3, INCHES (differential), _ (" in"));
  write_figure (page, _ ("Intermediate differential"), 3, INCHES (intermediate_differential), _ (" in"));
  write_figure (page, _ ("Low-RG axis to PAP"), 2, INCHES (low_axis_to_pap), _ (" in"));
  write_figure (page, _ ("Top weight"), 2, OUNCES (top), _ (" oz"));
  write_figure (page, _ ("Side weight"), 2, OUNCES (side), _ (" oz"));
  write_figure (page, _ ("Finger weight"), 2, OUNCES (finger), _ (" oz"));
#undef INCHES
#undef OUNCES
  page->y += GAP * page->canvas->em;
}

static void
write_limits (Page *page)
{
  g_autoptr (GPtrArray) lines = tb_ball_limits (page->sheet->ball);

  write_head (page, _ ("Against the published limits"));
  for (guint i = 0; i < lines->len; i++)
    {
      const TbLimitLine *line = lines->pdata[i];

      write_text (page, line->sentence, line->verdict == TB_LIMIT_OUTSIDE,
                  line->verdict == TB_LIMIT_OUTSIDE ? page->canvas->theme.warning : page->canvas->theme.text);
    }
  write_text (page, tb_ball_limits_source (), FALSE, page->canvas->theme.quiet);
  page->y += GAP * page->canvas->em;
}

static void
write_cautions (Page *page)
{
  write_text (page,
              _ ("Computed from the numbers above for a ball whose core is as its maker says and whose "
                 "material is even "
                 "throughout (assumed): weigh and measure before drilling. Plugging and drilling are a pro "
                 "shop's work. "
                 "Never heat a ball."),
              FALSE, page->canvas->theme.quiet);
}

static void
draw_ball (Page *page, double size)
{
  TbLayoutScene scene = tb_layout_scene_for (page->sheet->ball);
  cairo_t *cr = page->canvas->cr;

  scene.theme = page->canvas->theme;
  /* On paper the ball is pale: ink is dear, and a pencil shows. */
  scene.theme.ball = (TbColor){ 0.90, 0.91, 0.92, 1 };
  scene.theme.ball_light = (TbColor){ 1, 1, 1, 1 };
  scene.theme.ball_mark = (TbColor){ 0, 0, 0, 1 };
  scene.mirrored = page->sheet->mirrored;
  scene.plain = TRUE;
  cairo_save (cr);
  cairo_translate (cr, page->left, page->y);
  cairo_rectangle (cr, 0, 0, size, size);
  cairo_clip (cr);
  tb_layout_view_draw (cr, size, size, &scene);
  cairo_restore (cr);
}

void
tb_layout_sheet_draw (cairo_t *cr, double width, double height, const TbLayoutSheet *sheet)
{
  g_auto (TbCanvas) canvas = { 0 };
  TbTheme theme = tb_theme_light (1);
  double margin = MARGIN * width, ball = BALL * (width - 2 * margin), column;
  Page page = { .canvas = &canvas, .sheet = sheet, .left = margin, .width = width - 2 * margin, .y = margin };

  theme.background = (TbColor){ 1, 1, 1, 1 };
  theme.text = (TbColor){ 0, 0, 0, 1 };
  theme.line_width *= TEXT * width / theme.text_size;
  theme.text_size = TEXT * width;
  cairo_save (cr);
  tb_canvas_init (&canvas, cr, width, height, &theme);
  tb_canvas_fill_background (&canvas);
  write_title (&page);
  double top = page.y;

  draw_ball (&page, ball);
  column = ball + COLUMN_GAP * canvas.em;
  page.left += column;
  page.width -= column;
  write_layout (&page);
  write_ball (&page);
  page.left = margin;
  page.width = width - 2 * margin;
  page.y = fmax (page.y, top + ball + GAP * canvas.em);
  write_holes (&page);
  write_figures (&page);
  write_limits (&page);
  write_cautions (&page);
  cairo_restore (cr);
}
