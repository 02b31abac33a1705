/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-results-panel.h"

#include "tb-ball-picture.h"
#include "tb-compare-table.h"
#include "tb-loft-picture.h"
#include "tb-next-page.h"
#include "tb-verdict.h"
#include "tb-why-page.h"

struct _TbResultsPanel
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *scroller;
  TbBallPicture *ball;
  TbLoftPicture *loft;
  GtkWidget *switcher;
  GtkStack *stack;
  TbVerdict *verdict;
  TbCompareTable *table;
  TbWhyPage *why;
  TbNextPage *next;
};

G_DEFINE_FINAL_TYPE (TbResultsPanel, tb_results_panel, GTK_TYPE_WIDGET)

void
tb_results_panel_set_session (TbResultsPanel *self, TbSession *session)
{
  tb_picture_set_session (TB_PICTURE (self->ball), session);
  tb_picture_set_session (TB_PICTURE (self->loft), session);
  tb_verdict_set_session (self->verdict, session);
  tb_compare_table_set_session (self->table, session);
  tb_why_page_set_session (self->why, session);
  tb_next_page_set_session (self->next, session);
}

void
tb_results_panel_set_ball_eye (TbResultsPanel *self, TbBallEye eye)
{
  tb_ball_picture_set_eye (self->ball, eye);
}

void
tb_results_panel_add_page (TbResultsPanel *self, GtkWidget *page, const char *name, const char *label)
{
  gtk_stack_add_titled (self->stack, page, name, label);
  gtk_widget_set_visible (self->switcher, TRUE);
}

void
tb_results_panel_show_page (TbResultsPanel *self, const char *name)
{
  gtk_stack_set_visible_child_name (self->stack, name);
}

const char *
tb_results_panel_get_page (TbResultsPanel *self)
{
  return gtk_stack_get_visible_child_name (self->stack);
}

GtkWidget *
tb_results_panel_get_stack (TbResultsPanel *self)
{
  return GTK_WIDGET (self->stack);
}

/* The switcher's buttons are in the order of the pages. */
GtkWidget *
tb_results_panel_get_tab (TbResultsPanel *self, const char *name)
{
  GtkWidget *child = gtk_stack_get_child_by_name (self->stack, name);
  GtkWidget *tab = gtk_widget_get_first_child (self->switcher);

  if (child == NULL)
    return NULL;
  for (GtkWidget *page = gtk_widget_get_first_child (GTK_WIDGET (self->stack)); page != NULL && page != child;
       page = gtk_widget_get_next_sibling (page))
    tab = tab != NULL ? gtk_widget_get_next_sibling (tab) : NULL;
  return tab;
}

static void
tb_results_panel_dispose (GObject *object)
{
  g_clear_pointer (&TB_RESULTS_PANEL (object)->scroller, gtk_widget_unparent);
  G_OBJECT_CLASS (tb_results_panel_parent_class)->dispose (object);
}

static void
tb_results_panel_class_init (TbResultsPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_results_panel_dispose;
  g_type_ensure (TB_TYPE_BALL_PICTURE);
  g_type_ensure (TB_TYPE_LOFT_PICTURE);
  g_type_ensure (TB_TYPE_VERDICT);
  g_type_ensure (TB_TYPE_COMPARE_TABLE);
  g_type_ensure (TB_TYPE_WHY_PAGE);
  g_type_ensure (TB_TYPE_NEXT_PAGE);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-results-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, TbResultsPanel, scroller);
  gtk_widget_class_bind_template_child (widget_class, TbResultsPanel, ball);
  gtk_widget_class_bind_template_child (widget_class, TbResultsPanel, loft);
  gtk_widget_class_bind_template_child (widget_class, TbResultsPanel, switcher);
  gtk_widget_class_bind_template_child (widget_class, TbResultsPanel, stack);
  gtk_widget_class_bind_template_child (widget_class, TbResultsPanel, verdict);
  gtk_widget_class_bind_template_child (widget_class, TbResultsPanel, table);
  gtk_widget_class_bind_template_child (widget_class, TbResultsPanel, why);
  gtk_widget_class_bind_template_child (widget_class, TbResultsPanel, next);
}

static void
tb_results_panel_init (TbResultsPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
