#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The flatpak manifest, as far as it can be checked without the runtime.   test-flatpak.py ROOT APP-ID

A real build needs org.gnome.Sdk from a remote. What is checked here is what goes wrong quietly: an
unknown key is only a warning to flatpak-builder, and a permission too many is no mistake to it at all.
"""

import json
import os
import pathlib
import re
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
import tap

ROOT, APP_ID = pathlib.Path(sys.argv[1]), sys.argv[2]
FOLDER = ROOT / 'flatpak'
MANIFEST = json.loads((FOLDER / f'{APP_ID}.json').read_text(encoding='utf-8'))

MANIFEST_KEYS = {'id', 'runtime', 'runtime-version', 'sdk', 'command', 'finish-args', 'modules'}
MODULE_KEYS = {'name', 'buildsystem', 'config-opts', 'sources'}
# A window, and the graphics card to draw it; files come through the desktop's own file dialog.
PERMISSIONS = {'--share=ipc', '--socket=fallback-x11', '--socket=wayland', '--device=dri'}


def check_the_manifest_has_no_unknown_key():
    assert set(MANIFEST) == MANIFEST_KEYS, set(MANIFEST) ^ MANIFEST_KEYS
    for module in MANIFEST['modules']:
        assert MODULE_KEYS <= set(module) <= MODULE_KEYS | {'cleanup'}, set(module) ^ MODULE_KEYS


def check_it_is_for_this_program():
    assert MANIFEST['id'] == APP_ID
    assert MANIFEST['command'] == 'tenboard'
    assert re.search(r"executable\('tenboard'", (ROOT / 'src' / 'meson.build').read_text(encoding='utf-8'))


def check_the_runtime_is_pinned():
    assert MANIFEST['runtime'] == 'org.gnome.Platform' and MANIFEST['sdk'] == 'org.gnome.Sdk'
    assert re.fullmatch(r'\d+', MANIFEST['runtime-version']), MANIFEST['runtime-version']


def check_the_permissions_are_the_least():
    assert set(MANIFEST['finish-args']) == PERMISSIONS, set(MANIFEST['finish-args']) ^ PERMISSIONS


def check_the_build_options_exist():
    known = set(re.findall(r"option\('([\w-]+)'", (ROOT / 'meson_options.txt').read_text(encoding='utf-8')))
    own = [module for module in MANIFEST['modules'] if module['name'] == 'tenboard']
    assert len(own) == 1 and own[0]['buildsystem'] == 'meson'
    for option in own[0]['config-opts']:
        name = re.fullmatch(r'-D([\w-]+)=\S+', option)
        assert name and name.group(1) in known, option


def check_libraries_that_the_runtime_lacks_are_brought():
    needed = set(re.findall(r"dependency\('(gsl)'", (ROOT / 'meson.build').read_text(encoding='utf-8')))
    assert needed and needed <= {module['name'] for module in MANIFEST['modules']}, needed


def check_every_source_is_here_or_pinned():
    for module in MANIFEST['modules']:
        for source in module['sources']:
            if source['type'] == 'dir':
                assert (FOLDER / source['path'] / 'meson.build').exists(), source
            else:
                assert source.get('commit') or source.get('sha256'), source


sys.exit(tap.run())
