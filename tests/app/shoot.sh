#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# shoot.sh [-g WxH] [-c system|light|dark] [-t PERCENT] [-v plan|sideways|approach] [-f FONT] [-k KEYS] TENBOARD OUT.png [STUDY|LESSON]
#
# Takes a picture of the maximised window on a private X server: to look at the window without a
# display, and for the README. TENBOARD is the program in a build folder. KEYS are xdotool key names,
# pressed one after the other before the picture is taken.
#   tests/app/shoot.sh -g 1024x600 -c dark build/src/tenboard /tmp/window.png

set -eu

here=$(cd "$(dirname "$0")" && pwd)
geometry=1280x800
scheme=light
text=automatic
view=plan
font='DejaVu Sans 10'
keys=
while getopts g:c:t:v:f:k: option; do
  case $option in
    g) geometry=$OPTARG ;;
    c) scheme=$OPTARG ;;
    t) text=$OPTARG ;;
    v) view=$OPTARG ;;
    f) font=$OPTARG ;;
    k) keys=$OPTARG ;;
    *) exit 2 ;;
  esac
done
shift $((OPTIND - 1))
if [ $# -lt 2 ]; then
  echo "shoot.sh: expected the program and the picture" >&2
  exit 2
fi
program=$1
picture=$2
study=${3:-}

# The schema that was built with the program.
build=$(cd "$(dirname "$program")/.." && pwd)
export GSETTINGS_SCHEMA_DIR="${GSETTINGS_SCHEMA_DIR:-$build/data}"
export TB_PROGRAM="$program" TB_PICTURE="$picture" TB_STUDY="$study" TB_SCHEME="$scheme" TB_TEXT="$text" TB_VIEW="$view" TB_KEYS="$keys"

exec sh "$here/../session.sh" -g "$geometry" -f "$font" -- sh -c '
set -u
id=io.github.tenboard.Tenboard
gsettings set $id window-maximized true
gsettings set $id tour-seen true
gsettings set $id color-scheme "$TB_SCHEME"
gsettings set $id text-size "$TB_TEXT"
gsettings set $id lane-view "$TB_VIEW"
if [ -n "$TB_STUDY" ]; then "$TB_PROGRAM" "$TB_STUDY" & else "$TB_PROGRAM" & fi
pid=$!
window=$(timeout 20 xdotool search --sync --onlyvisible --class tenboard | head -n 1)
[ -n "$window" ] || { echo "shoot.sh: no window came" >&2; kill $pid; exit 1; }
# Time for the layout to settle and the first frames to be drawn.
sleep 2
for key in $TB_KEYS; do
  xdotool key --clearmodifiers "$key"
  sleep 0.3
done
sleep 0.7
import -window root "$TB_PICTURE"
kill $pid
wait $pid 2>/dev/null
exit 0
'
