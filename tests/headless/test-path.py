#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""--path: tables of where the balls are.   test-path.py PROGRAM ROOT"""

import csv
import json
import os
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
from command import FOLDER, near, numbers, refused, run, settings  # noqa: E402
import tap  # noqa: E402

CHANGES = ['after.delivery.speed_mph=19']


def table(name):
    path = FOLDER / name
    done = run('--path', path, *settings(CHANGES))
    assert done.returncode == 0 and done.stderr == '' and done.stdout == '', done.stderr
    with path.open(encoding='utf-8', newline='') as file:
        if path.suffix == '.json':
            return json.load(file)
        rows = {'before': [], 'after': []}
        for row in csv.DictReader(file):
            rows[row.pop('run')].append({key: value if key == 'phase' else float(value) for key, value in row.items()})
        return rows


def check_both_forms_say_the_same():
    assert table('path.csv') == table('path.json')


def check_the_ends_are_those_of_the_numbers():
    figures = numbers(*CHANGES)
    for side, rows in table('path.csv').items():
        near('time', rows[-1]['time_s'], figures[side]['time_s'], 1e-6)
        near('board', rows[-1]['board'], figures[side]['board_at_pins'], 1e-6)
        near('revolutions', rows[-1]['revolutions'], figures[side]['revolutions'], 1e-6)
        near('angle', rows[-1]['heading_deg'], figures[side]['angle_at_pins_deg'], 1e-6)


def check_time_and_place_go_forwards():
    for rows in table('path.csv').values():
        assert rows[0]['time_s'] == 0
        for one, next_one in zip(rows, rows[1:]):
            assert one['time_s'] < next_one['time_s'] <= one['time_s'] + 0.0100001
            assert one['distance_ft'] < next_one['distance_ft']
        assert {row['phase'] for row in rows} == {'flight', 'slide', 'roll'}


def check_what_cannot_be_written():
    refused(2, '--path', FOLDER / 'path.txt')
    (FOLDER / 'folder.csv').mkdir()
    refused(3, '--path', FOLDER / 'folder.csv')


sys.exit(tap.run())
