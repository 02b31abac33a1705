/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-bag-page.h"

#include <glib/gi18n-lib.h>

#include "tb-bag-table.h"
#include "tb-bag-view.h"
#include "tb-bag.h"
#include "tb-drawn-picture.h"
#include "tb-follower.h"

struct _TbBagPage
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *box;
  TbDrawnPicture *picture;
  GtkLabel *words;
  GtkToggleButton *same_line;
  GtkColumnView *table;

  TbSession *session;
  TbFollower *follower;
  TbBag *bag; /* NULL until it is there */
  TbBagTable rows;
};

G_DEFINE_FINAL_TYPE (TbBagPage, tb_bag_page, GTK_TYPE_WIDGET)

/* The measure that the sentence is about. */
#define SAME_LINE_MEASURE "board_at_pins"
#define POCKET_LINE_MEASURE TB_BAG_TABLE_ANGLE

static TbBallLine
line_of (TbBagPage *self)
{
  return gtk_toggle_button_get_active (self->same_line) ? TB_BALL_SAME_LINE : TB_BALL_POCKET_LINE;
}

/* Picture. */

static void
draw_bag (cairo_t *cr, double width, double height, const TbTheme *theme, gpointer page)
{
  TbBagPage *self = page;
  TbSetup *setup = tb_session_get_setup (self->session, TB_SIDE_AFTER);
  guint count = self->bag != NULL ? self->bag->entries->len : 0;
  g_autofree TbBagPath *paths = g_new0 (TbBagPath, MAX (count, 1));
  TbBallLine line = line_of (self);
  TbBagScene scene = { .theme = *theme,
                       .oil = &setup->pattern->oil,
                       .oil_scale = setup->shot.lane.pattern_scale,
                       .mirrored = setup->shot.delivery.hand == TB_HAND_LEFT,
                       .pocket_low = setup->shot.assumed.pocket_low,
                       .pocket_high = setup->shot.assumed.pocket_high,
                       .at_arrows = line == TB_BALL_POCKET_LINE,
                       .paths = paths,
                       .n_paths = count,
                       .chosen = tb_bag_table_chosen (&self->rows) };

  if (setup->shot.lane.oil != NULL)
    scene.oil = setup->shot.lane.oil;
  for (guint i = 0; i < count; i++)
    {
      const TbRun *run = tb_bag_entry (self->bag, i)->run[line];

      paths[i].label = tb_bag_entry (self->bag, i)->name;
      paths[i].path = run != NULL && run->status == TB_OK ? &run->path : NULL;
    }
  tb_bag_view_draw (cr, width, height, &scene);
}

static void
show_words (TbBagPage *self)
{
  TbBallLine line = line_of (self);
  const TbMeasureInfo *measure
      = tb_measure_find (line == TB_BALL_SAME_LINE ? SAME_LINE_MEASURE : POCKET_LINE_MEASURE);
  g_autofree char *statement = NULL;

  if (self->bag == NULL)
    return;
  statement
      = tb_bag_statement (self->bag, line, measure, tb_session_get_units (self->session) == TB_UNITS_METRIC);
  gtk_label_set_text (self->words, statement);
  tb_drawn_picture_refresh (self->picture, statement);
}

static void
show_table (TbBagPage *self)
{
  tb_bag_table_show (&self->rows, self->bag, line_of (self), tb_session_get_units (self->session));
}

/* Throwing. */

typedef struct Order
{
  TbSetup *setup;
  GPtrArray *balls;
} Order;

/* Every ball of the library, drilled for the bowler's PAP as the present one is; the present one too, if the
 * library does not have it. */
static gpointer
prepare (GtkWidget *page)
{
  TbBagPage *self = TB_BAG_PAGE (page);
  GListModel *entries = tb_library_get_entries (tb_session_get_library (self->session), TB_DOCUMENT_BALL);
  Order *order = g_new0 (Order, 1);
  const TbBall *present;
  gboolean has_present = FALSE;

  order->setup = tb_setup_ref (tb_session_get_setup (self->session, TB_SIDE_AFTER));
  order->balls = g_ptr_array_new_with_free_func ((GDestroyNotify)tb_bag_ball_free);
  present = &order->setup->shot.ball;
  for (guint i = 0; i < g_list_model_get_n_items (entries); i++)
    {
      g_autoptr (TbLibraryEntry) entry = g_list_model_get_item (entries, i);
      const char *id = tb_library_entry_get_id (entry);
      TbBall ball = tb_library_entry_get_ball (entry)->ball;
      gboolean same = g_strcmp0 (id, order->setup->ball_id) == 0;

      ball.pap_over = present->pap_over;
      ball.pap_up = present->pap_up;
      has_present = has_present || same;
      g_ptr_array_add (order->balls,
                       tb_bag_ball_new (id, tb_library_entry_get_name (entry), same ? present : &ball));
    }
  if (!has_present)
    g_ptr_array_add (order->balls, tb_bag_ball_new (NULL, _ ("of this study"), present));
  return order;
}

