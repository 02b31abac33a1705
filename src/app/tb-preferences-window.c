/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-preferences-window.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "tb-accessible.h"
#include "tb-style.h"

#define MAX_CHOICES 6
#define COLUMN_SPACING 18
#define ROW_SPACING 9
#define MARGIN 24
/* Two rates that are the same but for rounding. */
#define SAME_RATE 1e-9

typedef struct Choice
{
  const char *value; /* as the settings print it */
  const char *label;
} Choice;

typedef struct Preference
{
  const char *heading; /* begins a group with it; or NULL */
  const char *key;
  const char *label;
  Choice choices[MAX_CHOICES + 1]; /* ends with a NULL value */
} Preference;

/* The ranges of the keys stand in the schema; this is what is offered out of them. */
static const Preference preferences[] = {
  { N_ ("Studies"),
    "units",
    N_ ("Units"),
    { { "imperial", N_ ("Imperial: feet, inches, mph") }, { "metric", N_ ("Metric: metres, cm, km/h") } } },
  { NULL, "hand", N_ ("Hand of a new study"), { { "right", N_ ("Right") }, { "left", N_ ("Left") } } },
  { NULL,
    "time-rate",
    N_ ("Speed of time"),
    { { "1.0", N_ ("True time") },
      { "0.5", N_ ("Slow ×½") },
      { "0.25", N_ ("Slow ×¼") },
      { "0.1", N_ ("Slow ×⅒") } } },
  { N_ ("Colours"),
    "color-scheme",
    N_ ("Light or dark"),
    { { "system", N_ ("As the desktop") }, { "light", N_ ("Light") }, { "dark", N_ ("Dark") } } },
  { NULL, "high-contrast", N_ ("Contrast"), { { "false", N_ ("As the desktop") }, { "true", N_ ("High") } } },
  { NULL,
    "run-colors",
    N_ ("Before and after"),
    { { "orange", N_ ("Grey and orange") },
      { "blue-orange", N_ ("Blue and orange") },
      { "blue", N_ ("Grey and blue") } } },
  { N_ ("Reading and motion"),
    "text-size",
    N_ ("Text size"),
    { { "automatic", N_ ("As suits the window") },
      { "100", N_ ("100 %") },
      { "125", N_ ("125 %") },
      { "150", N_ ("150 %") },
      { "200", N_ ("200 %") },
      { "250", N_ ("250 %") } } },
  { NULL,
    "reduced-motion",
    N_ ("Motion"),
    { { "false", N_ ("As the desktop") }, { "true", N_ ("Always reduced") } } },
};

struct _TbPreferencesWindow
{
  GtkWindow parent_instance;

