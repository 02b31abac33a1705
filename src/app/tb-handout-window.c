/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-handout-window.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-atomic-file.h"
#include "tb-describe.h"
#include "tb-handout-picture.h"
#include "tb-next-balls.h"
#include "tb-style.h"
#include "tb-weak.h"

/* What is typed shows on the page once the typing rests so long, ms: the page takes a while to draw. */
#define TYPING_REST 200

struct _TbHandoutWindow
{
  GtkWindow parent_instance;

  /* Template */
  TbHandoutPicture *picture;
  GtkEntry *bowler;
  GtkDropDown *paper;
  GtkTextView *note;
  GtkSpinner *spinner;
  GtkLabel *wish_text;
  GtkBox *options_box;
  GtkLabel *message;

  TbSession *session;
  TbHandout handout;             /* what it points to is owned */
  GCancellable *cancellable;     /* of what is being worked out; else NULL */
  GtkFileChooserNative *chooser; /* open at the moment; else NULL */
  guint typing;                  /* timeout after what was typed; else 0 */
};

G_DEFINE_FINAL_TYPE (TbHandoutWindow, tb_handout_window, GTK_TYPE_WINDOW)

static void
tell (TbHandoutWindow *self, const char *sentence)
{
  gtk_label_set_text (self->message, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message), sentence != NULL);
}

/* What is on the page. */

static void
take_text (const char **place, char *text)
{
  g_free ((char *) *place);
  *place = text;
}

static char *
note_of (TbHandoutWindow *self)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (self->note);
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return g_strstrip (gtk_text_buffer_get_text (buffer, &start, &end, FALSE));
}

/* The options whose boxes are checked. */
static GPtrArray *
checked_options (TbHandoutWindow *self)
{
  GPtrArray *options = g_ptr_array_new_with_free_func ((GDestroyNotify) tb_next_option_unref);

  for (GtkWidget *box = gtk_widget_get_first_child (GTK_WIDGET (self->options_box)); box != NULL;
       box = gtk_widget_get_next_sibling (box))
    {
      TbNextOption *option = g_object_get_data (G_OBJECT (box), "option");

      if (option != NULL && gtk_check_button_get_active (GTK_CHECK_BUTTON (box)))
        g_ptr_array_add (options, tb_next_option_ref (option));
    }
  return options;
}

static void
show_page (TbHandoutWindow *self)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  take_text (&self->handout.bowler, g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->bowler))));
  take_text (&self->handout.date, g_date_time_format (now, "%x"));
  take_text (&self->handout.note, note_of (self));
  self->handout.paper
      = gtk_drop_down_get_selected (self->paper) == TB_PAPER_LETTER ? TB_PAPER_LETTER : TB_PAPER_A4;
  if (self->handout.options != NULL)
    g_ptr_array_unref ((GPtrArray *) self->handout.options);
  self->handout.options = checked_options (self);
  tb_handout_picture_refresh (self->picture);
}

static gboolean
on_typing_rests (gpointer data)
{
  TbHandoutWindow *self = data;

  self->typing = 0;
  show_page (self);
  return G_SOURCE_REMOVE;
}

static void
on_typed (TbHandoutWindow *self)
{
  if (self->session == NULL)
    return;
  g_clear_handle_id (&self->typing, g_source_remove);
  self->typing = g_timeout_add (TYPING_REST, on_typing_rests, self);
}

static void
on_choice (TbHandoutWindow *self)
{
  if (self->session != NULL)
    show_page (self);
}

/* What else to try. */

static gboolean
is_among (const GPtrArray *best, const TbNextOption *option)
{
  return g_ptr_array_find ((GPtrArray *) best, option, NULL);
}

static void
add_option (TbHandoutWindow *self, TbNextOption *option, gboolean checked)
{
  g_autofree char *change = tb_next_change_text (option, self->handout.facts->metric);
  /* Translators: a toolbox, and what to change: "Line: Feet 3.0 boards to the left" */
  g_autofree char *text
      = g_strdup_printf (_ ("%s: %s"), _ (tb_knob_group_label (option->knob->group)), change);
  GtkWidget *label = gtk_label_new (text), *box = gtk_check_button_new ();

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (box), checked);
  gtk_check_button_set_child (GTK_CHECK_BUTTON (box), label);
  tb_accessible_set_name (box, text);
  g_object_set_data_full (G_OBJECT (box), "option", tb_next_option_ref (option),
                          (GDestroyNotify) tb_next_option_unref);
  g_signal_connect_object (box, "toggled", G_CALLBACK (on_choice), self, G_CONNECT_SWAPPED);
  gtk_box_append (self->options_box, box);
}

