/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-style.h"

#include <string.h>

#include "tb-desktop-colors.h"

#define UI "/io/github/tenboard/Tenboard/ui/"

/* Steps of text size, %. */
static const int text_sizes[] = { 100, 125, 150, 200, 250 };

/* Size of the interface's font that counts as text scale 1, px: 10.5 pt. */
#define ORDINARY_FONT_PX 14.0
/* The step is taken when the window is this close to it, so that a window dragged wider does not flicker. */
#define STEP_REACH 0.96

/* What was asked for, for every display. */
static struct
{
  gboolean high_contrast, reduced_motion;
  gboolean desktop_dark; /* the desktop's theme is, while ours stands in its place */
  TbRunColors run_colors;
  /* The colours of the style sheet, and what strong contrast adds to it. They live as long as the display. */
  GtkCssProvider *colors, *contrast;
} look;

static void
add_color (GString *css, const char *name, TbColor color)
{
  GdkRGBA rgba = { (float) color.red, (float) color.green, (float) color.blue, (float) color.alpha };
  g_autofree char *text = gdk_rgba_to_string (&rgba);

  g_string_append_printf (css, "@define-color %s %s;\n", name, text);
}

/* The drawings' colours, by name, for the style sheet. */
static char *
colors_css (TbTheme theme)
{
  g_autoptr (GString) css = g_string_new (NULL);

  add_color (css, "tb_background", theme.background);
  add_color (css, "tb_text", theme.text);
  add_color (css, "tb_quiet", theme.quiet);
  add_color (css, "tb_rule", theme.rule);
  add_color (css, "tb_before", theme.before);
  add_color (css, "tb_after", theme.after);
  add_color (css, "tb_warning", theme.warning);
  add_color (css, "tb_focus", theme.focus);
  /* What is to be seen from the back of a room: the brightest there is, with an edge where the page is
   * bright. */
  add_color (css, "tb_knob",
             tb_color_luminance (theme.background) < tb_color_luminance (theme.text) ? theme.text
                                                                                     : theme.background);
  return g_string_free (g_steal_pointer (&css), FALSE);
}

/* GTK_THEME stands above every setting; a variant comes after a colon there. */
static char *
theme_name (GtkSettings *settings)
{
  char *name = g_strdup (g_getenv ("GTK_THEME"));

  if (name == NULL)
    g_object_get (settings, "gtk-theme-name", &name, NULL);
  return name;
}

static gboolean
is_named_dark (GtkSettings *settings)
{
  g_autofree char *name = theme_name (settings);

  return name != NULL && (g_str_has_suffix (name, "dark") || g_str_has_suffix (name, "Inverse"));
}

static gboolean
is_dark (GtkSettings *settings)
{
  gboolean prefers_dark;

  g_object_get (settings, "gtk-application-prefer-dark-theme", &prefers_dark, NULL);
  if (g_getenv ("GTK_THEME") != NULL)
    return is_named_dark (settings);
  return prefers_dark || (look.high_contrast ? look.desktop_dark : is_named_dark (settings));
}

/* Of the program or of the desktop. */
static gboolean
is_high_contrast (GtkSettings *settings)
{
  g_autofree char *name = theme_name (settings);

  return look.high_contrast
         || (name != NULL
             && (g_str_has_prefix (name, "HighContrast") || strstr (name, "-hc") != NULL
                 || strstr (name, ":hc") != NULL));
}

static TbTheme
theme_now (GtkSettings *settings, double scale)
{
  gboolean strong = is_high_contrast (settings);
  TbTheme theme;

  if (is_dark (settings))
    theme = strong ? tb_theme_contrast_dark (scale) : tb_theme_dark (scale);
  else
    theme = strong ? tb_theme_contrast (scale) : tb_theme_light (scale);
  tb_theme_set_run_colors (&theme, look.run_colors);
  return theme;
}

/* GTK's own look for strong contrast. Where dark is preferred it knows that of only one name; where it is
 * not, the dark one has another. */
static void
load_contrast (GtkSettings *settings)
{
  const char *wanted = "HighContrast";
  g_autofree char *name = NULL;
  gboolean prefers_dark;

  g_object_get (settings, "gtk-theme-name", &name, "gtk-application-prefer-dark-theme", &prefers_dark, NULL);
  if (is_dark (settings) && !prefers_dark)
    wanted = "Default-hc-dark";
  if (look.high_contrast && g_strcmp0 (name, wanted) != 0)
    g_object_set (settings, "gtk-theme-name", wanted, NULL);
}

static TbTheme
projector_theme (GtkSettings *settings, double scale)
{
  TbTheme theme = tb_theme_contrast (scale);

  if (is_dark (settings))
    theme = is_high_contrast (settings) ? tb_theme_contrast_dark (scale) : tb_theme_dark (scale);
  tb_theme_set_run_colors (&theme, look.run_colors);
  return theme;
}

static void
load_colors (GtkCssProvider *provider)
{
  GtkSettings *settings = gtk_settings_get_default ();
  g_autofree char *all = colors_css (theme_now (settings, 1.0));
  g_autoptr (GString) css = g_string_new (all);

  load_contrast (settings);
  add_color (css, "tb_projector", projector_theme (settings, 1.0).background);
  gtk_css_provider_load_from_data (provider, css->str, -1);
  if (is_high_contrast (settings))
    gtk_css_provider_load_from_resource (look.contrast, UI "style-contrast.css");
  else
    gtk_css_provider_load_from_data (look.contrast, "", -1);
}

