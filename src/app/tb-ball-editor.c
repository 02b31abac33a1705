/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-ball-editor.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "tb-accessible.h"
#include "tb-ball-limits.h"
#include "tb-choice-row.h"
#include "tb-field-row.h"
#include "tb-library-row.h"
#include "tb-surface-log-document.h"

struct _TbBallEditor
{
  GtkWidget parent_instance;

  /* Template */
  GtkWidget *box, *new_button;
  GtkBox *library_box;
  GtkEntry *name;
  GtkLabel *message;
  GtkBox *body_box;
  GtkBox *cover_box;
  GtkBox *limits_box;
  GtkLabel *source;

  TbSession *session;
  gboolean delete_asked; /* the next press deletes */
  gboolean name_typed;   /* the entry holds a name that was not saved yet */
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (TbBallEditor, tb_ball_editor, GTK_TYPE_WIDGET)

static const char *const body_fields[]
    = { "weight_lb",    "diameter_in", "rg_in", "differential_in", "intermediate_differential_in",
        "top_weight_oz" };
static const char *const cover_fields[]
    = { "cover", "grit", "roughness_uin", "dry_friction", "film_scale", "absorption" };

static TbSetup *
setup_of (TbBallEditor *self)
{
  return tb_session_get_setup (self->session, TB_SIDE_AFTER);
}

static void
tell (TbBallEditor *self, const char *sentence)
{
  self->delete_asked = FALSE;
  gtk_label_set_text (self->message, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message), sentence != NULL);
}

/* Library. */

#define FALLBACK_ID "ball"
/* Room for a number behind an id. */
#define ID_STEM_MAX (TB_ID_MAX - 5)

/* Lower-case letters, digits and hyphens of a name. */
static char *
id_stem (const char *name)
{
  g_autofree char *ascii = g_str_to_ascii (name, "C"), *lower = g_ascii_strdown (ascii, -1);
  GString *stem = g_string_new (NULL);

  for (const char *c = lower; *c != '\0' && stem->len < ID_STEM_MAX; c++)
    if (g_ascii_isalnum (*c))
      g_string_append_c (stem, *c);
    else if (stem->len > 0 && stem->str[stem->len - 1] != '-')
      g_string_append_c (stem, '-');
  while (stem->len > 0 && stem->str[stem->len - 1] == '-')
    g_string_truncate (stem, stem->len - 1);
  if (!tb_id_is_valid (stem->str))
    g_string_assign (stem, FALLBACK_ID);
  return g_string_free (stem, FALSE);
}

char *
tb_ball_editor_new_id (TbLibrary *library, const char *name)
{
  g_autofree char *stem = id_stem (name);
  char *id = g_strdup (stem);

  for (guint i = 2; tb_library_find (library, TB_DOCUMENT_BALL, id, NULL) != NULL; i++)
    {
      g_free (id);
      id = g_strdup_printf ("%s-%u", stem, i);
    }
  return id;
}

/* The library's entry of the ball, if it is the user's own. */
static TbLibraryEntry *
own_entry (TbBallEditor *self)
{
  const char *id = setup_of (self)->ball_id;
  TbLibraryEntry *entry = NULL;

  if (id != NULL)
    entry = tb_library_find (tb_session_get_library (self->session), TB_DOCUMENT_BALL, id, NULL);
  return entry != NULL && !tb_library_entry_is_builtin (entry) ? entry : NULL;
}

static gboolean
save (TbBallEditor *self, const char *id, const char *name)
{
  TbSetup *setup = setup_of (self);
  TbLibraryEntry *entry = own_entry (self);
  g_autoptr (TbBallDocument) document = tb_ball_document_new (
      id, name, entry != NULL ? tb_library_entry_get_note (entry) : NULL, &setup->shot.ball);
  g_autoptr (TbSetup) named = tb_setup_with_ball (setup, &setup->shot.ball, id, name);
  g_autoptr (GError) error = NULL;

  if (!tb_library_save_ball (tb_session_get_library (self->session), document, &error))
    {
      tell (self, error->message);
      return FALSE;
    }
  self->name_typed = FALSE;
  tb_session_set_after (self->session, named);
  return TRUE;
}

/* The name that was typed; NULL, and a word about it, if there is none. */
static char *
typed_name (TbBallEditor *self)
{
  g_autofree char *name = g_strstrip (tb_text_fitted (gtk_editable_get_text (GTK_EDITABLE (self->name)), G_MAXSIZE, TRUE));

  if (name[0] != '\0' && strlen (name) <= TB_NAME_MAX)
    return g_steal_pointer (&name);
  tell (self, name[0] == '\0' ? _ ("Give the ball a name first.") : _ ("This name is too long."));
  return NULL;
}

static void
save_ball (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbBallEditor *self = TB_BALL_EDITOR (widget);
  g_autofree char *name = typed_name (self), *id = g_strdup (setup_of (self)->ball_id);

  if (name != NULL && save (self, id, name))
    tell (self, _ ("Saved."));
}

static void
save_copy (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbBallEditor *self = TB_BALL_EDITOR (widget);
  g_autofree char *name = typed_name (self), *id = NULL;

  if (name == NULL)
    return;
  id = tb_ball_editor_new_id (tb_session_get_library (self->session), name);
  if (save (self, id, name))
    tell (self, _ ("Saved as a ball of your own."));
}

#define NEW_BALL N_ ("New ball")

