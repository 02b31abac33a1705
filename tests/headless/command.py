# SPDX-License-Identifier: GPL-3.0-or-later
"""The program as a user runs it, without a display and with a data folder of its own."""

import atexit
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

PROGRAM = pathlib.Path(sys.argv[1]).resolve()
ROOT = pathlib.Path(sys.argv[2])
FOLDER = pathlib.Path(tempfile.mkdtemp(prefix='tenboard-test-'))
DATA = FOLDER / 'data'
atexit.register(shutil.rmtree, FOLDER)

ENVIRONMENT = {name: value for name, value in os.environ.items() if name not in ('DISPLAY', 'WAYLAND_DISPLAY')}
ENVIRONMENT.update({'XDG_DATA_HOME': str(DATA), 'XDG_CONFIG_HOME': str(FOLDER / 'config'), 'HOME': str(FOLDER)})


def run(*arguments, environment=None, **options):
    """What the program did: returncode, stdout and stderr."""
    options.setdefault('stdout', subprocess.PIPE)
    return subprocess.run([PROGRAM, *map(str, arguments)], stderr=subprocess.PIPE, encoding='utf-8',
                          env={**ENVIRONMENT, **(environment or {})}, check=False, **options)


def settings(changes):
    """--set for each item of a list of KEY=VALUE."""
    return [word for change in changes for word in ('--set', change)]


def numbers(*changes, study=()):
    """What --numbers prints, as an object."""
    done = run('--numbers', *study, *settings(changes))
    assert done.returncode == 0, done.stderr
    assert done.stderr == '', done.stderr
    return json.loads(done.stdout)


def refused(status, *arguments):
    """The one sentence with which the program refuses."""
    done = run(*arguments)
    assert done.returncode == status, f'{arguments}: {done.returncode} instead of {status}: {done.stderr}'
    assert done.stdout == '', done.stdout
    lines = done.stderr.splitlines()
    assert len(lines) == 1 and lines[0].startswith('tenboard: ') and lines[0].endswith('.'), done.stderr
    return lines[0].removeprefix('tenboard: ')


def near(name, value, expected, bound):
    assert abs(value - expected) <= bound, f'{name} is {value}, not {expected} within {bound}'
