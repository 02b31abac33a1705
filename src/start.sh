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

build_program ()
{
  log=$build/start.log
  mkdir -p "$build" || return 1
  if [ ! -f "$build/build.ninja" ]; then
    say "Setting up the build in $build"
    meson setup "$build" "$root" >"$log" 2>&1 || { cat "$log" >&2; return 1; }
  fi
  [ -x "$program" ] || say "Building Tenboard, this once"
  ninja -C "$build" src/tenboard data/gschemas.compiled tenboard-gmo >"$log" 2>&1 || { cat "$log" >&2; return 1; }
}

install_missing needs_of_build
if ! build_program; then
  say "Tenboard could not be built; the messages above say where it stopped."
  exit 1
fi

GSETTINGS_SCHEMA_DIR=$build/data
TENBOARD_LOCALEDIR=$build/po
export GSETTINGS_SCHEMA_DIR TENBOARD_LOCALEDIR
if [ -n "${DISPLAY:-}" ] || [ -n "${WAYLAND_DISPLAY:-}" ]; then
  exec "$program" "$@"
fi

# The program knows which of its arguments need no display, and answers 1 if it wanted one.
"$program" "$@"
status=$?
if [ "$status" -eq 1 ]; then
  say "Tenboard is built, and opens where DISPLAY or WAYLAND_DISPLAY is set. Without them, use one of these instead:"
  say "  sh $0 --numbers             prints the numbers of the built-in before and after, as JSON"
  say "  sh $0 --picture OUT.png     draws both throws as a picture"
fi
exit "$status"