static void
clear_options (TbHandoutWindow *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->options_box))) != NULL)
    gtk_box_remove (self->options_box, child);
  gtk_label_set_text (self->wish_text, "");
}

static void
show_options (TbHandoutWindow *self)
{
  const TbNext *next = self->handout.next;
  g_autoptr (GPtrArray) best = tb_handout_best_options (next);
  g_autofree char *wish = tb_next_wish_text (next, self->handout.facts->metric);
  const TbSetup *after = self->handout.facts->run[TB_SIDE_AFTER]->setup;

  clear_options (self);
  gtk_label_set_text (self->wish_text, wish);
  for (guint i = 0; i < next->options->len; i++)
    {
      TbNextOption *option = g_ptr_array_index (next->options, i);

      /* What is practised anyway is nothing else to try. */
      if (option->reach != TB_REACH_NOT && !tb_setup_equal (option->setup, after))
        add_option (self, option, is_among (best, option));
    }
}

/* Working it out. */

static void
enable (TbHandoutWindow *self, gboolean enabled)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "handout.save", enabled);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "handout.print", enabled);
}

static void
take_facts (TbHandoutWindow *self, TbHandoutFacts *facts)
{
  if (self->handout.facts != NULL)
    tb_handout_facts_unref ((TbHandoutFacts *) self->handout.facts);
  self->handout.facts = facts;
}

static void
take_next (TbHandoutWindow *self, TbNext *next)
{
  if (self->handout.next != NULL)
    tb_next_unref ((TbNext *) self->handout.next);
  self->handout.next = next;
}

/* What is under way does not keep a closed window: GTK lets go of its parent only with the last reference,
 * and the parent may be gone by then. */

/* Whether an answer is to the question that was asked last. */
static gboolean
is_wanted (TbHandoutWindow *self, GAsyncResult *result)
{
  return self != NULL && self->session != NULL && self->cancellable != NULL
         && g_task_get_cancellable (G_TASK (result)) == self->cancellable;
}

static void
on_next (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbHandoutWindow) self = tb_weak_take (data);
  g_autoptr (TbNext) next = tb_next_find_finish (result, NULL);

  if (next == NULL || !is_wanted (self, result))
    return;
  g_clear_object (&self->cancellable);
  gtk_spinner_stop (self->spinner);
  take_next (self, g_steal_pointer (&next));
  show_options (self);
  show_page (self);
}

/* The page does not wait for what else to try: for what was wished in the window, seen from the throw that it
 * was wished for, or else for what most bowlers want. */
static void
find_next (TbHandoutWindow *self)
{
  const TbRun *after = self->handout.facts->run[TB_SIDE_AFTER];
  TbWish wish;
  TbSetup *wished_from = tb_session_get_wish (self->session, &wish);
  TbSetup *start = wished_from != NULL ? wished_from : after->setup;
  g_autoptr (GArray) balls = tb_next_balls (tb_session_get_library (self->session), start);

  if (wished_from == NULL)
    wish = tb_handout_wish (after);
  tb_next_find_async (start, &wish, (const TbNextBall *) (gconstpointer) balls->data, balls->len,
                      self->cancellable, NULL, on_next, tb_weak_new (self));
}

static void
on_facts (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TbHandoutWindow) self = tb_weak_take (data);
  g_autoptr (TbHandoutFacts) facts = tb_handout_facts_new_finish (result, NULL);

  if (facts == NULL || !is_wanted (self, result))
    return;
  clear_options (self);
  take_next (self, NULL);
  take_facts (self, g_steal_pointer (&facts));
  show_page (self);
  enable (self, TRUE);
  find_next (self);
}

static void
cancel (TbHandoutWindow *self)
{
  if (self->cancellable != NULL)
    g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  gtk_spinner_stop (self->spinner);
}