/* A ball of default numbers, drilled for the same PAP. */
static void
new_ball (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbBallEditor *self = TB_BALL_EDITOR (widget);
  TbSetup *setup = setup_of (self);
  TbBall ball = tb_ball_default ();
  g_autoptr (TbSetup) fresh = NULL;

  ball.pap_over = setup->shot.ball.pap_over;
  ball.pap_up = setup->shot.ball.pap_up;
  self->name_typed = FALSE;
  fresh = tb_setup_with_ball (setup, &ball, NULL, _ (NEW_BALL));
  tb_session_set_after (self->session, fresh);
  tell (self, _ ("Give it a name and its numbers, and save it as a copy."));
}

static void
delete_ball (GtkWidget *widget, const char *action, GVariant *parameter)
{
  TbBallEditor *self = TB_BALL_EDITOR (widget);
  TbSetup *setup = setup_of (self);
  g_autofree char *id = g_strdup (setup->ball_id);
  g_autoptr (TbSetup) unnamed = tb_setup_with_ball (setup, &setup->shot.ball, NULL, setup->ball_name);
  g_autoptr (GError) error = NULL;

  if (!self->delete_asked)
    {
      tell (self, _ ("Press Delete once more to delete this ball and the log of its surface for good."));
      self->delete_asked = TRUE;
      return;
    }
  if (!tb_library_remove (tb_session_get_library (self->session), TB_DOCUMENT_BALL, id, &error)
      || !tb_ball_surface_remove (id, &error))
    {
      tell (self, error->message);
      return;
    }
  tb_session_set_after (self->session, unnamed);
  tell (self, _ ("Deleted. The ball is still in this study: save it as a copy to have it back."));
}

/* What is shown. */

static void
add_limit (TbBallEditor *self, const TbLimitLine *line)
{
  GtkWidget *label = gtk_label_new (line->sentence);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, line->verdict == TB_LIMIT_OUTSIDE     ? "problem"
                                   : line->verdict == TB_LIMIT_NOT_KNOWN ? "note"
                                                                         : "limit");
  gtk_box_append (self->limits_box, label);
}

static void
show_limits (TbBallEditor *self)
{
  g_autoptr (GPtrArray) lines = tb_ball_limits (&setup_of (self)->shot.ball);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->limits_box))) != NULL)
    gtk_box_remove (self->limits_box, child);
  for (guint i = 0; i < lines->len; i++)
    add_limit (self, lines->pdata[i]);
}

static void
show_session (TbBallEditor *self)
{
  TbSetup *setup = setup_of (self);
  gboolean own = own_entry (self) != NULL;
  const char *name = setup->ball_name != NULL ? tb_document_display_name (setup->ball_name) : "";

  self->showing = TRUE;
  if (!self->name_typed && g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self->name)), name) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self->name), name);
  self->showing = FALSE;
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "ball.save", own);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "ball.delete", own);
  show_limits (self);
}

static void
on_name_changed (TbBallEditor *self)
{
  if (!self->showing)
    self->name_typed = TRUE;
}

static void
on_session_changed (TbBallEditor *self)
{
  tell (self, NULL);
  show_session (self);
}

static void
add_fields (TbBallEditor *self, GtkBox *box, const char *const *names, gsize count)
{
  for (gsize i = 0; i < count; i++)
    {
      const TbField *field = tb_field_find (TB_GROUP_BALL, names[i]);
      GtkWidget *row = field->kind == TB_FIELD_CHOICE ? tb_choice_row_new (self->session, field)
                                                      : tb_field_row_new (self->session, field);

      gtk_widget_add_css_class (row, "control-row");
      gtk_box_append (box, row);
    }
}

void
tb_ball_editor_set_session (TbBallEditor *self, TbSession *session)
{
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  gtk_box_append (self->library_box, tb_library_row_new (session, TB_DOCUMENT_BALL, _ ("Ball")));
  add_fields (self, self->body_box, body_fields, G_N_ELEMENTS (body_fields));
  add_fields (self, self->cover_box, cover_fields, G_N_ELEMENTS (cover_fields));
  g_signal_connect_object (session, "changed", G_CALLBACK (on_session_changed), self, G_CONNECT_SWAPPED);
  show_session (self);
}

static void
tb_ball_editor_dispose (GObject *object)
{
  TbBallEditor *self = TB_BALL_EDITOR (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (tb_ball_editor_parent_class)->dispose (object);
}

static void
tb_ball_editor_class_init (TbBallEditorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tb_ball_editor_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/io/github/tenboard/Tenboard/ui/tb-ball-editor.ui");
  gtk_widget_class_bind_template_child (widget_class, TbBallEditor, box);
  gtk_widget_class_bind_template_child (widget_class, TbBallEditor, new_button);
  gtk_widget_class_bind_template_child (widget_class, TbBallEditor, library_box);
  gtk_widget_class_bind_template_child (widget_class, TbBallEditor, name);
  gtk_widget_class_bind_template_child (widget_class, TbBallEditor, message);
  gtk_widget_class_bind_template_child (widget_class, TbBallEditor, body_box);
  gtk_widget_class_bind_template_child (widget_class, TbBallEditor, cover_box);
  gtk_widget_class_bind_template_child (widget_class, TbBallEditor, limits_box);
  gtk_widget_class_bind_template_child (widget_class, TbBallEditor, source);
  gtk_widget_class_bind_template_callback (widget_class, on_name_changed);
  gtk_widget_class_install_action (widget_class, "ball.new", NULL, new_ball);
  gtk_widget_class_install_action (widget_class, "ball.save", NULL, save_ball);
  gtk_widget_class_install_action (widget_class, "ball.save-copy", NULL, save_copy);
  gtk_widget_class_install_action (widget_class, "ball.delete", NULL, delete_ball);
}

static void
tb_ball_editor_init (TbBallEditor *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  tb_accessible_set_name (self->new_button, _ ("New ball"));
  gtk_label_set_text (self->source, tb_ball_limits_source ());
}