static void
free_order (gpointer data)
{
  Order *order = data;

  tb_setup_unref (order->setup);
  g_ptr_array_unref (order->balls);
  g_free (order);
}

static gpointer
compute (gpointer data, GCancellable *cancellable)
{
  Order *order = data;

  return tb_bag_new (order->setup, order->balls, cancellable);
}

static void
free_bag (gpointer bag)
{
  tb_bag_free (bag);
}

static void
show_bag (GtkWidget *page, gpointer result)
{
  TbBagPage *self = TB_BAG_PAGE (page);

  tb_bag_table_show (&self->rows, NULL, line_of (self), tb_session_get_units (self->session));
  g_clear_pointer (&self->bag, tb_bag_free);
  self->bag = result;
  show_table (self);
  show_words (self);
}

static const TbFollowerWork work = { prepare, free_order, compute, free_bag, show_bag };

static void
on_line_changed (TbBagPage *self)
{
  if (self->session == NULL)
    return;
  show_table (self);
  show_words (self);
}

static void
take_ball (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbBagPage *self = TB_BAG_PAGE (widget);
  guint index = tb_bag_table_chosen (&self->rows);
  const TbRun *run;

  if (self->bag == NULL || index >= self->bag->entries->len)
    return;
  run = tb_bag_entry (self->bag, index)->run[line_of (self)];
  if (run != NULL)
    tb_session_set_after (self->session, run->setup);
}

static void
on_activate (TbBagPage *self, guint position)
{
  gtk_single_selection_set_selected (self->rows.selection, position);
  gtk_widget_activate_action (GTK_WIDGET (self), "bag.take", NULL);
}

gboolean
tb_bag_page_is_busy (TbBagPage *self)
{
  return tb_follower_is_busy (self->follower);
}

const char *
tb_bag_page_get_words (TbBagPage *self)
{
  return gtk_label_get_text (self->words);
}

GtkColumnView *
tb_bag_page_get_table (TbBagPage *self)
{
  return self->table;
}

static void
on_library_changed (TbBagPage *self)
{
  tb_follower_again (self->follower);
}

void
tb_bag_page_set_session (TbBagPage *self, TbSession *session)
{
  GListModel *entries = tb_library_get_entries (tb_session_get_library (session), TB_DOCUMENT_BALL);

  g_return_if_fail (self->session == NULL);
  self->session = g_object_ref (session);
  tb_bag_table_init (&self->rows, self->table);
  g_signal_connect_object (self->rows.selection, "selection-changed", G_CALLBACK (show_words), self,
                           G_CONNECT_SWAPPED);
  tb_picture_set_session (TB_PICTURE (self->picture), session);
  self->follower = tb_follower_new (GTK_WIDGET (self), session, &work);
  g_signal_connect_object (entries, "items-changed", G_CALLBACK (on_library_changed), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (on_line_changed), self, G_CONNECT_SWAPPED);
}

static void
tb_bag_page_dispose (GObject *object)
{
  TbBagPage *self = TB_BAG_PAGE (object);

  g_clear_pointer (&self->follower, tb_follower_free);
  tb_bag_table_clear (&self->rows);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_pointer (&self->bag, tb_bag_free);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_bag_page_parent_class)->dispose (object);
}

static void
tb_bag_page_class_init (TbBagPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_bag_page_dispose;
  g_type_ensure (TB_TYPE_DRAWN_PICTURE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-bag-page.ui");
  gtk_widget_class_bind_template_child (widget_class, TbBagPage, box);
  gtk_widget_class_bind_template_child (widget_class, TbBagPage, picture);
  gtk_widget_class_bind_template_child (widget_class, TbBagPage, words);
  gtk_widget_class_bind_template_child (widget_class, TbBagPage, same_line);
  gtk_widget_class_bind_template_child (widget_class, TbBagPage, table);
  gtk_widget_class_bind_template_callback (widget_class, on_line_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_activate);
  gtk_widget_class_install_action (widget_class, "bag.take", NULL, take_ball);
}

static void
tb_bag_page_init (TbBagPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  tb_drawn_picture_set_draw (self->picture, _ ("The bag on the lane"), draw_bag, self);
}
