#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every command that writes a file: no room for it, or killed on the way; the old file or the new one is there, whole.

test-writers.py PROGRAM ROOT"""

import os
import resource
import signal
import subprocess
import sys
import time

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
from command import ENVIRONMENT, FOLDER, PROGRAM, run  # noqa: E402
import tap  # noqa: E402

SMALL = ('--size', '160x120')
WRITERS = {
    'picture.png': ('--picture', *SMALL),
    'picture.svg': ('--picture', *SMALL),
    'picture.pdf': ('--picture', *SMALL),
    'path.csv': ('--path',),
    'path.json': ('--path',),
    'clip.webp': ('--clip', *SMALL, '--fps', '5'),
    'handout.pdf': ('--handout',),
}
OLD = b'the old file\n'
# Bytes that a file may have where the disk is full; each of the files is larger.
ROOM = 64
# What the library of fonts says where there is no room for a list of them.
OF_FONTS = 'write cache'
# Moments at which each is killed, as shares of the time that the whole takes; most of the writing is at the end.
MOMENTS = (0.5, 0.8, 0.9, 0.95, 1.0)


def command(path):
    option, *rest = WRITERS[path.name]
    return [option, str(path), *rest]


def put_old(name):
    folder = FOLDER / f'of-{name}'
    folder.mkdir(exist_ok=True)
    path = folder / name
    path.write_bytes(OLD)
    return path


def little_room():
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (ROOM, ROOM))


def check_a_full_disk_leaves_the_old_file():
    for name in WRITERS:
        path = put_old(name)
        done = run(*command(path), preexec_fn=little_room)
        assert done.returncode == 3, f'{name}: {done.returncode}: {done.stderr}'
        said = [line for line in done.stderr.splitlines() if not line.startswith(OF_FONTS)]
        assert len(said) == 1 and 'File too large' in said[0], f'{name}: {done.stderr}'
        assert path.read_bytes() == OLD, name
        assert os.listdir(path.parent) == [name], os.listdir(path.parent)


def kill_at(path, seconds):
    with subprocess.Popen([PROGRAM, *command(path)], env=ENVIRONMENT, stdout=subprocess.DEVNULL,
                          stderr=subprocess.DEVNULL) as process:
        time.sleep(seconds)
        process.kill()


def check_whoever_is_killed_leaves_the_old_or_the_new_file():
    for name in WRITERS:
        path = put_old(name)
        begun = time.monotonic()
        done = run(*command(path))
        took = time.monotonic() - begun
        assert done.returncode == 0, f'{name}: {done.stderr}'
        new = path.read_bytes()
        assert len(new) > ROOM and new != OLD, name
        for moment in MOMENTS:
            path = put_old(name)
            kill_at(path, moment * took)
            assert path.read_bytes() in (OLD, new), f'{name} killed at {moment}'


sys.exit(tap.run())
