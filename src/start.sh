#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# sh src/start.sh [ARGUMENTS]
#
# Installs what is missing, builds Tenboard in build/ and opens it. The arguments go to the program,
# and file names among them are taken from where you are. Works from any folder.

set -u

root=$(cd "$(dirname "$0")/.." && pwd) || exit 1
build=$root/build
program=$build/src/tenboard

. "$root/src/needs.sh"

# Whether the arguments ask for something that opens no window.
wants_no_window ()
{
  for argument in "$@"; do
    case $argument in
      --numbers | --numbers=* | --picture | --picture=* | --handout | --handout=*) return 0 ;;
      --help | --help-* | -h | '-?' | --version) return 0 ;;
    esac
  done
  return 1
}

build_program ()
{
  log=$build/start.log
  mkdir -p "$build" || return 1
  if [ ! -f "$build/build.ninja" ]; then
    say "Setting up the build in $build"
    meson setup "$build" "$root" >"$log" 2>&1 || { cat "$log" >&2; return 1; }
  fi
  [ -x "$program" ] || say "Building Tenboard, this once"
  ninja -C "$build" src/tenboard data/gschemas.compiled >"$log" 2>&1 || { cat "$log" >&2; return 1; }
}

install_missing needs_of_build
if ! build_program; then
  say "Tenboard could not be built; the messages above say where it stopped."
  exit 1
fi

if ! wants_no_window "$@" && [ -z "${DISPLAY:-}" ] && [ -z "${WAYLAND_DISPLAY:-}" ]; then
  say "Tenboard is built, but there is no display to open its window on (DISPLAY and WAYLAND_DISPLAY are not set)."
  say "Without a display, use one of these instead:"
  say "  sh $0 --numbers             prints the built-in before and after, as numbers in JSON"
  say "  sh $0 --picture OUT.png     draws both throws as a picture"
  exit 1
fi

GSETTINGS_SCHEMA_DIR=$build/data
export GSETTINGS_SCHEMA_DIR
exec "$program" "$@"
