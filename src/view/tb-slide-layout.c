/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include <math.h>
#include "tb-slide-layout.h"

/* Margins, of the picture's width and height. */
#define MARGIN_ACROSS 0.055
#define MARGIN_DOWN 0.04
/* Space between the blocks, em. */
#define GAP 0.7
/* Width of the mark beside a caution, em. */
#define CAUTION_MARK 1.5
/* A list that is longer than this stands in two columns. */
#define LIST_ROWS 8
#define COLUMN_GAP 1.0
/* Share of the free height that stands above a slide that does not fill it. */
#define ABOVE 0.35
/* Slides of words may be set larger than others. */
#define LARGEST_WORDS 1.7
#define LARGEST 1.2
#define SMALLEST 0.5
#define STEP 0.05
/* Height of a line of text, at most, em. */
#define LINE 1.4

/* Heights of an item, em: at least, and at most; and the share of its row that the name may take. */
static const struct
{
  double least, most, name;
} rows[] = {
  [TB_SLIDE_WORDS] = { 0, 0, 1 },         [TB_SLIDE_LIST] = { 1.25, 1.9, 1 },
  [TB_SLIDE_VOTES] = { 2.5, 4.2, 0.42 },  [TB_SLIDE_CHANGES] = { 2.7, 4.0, 0.5 },
  [TB_SLIDE_NUMBERS] = { 2.5, 3.0, 0.4 }, [TB_SLIDE_PARTS] = { 1.5, 2.4, 0.4 },
};

static double
text_height (TbCanvas *canvas, const char *text, double size, double width)
{
  TbLabel label = { .text = text, .size = size, .wrap = width, .bold = size > canvas->em };

  return text != NULL && text[0] != '\0' ? tb_canvas_measure (canvas, &label).height : 0;
}

double
tb_slide_layout_name_width (const TbSlideLayout *self, TbSlideKind kind)
{
  return rows[kind].name * self->items.width;
}

/* A long list stands in two columns where its names have room. */
static guint
columns_of (TbCanvas *canvas, const TbSlide *slide, double em, double width)
{
  if (slide->kind != TB_SLIDE_LIST || slide->n_items <= LIST_ROWS)
    return 1;
  for (guint i = 0; i < slide->n_items; i++)
    if (text_height (canvas, slide->items[i].name, em, width / 2 - 2.5 * em) > LINE * em)
      return 1;
  return 2;
}

/* Stacks the blocks at a size of type; the height that they take is returned. */
static double
stack (TbSlideLayout *self, TbCanvas *canvas, const TbSlide *slide, double em)
{
  double left = floor (MARGIN_ACROSS * canvas->width), inner = canvas->width - 2 * left;
  double mark = CAUTION_MARK * em, y = 0;

  *self = (TbSlideLayout){ .em = em };
  canvas->em = em;
  self->headline
      = (cairo_rectangle_t){ left, y, inner,
                             text_height (canvas, slide->headline, TB_SLIDE_HEADLINE * em, inner) };
  y += self->headline.height + (self->headline.height > 0 ? GAP * em : 0);
  self->body = (cairo_rectangle_t){ left, y, inner, text_height (canvas, slide->body, em, inner) };
  y += self->body.height + (self->body.height > 0 ? GAP * em : 0);
  self->heads = (cairo_rectangle_t){ left, y, inner, slide->kind == TB_SLIDE_NUMBERS ? 1.3 * em : 0 };
  y += self->heads.height;
  self->columns = columns_of (canvas, slide, em, inner);
  self->rows = (slide->n_items + self->columns - 1) / self->columns;
  self->items = (cairo_rectangle_t){ left, y, inner, self->rows * rows[slide->kind].least * em };
  y += self->items.height;
  self->caution = (cairo_rectangle_t){ left + mark, y, inner - mark,
                                       text_height (canvas, slide->caution, em, inner - mark) };
  if (self->caution.height > 0)
    {
      self->caution.y += GAP * em;
      y += GAP * em + self->caution.height;
    }
  return y;
}

/* No name breaks into more lines than its row has. */
static gboolean
names_fit (const TbSlideLayout *self, TbCanvas *canvas, const TbSlide *slide)
{
  double width = tb_slide_layout_name_width (self, slide->kind) / self->columns - 2 * self->em;
  gboolean broken = slide->kind == TB_SLIDE_VOTES || slide->kind == TB_SLIDE_NUMBERS;
  double height = (broken ? rows[slide->kind].least : LINE) * self->em;

  for (guint i = 0; i < slide->n_items; i++)
    if (text_height (canvas, slide->items[i].name, self->em, width) > height)
      return FALSE;
  return TRUE;
}

/* Gives the items what is left over, and the whole its place. */
static void
spread (TbSlideLayout *self, const TbSlide *slide, double free)
{
  double most = self->rows * (rows[slide->kind].most - rows[slide->kind].least) * self->em;
  double more = CLAMP (free, 0, most), down = MARGIN_DOWN;

  self->items.height += more;
  self->caution.y += more;
  down = slide->kind == TB_SLIDE_WORDS ? ABOVE * (free - more) : 0.5 * ABOVE * (free - more);
  self->headline.y += down;
  self->body.y += down;
  self->heads.y += down;
  self->items.y += down;
  /* What can hurt stays at the bottom, where the eye looks for it. */
  self->caution.y += free - more;
}

void
tb_slide_layout_init (TbSlideLayout *self, TbCanvas *canvas, const TbSlide *slide)
{
  double top = floor (MARGIN_DOWN * canvas->height), room = canvas->height - 2 * top, taken;
  double least = TB_SLIDE_SMALLEST * canvas->height;
  double scale = slide->kind == TB_SLIDE_WORDS ? LARGEST_WORDS : LARGEST;

  taken = stack (self, canvas, slide, scale * least);
  while (scale > SMALLEST && (taken > room || !names_fit (self, canvas, slide)))
    {
      scale -= STEP;
      taken = stack (self, canvas, slide, scale * least);
    }
  spread (self, slide, MAX (room - taken, 0));
  self->headline.y += top;
  self->body.y += top;
  self->heads.y += top;
  self->items.y += top;
  self->caution.y += top;
}

cairo_rectangle_t
tb_slide_layout_item (const TbSlideLayout *self, guint item)
{
  double gap = self->columns > 1 ? COLUMN_GAP * self->em : 0;
  double width = (self->items.width - gap * (self->columns - 1)) / self->columns;
  double height = self->items.height / MAX (self->rows, 1);

  return (cairo_rectangle_t){ self->items.x + (item / self->rows) * (width + gap),
                              self->items.y + (item % self->rows) * height, width, height };
}
