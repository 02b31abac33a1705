/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-columns.h"

#include "tb-app-enums.h"

enum
{
  START,
  CENTER,
  END,
  N_COLUMNS
};

struct _TbColumns
{
  GtkWidget parent_instance;

  GtkWidget *column[N_COLUMNS];
  TbColumnsPage page;
  gboolean compact, single;
  guint notify_idle;
};

enum
{
  PROP_0,
  PROP_START,
  PROP_CENTER,
  PROP_END,
  PROP_COMPACT,
  PROP_SINGLE,
  PROP_PAGE,
  N_PROPS
};
static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (TbColumns, tb_columns, GTK_TYPE_WIDGET)

/* Shares of the width that the outer columns grow to; they are never narrower than they ask for. */
static const double share_of[N_COLUMNS] = { [START] = 0.23, [END] = 0.33 };

/* Least widths, px. */
typedef struct Widths
{
  int least[N_COLUMNS];
} Widths;

static Widths
measure_columns (TbColumns *self)
{
  Widths widths = { 0 };

  for (int i = 0; i < N_COLUMNS; i++)
    if (self->column[i] != NULL)
      gtk_widget_measure (self->column[i], GTK_ORIENTATION_HORIZONTAL, -1, &widths.least[i], NULL, NULL,
                          NULL);
  return widths;
}

static int
natural_width (TbColumns *self)
{
  int sum = 0;

  for (int i = 0; i < N_COLUMNS; i++)
    {
      int natural = 0;

      if (self->column[i] != NULL)
        gtk_widget_measure (self->column[i], GTK_ORIENTATION_HORIZONTAL, -1, NULL, &natural, NULL, NULL);
      sum += natural;
    }
  return sum;
}

static void
tb_columns_measure (GtkWidget *widget,
                    GtkOrientation orientation,
                    int for_size,
                    int *minimum,
                    int *natural,
                    int *minimum_baseline,
                    int *natural_baseline)
{
  TbColumns *self = TB_COLUMNS (widget);

  *minimum = *natural = 0;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      Widths widths = measure_columns (self);

      *minimum = MAX (MAX (widths.least[START], widths.least[END]), widths.least[CENTER]);
      *natural = MAX (*minimum, natural_width (self));
      return;
    }
  for (int i = 0; i < N_COLUMNS; i++)
    {
      int least = 0, wish = 0;

      if (self->column[i] != NULL)
        gtk_widget_measure (self->column[i], orientation, -1, &least, &wish, NULL, NULL);
      *minimum = MAX (*minimum, least);
      *natural = MAX (*natural, wish);
    }
}

static gboolean
tell_compact (gpointer data)
{
  TbColumns *self = data;

  self->notify_idle = 0;
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_COMPACT]);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_SINGLE]);
  return G_SOURCE_REMOVE;
}

static void
set_compact (TbColumns *self, gboolean compact, gboolean single)
{
  if (self->compact == compact && self->single == single)
    return;
  self->compact = compact;
  self->single = single;
  /* Whoever listens may ask for another layout, which is not allowed in the middle of one. */
  if (self->notify_idle == 0)
    self->notify_idle = g_idle_add (tell_compact, self);
}

static void
place (TbColumns *self, int which, int x, int width, int height)
{
  GtkWidget *child = self->column[which];
  GtkAllocation allocation = { x, 0, width, height };

  if (child == NULL)
    return;
  gtk_widget_set_child_visible (child, width > 0);
  if (width <= 0)
    return;
  if (gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL)
    allocation.x = gtk_widget_get_width (GTK_WIDGET (self)) - x - width;
  gtk_widget_size_allocate (child, &allocation, -1);
}

static void
place_compact (TbColumns *self, const Widths *widths, int width, int height)
{
  int seen = self->page == TB_COLUMNS_END ? END : START;
  int hidden = seen == START ? END : START;
  int least = widths->least[seen];
  int side = CLAMP ((int) (width * share_of[END]), least, MAX (least, width - widths->least[CENTER]));

  place (self, hidden, 0, 0, height);
  place (self, seen, seen == START ? 0 : width - side, side, height);
  place (self, CENTER, seen == START ? side : 0, width - side, height);
}

static void
place_single (TbColumns *self, int width, int height)
{
  static const int column_of[]
      = { [TB_COLUMNS_START] = START, [TB_COLUMNS_END] = END, [TB_COLUMNS_CENTER] = CENTER };

  for (int i = 0; i < N_COLUMNS; i++)
    place (self, i, 0, i == column_of[self->page] ? width : 0, height);
}