static gboolean
can_be_made (TbHandoutWindow *self)
{
  for (int side = 0; side < TB_N_SIDES; side++)
    {
      const TbRun *run = tb_session_get_run (self->session, (TbSide) side);

      if (run->status != TB_OK)
        {
          g_autofree char *sentence = tb_describe_problem (run);

          tell (self, sentence);
          return FALSE;
        }
    }
  tell (self, NULL);
  return TRUE;
}

static void
update (TbHandoutWindow *self)
{
  gboolean metric = tb_session_get_units (self->session) == TB_UNITS_METRIC;

  cancel (self);
  enable (self, FALSE);
  if (!can_be_made (self))
    return;
  self->cancellable = g_cancellable_new ();
  gtk_spinner_start (self->spinner);
  tb_handout_facts_new_async (tb_session_get_study (self->session), metric, self->cancellable, on_facts,
                              tb_weak_new (self));
}

gboolean
tb_handout_window_is_settled (TbHandoutWindow *self)
{
  return self->cancellable == NULL && self->typing == 0;
}

/* Paper and files. */

gboolean
tb_handout_window_save (TbHandoutWindow *self, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = tb_handout_pdf (&self->handout, &error);
  g_autofree char *shown = g_filename_display_name (path), *sentence = NULL;

  if (bytes == NULL)
    tell (self, error->message);
  else if (tb_atomic_write (path, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, &error))
    tell (self, _ ("The page is saved."));
  else
    {
      sentence = g_strdup_printf ("%s: %s.", shown, error->message);
      tell (self, sentence);
    }
  return error == NULL;
}

static void
on_chosen (TbHandoutWindow *self, int response, GtkNativeDialog *dialog)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (response == GTK_RESPONSE_ACCEPT && path != NULL)
    tb_handout_window_save (self, path);
  else if (response == GTK_RESPONSE_ACCEPT)
    tell (self, _ ("The page can only be saved in a folder of this computer."));
  g_clear_object (&self->chooser);
}

static void
save_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbHandoutWindow *self = TB_HANDOUT_WINDOW (widget);
  g_autofree char *base = g_strdup (tb_handout_title (&self->handout)), *name = NULL;

  g_strdelimit (base, "/\\:\n\t", '-');
  name = g_strconcat (g_strstrip (base), ".pdf", NULL);
  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (_ ("Save the handout"), GTK_WINDOW (self),
                                               GTK_FILE_CHOOSER_ACTION_SAVE, NULL, NULL);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (on_chosen), self, G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
on_draw_page (TbHandoutWindow *self, GtkPrintContext *context)
{
  tb_handout_draw (gtk_print_context_get_cairo_context (context), &self->handout);
}

static GtkPageSetup *
page_setup_of (TbHandoutWindow *self)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  GtkPaperSize *size = gtk_paper_size_new (self->handout.paper == TB_PAPER_LETTER ? GTK_PAPER_NAME_LETTER
                                                                                  : GTK_PAPER_NAME_A4);

  gtk_page_setup_set_paper_size (setup, size);
  gtk_paper_size_free (size);
  return setup;
}

void
tb_handout_window_print (TbHandoutWindow *self, GtkPrintOperationAction action, const char *filename)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = page_setup_of (self);
  g_autoptr (GError) error = NULL;

  gtk_print_operation_set_n_pages (operation, 1);
  gtk_print_operation_set_default_page_setup (operation, setup);
  /* The page has margins of its own, in points from the paper's corner. */
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_job_name (operation, tb_handout_title (&self->handout));
  if (filename != NULL)
    gtk_print_operation_set_export_filename (operation, filename);
  g_signal_connect_object (operation, "draw-page", G_CALLBACK (on_draw_page), self, G_CONNECT_SWAPPED);
  gtk_print_operation_run (operation, action, GTK_WINDOW (self), &error);
  if (error != NULL)
    tell (self, error->message);
}

static void
print_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  tb_handout_window_print (TB_HANDOUT_WINDOW (widget), GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, NULL);
}

/* Letter where the locale says so. */
static TbPaper
usual_paper (void)
{
  return g_str_equal (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER) ? TB_PAPER_LETTER : TB_PAPER_A4;
}

