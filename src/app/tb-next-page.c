/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-next-page.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-children.h"
#include "tb-next-balls.h"
#include "tb-option-row.h"
#include "tb-spin.h"
#include "tb-unit-pair.h"

struct _TbNextPage
{
  GtkWidget parent_instance;

  /* Template */
  GtkDropDown *wishes;
  GtkSpinButton *amount;
  GtkLabel *unit;
  GtkWidget *line_switch;
  GtkToggleButton *same_line;
  GtkToggleButton *pocket_line;
  GtkLabel *wish_text;
  GtkLabel *turn_text;
  GtkSpinner *spinner;
  GtkWidget *smallest_title;
  GtkBox *smallest;
  GtkWidget *group_title[TB_N_KNOB_GROUPS];
  GtkBox *group[TB_N_KNOB_GROUPS];
  GtkLabel *nothing;

  TbSession *session;
  double amounts[TB_N_WISHES]; /* last wished, in the wish's own unit */
  TbSetup *start;              /* what the options are of; NULL before the first */
  GCancellable *cancellable;   /* of the search under way; else NULL */
  gboolean stale;              /* to be searched when the page is seen */
  gboolean setting_up;         /* the amount changes by us */
  gboolean asked;              /* somebody has wished here, or tried something */
};

G_DEFINE_FINAL_TYPE (TbNextPage, tb_next_page, GTK_TYPE_WIDGET)

/* A search holds the page until it has ended. */
typedef struct Search
{
  TbNextPage *page;
  GCancellable *cancellable;
} Search;

static gboolean
is_metric (TbNextPage *self)
{
  return tb_session_get_units (self->session) == TB_UNITS_METRIC;
}

static TbWishKind
chosen_kind (TbNextPage *self)
{
  guint selected = gtk_drop_down_get_selected (self->wishes);

  return selected < TB_N_WISHES ? (TbWishKind) selected : TB_WISH_BOARDS;
}

/* How the amount is shown. */
static TbToldUnit
told_unit (TbNextPage *self)
{
  return tb_told_unit (tb_wish_info (chosen_kind (self))->unit, 1, is_metric (self));
}

static TbWish
chosen_wish (TbNextPage *self)
{
  return (TbWish){ .kind = chosen_kind (self),
                   .amount = self->amounts[chosen_kind (self)],
                   .reaim = gtk_toggle_button_get_active (self->pocket_line) };
}

static void
clear_rows (GtkBox *box, GtkWidget *title)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))) != NULL)
    gtk_box_remove (box, child);
  gtk_widget_set_visible (title, FALSE);
}

static void
clear_options (TbNextPage *self)
{
  clear_rows (self->smallest, self->smallest_title);
  for (int group = 0; group < TB_N_KNOB_GROUPS; group++)
    clear_rows (self->group[group], self->group_title[group]);
  gtk_widget_set_visible (GTK_WIDGET (self->nothing), FALSE);
}

/* For the pages that go on from here: what was asked, once somebody has. */
static void
tell_wish (TbNextPage *self)
{
  TbWish wish = chosen_wish (self);

  if (self->asked)
    tb_session_set_wish (self->session, &wish, self->start);
}

static void
on_chosen (TbNextPage *self, TbOptionRow *row)
{
  self->asked = TRUE;
  tell_wish (self);
  tb_session_set_after (self->session, tb_option_row_get_option (row)->setup);
}

/* The row after which a new one stands; NULL at the beginning. */
static GtkWidget *
place_for (TbNextPage *self, TbNextOption *option)
{
  GtkWidget *before = NULL;

  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->group[option->knob->group]));
       row != NULL; row = gtk_widget_get_next_sibling (row))
    if (tb_next_option_compare (tb_option_row_get_option (TB_OPTION_ROW (row)), option) < 0)
      before = row;
  return before;
}

static GtkWidget *
row_new (TbNextPage *self, TbNext *next, TbNextOption *option)
{
  GtkWidget *row = tb_option_row_new (next, option, is_metric (self));

  g_signal_connect_object (row, "chosen", G_CALLBACK (on_chosen), self, G_CONNECT_SWAPPED);
  return row;
}

static void
add_option (TbNextPage *self, TbNext *next, TbNextOption *option)
{
  GtkWidget *row = row_new (self, next, option);
  TbKnobGroup group = option->knob->group;

  gtk_box_insert_child_after (self->group[group], row, place_for (self, option));
  gtk_widget_set_visible (self->group_title[group], TRUE);
}

static void
show_text (GtkLabel *label, char *text)
{
  gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL);
  g_free (text);
}

static void
on_option (TbNext *next, TbNextOption *option, gpointer data)
{
  Search *search = data;

  /* Texts of the wish come with the first option, so that the page does not wait for the last. */
  if (gtk_widget_get_first_child (GTK_WIDGET (search->page->group[option->knob->group])) == NULL)
    show_text (search->page->wish_text, tb_next_wish_text (next, is_metric (search->page)));
  add_option (search->page, next, option);
}

