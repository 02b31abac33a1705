#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Where numbers are written with a comma: what programs read keeps the point, and files are read and written alike."""

import os
import pathlib
import subprocess
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
import tap  # noqa: E402
import command  # noqa: E402

# The same in comma-locale.h.
LOCALE = 'de_DE.UTF-8'
FOLDER = pathlib.Path(tempfile.mkdtemp(prefix='locale-', dir=command.FOLDER))
# The messages stay as they are: only numbers are looked at.
COMMA = {'LC_ALL': LOCALE, 'LOCPATH': str(FOLDER), 'LANGUAGE': 'C'}
POINT = {'LC_ALL': 'C.UTF-8'}


def has_locale():
    try:
        subprocess.run(['localedef', '-i', 'de_DE', '-f', 'UTF-8', FOLDER / LOCALE], check=False,
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        told = subprocess.run(['locale', 'decimal_point'], env={**os.environ, **COMMA}, check=False,
                              stdout=subprocess.PIPE, encoding='utf-8').stdout
    except FileNotFoundError:
        return False
    return told.strip() == ','


def same_output(*arguments):
    with_comma = command.run(*arguments, environment=COMMA)
    with_point = command.run(*arguments, environment=POINT)
    assert with_comma.returncode == with_point.returncode, with_comma.stderr
    assert with_comma.stdout == with_point.stdout
    assert with_comma.stderr == with_point.stderr
    return with_point


def check_what_is_printed():
    changes = command.settings(['after.delivery.speed_mph=18.5'])
    for option in (['--numbers'], ['--why'], ['--next', 'boards=-2.5'], ['--constants'], ['--help']):
        assert same_output(*option, *(changes if option[0] in ('--numbers', '--why', '--next') else ())).returncode == 0


def check_what_is_refused():
    done = same_output('--numbers', *command.settings(['delivery.speed_mph=99.5']))
    assert done.returncode == 2
    # The point is the one decimal mark of the command line, as of files.
    assert same_output('--numbers', *command.settings(['delivery.speed_mph=17,5'])).returncode == 2


def check_files():
    for name in ('path.csv', 'path.json'):
        texts = []
        for environment in (COMMA, POINT):
            out = command.FOLDER / name
            done = command.run('--path', out, environment=environment)
            assert done.returncode == 0, done.stderr
            texts.append(out.read_text(encoding='utf-8'))
        assert texts[0] == texts[1], name


def check_a_study_is_read():
    study = command.ROOT / 'tests' / 'data' / 'study-version-1.json'
    assert same_output('--numbers', study).returncode == 0


if has_locale():
    sys.exit(tap.run())
print('1..0 # SKIP no sources of locales (Debian package locales)')
