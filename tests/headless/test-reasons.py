#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""--why, --pocket-line and --next as a user types them.   test-reasons.py PROGRAM ROOT"""

import json
import os
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
from command import near, numbers, refused, run, settings  # noqa: E402
import tap  # noqa: E402

SPLITS = ['board_at_pins', 'angle_at_pins_deg', 'breakpoint_ft']


def answer(*arguments, changes=()):
    done = run(*arguments, *settings(changes))
    assert done.returncode == 0 and done.stderr == '', done.stderr
    return json.loads(done.stdout)


def check_parts_add_up():
    for changes in (['after.delivery.speed_mph=19'],
                    ['after.delivery.aim_board=14', 'after.ball.grit=1000', 'before.ball.cover=plastic'],
                    ['after.delivery.rev_rate_rpm=400', 'after.lane.pattern_scale=0.6', 'after.delivery.axis_tilt_deg=25']):
        why, told = answer('--why', changes=changes), numbers(*changes)
        for split in SPLITS:
            difference = why[split]['difference']
            near(split, difference, told['difference'][split], 1e-6)
            near(split + ' by input', sum(why[split]['by_input'].values()), difference, 1e-3)
        for split in SPLITS[:2]:
            near(split + ' by stretch', sum(part['part'] for part in why[split]['by_stretch']), why[split]['difference'], 1e-3)


def check_inputs_are_named_by_their_fields():
    why = answer('--why', changes=['after.delivery.speed_mph=19', 'after.ball.cover=plastic'])
    assert list(why['board_at_pins']['by_input']) == ['speed_mph', 'cover']
    assert [part.get('name') for part in why['board_at_pins']['by_stretch']] == ['launch-line', 'front', 'middle', 'back']


def check_stretches_can_be_finer():
    why = answer('--why', '--stretch', 5, changes=['after.delivery.speed_mph=19'])
    stretches = why['board_at_pins']['by_stretch'][1:]
    assert [part['from_ft'] for part in stretches] == list(range(0, 60, 5))
    near('sum', sum(part['part'] for part in stretches), why['board_at_pins']['difference'], 1e-3)


def check_nothing_explains_nothing():
    why = answer('--why')
    assert why['board_at_pins']['difference'] == 0 and why['board_at_pins']['by_input'] == {}
    assert why['sentences'] == ['Nothing has changed: both throws are the same.']


def check_a_ball_in_the_gutter_is_said_to_be_there():
    why = answer('--why', changes=['after.delivery.aim_board=8'])
    assert why['gutter_ft']['before'] is None and why['gutter_ft']['after'] > 20
    assert any('in the gutter' in sentence for sentence in why['sentences'])


def check_plain_text():
    text = run('--why', '--format', 'text', '--set', 'after.delivery.speed_mph=19').stdout
    assert 'boards lower than before' in text and '{' not in text
    text = run('--next', 'boards=-3', '--format=text').stdout
    assert 'to the left' in text and '{' not in text
    text = run('--pocket-line', '--format', 'text').stdout
    assert text.startswith('Before, ') and '{' not in text


def check_pocket_lines_end_in_the_pocket():
    lines = answer('--pocket-line')
    for side in ('before', 'after'):
        assert lines[side]['pocket'] == [16.5, 18.5]
        assert lines[side]['laydown_held'] and lines[side]['aim_held']
        for hold in ('laydown_held', 'aim_held', 'breakpoint_held'):
            for line in lines[side][hold]:
                told = numbers(f'delivery.laydown_board={line["laydown_board"]}', f'delivery.aim_board={line["aim_board"]}')
                near(hold, told['after']['board_at_pins'], 17.5, 0.05)
                near(hold, told['after']['angle_at_pins_deg'], line['angle_at_pins_deg'], 1e-3)
                assert line['room_out_boards'] > 0 and line['room_in_boards'] > 0


def check_options_meet_the_wish_when_thrown():
    told = answer('--next', 'boards=-2')
    met = [option for option in told['options'] if option['reach'] == 'met' and option['knob'] not in ('other-ball', 'cover')]
    assert len(met) >= 8, [option['knob'] for option in met]
    for option in met:
        changes = [f'delivery.laydown_board=24'] + [f'{key}={to!r}' for key, (_, to) in option['change'].items()]
        near(option['knob'], numbers(*changes)['after']['board_at_pins'], told['target'], 0.05)
        assert option['effort'] > 0 and option['text']
        assert option['rules']['practice'] == 'allowed' or option['knob'].startswith('loft')
        assert option['rules']['competition'] == ('not-allowed' if option['knob'].startswith('surface') else
                                                  option['rules']['competition'])


def check_options_can_be_judged_on_the_pocket_line():
    told = answer('--next', 'turn=2', '--line', 'pocket')
    assert told['line'] == 'pocket' and told['options']
    for option in told['options']:
        near(option['knob'], option['effects']['board_at_pins'][1], 17.5, 0.05)
    assert answer('--next', 'turn=2', '--line', 'same')['line'] == 'same'


def check_what_makes_no_sense_is_refused():
    assert 'is no wish' in refused(2, '--next', 'nonsense')
    assert 'takes a number' in refused(2, '--next', 'boards=many')
    assert '1 to 60' in refused(2, '--why', '--stretch', '0')
    assert 'json or text' in refused(2, '--why', '--format', 'xml')
    assert 'same or pocket' in refused(2, '--next', 'pocket', '--line', 'x')
    assert 'go with' in refused(2, '--numbers', '--format', 'text')
    assert 'expected after it' in refused(2, '--next')


sys.exit(tap.run())
