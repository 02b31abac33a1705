#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# package.sh [FOLDER]
#
# Builds the Debian package of what is committed, unpacks it, and tries what it holds. Prints TAP.

set -u

root=$(cd "$(dirname "$0")/.." && pwd) || exit 1
folder=${1:-$root/build-tests/package}
unpacked=$folder/unpacked
number=0
status=0

# NAME COMMAND...
check ()
{
  name=$1
  shift
  number=$((number + 1))
  if "$@" >"$folder.log" 2>&1; then
    echo "ok $number $name"
  else
    echo "not ok $number $name"
    sed 's/^/# /' "$folder.log" | tail -n 20
    status=1
  fi
}

builds ()
{
  package=$(sh "$root/data/debian/build.sh" "$folder") && [ -f "$package" ]
}

holds ()
{
  for path in bin/tenboard share/applications/io.github.tenboard.Tenboard.desktop \
    share/metainfo/io.github.tenboard.Tenboard.metainfo.xml share/mime/packages/io.github.tenboard.Tenboard.xml \
    share/glib-2.0/schemas/io.github.tenboard.Tenboard.gschema.xml share/doc/tenboard/copyright \
    share/icons/hicolor/scalable/apps/io.github.tenboard.Tenboard.svg; do
    [ -f "$unpacked/usr/$path" ] || { echo "without $path"; return 1; }
  done
  grep -v '^#' "$root/po/LINGUAS" | while read -r language; do
    [ -f "$unpacked/usr/share/locale/$language/LC_MESSAGES/tenboard.mo" ] || { echo "without $language"; exit 1; }
  done
}

# Nothing where a package has no business, nothing that is this machine's.
holds_no_more ()
{
  ! (cd "$unpacked" && find . -type f ! -path './usr/bin/tenboard' ! -path './usr/share/*' | grep .) \
    && ! grep -q "$root" "$unpacked/usr/bin/tenboard"
}

same_version ()
{
  version=$(dpkg-deb -f "$package" Version) && grep -q "version: '${version%-*}'" "$root/meson.build"
}

throws ()
{
  "$unpacked/usr/bin/tenboard" --numbers | grep -q '"board_at_pins"'
}

depends ()
{
  dpkg-deb -f "$package" Depends | grep 'libgtk-4-1' | grep 'libgsl27' | grep -q 'libjson-glib'
}

mkdir -p "$folder" || exit 1
echo '1..7'
check 'the package builds' builds
check 'it can be unpacked' dpkg-deb -x "${package:-none}" "$unpacked"
check 'it holds program, desktop files and translations' holds
check 'and nothing else' holds_no_more
check 'its version is the program'"'"'s' same_version
check 'it names the libraries it needs' depends
check 'the program in it throws a ball' throws
exit "$status"