  GtkGrid *grid; /* borrowed: a child */
  GSettings *settings;
  GtkDropDown *choices[G_N_ELEMENTS (preferences)]; /* borrowed */
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (TbPreferencesWindow, tb_preferences_window, GTK_TYPE_WINDOW)

/* Whether the settings have what a choice stands for. */
static gboolean
is_chosen (GVariant *value, const char *choice)
{
  if (g_variant_is_of_type (value, G_VARIANT_TYPE_BOOLEAN))
    return g_variant_get_boolean (value) == g_str_equal (choice, "true");
  if (g_variant_is_of_type (value, G_VARIANT_TYPE_DOUBLE))
    return fabs (g_variant_get_double (value) - g_ascii_strtod (choice, NULL)) < SAME_RATE;
  return g_str_equal (g_variant_get_string (value, NULL), choice);
}

static void
show_preference (TbPreferencesWindow *self, gsize i)
{
  g_autoptr (GVariant) value = g_settings_get_value (self->settings, preferences[i].key);
  guint selected = GTK_INVALID_LIST_POSITION;

  for (guint j = 0; preferences[i].choices[j].value != NULL; j++)
    if (is_chosen (value, preferences[i].choices[j].value))
      selected = j;
  self->showing = TRUE;
  gtk_drop_down_set_selected (self->choices[i], selected);
  self->showing = FALSE;
}

static gsize
index_of (const char *key)
{
  gsize i = 0;

  while (i < G_N_ELEMENTS (preferences) && !g_str_equal (preferences[i].key, key))
    i++;
  return i;
}

static void
on_setting_changed (TbPreferencesWindow *self, const char *key)
{
  gsize i = index_of (key);

  if (i < G_N_ELEMENTS (preferences))
    show_preference (self, i);
}

static GVariant *
variant_for (const GVariantType *type, const char *choice)
{
  if (g_variant_type_equal (type, G_VARIANT_TYPE_BOOLEAN))
    return g_variant_new_boolean (g_str_equal (choice, "true"));
  if (g_variant_type_equal (type, G_VARIANT_TYPE_DOUBLE))
    return g_variant_new_double (g_ascii_strtod (choice, NULL));
  return g_variant_new_string (choice);
}

static void
on_selected (GtkDropDown *drop_down, GParamSpec *pspec, gpointer user_data)
{
  TbPreferencesWindow *self = TB_PREFERENCES_WINDOW (gtk_widget_get_root (GTK_WIDGET (drop_down)));
  const Preference *preference = user_data;
  guint selected = gtk_drop_down_get_selected (drop_down);
  g_autoptr (GVariant) value = NULL;

  if (self == NULL || self->showing || selected == GTK_INVALID_LIST_POSITION)
    return;
  value = g_settings_get_value (self->settings, preference->key);
  g_settings_set_value (self->settings, preference->key,
                        variant_for (g_variant_get_type (value), preference->choices[selected].value));
}

static GtkWidget *
new_label (const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static void
add_preference (TbPreferencesWindow *self, gsize i, int line)
{
  const Preference *preference = &preferences[i];
  g_autoptr (GtkStringList) labels = gtk_string_list_new (NULL);
  GtkWidget *drop_down;

  for (const Choice *choice = preference->choices; choice->value != NULL; choice++)
    gtk_string_list_append (labels, _ (choice->label));
  drop_down = gtk_drop_down_new (G_LIST_MODEL (g_steal_pointer (&labels)), NULL);
  gtk_widget_set_hexpand (drop_down, TRUE);
  tb_accessible_set_drop_down_name (GTK_DROP_DOWN (drop_down), _ (preference->label));
  gtk_grid_attach (self->grid, new_label (_ (preference->label), NULL), 0, line, 1, 1);
  gtk_grid_attach (self->grid, drop_down, 1, line, 1, 1);
  self->choices[i] = GTK_DROP_DOWN (drop_down);
  show_preference (self, i);
  g_signal_connect (drop_down, "notify::selected", G_CALLBACK (on_selected), (gpointer) preference);
}

static void
build (TbPreferencesWindow *self)
{
  int line = 0;
  GtkWidget *note;

  for (gsize i = 0; i < G_N_ELEMENTS (preferences); i++)
    {
      if (preferences[i].heading != NULL)
        gtk_grid_attach (self->grid, new_label (_ (preferences[i].heading), "heading"), 0, line++, 2, 1);
      add_preference (self, i, line++);
    }
  note = new_label (_ ("The language, and how numbers are written, are the desktop’s."), "note");
  gtk_label_set_wrap (GTK_LABEL (note), TRUE);
  gtk_grid_attach (self->grid, note, 0, line, 2, 1);
}

GtkDropDown *
tb_preferences_window_get_choice (TbPreferencesWindow *self, const char *key)
{
  gsize i = index_of (key);

  return i < G_N_ELEMENTS (preferences) ? self->choices[i] : NULL;
}

/* Text is as large as in the window that asked. */
static void
follow_text_size (TbPreferencesWindow *self)
{
  g_autofree char *size = g_settings_get_string (self->settings, "text-size");
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (self));

  if (!g_str_equal (size, "automatic"))
    tb_style_set_text_size (GTK_WIDGET (self), (int) g_ascii_strtoll (size, NULL, 10));
  else if (parent != NULL)
    tb_style_set_text_size (GTK_WIDGET (self), tb_style_get_text_size (GTK_WIDGET (parent)));
}

TbPreferencesWindow *
tb_preferences_window_new (GtkWindow *parent)
{
  TbPreferencesWindow *self
      = g_object_new (TB_TYPE_PREFERENCES_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  gtk_widget_add_css_class (GTK_WIDGET (self), "tenboard");
  follow_text_size (self);
  g_signal_connect_object (self->settings, "changed::text-size", G_CALLBACK (follow_text_size), self,
                           G_CONNECT_SWAPPED);
  return self;
}

static void
tb_preferences_window_dispose (GObject *object)
{
  g_clear_object (&TB_PREFERENCES_WINDOW (object)->settings);
  G_OBJECT_CLASS (tb_preferences_window_parent_class)->dispose (object);
}

static void
tb_preferences_window_class_init (TbPreferencesWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tb_preferences_window_dispose;
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_w, GDK_CONTROL_MASK, "window.close",
                                       NULL);
}

static void
tb_preferences_window_init (TbPreferencesWindow *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new (), *grid = gtk_grid_new ();

  self->settings = g_settings_new (APP_ID);
  self->grid = GTK_GRID (grid);
  gtk_widget_add_css_class (grid, "preferences");
  gtk_grid_set_column_spacing (self->grid, COLUMN_SPACING);
  gtk_grid_set_row_spacing (self->grid, ROW_SPACING);
  gtk_widget_set_margin_start (grid, MARGIN);
  gtk_widget_set_margin_end (grid, MARGIN);
  gtk_widget_set_margin_top (grid, MARGIN);
  gtk_widget_set_margin_bottom (grid, MARGIN);
  build (self);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), grid);
  gtk_window_set_child (GTK_WINDOW (self), scroller);
  gtk_window_set_title (GTK_WINDOW (self), _ ("Preferences"));
  g_signal_connect_object (self->settings, "changed", G_CALLBACK (on_setting_changed), self,
                           G_CONNECT_SWAPPED);
}
