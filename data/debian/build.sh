#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# sh data/debian/build.sh [FOLDER]
#
# Builds the Debian package of what is committed, in FOLDER (build-package/ unless told), and prints the package's name.
# Debian's tools want their files in a folder debian/ on top of the source, so they are put there in a copy.

set -eu

root=$(cd "$(dirname "$0")/../.." && pwd)
folder=${1:-$root/build-package}
version=$(sed -n "s/^  version: '\(.*\)',$/\1/p" "$root/meson.build")
source=$folder/tenboard-$version

rm -rf "$folder"
mkdir -p "$source"
if git -C "$root" rev-parse --git-dir >/dev/null 2>&1; then
  git -C "$root" archive HEAD | tar -x -C "$source"
else
  (cd "$root" && tar -c --exclude=./build\* .) | tar -x -C "$source"
fi
cp -R "$source/data/debian" "$source/debian"
rm "$source/debian/build.sh"
(cd "$source" && dpkg-buildpackage --build=binary --no-sign) >"$folder/build.log" 2>&1 || {
  tail -n 40 "$folder/build.log" >&2
  echo "The package was not built; the whole log is $folder/build.log" >&2
  exit 1
}
echo "$folder"/tenboard_"$version"-*.deb