static char *
nothing_text (const TbNext *next)
{
  if (next->status != TB_OK || next->options->len > 0)
    return NULL;
  return g_strdup (next->met
                       ? _ ("That is so already. Wish for something else above.")
                       : _ ("Nothing within the usual limits comes nearer to this wish. Ask for less, or "
                            "change ball, surface or line on the left and look again."));
}

/* What is asked first: the easiest of all. It is told once more above the groups, unless it is on top there
 * already. */
static void
show_smallest (TbNextPage *self, TbNext *next)
{
  TbNextOption *smallest = (TbNextOption *) tb_next_smallest (next);

  if (smallest == NULL || smallest == g_ptr_array_index (next->options, 0))
    return;
  gtk_box_append (self->smallest, row_new (self, next, smallest));
  gtk_widget_set_visible (self->smallest_title, TRUE);
}

static void
search_end (Search *search, TbNext *next)
{
  TbNextPage *self = search->page;

  g_clear_object (&self->cancellable);
  gtk_spinner_stop (self->spinner);
  show_text (self->wish_text, tb_next_wish_text (next, is_metric (self)));
  show_text (self->turn_text, tb_next_turn_text (next, is_metric (self)));
  show_text (self->nothing, nothing_text (next));
  show_smallest (self, next);
}

static void
on_next (GObject *source, GAsyncResult *result, gpointer data)
{
  Search *search = data;
  g_autoptr (TbNext) next = tb_next_find_finish (result, NULL);

  if (next != NULL && search->page->session != NULL && search->page->cancellable == search->cancellable)
    search_end (search, next);
  g_object_unref (search->page);
  g_object_unref (search->cancellable);
  g_free (search);
}

static void
cancel (TbNextPage *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  gtk_spinner_stop (self->spinner);
}

static void
begin_search (TbNextPage *self)
{
  TbWish wish = chosen_wish (self);
  g_autoptr (GArray) balls = tb_next_balls (tb_session_get_library (self->session), self->start);
  Search *search = g_new0 (Search, 1);

  self->stale = FALSE;
  self->cancellable = g_cancellable_new ();
  search->page = g_object_ref (self);
  search->cancellable = g_object_ref (self->cancellable);
  gtk_spinner_start (self->spinner);
  tb_next_find_async (&(TbNextQuestion){ .start = self->start,
                                         .wish = &wish,
                                         .balls = (const TbNextBall *) (gconstpointer) balls->data,
                                         .n_balls = balls->len,
                                         .progress = on_option },
                      self->cancellable, on_next, search);
}

/* Another wish, or another throw: what is under way is of no use any more. */
static void
update (TbNextPage *self)
{
  cancel (self);
  self->stale = TRUE;
  if (self->session != NULL)
    tell_wish (self);
  if (self->session == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  clear_options (self);
  show_text (self->turn_text, NULL);
  begin_search (self);
}

/* The options stay while one of them is tried: they are of the throw that was there when the wish was made.
 */
static void
on_session_changed (TbNextPage *self)
{
  TbSetup *after = tb_session_get_setup (self->session, TB_SIDE_AFTER);
  gboolean tried = FALSE;

  for (int group = 0; group < TB_N_KNOB_GROUPS && !tried; group++)
    for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->group[group])); row != NULL;
         row = gtk_widget_get_next_sibling (row))
      tried = tried || tb_option_row_get_option (TB_OPTION_ROW (row))->setup == after;
  if (tried || (self->start != NULL && tb_setup_equal (self->start, after)))
    return;
  g_clear_pointer (&self->start, tb_setup_unref);
  self->start = tb_setup_ref (after);
  update (self);
}

static void
tb_next_page_map (GtkWidget *widget)
{
  TbNextPage *self = TB_NEXT_PAGE (widget);

  GTK_WIDGET_CLASS (tb_next_page_parent_class)->map (widget);
  if (self->stale)
    update (self);
}

gboolean
tb_next_page_is_settled (TbNextPage *self)
{
  return !self->stale && self->cancellable == NULL;
}

/* The amount's range is the wish's; each wish remembers what was asked last. */
static void
show_amount (TbNextPage *self)
{
  TbWishKind kind = chosen_kind (self);
  const TbWishInfo *info = tb_wish_info (kind);
  gboolean has_amount = info->min < info->max;
  TbToldUnit told = told_unit (self);

  self->setting_up = TRUE;
  if (has_amount)
    {
      gtk_spin_button_set_digits (self->amount, (guint) told.digits);
      gtk_spin_button_set_range (self->amount, told.factor * info->min, told.factor * info->max);
      gtk_spin_button_set_increments (self->amount, told.factor * info->step, 10 * told.factor * info->step);
      gtk_spin_button_set_value (self->amount, told.factor * self->amounts[kind]);
    }
  gtk_label_set_text (self->unit, g_str_equal (info->unit, "board") ? _ ("boards") : told.unit);
  gtk_widget_set_visible (GTK_WIDGET (self->amount), has_amount);
  gtk_widget_set_visible (GTK_WIDGET (self->unit), has_amount);
  gtk_widget_set_visible (self->line_switch, info->can_reaim);
  self->setting_up = FALSE;
}

