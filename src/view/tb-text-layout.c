/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-text-layout.h"

/* Texts that were laid out lately: most of a moving picture's are those of the frame before, and laying one
 * out costs more than drawing it. One of each thread's: layouts and the font map behind them are not shared.
 */
#define TEXTS_KEPT 1024

typedef struct TbTexts
{
  PangoContext *context;
  GHashTable *layouts; /* by what they are made from, in words */
  guint serial;        /* of the font map when they were made */
} TbTexts;

static void
free_texts (gpointer data)
{
  TbTexts *texts = data;

  g_hash_table_unref (texts->layouts);
  g_object_unref (texts->context);
  g_free (texts);
}

static GPrivate thread_texts = G_PRIVATE_INIT (free_texts);

/* Letters are placed the same way whatever the surface, so that what was measured is what is drawn. */
static PangoContext *
new_text_context (void)
{
  PangoContext *context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (context, options);
  pango_context_set_round_glyph_positions (context, FALSE);
  cairo_font_options_destroy (options);
  return context;
}

static TbTexts *
new_texts (void)
{
  TbTexts *texts = g_new0 (TbTexts, 1);

  texts->context = new_text_context ();
  texts->layouts = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_object_unref);
  texts->serial = pango_font_map_get_serial (pango_cairo_font_map_get_default ());
  return texts;
}

/* Those of this thread; none are left of other fonts, or once they are many. */
static TbTexts *
get_texts (void)
{
  TbTexts *texts = g_private_get (&thread_texts);

  if (texts == NULL || texts->serial != pango_font_map_get_serial (pango_cairo_font_map_get_default ()))
    {
      texts = new_texts ();
      g_private_replace (&thread_texts, texts);
    }
  if (g_hash_table_size (texts->layouts) >= TEXTS_KEPT)
    g_hash_table_remove_all (texts->layouts);
  return texts;
}

static void
embolden (PangoLayout *layout, guint bytes)
{
  PangoAttrList *attributes = pango_attr_list_new ();
  PangoAttribute *bold = pango_attr_weight_new (PANGO_WEIGHT_BOLD);

  bold->end_index = bytes;
  pango_attr_list_insert (attributes, bold);
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
}

static PangoLayout *
new_layout (const char *family, const TbLabel *label, PangoContext *context)
{
  PangoLayout *layout = pango_layout_new (context);
  PangoFontDescription *font = pango_font_description_new ();

  pango_font_description_set_family (font, family);
  pango_font_description_set_absolute_size (font, label->size * PANGO_SCALE);
  pango_font_description_set_weight (font, label->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  if (label->wrap > 0)
    {
      pango_layout_set_width (layout, (int) (label->wrap * PANGO_SCALE));
      pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
      if (label->across != TB_ALIGN_START)
        pango_layout_set_alignment (layout, label->across == TB_ALIGN_MIDDLE ? PANGO_ALIGN_CENTER
                                                                             : PANGO_ALIGN_RIGHT);
    }
  if (label->bold_bytes > 0)
    embolden (layout, label->bold_bytes);
  pango_layout_set_spacing (layout, (int) (label->leading * PANGO_SCALE));
  pango_layout_set_text (layout, label->text, -1);
  return layout;
}

/* All that a layout depends on. */
static char *
layout_key (const char *family, const TbLabel *label)
{
  return g_strdup_printf ("%s|%a|%d|%a|%d|%u|%a|%s", family, label->size, label->bold, label->wrap,
                          label->wrap > 0 ? (int) label->across : 0, label->bold_bytes, label->leading,
                          label->text);
}

PangoLayout *
tb_text_layout (const char *family, const TbLabel *label)
{
  TbTexts *texts = get_texts ();
  g_autofree char *key = layout_key (family, label);
  PangoLayout *layout = g_hash_table_lookup (texts->layouts, key);

  if (layout == NULL)
    {
      layout = new_layout (family, label, texts->context);
      g_hash_table_insert (texts->layouts, g_steal_pointer (&key), layout);
    }
  return g_object_ref (layout);
}
