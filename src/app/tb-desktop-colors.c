/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "config.h"

#include "tb-desktop-colors.h"

#include <gio/gio.h>

#define PORTAL_NAME "org.freedesktop.portal.Desktop"
#define PORTAL_PATH "/org/freedesktop/portal/desktop"
#define PORTAL_INTERFACE "org.freedesktop.portal.Settings"
#define NAMESPACE "org.freedesktop.appearance"
#define KEY "color-scheme"
/* The portal's number for "prefers dark". */
#define PREFERS_DARK 1

/* The one watcher. */
static struct
{
  TbDesktopColorsFunc func;
  gpointer user_data;
  GDBusConnection *bus;
  guint subscription;
  GCancellable *cancellable;
} watch;

static void
tell (GVariant *value)
{
  g_autoptr (GVariant) inner = g_variant_ref (value);

  /* Old portals wrap the value twice. */
  while (g_variant_is_of_type (inner, G_VARIANT_TYPE_VARIANT))
    {
      GVariant *unwrapped = g_variant_get_variant (inner);

      g_variant_unref (inner);
      inner = unwrapped;
    }
  if (watch.func != NULL && g_variant_is_of_type (inner, G_VARIANT_TYPE_UINT32))
    watch.func (g_variant_get_uint32 (inner) == PREFERS_DARK, watch.user_data);
}

static void
on_setting_changed (GDBusConnection *bus,
                    const char *sender,
                    const char *path,
                    const char *interface,
                    const char *signal,
                    GVariant *parameters,
                    gpointer user_data)
{
  const char *namespace, *key;
  g_autoptr (GVariant) value = NULL;

  if (!g_variant_is_of_type (parameters, G_VARIANT_TYPE ("(ssv)")))
    return;
  g_variant_get (parameters, "(&s&s@v)", &namespace, &key, &value);
  if (g_str_equal (namespace, NAMESPACE) && g_str_equal (key, KEY))
    tell (value);
}

static void
on_read (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GVariant) reply = g_dbus_connection_call_finish (G_DBUS_CONNECTION (source), result, NULL);
  g_autoptr (GVariant) value = NULL;

  /* No portal, or one that does not know: the desktop has no say. */
  if (reply == NULL)
    return;
  value = g_variant_get_child_value (reply, 0);
  tell (value);
}

static void
on_bus (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GDBusConnection) bus = g_bus_get_finish (result, NULL);

  if (bus == NULL || watch.func == NULL)
    return;
  g_set_object (&watch.bus, bus);
  watch.subscription = g_dbus_connection_signal_subscribe (
      bus, PORTAL_NAME, PORTAL_INTERFACE, "SettingChanged", PORTAL_PATH, NAMESPACE, G_DBUS_SIGNAL_FLAGS_NONE,
      on_setting_changed, NULL, NULL);
  g_dbus_connection_call (bus, PORTAL_NAME, PORTAL_PATH, PORTAL_INTERFACE, "Read",
                          g_variant_new ("(ss)", NAMESPACE, KEY), G_VARIANT_TYPE ("(v)"),
                          G_DBUS_CALL_FLAGS_NO_AUTO_START, -1, watch.cancellable, on_read, NULL);
}

void
tb_desktop_colors_watch (TbDesktopColorsFunc func, gpointer user_data)
{
  tb_desktop_colors_unwatch ();
  watch.func = func;
  watch.user_data = user_data;
  watch.cancellable = g_cancellable_new ();
  g_bus_get (G_BUS_TYPE_SESSION, watch.cancellable, on_bus, NULL);
}

void
tb_desktop_colors_unwatch (void)
{
  if (watch.cancellable != NULL)
    g_cancellable_cancel (watch.cancellable);
  g_clear_object (&watch.cancellable);
  if (watch.subscription != 0)
    g_dbus_connection_signal_unsubscribe (watch.bus, watch.subscription);
  watch.subscription = 0;
  g_clear_object (&watch.bus);
  watch.func = NULL;
}
