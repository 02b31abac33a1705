#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# coverage.sh [BUILD]
#
# What of the layers below the window the tests reach: builds with counters, runs the suites that need no display,
# and holds each folder to its line. Prints TAP. BUILD (build-tests/coverage unless told) is kept for the next time;
# BUILD/report/index.html shows every line.

set -u

root=$(cd "$(dirname "$0")/.." && pwd) || exit 1
build=${1:-$root/build-tests/coverage}
# folder, least share of lines and of branches reached, per cent
wanted='core 100 95
study 90 0
store 90 0
view 90 0'

mkdir -p "$build" || exit 1
log=$build/coverage.log
set -- -Dapp=false -Dreferences=enabled -Db_coverage=true -Dbuildtype=debug -Doptimization=1 \
  -Dc_args=-fprofile-update=atomic # threads count together
[ ! -f "$build/build.ninja" ] || set -- --reconfigure "$@"
# Counts of an earlier time would hide what is reached no more.
find "$build" -name '*.gcda' -exec rm -f {} +

fail ()
{
  printf '1..1\nnot ok 1 %s\n' "$1"
  sed 's/^/# /' "$log" | tail -n 40
  exit 1
}

{ CC=gcc meson setup "$build" "$root" "$@" && ninja -C "$build"; } >"$log" 2>&1 || fail 'builds with counters'
meson test -C "$build" --no-rebuild -t 5 --suite core --suite study --suite store --suite view --suite headless \
  >"$log" 2>&1 || fail 'passes its tests'
mkdir -p "$build/report"
# gcov drops its files where it runs.
(cd "$build" && gcovr -r "$root" --filter "$root/src/" --exclude-unreachable-branches \
  --json report/all.json --html-details report/index.html src) >"$log" 2>&1 || fail 'can be counted'

# folder LINES BRANCHES: whether gcovr finds that much reached
reached ()
{
  (cd "$build" && gcovr -r "$root" -a report/all.json --filter "$root/src/$1/" --print-summary \
    --fail-under-line "$2" --fail-under-branch "$3" -o report/"$1".txt) >"$log" 2>&1
}

number=0
status=0
echo '1..4'
while read -r folder lines branches; do
  number=$((number + 1))
  verdict=ok
  reached "$folder" "$lines" "$branches" || { verdict='not ok'; status=1; }
  echo "$verdict $number src/$folder: $lines % of lines, $branches % of branches"
  grep -E '^(lines|branches):' "$log" | sed 's/^/# /'
  [ "$verdict" = ok ] || sed 's/^/# /' "$build/report/$folder.txt"
done <<END
$wanted
END
exit "$status"
