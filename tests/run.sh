#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# sh tests/run.sh
#
# Installs what is missing, then builds and runs everything without a display: with gcc and with
# Clang, warnings as errors; without the window; under the address and undefined-behaviour
# sanitizers; the threads under the thread sanitizer; counts what the tests reach; builds a package.
# Ends with a line "N passed, N failed"; the exit status is 0 only if nothing failed.
# The builds are kept in build-tests/, so that a second run is quick.

set -u

root=$(cd "$(dirname "$0")/.." && pwd) || exit 1
builds=${TENBOARD_TEST_BUILDS:-$root/build-tests}
report=$builds/report.tsv

. "$root/src/needs.sh"

# The suites that need no display, and those of a build with the window.
displayless=core,study,store,view,headless,data
everything=$displayless,app

# check LABEL COMPILER SUITES MESON-OPTIONS...
check ()
{
  label=$1
  compiler=$2
  suites=$3
  shift 3
  folder=$builds/$(printf '%s' "$label" | tr -c 'a-zA-Z0-9\n' -)
  log=$folder.log

  say ""
  say "== $label"
  rm -f "$folder/meson-logs/testlog.json"
  if ! { CC=$compiler setup "$folder" "$@" && ninja -C "$folder"; } >"$log" 2>&1; then
    grep -E -A 12 'error:|ERROR:|FAILED:' "$log" | head -n 80 >&2
    say "The build stopped; the whole log is $log"
    printf '%s\t%s\t\n' "$label" "$folder" >>"$report"
    return
  fi
  mkdir "$scratch/tmp"
  # Each suite is a word of its own. The time limits are for an idle machine; this may not be one.
  # shellcheck disable=SC2046
  TMPDIR=$scratch/tmp meson test -C "$folder" --no-rebuild --print-errorlogs -t 5 $(only "$suites") >&2
  printf '%s\t%s\t%s\n' "$label" "$folder" "$suites" >>"$report"
  check_tidy "$label" "$folder"
}

# check_tidy LABEL FOLDER: that the tests left no file behind where temporary files go. Empties it.
check_tidy ()
{
  left=$(ls -A "$scratch/tmp")
  {
    echo 1..1
    [ -z "$left" ] || printf 'not '
    echo 'ok 1 no temporary file is left behind'
  } >"$2.tidy.tap"
  [ -z "$left" ] || printf 'Left behind: %s\n' "$left" >&2
  rm -rf "$scratch/tmp"
  printf '%s\t%s\t%s\n' "$1: temporary files" "$2.tidy.tap" tidy >>"$report"
}

# check_script NAME: a test that is a script of its own, and prints TAP.
check_script ()
{
  say ""
  say "== $1"
  sh "$root/tests/$1.sh" "$builds/$1" >"$builds/$1.tap"
  grep -E '^(not )?ok|^# (lines|branches)' "$builds/$1.tap" >&2
  printf '%s\t%s\t%s\n' "$1" "$builds/$1.tap" "$1" >>"$report"
}

setup ()
{
  setup_folder=$1
  shift
  if [ -f "$setup_folder/build.ninja" ]; then
    meson setup --reconfigure "$setup_folder" "$root" "$@"
  else
    meson setup "$setup_folder" "$root" "$@"
  fi
}

# core,data -> --suite core --suite data
only ()
{
  printf '%s\n' "$1" | tr ',' '\n' | sed 's/^/--suite /'
}

install_missing needs_of_tests
mkdir -p "$builds" && : >"$report" || exit 1
# Where the tests put temporary files. Not in the builds: the name of a socket has to be short.
scratch=$(mktemp -d) || exit 1
trap 'rm -rf "$scratch"' EXIT
trap 'exit 130' INT
trap 'exit 143' TERM

check 'gcc' gcc "$everything" -Dwerror=true -Dreferences=enabled
check 'clang' clang "$displayless" -Dwerror=true -Dreferences=enabled
check 'gcc without the window' gcc "$displayless" -Dwerror=true -Dapp=false -Dreferences=enabled
# What the sanitizers add to the code makes gcc guess wrongly about uninitialised variables.
check 'gcc with sanitizers' gcc "$displayless" -Dwerror=false -Dapp=false -Dreferences=enabled \
  -Db_sanitize=address,undefined -Db_lundef=false -Dbuildtype=debug -Doptimization=1
# Only what starts threads: the rest would find nothing there, slowly.
check 'gcc with the thread sanitizer' gcc threads -Dwerror=false -Dapp=false -Db_sanitize=thread -Db_lundef=false \
  -Dbuildtype=debug -Doptimization=1
check_script coverage
check_script package

echo
python3 "$root/tests/summary.py" "$report"
