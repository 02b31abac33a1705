#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What is read rather than drawn: --words and --say.   test-read-out.py PROGRAM ROOT"""

import json
import os
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
from command import numbers, refused, run  # noqa: E402
import tap  # noqa: E402


def words():
    done = run('--words')
    assert done.returncode == 0 and done.stderr == '', done.stderr
    return json.loads(done.stdout)['words']


def say(*changes):
    done = run('--say', *[part for change in changes for part in ('--set', change)])
    assert done.returncode == 0 and done.stderr == '', done.stderr
    assert done.stdout.endswith('.\n') and done.stdout.count('\n') == 1, done.stdout
    return done.stdout


def check_every_word_is_whole():
    ids = [word['id'] for word in words()]
    assert len(ids) > 50 and len(set(ids)) == len(ids)
    for word in words():
        assert word['word'].strip() and word['text'].strip().endswith('.'), word
        assert set(word['see']) <= set(ids) - {word['id']}, word


def check_every_number_has_its_word():
    explained = {name for word in words() for name in word['explains']}
    for name in numbers()['after']:
        assert name in explained or name in ('result', 'gutter_ft', 'board_at_ft'), name


def check_what_is_said_is_the_numbers():
    text, told = say('after.delivery.speed_mph=19'), numbers('after.delivery.speed_mph=19')
    for side in ('before', 'after'):
        assert f'board {told[side]["board_at_pins"]:.1f} at {told[side]["angle_at_pins_deg"]:.1f}°' in text, text
    assert told['difference']['hook_board'] < 0 and ' boards less.' in text, text
    assert 'steeper' not in text or told['difference']['angle_at_pins_deg'] > 0, text


def check_nothing_between_a_throw_and_itself():
    assert say().endswith('Difference: none that shows.\n')


def check_a_back_up_ball_is_not_flatter():
    """It hooks further to lower boards and comes in at a steeper slope: less and flatter would be the wrong words."""
    changes = ('delivery.axis_rotation_deg=-20', 'delivery.aim_board=24', 'after.delivery.axis_rotation_deg=-35')
    told = numbers(*changes)
    assert told['after']['angle_at_pins_deg'] < told['before']['angle_at_pins_deg'] < 0, told
    text = say(*changes)
    assert 'flatter' not in text and 'less' not in text and 'lower by' in text, text


def check_a_gutter_is_no_likeness():
    assert 'none that shows' not in say('after.delivery.aim_board=3')
    assert 'none that shows' not in say('delivery.aim_board=3')


def check_a_left_hander_hears_the_same():
    """Boards count from the bowler's own side; only the gutters change places."""
    for changes in ((), ('after.delivery.speed_mph=20', 'after.delivery.axis_tilt_deg=20')):
        assert say('delivery.hand=left', *changes) == say(*changes)
    gutter = 'after.delivery.aim_board=3'
    assert say('delivery.hand=left', gutter).replace('left gutter', 'right gutter') == say(gutter)


def check_with_another_command():
    assert run('--words', '--version').stdout == run('--words').stdout + run('--version').stdout
    assert refused(2, '--say=1') == '--say=1: no value was expected.'


sys.exit(tap.run())
