#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What the model assumes, as --constants prints it, is what the program runs on.   test-constants.py PROGRAM ROOT"""

import json
import os
import re
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
from command import ROOT, near, numbers, refused, run  # noqa: E402
import tap  # noqa: E402

TABLE = re.compile(r'^  \{ "(\w+)", N_ \(', re.MULTILINE)


def constants():
    done = run('--constants')
    assert done.returncode == 0 and done.stderr == '', done.stderr
    return json.loads(done.stdout)


def check_every_constant_of_the_table():
    source = (ROOT / 'src' / 'core' / 'tb-assumed.c').read_text(encoding='utf-8')
    expected = TABLE.findall(source)
    assert len(expected) > 10
    assert [row['name'] for row in constants()['constants']] == expected


def check_every_constant_is_whole():
    for row in constants()['constants']:
        assert row['low'] <= row['value'] <= row['high'] and row['low'] < row['high'], row
        for key in ('label', 'source', 'consequence'):
            assert row[key].strip(), row


def check_covers_and_grits():
    printed = constants()
    assert [row['name'] for row in printed['covers']] == [
        'plastic', 'urethane', 'reactive-pearl', 'reactive-hybrid', 'reactive-solid']
    for row in printed['covers']:
        assert row['source'] == 'assumed' and 0 < row['dry_friction'] < 0.32 and row['film_scale'] > 0, row
    rough = [row['roughness_um'] for row in printed['grits']]
    assert [row['grit'] for row in printed['grits']] == [500, 1000, 2000, 3000, 4000, 'polish']
    assert rough == sorted(rough, reverse=True) and rough[-1] > 0, rough
    assert all(row['source'] == 'typical, not measured' for row in printed['grits'])


def check_the_program_runs_on_them():
    """Set to what is printed, a constant changes nothing; set to another value of its range, some of them do."""
    plain = numbers()['after']['board_at_pins']
    moved = 0
    for row in constants()['constants']:
        key = f'assumed.{row["name"]}'
        near(key, numbers(f'{key}={row["value"]}')['after']['board_at_pins'], plain, 1e-9)
        moved += abs(numbers(f'{key}={row["low"]}')['after']['board_at_pins'] - plain) > 0.01
    assert moved >= 3, moved


def check_with_another_command():
    assert run('--constants', '--version').stdout == run('--constants').stdout + run('--version').stdout
    assert refused(2, '--constants=1') == '--constants=1: no value was expected.'


sys.exit(tap.run())
