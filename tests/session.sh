#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# session.sh [-g WxH] [-s WxH] [-f FONT] [-m auto|none] [--] COMMAND...
#
# Runs COMMAND where a window can open but nobody's desktop is touched: a private X server of the
# given size (1280x800 unless told), a small window manager, a D-Bus session, and empty settings,
# cache and data folders that are gone afterwards. The exit status is the command's.
#   tests/session.sh -g 1920x1080 -- build/src/tenboard
#   tests/session.sh -- sh -c 'build/src/tenboard & sleep 3; import -window root window.png; kill $!'
# -s puts a second screen to the right of the first, as a projector is; xrandr knows them as DUMMY0 and DUMMY1. Both have
# a size that xrandr lists (1280x800, 1920x1080, 1024x768).
# -f sets the interface's font, "DejaVu Sans 10" unless told; -m none leaves the window manager out.

set -u

here=$(cd "$(dirname "$0")" && pwd)
geometry=1280x800
second=
xorg=/usr/lib/xorg/Xorg
font='DejaVu Sans 10'
manager=auto
while [ $# -gt 0 ]; do
  case $1 in
    -g) geometry=$2; shift 2 ;;
    -s) second=$2; shift 2 ;;
    -f) font=$2; shift 2 ;;
    -m) manager=$2; shift 2 ;;
    --) shift; break ;;
    *) break ;;
  esac
done
if [ $# -eq 0 ]; then
  echo "session.sh: no command given" >&2
  exit 2
fi

missing=
for tool in xvfb-run xauth dbus-run-session xprop; do
  command -v "$tool" >/dev/null 2>&1 || missing="$missing $tool"
done
[ -z "$second" ] || for tool in "$xorg" xrandr; do
  command -v "$tool" >/dev/null 2>&1 || missing="$missing $tool"
done
[ "$manager" = none ] || command -v jwm >/dev/null 2>&1 || missing="$missing jwm"
if [ -n "$missing" ]; then
  echo "session.sh: these programs are missing:$missing" >&2
  exit 127
fi

folder=$(mktemp -d) || exit 1
server=
trap '[ -z "$server" ] || kill "$server"; rm -rf "$folder"' EXIT
trap 'exit 130' INT
trap 'exit 143' TERM

mkdir -m 700 "$folder/run"
mkdir -p "$folder/config/gtk-4.0" "$folder/cache" "$folder/data"
cat >"$folder/config/gtk-4.0/settings.ini" <<EOF
[Settings]
gtk-font-name=$font
gtk-enable-animations=false
gtk-cursor-blink=false
EOF

export XDG_RUNTIME_DIR="$folder/run" XDG_CONFIG_HOME="$folder/config"
export XDG_CACHE_HOME="$folder/cache" XDG_DATA_HOME="$folder/data"
# A settings backend that works without the user's own daemon, and lasts as long as the session.
export GSETTINGS_BACKEND=keyfile
export GDK_BACKEND=x11 GSK_RENDERER="${GSK_RENDERER:-cairo}" GDK_DEBUG="${GDK_DEBUG:-gl-disable}"
export GTK_A11Y="${GTK_A11Y:-atspi}" LC_ALL="${LC_ALL:-C.UTF-8}" TZ=UTC
export TENBOARD_TEST_JWM="$here/jwm.xml" TENBOARD_TEST_MANAGER="$manager"
unset DBUS_SESSION_BUS_ADDRESS WAYLAND_DISPLAY

# Inside the session: wait until the window manager has announced itself, run, take it down again.
# shellcheck disable=SC2016
inside='
exec >&3 2>&4 3>&- 4>&-
pid=
if [ "$TENBOARD_TEST_MANAGER" != none ]; then
  jwm -f "$TENBOARD_TEST_JWM" >/dev/null 2>&1 &
  pid=$!
  tries=0
  until xprop -root _NET_SUPPORTING_WM_CHECK 2>/dev/null | grep -q "window id"; do
    tries=$((tries + 1))
    [ "$tries" -lt 100 ] || { echo "session.sh: the window manager does not start" >&2; exit 1; }
    sleep 0.05
  done
fi
"$@"
status=$?
[ -z "$pid" ] || kill "$pid" 2>/dev/null
exit "$status"
'

# Xvfb has one screen. The dummy driver of the X.Org server has sixteen, and needs neither a console nor root.
with_two_screens ()
{
  cat >"$folder/xorg.conf" <<EOF
Section "ServerFlags"
  Option "AutoAddDevices" "false"
  Option "AutoAddGPU" "false"
EndSection
Section "Device"
  Identifier "Card"
  Driver "dummy"
  VideoRam 65536
EndSection
Section "Monitor"
  Identifier "Monitor"
  HorizSync 5-1000
  VertRefresh 5-200
EndSection
Section "Screen"
  Identifier "Screen"
  Device "Card"
  Monitor "Monitor"
  DefaultDepth 24
  SubSection "Display"
    Depth 24
    Modes "$geometry"
    Virtual 4096 2160
  EndSubSection
EndSection
EOF
  # Only who has the cookie may look. The server asks for its value alone, the programs for their display's.
  export XAUTHORITY="$folder/authority"
  cookie=$(od -An -N16 -tx1 /dev/urandom | tr -d ' \n')
  xauth -q add :0 . "$cookie" 2>/dev/null
  # An ordinary user may only name a configuration below the current folder.
  (cd "$folder" && exec "$xorg" -displayfd 5 -config xorg.conf -logfile "$folder/xorg.log" -auth "$XAUTHORITY" \
    -noreset -nolisten tcp 5>number >/dev/null 2>&1 3>&- 4>&-) &
  server=$!
  tries=0
  until [ -s "$folder/number" ]; do
    tries=$((tries + 1))
    if [ "$tries" -gt 200 ] || ! kill -0 "$server" 2>/dev/null; then
      echo "session.sh: the server with two screens does not start" >&2
      grep '(EE)' "$folder/xorg.log" >&2
      exit 1
    fi
    sleep 0.05
  done
  DISPLAY=":$(cat "$folder/number")"
  export DISPLAY
  xauth -q add "$DISPLAY" . "$cookie"
  xrandr --addmode DUMMY1 "$geometry"
  xrandr --addmode DUMMY1 "$second" && xrandr --output DUMMY0 --mode "$geometry" --pos 0x0 \
    --output DUMMY1 --mode "$second" --right-of DUMMY0 || exit 1
  # Asked again, the driver says that the second is connected.
  xrandr >/dev/null
  sh -c 'exec dbus-run-session -- "$@" >/dev/null 2>&1' bus sh -c "$inside" session "$@"
}

# The bus and the services it starts talk about themselves; only the command is to be heard.
exec 3>&1 4>&2
if [ -n "$second" ]; then
  with_two_screens "$@"
  exit $?
fi
# shellcheck disable=SC2016
xvfb-run -a -s "-screen 0 ${geometry}x24 -nolisten tcp -noreset" \
  sh -c 'exec dbus-run-session -- "$@" >/dev/null 2>&1' bus sh -c "$inside" session "$@"
