#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""--picture: the files it makes and leaves alone.   test-picture.py PROGRAM ROOT"""

import os
import struct
import sys
import xml.etree.ElementTree

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
from command import FOLDER, ROOT, refused, run  # noqa: E402
import tap  # noqa: E402


def draw(name, *arguments):
    path = FOLDER / name
    done = run('--picture', path, *arguments)
    assert done.returncode == 0 and done.stderr == '' and done.stdout == '', done.stderr
    return path.read_bytes()


def png_size(data):
    assert data[:8] == b'\x89PNG\r\n\x1a\n'
    return struct.unpack('>II', data[16:24])


def check_sizes():
    assert png_size(draw('plain.png')) == (1280, 800)
    assert png_size(draw('small.png', '--size', '320x240')) == (320, 240)
    for view in ('lane', 'ball', 'loft', 'both'):
        for size in ('16x16', '16x900', '900x16'):
            draw('tiny.png', '--view', view, '--size', size)


def check_views_differ():
    views = ('plan', 'sideways', 'approach', 'ball', 'ball-side', 'loft', 'both')
    pictures = {view: draw(f'{view}.png', '--view', view, '--size', '400x300') for view in views}
    assert len(set(pictures.values())) == len(pictures)
    assert draw('default.png', '--size', '400x300') == pictures['sideways']
    assert draw('lane.png', '--view', 'lane', '--size', '400x300') == pictures['sideways']
    assert draw('lane.png', '--size', '300x400') == draw('plan.png', '--view', 'plan', '--size', '300x400')


def check_svg():
    root = xml.etree.ElementTree.fromstring(draw('lane.svg', '--size', '500x900'))
    assert root.tag.endswith('svg')
    # A pixel is 1/96 in, a point 1/72 in.
    assert root.get('viewBox') == '0 0 375 675', root.attrib


def check_a_change_is_seen():
    assert draw('slow.png', '--size', '400x300') != \
        draw('fast.png', '--size', '400x300', '--set', 'after.delivery.speed_mph=21')


def check_the_same_picture_every_time():
    assert draw('one.png', '--view', 'both') == draw('two.png', '--view', 'both')


def check_a_study_from_a_file():
    study = ROOT / 'tests' / 'data' / 'study-version-1.json'
    assert draw('study.png', study) != draw('start.png')


def check_numbers_too():
    path = FOLDER / 'with-numbers.png'
    done = run('--numbers', '--picture', path)
    assert done.stdout == run('--numbers').stdout
    assert png_size(path.read_bytes()) == (1280, 800)


def check_names_and_sizes_that_will_not_do():
    refused(2, '--picture', FOLDER / 'x.gif')
    refused(2, '--picture', FOLDER / 'x')
    refused(2, '--picture', FOLDER / 'x.png', '--size', '20000x100')
    assert not (FOLDER / 'x.png').exists()


def check_what_cannot_be_written():
    refused(3, '--picture', FOLDER / 'nowhere' / 'x.png')
    (FOLDER / 'folder.png').mkdir()
    refused(3, '--picture', FOLDER / 'folder.png')


def check_an_old_file_is_left_alone():
    path = FOLDER / 'old.png'
    path.write_bytes(b'old')
    refused(2, '--picture', path, '--set', 'delivery.speed_mph=99')
    refused(3, '--picture', path, FOLDER / 'none.json')
    assert path.read_bytes() == b'old'


sys.exit(tap.run())
