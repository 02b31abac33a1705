/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-handout-window.h"

#include <glib/gi18n-lib.h>

#include "tb-accessible.h"
#include "tb-describe.h"
#include "tb-handout-options.h"
#include "tb-handout-picture.h"
#include "tb-handout-print.h"
#include "tb-handout-work.h"
#include "tb-style.h"

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
  TbHandoutOptions *options;
  GtkLabel *message;

  TbSession *session;
  TbHandoutWork *work;
  TbHandout handout;             /* facts and next are the work's; what else it points to is owned */
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

static void
take_options (TbHandoutWindow *self, GPtrArray *options)
{
  if (self->handout.options != NULL)
    g_ptr_array_unref ((GPtrArray *) self->handout.options);
  self->handout.options = options;
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
  take_options (self, tb_handout_options_get_checked (self->options));
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

/* Working it out. */

static void
enable (TbHandoutWindow *self, gboolean enabled)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "handout.save", enabled);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "handout.print", enabled);
}

static void
on_facts (TbHandoutWindow *self)
{
  tb_handout_options_clear (self->options);
  self->handout.next = NULL;
  self->handout.facts = tb_handout_work_get_facts (self->work);
  show_page (self);
  enable (self, TRUE);
}

static void
on_next (TbHandoutWindow *self)
{
  gtk_spinner_stop (self->spinner);
  self->handout.next = tb_handout_work_get_next (self->work);
  tb_handout_options_show (self->options, self->handout.next, self->handout.facts);
  show_page (self);
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
  enable (self, FALSE);
  if (can_be_made (self))
    {
      gtk_spinner_start (self->spinner);
      tb_handout_work_start (self->work);
    }
  else
    {
      gtk_spinner_stop (self->spinner);
      tb_handout_work_cancel (self->work);
    }
}

gboolean
tb_handout_window_is_settled (TbHandoutWindow *self)
{
  return !tb_handout_work_is_busy (self->work) && self->typing == 0;
}

/* Paper and files. */

gboolean
tb_handout_window_save (TbHandoutWindow *self, const char *path)
{
  g_autoptr (GError) error = NULL;

  tb_handout_save (&self->handout, path, &error);
  tell (self, error != NULL ? error->message : _ ("The page is saved."));
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
  g_autofree char *base = tb_handout_file_name (&self->handout), *name = g_strconcat (base, ".pdf", NULL);

  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (_ ("Save the handout"), GTK_WINDOW (self),
                                               GTK_FILE_CHOOSER_ACTION_SAVE, NULL, NULL);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (on_chosen), self, G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

void
tb_handout_window_print (TbHandoutWindow *self, GtkPrintOperationAction action, const char *filename)
{
  g_autoptr (GError) error = NULL;
  TbHandoutPrinting printing = { GTK_WINDOW (self), action, filename };

  if (!tb_handout_print (&self->handout, &printing, &error))
    tell (self, error->message);
}

static void
print_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  tb_handout_window_print (TB_HANDOUT_WINDOW (widget), GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, NULL);
}

static void
begin (TbHandoutWindow *self)
{
  const TbSetup *after = tb_session_get_setup (self->session, TB_SIDE_AFTER);
  const char *name = after->bowler_name != NULL ? tb_document_display_name (after->bowler_name) : "";

  gtk_editable_set_text (GTK_EDITABLE (self->bowler), name);
  gtk_drop_down_set_selected (self->paper, tb_paper_usual ());
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
  self->work = tb_handout_work_new (session);
  g_signal_connect_object (self->work, "facts", G_CALLBACK (on_facts), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->work, "next", G_CALLBACK (on_next), self, G_CONNECT_SWAPPED);
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
      tb_handout_work_cancel (self->work);
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

  g_clear_object (&self->work);
  take_text (&self->handout.bowler, NULL);
  take_text (&self->handout.date, NULL);
  take_text (&self->handout.note, NULL);
  take_options (self, NULL);
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
  gtk_widget_class_bind_template_child (widget_class, TbHandoutWindow, options);
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
  g_type_ensure (TB_TYPE_HANDOUT_OPTIONS);
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
