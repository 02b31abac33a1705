#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""--clip: the files it makes and leaves alone.   test-clip.py PROGRAM ROOT"""

import math
import os
import struct
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
from command import FOLDER, numbers, refused, run, settings  # noqa: E402
import tap  # noqa: E402

CHANGES = ['after.delivery.speed_mph=19']
# Small and coarse, since what is looked at here is not the pictures.
QUICK = ('--size', '160x120', '--fps', '10')
HOLD_MS = 1000


def little(data):
    return int.from_bytes(data, 'little')


def chunks(data):
    """The parts of a WebP file: name and content (WebP Container Specification)."""
    assert data[:4] == b'RIFF' and data[8:12] == b'WEBP' and little(data[4:8]) + 8 == len(data)
    at = 12
    while at < len(data):
        size = little(data[at + 4:at + 8])
        yield data[at:at + 4], data[at + 8:at + 8 + size]
        at += 8 + size + size % 2


def clip(name, *arguments):
    """Width, height, times round (0: for ever) and how long each picture stands, ms."""
    path = FOLDER / name
    done = run('--clip', path, *arguments)
    assert done.returncode == 0 and done.stderr == '' and done.stdout == '', done.stderr
    parts = list(chunks(path.read_bytes()))
    assert parts[0][0] == b'VP8X' and parts[1][0] == b'ANIM', [name for name, content in parts]
    size = parts[0][1]
    loops = struct.unpack('<H', parts[1][1][4:6])[0]
    durations = [little(content[12:15]) for name, content in parts if name == b'ANMF']
    return little(size[4:7]) + 1, little(size[7:10]) + 1, loops, durations


def check_size_and_length():
    figures = numbers(*CHANGES)
    longest = max(figures['before']['time_s'], figures['after']['time_s'])
    for rate, fps in ((1, 10), (0.5, 10), (0.25, 7)):
        width, height, loops, durations = clip('a.webp', *settings(CHANGES), '--size', '160x120', '--fps', fps,
                                               '--rate', f'{rate:g}')
        moving = math.ceil(longest / rate * fps)
        assert (width, height, loops) == (160, 120, 0)
        assert len(durations) == moving + 1, (len(durations), moving)
        assert sum(durations) == round(moving * 1000 / fps) + HOLD_MS, (sum(durations), moving)
        assert durations[-1] == HOLD_MS


def check_pictures_follow_as_usual():
    width, height, loops, durations = clip('usual.webp', '--size', '160x120')
    assert (width, height, loops) == (160, 120, 0)
    assert set(durations[:-1]) == {40}
    assert sum(durations) == 40 * math.ceil(25 * numbers()['after']['time_s']) + HOLD_MS


def check_views_differ():
    views = ('lane', 'plan', 'approach', 'ball', 'ball-side', 'loft', 'both')
    for view in views:
        clip(f'{view}.webp', '--view', view, *QUICK)
    assert len({(FOLDER / f'{view}.webp').read_bytes() for view in views}) == len(views)


def check_the_same_clip_every_time():
    clip('one.webp', *QUICK)
    clip('two.webp', *QUICK)
    assert (FOLDER / 'one.webp').read_bytes() == (FOLDER / 'two.webp').read_bytes()


def check_options_that_will_not_do():
    for arguments, sentence in {
            ('--clip', 'x.gif'): '--clip x.gif: a name that ends in .webp was expected.',
            ('--clip', 'x.webp', '--rate', '2'): '--rate 2: 1, 0.5 or 0.25 was expected.',
            ('--clip', 'x.webp', '--fps', '4'): '--fps 4: a whole number from 5 to 60 was expected.',
            ('--clip', 'x.webp', '--fps', '61'): '--fps 61: a whole number from 5 to 60 was expected.',
            ('--clip', 'x.webp', '--fps', '2.5'): '--fps 2.5: a whole number from 5 to 60 was expected.',
            ('--clip', 'x.webp', '--size', '1921x100'):
                'x.webp: A clip is 1 to 1920 pixels wide and high, not 1921 × 100.',
            ('--picture', 'x.png', '--rate', '1'): '--rate and --fps go with --clip.',
            ('--numbers', '--fps', '25'): '--rate and --fps go with --clip.',
    }.items():
        said = refused(2, *arguments)
        assert said == sentence, said
    assert not os.path.exists('x.webp')


def check_a_throw_that_is_too_long():
    said = refused(2, '--clip', FOLDER / 'long.webp', '--rate', '0.25', '--fps', '60', *settings(
        ['delivery.speed_mph=5', 'delivery.axis_rotation_deg=0']))
    assert said.endswith('at most 1000 pictures; this throw is too long for 60 a second at that speed of time.'), said
    assert not (FOLDER / 'long.webp').exists()


def check_what_cannot_be_written():
    (FOLDER / 'folder.webp').mkdir()
    (FOLDER / 'full.webp').symlink_to('/dev/full')
    for name in ('folder.webp', 'full.webp'):
        said = refused(3, '--clip', FOLDER / name, *QUICK)
        assert said == f'{FOLDER / name}: the file cannot be saved: there is something that is not an ordinary file.'
    said = refused(3, '--clip', FOLDER / 'nowhere' / 'x.webp', *QUICK)
    assert said == f'{FOLDER / "nowhere" / "x.webp"}: the file cannot be saved: No such file or directory.', said


def check_an_old_file_is_left_alone():
    path = FOLDER / 'old.webp'
    path.write_bytes(b'old')
    refused(2, '--clip', path, '--set', 'delivery.speed_mph=99')
    refused(3, '--clip', path, FOLDER / 'none.json')
    assert path.read_bytes() == b'old'
    assert not [name for name in os.listdir(FOLDER) if name.startswith('.tenboard-')]


sys.exit(tap.run())
