# SPDX-License-Identifier: GPL-3.0-or-later
#
# What the build and the tests need, asked for one by one, and how to get what is missing.
# Read by src/start.sh and tests/run.sh; not a command of its own.
#
#   need PACKAGE "WHAT IT IS" CHECK...   notes PACKAGE as missing when the command CHECK fails
#   needs_of_build, needs_of_tests       the two lists
#   install_missing LIST                 runs a list; installs what it finds missing, or says what is missing and stops
#
# Everything here talks on standard error: standard output belongs to the program.

say ()
{
  printf '%s\n' "$*" >&2
}

need ()
{
  need_package=$1
  need_what=$2
  shift 2
  if "$@" >/dev/null 2>&1; then
    return 0
  fi
  case " $missing " in
    *" $need_package "*) ;;
    *) missing="$missing $need_package" ;;
  esac
  missing_list="$missing_list
  $need_what (Debian package $need_package)"
}

has ()
{
  command -v "$1"
}

# Module and least version, as pkg-config knows them.
has_library ()
{
  pkg-config --atleast-version="$2" "$1"
}

has_compiler ()
{
  command -v "$1" && echo 'int main (void) { return 0; }' | "$1" -x c -fsyntax-only -
}

has_c_headers ()
{
  echo '#include <stdio.h>' | "${CC:-cc}" -x c -fsyntax-only -
}

has_meson ()
{
  case $(meson --version) in
    0.*) return 1 ;;
    [1-9]*) return 0 ;;
    *) return 1 ;;
  esac
}

# Without it the program's own icons turn into the sign for a missing picture.
has_svg_loader ()
{
  for loader in "$(pkg-config --variable=gdk_pixbuf_moduledir gdk-pixbuf-2.0)"/*svg*; do
    [ -e "$loader" ] && return 0
  done
  return 1
}

has_python_module ()
{
  /usr/bin/python3 -c "import $1"
}

needs_of_build ()
{
  need gcc 'a C compiler (cc)' has_compiler "${CC:-cc}"
  need libc6-dev 'the C library headers' has_c_headers
  need meson 'Meson 1.0 or newer (meson)' has_meson
  need ninja-build 'Ninja (ninja)' has ninja
  need pkg-config 'pkg-config' has pkg-config
  need libgtk-4-dev 'GTK 4.8 or newer, with headers (gtk4)' has_library gtk4 4.8
  need libgtk-4-dev 'GLib 2.74 or newer, with headers (glib-2.0)' has_library glib-2.0 2.74
  need libgtk-4-dev 'cairo 1.16 or newer, with headers (cairo)' has_library cairo 1.16
  need libgtk-4-dev 'Pango 1.50 or newer, with headers (pangocairo)' has_library pangocairo 1.50
  need libjson-glib-dev 'JSON-GLib 1.6 or newer, with headers (json-glib-1.0)' has_library json-glib-1.0 1.6
  need libgsl-dev 'the GNU Scientific Library 2.7 or newer, with headers (gsl)' has_library gsl 2.7
  need libwebp-dev 'WebP 1.2 or newer, with headers (libwebp)' has_library libwebp 1.2
  need libwebp-dev 'WebP animation 1.2 or newer, with headers (libwebpmux)' has_library libwebpmux 1.2
  need gettext 'gettext (msgfmt)' has msgfmt
  need desktop-file-utils 'the desktop file tools (update-desktop-database)' has update-desktop-database
  need libxml2-utils 'xmllint' has xmllint
  need librsvg2-common 'the SVG loader of gdk-pixbuf' has_svg_loader
}

needs_of_tests ()
{
  needs_of_build
  need gcc 'GCC (gcc)' has_compiler gcc
  need clang 'Clang (clang)' has_compiler clang
  need libsundials-dev 'SUNDIALS with headers (cvode)' test -e /usr/include/cvode/cvode.h
  need libode-dev 'the Open Dynamics Engine (ode)' has_library ode 0.16
  need xvfb 'a private X server (xvfb-run)' has xvfb-run
  need xauth 'xauth' has xauth
  need xdotool 'xdotool' has xdotool
  need xserver-xorg-core 'an X server with several screens (Xorg)' test -x /usr/lib/xorg/Xorg
  need xserver-xorg-video-dummy 'its driver without a screen (dummy)' test -e /usr/lib/xorg/modules/drivers/dummy_drv.so
  need x11-xserver-utils 'xrandr' has xrandr
  need x11-utils 'xprop' has xprop
  need jwm 'a small window manager (jwm)' has jwm
  need imagemagick 'ImageMagick, for pictures of the screen (import)' has import
  need dbus 'a private D-Bus session (dbus-run-session)' has dbus-run-session
  need at-spi2-core 'the accessibility bus' test -e /usr/share/dbus-1/services/org.a11y.Bus.service
  need python3-pyatspi 'pyatspi for /usr/bin/python3' has_python_module pyatspi
  need debhelper 'debhelper, to build a package' has dh
  need dpkg-dev 'the Debian package tools (dpkg-buildpackage)' has dpkg-buildpackage
  need gcovr 'gcovr, to count what the tests reach' has gcovr
  need locales 'the sources of locales, for localedef' test -e /usr/share/i18n/locales/de_DE
  need appstream 'AppStream (appstreamcli)' has appstreamcli
  need poppler-utils 'poppler, to read the pages that are written (pdftotext)' has pdftotext
}

list_missing ()
{
  missing=
  missing_list=
  "$1"
}

# The words to put before apt-get, or nothing; fails if there is no way to become root.
find_root ()
{
  as_root=
  [ "$(id -u)" -eq 0 ] && return 0
  as_root=sudo
  command -v sudo >/dev/null 2>&1
}

install_missing ()
{
  list_missing "$1"
  [ -n "$missing" ] || return 0

  if ! command -v apt-get >/dev/null 2>&1; then
    say "These are missing, and this system has no apt to install them with:$missing_list"
    command -v pkg-config >/dev/null 2>&1 || say "(Libraries cannot be looked for without pkg-config; some may be there.)"
    say "Please install them, then give the same command again."
    exit 1
  fi
  if ! find_root; then
    say "These are missing, and installing them needs root or sudo:$missing_list"
    say "Please run this as root, then give the same command again:"
    say "  apt-get install --no-install-recommends$missing"
    exit 1
  fi

  say "Installing what is missing:$missing"
  # The package names are words of their own on purpose.
  # shellcheck disable=SC2086
  if ! { $as_root apt-get update && $as_root env DEBIAN_FRONTEND=noninteractive \
    apt-get install -y --no-install-recommends $missing; } >&2; then
    say "apt-get could not install:$missing"
    say "Its own message above says why; mend that, then give the same command again."
    exit 1
  fi

  list_missing "$1"
  if [ -n "$missing" ]; then
    say "apt-get is done, and these are still missing or too old:$missing_list"
    exit 1
  fi
}