static void
place_wide (TbColumns *self, const Widths *widths, int width, int height)
{
  int start = MAX (widths->least[START], (int) (width * share_of[START]));
  int end = MAX (widths->least[END], (int) (width * share_of[END]));
  int spare = width - widths->least[CENTER] - start - end;

  /* The centre comes first when there is too little for all. */
  if (spare < 0)
    {
      int from_end = MIN (-spare, end - widths->least[END]);

      end -= from_end;
      start = MAX (widths->least[START], start + spare + from_end);
    }
  place (self, START, 0, start, height);
  place (self, CENTER, start, width - start - end, height);
  place (self, END, width - end, end, height);
}

static void
tb_columns_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  TbColumns *self = TB_COLUMNS (widget);
  Widths widths = measure_columns (self);
  int two = MAX (widths.least[START], widths.least[END]) + widths.least[CENTER];
  int three = widths.least[START] + widths.least[CENTER] + widths.least[END];

  set_compact (self, width < three, width < two);
  if (self->single)
    place_single (self, width, height);
  else if (self->compact)
    place_compact (self, &widths, width, height);
  else
    place_wide (self, &widths, width, height);
}

gboolean
tb_columns_get_compact (TbColumns *self)
{
  return self->compact;
}

gboolean
tb_columns_get_single (TbColumns *self)
{
  return self->single;
}

TbColumnsPage
tb_columns_get_page (TbColumns *self)
{
  return self->page;
}

void
tb_columns_set_page (TbColumns *self, TbColumnsPage page)
{
  if (self->page == page)
    return;
  self->page = page;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_PAGE]);
}

static void
set_column (TbColumns *self, int which, GtkWidget *child)
{
  g_clear_pointer (&self->column[which], gtk_widget_unparent);
  self->column[which] = child;
  if (child == NULL)
    return;
  /* In reading order, which is the order of the Tab key. */
  gtk_widget_insert_before (child, GTK_WIDGET (self), which < END ? self->column[which + 1] : NULL);
}

static void
tb_columns_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  TbColumns *self = TB_COLUMNS (object);

  if (id == PROP_COMPACT)
    g_value_set_boolean (value, self->compact);
  else if (id == PROP_SINGLE)
    g_value_set_boolean (value, self->single);
  else if (id == PROP_PAGE)
    g_value_set_enum (value, self->page);
  else
    g_value_set_object (value, self->column[id - PROP_START]);
}

static void
tb_columns_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  TbColumns *self = TB_COLUMNS (object);

  if (id == PROP_PAGE)
    tb_columns_set_page (self, g_value_get_enum (value));
  else
    set_column (self, (int) id - PROP_START, g_value_get_object (value));
}

static void
tb_columns_dispose (GObject *object)
{
  TbColumns *self = TB_COLUMNS (object);

  g_clear_handle_id (&self->notify_idle, g_source_remove);
  for (int i = 0; i < N_COLUMNS; i++)
    g_clear_pointer (&self->column[i], gtk_widget_unparent);
  G_OBJECT_CLASS (tb_columns_parent_class)->dispose (object);
}

static void
tb_columns_class_init (TbColumnsClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags both = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->dispose = tb_columns_dispose;
  object_class->get_property = tb_columns_get_property;
  object_class->set_property = tb_columns_set_property;
  widget_class->measure = tb_columns_measure;
  widget_class->size_allocate = tb_columns_size_allocate;
  properties[PROP_START] = g_param_spec_object ("start", NULL, NULL, GTK_TYPE_WIDGET, both);
  properties[PROP_CENTER] = g_param_spec_object ("center", NULL, NULL, GTK_TYPE_WIDGET, both);
  properties[PROP_END] = g_param_spec_object ("end", NULL, NULL, GTK_TYPE_WIDGET, both);
  properties[PROP_COMPACT]
      = g_param_spec_boolean ("compact", NULL, NULL, FALSE, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  properties[PROP_SINGLE]
      = g_param_spec_boolean ("single", NULL, NULL, FALSE, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  properties[PROP_PAGE]
      = g_param_spec_enum ("page", NULL, NULL, TB_TYPE_COLUMNS_PAGE, TB_COLUMNS_START, both);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
tb_columns_init (TbColumns *self)
{
}
