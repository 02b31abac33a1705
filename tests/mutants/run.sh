#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# run.sh [SCRATCH] [NAME...]
#
# Asks whether the tests of core would notice mistakes in it: makes each of core.tsv (or those named) in a copy of the
# tree, builds core and its tests there, and runs them until one fails. Prints TAP; a mistake that nothing notices is a
# failure. Takes some minutes, so that it is run by hand, after work on core or its tests. SCRATCH is
# build-tests/mutants unless told.

set -u

root=$(cd "$(dirname "$0")/../.." && pwd) || exit 1
scratch=${1:-$root/build-tests/mutants}
[ $# -eq 0 ] || shift
tree=$scratch/tree
build=$scratch/build
log=$scratch/log
list=$root/tests/mutants/core.tsv

git -C "$root" rev-parse HEAD >/dev/null || exit 1
mkdir -p "$tree" || exit 1
# What git has and what is not in it yet, but no builds.
(cd "$root" && git ls-files -co --exclude-standard -z | tar c --null -T - --ignore-failed-read 2>/dev/null) |
  tar x -C "$tree" || exit 1
# Else what the last run was stopped in the middle of would stay built.
touch "$tree"/src/core/*.[ch]
[ -f "$build/build.ninja" ] ||
  meson setup "$build" "$tree" -Dapp=false -Dreferences=enabled >"$log" 2>&1 || { cat "$log" >&2; exit 1; }

programs=$(ninja -C "$build" -t targets all | sed -n 's/^\(tests\/core\/test-[a-z-]*\): .*/\1/p')
names=$(printf '%s\n' $programs | sed 's/.*\/test-//')

make_tests ()
{
  # Each program is a word of its own.
  # shellcheck disable=SC2086
  ninja -C "$build" $programs >"$log" 2>&1
}

# Runs tests of core: fails where one of them does.
# shellcheck disable=SC2086
passes ()
{
  meson test -C "$build" --no-rebuild -t 5 --suite core "$@" >"$log" 2>&1
}

make_tests || { cat "$log" >&2; exit 1; }
passes --maxfail 1 $names || { cat "$log" >&2; echo "Bail out! The tests of core fail without a mistake in it"; exit 1; }

# NAME FILE EXPRESSION: 0 if the tests notice, 1 if not, 2 if the mistake cannot be made
try ()
{
  cp "$root/src/core/$2" "$scratch/original" && sed "$3" "$scratch/original" >"$tree/src/core/$2"
  changed=$(diff "$scratch/original" "$tree/src/core/$2" | grep -c '^>')
  verdict=2
  if [ "$changed" -eq 1 ] && make_tests; then
    verdict=1
    passes "$4" || { verdict=0; noticed=$4; }
    [ "$verdict" -eq 0 ] || passes --maxfail 1 $names || { verdict=0; noticed=$(sed -n 's/.*core \/ \([a-z-]*\) *\(FAIL\|ERROR\|TIMEOUT\).*/\1/p' "$log" | head -n 1); }
  fi
  # A new time, so that the next build sees it.
  cp "$scratch/original" "$tree/src/core/$2"
  return "$verdict"
}

tab=$(printf '\t')
number=0
status=0
grep -v '^#' "$list" >"$scratch/list"
while IFS=$tab read -r name file expression first; do
  [ $# -eq 0 ] || case " $* " in *" $name "*) ;; *) continue ;; esac
  number=$((number + 1))
  noticed=
  try "$name" "$file" "$expression" "$first"
  case $? in
    0) echo "ok $number $name: noticed by ${noticed:-another test}" ;;
    1) echo "not ok $number $name: nothing notices"; status=1 ;;
    *) echo "not ok $number $name: changes $changed lines of $file, or does not build"; status=1 ;;
  esac
done <"$scratch/list"
echo "1..$number"
exit "$status"