static void
on_units (TbNextPage *self)
{
  show_amount (self);
  update (self);
}

static void
on_wish (TbNextPage *self)
{
  if (self->session == NULL)
    return;
  self->asked = TRUE;
  on_units (self);
}

static void
on_amount (TbNextPage *self)
{
  if (self->setting_up || self->session == NULL)
    return;
  self->asked = TRUE;
  self->amounts[chosen_kind (self)] = gtk_spin_button_get_value (self->amount) / told_unit (self).factor;
  update (self);
}

static void
on_line (TbNextPage *self, GtkToggleButton *button)
{
  if (!gtk_toggle_button_get_active (button) || self->session == NULL)
    return;
  self->asked = TRUE;
  update (self);
}

void
tb_next_page_set_wish (TbNextPage *self, const TbWish *wish)
{
  self->amounts[wish->kind] = wish->amount;
  gtk_toggle_button_set_active (wish->reaim ? self->pocket_line : self->same_line, TRUE);
  if (chosen_kind (self) == wish->kind)
    on_wish (self);
  else
    gtk_drop_down_set_selected (self->wishes, wish->kind);
}

void
tb_next_page_set_session (TbNextPage *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  self->start = tb_setup_ref (tb_session_get_setup (session, TB_SIDE_AFTER));
  g_signal_connect_object (session, "changed", G_CALLBACK (on_session_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "notify::units", G_CALLBACK (on_units), self, G_CONNECT_SWAPPED);
  show_amount (self);
  update (self);
}

static void
tb_next_page_dispose (GObject *object)
{
  TbNextPage *self = TB_NEXT_PAGE (object);

  if (self->session != NULL)
    cancel (self);
  g_clear_object (&self->session);
  g_clear_pointer (&self->start, tb_setup_unref);
  tb_unparent_children (GTK_WIDGET (self));
  G_OBJECT_CLASS (tb_next_page_parent_class)->dispose (object);
}

#define BIND_PLACE(name, member) \
  gtk_widget_class_bind_template_child_full (widget_class, name, FALSE, G_STRUCT_OFFSET (TbNextPage, member))

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-next-page.ui");
  gtk_widget_class_bind_template_child (widget_class, TbNextPage, wishes);
  gtk_widget_class_bind_template_child (widget_class, TbNextPage, amount);
  gtk_widget_class_bind_template_child (widget_class, TbNextPage, unit);
  gtk_widget_class_bind_template_child (widget_class, TbNextPage, line_switch);
  gtk_widget_class_bind_template_child (widget_class, TbNextPage, same_line);
  gtk_widget_class_bind_template_child (widget_class, TbNextPage, pocket_line);
  gtk_widget_class_bind_template_child (widget_class, TbNextPage, wish_text);
  gtk_widget_class_bind_template_child (widget_class, TbNextPage, turn_text);
  gtk_widget_class_bind_template_child (widget_class, TbNextPage, spinner);
  gtk_widget_class_bind_template_child (widget_class, TbNextPage, nothing);
  gtk_widget_class_bind_template_child (widget_class, TbNextPage, smallest_title);
  gtk_widget_class_bind_template_child (widget_class, TbNextPage, smallest);
  BIND_PLACE ("delivery_title", group_title[TB_KNOB_DELIVERY]);
  BIND_PLACE ("line_title", group_title[TB_KNOB_LINE]);
  BIND_PLACE ("ball_title", group_title[TB_KNOB_BALL]);
  BIND_PLACE ("delivery", group[TB_KNOB_DELIVERY]);
  BIND_PLACE ("line", group[TB_KNOB_LINE]);
  BIND_PLACE ("ball", group[TB_KNOB_BALL]);
  gtk_widget_class_bind_template_callback (widget_class, on_wish);
  gtk_widget_class_bind_template_callback (widget_class, on_amount);
  gtk_widget_class_bind_template_callback (widget_class, on_line);
}

static void
tb_next_page_class_init (TbNextPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_next_page_dispose;
  widget_class->map = tb_next_page_map;
  g_type_ensure (TB_TYPE_OPTION_ROW);
  bind_template (widget_class);
}

static void
tb_next_page_init (TbNextPage *self)
{
  const char *labels[TB_N_WISHES + 1] = { NULL };
  g_autoptr (GtkStringList) model = NULL;

  gtk_widget_init_template (GTK_WIDGET (self));
  tb_spin_take_either_mark (self->amount);
  for (int kind = 0; kind < TB_N_WISHES; kind++)
    {
      labels[kind] = _ (tb_wish_info (kind)->label);
      self->amounts[kind] = tb_wish_info (kind)->standard;
    }
  model = gtk_string_list_new (labels);
  gtk_drop_down_set_model (self->wishes, G_LIST_MODEL (model));
  tb_accessible_set_drop_down_name (self->wishes, _ ("Wish"));
  tb_accessible_set_name (GTK_WIDGET (self->amount), _ ("How much"));
}

GtkWidget *
tb_next_page_new (void)
{
  return g_object_new (TB_TYPE_NEXT_PAGE, NULL);
}