static void
begin (TbHandoutWindow *self)
{
  const TbSetup *after = tb_session_get_setup (self->session, TB_SIDE_AFTER);
  const char *name = after->bowler_name != NULL ? tb_document_display_name (after->bowler_name) : "";

  gtk_editable_set_text (GTK_EDITABLE (self->bowler), name);
  gtk_drop_down_set_selected (self->paper, usual_paper ());
  g_signal_connect_object (self->session, "changed", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "wished", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "notify::units", G_CALLBACK (update), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (gtk_text_view_get_buffer (self->note), "changed", G_CALLBACK (on_typed), self,
                           G_CONNECT_SWAPPED);
  update (self);
}

TbHandoutWindow *
tb_handout_window_new (GtkWindow *parent, TbSession *session)
{
  TbHandoutWindow *self
      = g_object_new (TB_TYPE_HANDOUT_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  self->session = g_object_ref (session);
  tb_handout_picture_set_handout (self->picture, &self->handout);
  begin (self);
  if (parent != NULL)
    tb_style_set_text_size (GTK_WIDGET (self), tb_style_get_text_size (GTK_WIDGET (parent)));
  return self;
}

static void
tb_handout_window_dispose (GObject *object)
{
  TbHandoutWindow *self = TB_HANDOUT_WINDOW (object);

  /* What is being typed is taken, while there is somebody to take it. */
  gtk_window_set_focus (GTK_WINDOW (object), NULL);
  g_clear_handle_id (&self->typing, g_source_remove);
  if (self->session != NULL)
    {
      cancel (self);
      tb_handout_picture_set_handout (self->picture, NULL);
    }
  g_clear_object (&self->session);
  g_clear_object (&self->chooser);
  /* What is being worked out holds a reference for a moment longer, perhaps than the study's window lives. */
  gtk_window_set_transient_for (GTK_WINDOW (self), NULL);
  G_OBJECT_CLASS (tb_handout_window_parent_class)->dispose (object);
}

static void
tb_handout_window_finalize (GObject *object)
{
  TbHandoutWindow *self = TB_HANDOUT_WINDOW (object);

  take_facts (self, NULL);
  take_next (self, NULL);
  take_text (&self->handout.bowler, NULL);
  take_text (&self->handout.date, NULL);
  take_text (&self->handout.note, NULL);
  if (self->handout.options != NULL)
    g_ptr_array_unref ((GPtrArray *) self->handout.options);
  G_OBJECT_CLASS (tb_handout_window_parent_class)->finalize (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-handout-window.ui");
  gtk_widget_class_bind_template_child (widget_class, TbHandoutWindow, picture);
  gtk_widget_class_bind_template_child (widget_class, TbHandoutWindow, bowler);
  gtk_widget_class_bind_template_child (widget_class, TbHandoutWindow, paper);
  gtk_widget_class_bind_template_child (widget_class, TbHandoutWindow, note);
  gtk_widget_class_bind_template_child (widget_class, TbHandoutWindow, spinner);
  gtk_widget_class_bind_template_child (widget_class, TbHandoutWindow, wish_text);
  gtk_widget_class_bind_template_child (widget_class, TbHandoutWindow, options_box);
  gtk_widget_class_bind_template_child (widget_class, TbHandoutWindow, message);
  gtk_widget_class_bind_template_callback (widget_class, on_typed);
  gtk_widget_class_bind_template_callback (widget_class, on_choice);
}

static void
tb_handout_window_class_init (TbHandoutWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_handout_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = tb_handout_window_finalize;
  g_type_ensure (TB_TYPE_HANDOUT_PICTURE);
  bind_template (widget_class);
  gtk_widget_class_install_action (widget_class, "handout.save", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "handout.print", NULL, print_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_p, GDK_CONTROL_MASK, "handout.print", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, GDK_CONTROL_MASK, "handout.save", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static void
tb_handout_window_init (TbHandoutWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  tb_accessible_set_name (GTK_WIDGET (self->bowler), _ ("Bowler"));
  tb_accessible_set_drop_down_name (self->paper, _ ("Paper"));
  tb_accessible_set_name (GTK_WIDGET (self->note), _ ("From the coach: what to watch for"));
}
