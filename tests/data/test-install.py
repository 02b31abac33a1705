#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What is installed, and that nothing of it stays behind.   test-install.py BUILD APP-ID"""

import atexit
import os
import pathlib
import shutil
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
import tap

BUILD, APP_ID = sys.argv[1:3]
FOLDER = tempfile.mkdtemp(prefix='tenboard-test-')
atexit.register(shutil.rmtree, FOLDER)


def files():
    return sorted(path.relative_to(FOLDER).as_posix() for path in pathlib.Path(FOLDER).rglob('*') if not path.is_dir())


def check_everything_is_installed():
    done = tap.command('meson', 'install', '-C', BUILD, '--no-rebuild', '--destdir', FOLDER)
    assert done.returncode == 0, done.stdout + done.stderr
    for ending in ('bin/tenboard', f'applications/{APP_ID}.desktop', f'metainfo/{APP_ID}.metainfo.xml',
                   f'mime/packages/{APP_ID}.xml', f'schemas/{APP_ID}.gschema.xml', f'scalable/apps/{APP_ID}.svg',
                   f'symbolic/apps/{APP_ID}-symbolic.svg', 'de/LC_MESSAGES/tenboard.mo'):
        assert any(name.endswith(ending) for name in files()), f'{ending} is not installed'


def check_nothing_else_is_installed():
    strangers = [name for name in files() if 'tenboard' not in name.lower()]
    assert not strangers, strangers


def check_what_is_taken_away_is_gone():
    done = tap.command('env', f'DESTDIR={FOLDER}', 'ninja', '-C', BUILD, 'uninstall')
    assert done.returncode == 0, done.stdout + done.stderr
    assert not files(), files()


sys.exit(tap.run())
