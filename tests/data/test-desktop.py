#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The files that tell a desktop about the program agree with each other.

test-desktop.py ROOT BUILD VERSION APP-ID
"""

import configparser
import os
import pathlib
import shutil
import struct
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
import tap

ROOT, BUILD, VERSION, APP_ID = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2]), sys.argv[3], sys.argv[4]
DATA = ROOT / 'data'
MIME_TYPE = 'application/x-tenboard-study+json'
# What a picture may weigh, so that a page with all of them opens at once.
PICTURE_BYTES = 250_000


def desktop_entry():
    parser = configparser.ConfigParser(interpolation=None, strict=True)
    parser.optionxform = str
    parser.read(BUILD / 'data' / f'{APP_ID}.desktop', encoding='utf-8')
    return parser['Desktop Entry']


def metainfo():
    return ElementTree.parse(BUILD / 'data' / f'{APP_ID}.metainfo.xml').getroot()


def check_the_desktop_file_starts_the_program_with_a_file():
    assert desktop_entry()['Exec'] == 'tenboard %f'


def check_the_icon_is_there_in_both_kinds():
    assert desktop_entry()['Icon'] == APP_ID
    for name in (f'{APP_ID}.svg', f'{APP_ID}-symbolic.svg'):
        root = ElementTree.parse(DATA / 'icons' / name).getroot()
        assert root.tag.endswith('svg') and root.get('viewBox'), name


def check_the_symbolic_icon_has_nothing_but_filled_shapes():
    # Recolouring fills every shape, so a stroke would come out as a blot.
    root = ElementTree.parse(DATA / 'icons' / f'{APP_ID}-symbolic.svg').getroot()
    assert not [node.tag for node in root.iter() if node.get('stroke')]


def check_the_newest_release_is_this_version():
    releases = metainfo().findall('releases/release')
    assert releases and releases[0].get('version') == VERSION, 'the first release of the metainfo is not ' + VERSION


def check_the_metainfo_belongs_to_the_desktop_file():
    assert metainfo().findtext('id') == APP_ID
    assert metainfo().findtext('launchable') == f'{APP_ID}.desktop'


def png_size(path):
    """Width and height, which every PNG begins with."""
    head = path.read_bytes()[:24]
    assert head[:8] == b'\x89PNG\r\n\x1a\n' and head[12:16] == b'IHDR', f'{path.name} is no PNG'
    return struct.unpack('>II', head[16:24])


def check_the_screenshots_are_those_in_the_tree():
    images = {os.path.basename(image.text): image for image in metainfo().iter('image')}
    pictures = sorted(path.name for path in (DATA / 'screenshots').iterdir())
    assert sorted(images) == pictures, f'told {sorted(images)}, there {pictures}'
    for name, image in images.items():
        path = DATA / 'screenshots' / name
        assert png_size(path) == (int(image.get('width')), int(image.get('height'))), f'{name} is {png_size(path)}'
        assert path.stat().st_size < PICTURE_BYTES, f'{name} is too large to wait for'


def check_every_screenshot_has_its_words_and_one_comes_first():
    shots = metainfo().findall('screenshots/screenshot')
    assert all(shot.findtext('caption') for shot in shots)
    assert [shot.get('type') for shot in shots].count('default') == 1


def check_desktop_file_and_metainfo_name_the_study_type():
    assert desktop_entry()['MimeType'].rstrip(';') == MIME_TYPE
    assert metainfo().findtext('provides/mediatype') == MIME_TYPE


def check_the_study_type_is_found_by_its_file_name():
    with tempfile.TemporaryDirectory() as folder:
        packages = pathlib.Path(folder) / 'packages'
        packages.mkdir()
        shutil.copy(DATA / f'{APP_ID}.mime.xml', packages / f'{APP_ID}.xml')
        done = tap.command('update-mime-database', folder)
        assert done.returncode == 0 and 'rror' not in done.stderr, done.stderr
        globs = (pathlib.Path(folder) / 'globs2').read_text(encoding='utf-8')
        assert f'50:{MIME_TYPE}:*.tenboard\n' in globs, globs


sys.exit(tap.run())