void
tb_style_init (GdkDisplay *display)
{
  g_autoptr (GtkCssProvider) sheet = gtk_css_provider_new ();
  g_autoptr (GtkCssProvider) colors = gtk_css_provider_new ();
  g_autoptr (GtkCssProvider) contrast = gtk_css_provider_new ();
  GtkSettings *settings = gtk_settings_get_for_display (display);

  look.colors = colors;
  look.contrast = contrast;
  load_colors (colors);
  g_signal_connect_object (settings, "notify::gtk-application-prefer-dark-theme", G_CALLBACK (load_colors),
                           colors, G_CONNECT_SWAPPED);
  g_signal_connect_object (settings, "notify::gtk-theme-name", G_CALLBACK (load_colors), colors,
                           G_CONNECT_SWAPPED);
  gtk_css_provider_load_from_resource (sheet, UI "style.css");
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (colors),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (sheet),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (contrast),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION + 1);
}

static void
follow_desktop (gboolean dark, gpointer user_data)
{
  g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", dark, NULL);
}

void
tb_style_set_color_scheme (TbColorScheme scheme)
{
  GtkSettings *settings = gtk_settings_get_default ();

  tb_desktop_colors_unwatch ();
  if (scheme == TB_COLOR_SCHEME_SYSTEM)
    {
      gtk_settings_reset_property (settings, "gtk-application-prefer-dark-theme");
      tb_desktop_colors_watch (follow_desktop, NULL);
    }
  else
    g_object_set (settings, "gtk-application-prefer-dark-theme", scheme == TB_COLOR_SCHEME_DARK, NULL);
}

void
tb_style_set_high_contrast (gboolean high)
{
  GtkSettings *settings = gtk_settings_get_default ();

  if (look.high_contrast == high)
    return;
  look.desktop_dark = high && is_named_dark (settings);
  look.high_contrast = high;
  if (high)
    load_contrast (settings);
  else
    gtk_settings_reset_property (settings, "gtk-theme-name");
}

void
tb_style_set_run_colors (TbRunColors colors)
{
  if (look.run_colors == colors)
    return;
  look.run_colors = colors;
  if (look.colors != NULL)
    load_colors (look.colors);
}

void
tb_style_set_reduced_motion (gboolean reduced)
{
  GtkSettings *settings = gtk_settings_get_default ();

  if (look.reduced_motion == reduced)
    return;
  look.reduced_motion = reduced;
  if (reduced)
    g_object_set (settings, "gtk-enable-animations", FALSE, NULL);
  else
    gtk_settings_reset_property (settings, "gtk-enable-animations");
}

int
tb_style_suitable_text_size (int width, int height)
{
  double wanted = tb_theme_suitable_scale (width, height) * 100.0;
  int best = text_sizes[0];

  for (gsize i = 0; i < G_N_ELEMENTS (text_sizes); i++)
    if (wanted >= text_sizes[i] * STEP_REACH)
      best = text_sizes[i];
  return best;
}

static char *
size_class (int percent)
{
  return g_strdup_printf ("text-%d", percent);
}

void
tb_style_set_text_size (GtkWidget *window, int percent)
{
  for (gsize i = 0; i < G_N_ELEMENTS (text_sizes); i++)
    {
      g_autofree char *name = size_class (text_sizes[i]);

      if (text_sizes[i] == percent)
        gtk_widget_add_css_class (window, name);
      else
        gtk_widget_remove_css_class (window, name);
    }
}

int
tb_style_get_text_size (GtkWidget *window)
{
  for (gsize i = 0; i < G_N_ELEMENTS (text_sizes); i++)
    {
      g_autofree char *name = size_class (text_sizes[i]);

      if (gtk_widget_has_css_class (window, name))
        return text_sizes[i];
    }
  return text_sizes[0];
}

void
tb_style_set_label_size (GtkLabel *label, double px)
{
  PangoAttrList *list = pango_attr_list_new ();

  pango_attr_list_insert (list, pango_attr_size_new_absolute ((int) (px * PANGO_SCALE)));
  gtk_label_set_attributes (label, list);
  pango_attr_list_unref (list);
}

TbTheme
tb_style_theme_for (GtkWidget *widget)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *font = pango_context_get_font_description (context);
  double size = pango_font_description_get_size (font) / (double) PANGO_SCALE;
  double dpi = pango_cairo_context_get_resolution (context);
  TbTheme theme;

  if (!pango_font_description_get_size_is_absolute (font))
    size *= (dpi > 0 ? dpi : 96.0) / 72.0;
  theme = theme_now (gtk_widget_get_settings (widget), size / ORDINARY_FONT_PX);
  theme.font = g_intern_string (pango_font_description_get_family (font));
  return theme;
}

TbTheme
tb_style_projector_theme (GtkWidget *widget, double scale)
{
  TbTheme theme = projector_theme (gtk_widget_get_settings (widget), scale);

  theme.font = tb_style_theme_for (widget).font;
  return theme;
}
