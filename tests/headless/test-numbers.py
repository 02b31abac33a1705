#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""--numbers: what it prints, from what, and how --set changes it.   test-numbers.py PROGRAM ROOT"""

import json
import os
import subprocess
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
from command import DATA, FOLDER, PROGRAM, ROOT, numbers, refused, run, settings  # noqa: E402
import tap  # noqa: E402

MEASURES = [
    'board_at_arrows', 'breakpoint_board', 'breakpoint_ft', 'board_at_pins', 'angle_at_pins_deg', 'hook_board',
    'hook_start_ft', 'roll_start_ft', 'oil_exit_ft', 'oil_exit_board', 'time_in_oil_s', 'time_s',
    'speed_at_pins_mph', 'rev_rate_at_pins_rpm', 'revolutions', 'flare_in', 'ring_spacing_in', 'landing_ft',
    'landing_speed_mph', 'landing_load', 'landing_slowed_mph', 'landing_loss_j', 'actual_speed_mph', 'actual_rev_rate_rpm', 'gutter_ft']
MARKS = [str(feet) for feet in range(0, 61, 5)]
# Nothing of a ball that left the lane is known beyond it.
BEYOND = ['board_at_pins', 'angle_at_pins_deg', 'hook_board', 'roll_start_ft', 'time_s', 'speed_at_pins_mph',
          'rev_rate_at_pins_rpm', 'revolutions']


def check_every_key_is_there():
    answer = numbers()
    assert list(answer) == ['before', 'after', 'difference']
    for side in answer.values():
        assert set(side) == {*MEASURES, 'result', 'board_at_ft'}, set(side) ^ {*MEASURES, 'result', 'board_at_ft'}
        assert list(side['board_at_ft']) == MARKS
        for name in MEASURES:
            assert side[name] is None or isinstance(side[name], (int, float)), name


def check_before_and_after_are_alike_at_first():
    answer = numbers()
    assert answer['before'] == answer['after']
    assert answer['before']['result'] == 'pins' and answer['before']['gutter_ft'] is None
    assert answer['difference']['result'] is None
    for name in MEASURES[:-1]:
        assert answer['difference'][name] == (None if answer['after'][name] is None else 0), name


def check_the_difference_is_after_less_before():
    answer = numbers('after.delivery.speed_mph=19')
    for name in MEASURES:
        before, after = answer['before'][name], answer['after'][name]
        expected = None if before is None or after is None else after - before
        assert answer['difference'][name] == expected, name
    for mark in MARKS:
        assert answer['difference']['board_at_ft'][mark] == \
            answer['after']['board_at_ft'][mark] - answer['before']['board_at_ft'][mark]
    assert answer['before'] == numbers()['before']


def check_more_speed_means_less_hook():
    answer = numbers('after.delivery.speed_mph=19')
    assert answer['difference']['hook_board'] < -1, answer['difference']


def check_the_boards_agree_with_each_other():
    side = numbers()['after']
    assert side['board_at_ft']['15'] == side['board_at_arrows']
    assert side['board_at_ft']['60'] == side['board_at_pins']
    assert side['breakpoint_board'] <= min(side['board_at_ft'].values())
    # The launch line, from board 24 over board 16 at 15 ft, is 8 boards off the lane at 60 ft.
    assert abs(side['hook_board'] - (side['board_at_pins'] + 8)) < 1e-9


def check_a_ball_in_the_gutter():
    side = numbers('delivery.aim_board=5')['after']
    assert side['result'] == 'right-gutter'
    assert 15 < side['gutter_ft'] < 30
    assert side['board_at_arrows'] is not None
    for name in BEYOND:
        assert side[name] is None, name
    assert side['board_at_ft']['15'] is not None and side['board_at_ft']['30'] is None
    answer = numbers('after.delivery.aim_board=5')
    assert answer['difference']['board_at_pins'] is None
    assert answer['difference']['board_at_arrows'] is not None


def check_a_ball_in_the_other_gutter():
    side = numbers('delivery.laydown_board=37', 'delivery.aim_board=39', 'delivery.rev_rate_rpm=0')['after']
    assert side['result'] == 'left-gutter', side


def check_a_straight_ball():
    side = numbers('ball=spare-plastic', 'delivery.rev_rate_rpm=0', 'delivery.aim_board=22')['after']
    for name in ('breakpoint_board', 'breakpoint_ft', 'hook_start_ft'):
        assert side[name] is None, f'{name} is {side[name]}'
    assert side['result'] == 'pins' and abs(side['hook_board']) < 0.5


def check_a_left_hander_is_the_mirror_image():
    right, left = numbers()['after'], numbers('delivery.hand=left')['after']
    assert right == left
    gone = numbers('delivery.aim_board=5', 'delivery.hand=left')['after']
    assert gone['result'] == 'left-gutter'
    assert gone == {**numbers('delivery.aim_board=5')['after'], 'result': 'left-gutter'}


def check_the_last_change_wins():
    both = numbers('after.delivery.speed_mph=21', 'delivery.speed_mph=19')
    assert both['before'] == both['after'] == numbers('delivery.speed_mph=19')['after']
    one = numbers('delivery.speed_mph=21', 'after.delivery.speed_mph=19')
    assert one['after'] == both['after']
    assert one['before']['actual_speed_mph'] == 21


def check_a_cover_brings_its_numbers():
    fresh = numbers('ball.cover=plastic')['after']
    assert fresh == numbers('ball.dry_friction=0.3', 'ball.cover=plastic')['after']
    assert fresh != numbers('ball.cover=plastic', 'ball.dry_friction=0.3')['after']


def check_a_grit_sets_the_roughness():
    assert numbers('ball.grit=polish')['after'] == numbers('ball.grit=5000')['after']
    assert numbers('ball.grit=500', 'ball.roughness_uin=20')['after'] == numbers('ball.roughness_uin=20')['after']
    assert numbers('ball.grit=500')['after'] != numbers()['after']


def check_documents_by_their_id():
    ball = numbers('after.ball=spare-plastic', 'delivery.aim_board=20')
    assert ball['difference']['hook_board'] < 0
    assert numbers('after.lane.pattern=flat')['difference']['board_at_pins'] != 0
    junior = numbers('bowler=junior')['after']
    assert junior['actual_speed_mph'] == 9 and junior['result'] == 'pins'
    assert numbers('bowler=junior', 'delivery.speed_mph=10')['after']['actual_speed_mph'] == 10


def check_a_document_of_the_users():
    folder = DATA / 'tenboard' / 'balls'
    folder.mkdir(parents=True)
    text = (ROOT / 'data' / 'balls' / 'spare-plastic.json').read_text(encoding='utf-8')
    (folder / 'mine.json').write_text(text.replace('"spare-plastic"', '"mine"'), encoding='utf-8')
    assert numbers('ball=mine') == numbers('ball=spare-plastic')


def check_an_assumed_constant():
    assert numbers('after.assumed.film_friction=0.02')['difference']['hook_board'] > 0


def check_a_study_from_a_file():
    study = ROOT / 'tests' / 'data' / 'study-version-1.json'
    answer = numbers(study=[study])
    assert answer['before']['actual_speed_mph'] == 17 and answer['after']['actual_speed_mph'] == 19
    assert numbers('after.delivery.speed_mph=17', study=[study])['after']['actual_speed_mph'] == 17
    assert numbers(study=[ROOT / 'data' / 'studies' / 'start.json']) == numbers()
    dashed = FOLDER / '-study.json'
    dashed.write_bytes(study.read_bytes())
    assert json.loads(run('--numbers', '--', dashed.name, cwd=FOLDER).stdout) == answer


def check_the_same_bytes_every_time_and_everywhere():
    plain = run('--numbers', '--set', 'delivery.speed_mph=17.5')
    # Where the system has no such locale, this is the plain one again.
    for language in ('de_DE.UTF-8', 'fr_FR.UTF-8', 'C'):
        other = run('--numbers', '--set', 'delivery.speed_mph=17.5', environment={'LC_ALL': language})
        assert other.stdout == plain.stdout and other.returncode == 0, language


def check_a_file_that_will_not_do():
    bad = FOLDER / 'bad.json'
    bad.write_text('{\n  "tenboard": "study",\n  "version": 1\n', encoding='utf-8')
    assert refused(3, '--numbers', bad) == f'{bad}: line 4: a comma or }} was expected, but the file ends.'
    assert refused(3, '--numbers', FOLDER / 'none.json') == \
        f'{FOLDER}/none.json: the file cannot be read: No such file or directory.'
    ball = ROOT / 'data' / 'balls' / 'spare-plastic.json'
    assert refused(3, '--numbers', ball) == f'{ball}: this is a ball; a study was expected.'


def check_fields_that_make_no_ball_together():
    sentence = 'The intermediate differential is larger than the differential.'
    assert refused(2, '--numbers', *settings(['after.ball.intermediate_differential_in=0.06'])) == f'after: {sentence}'
    study = json.loads((ROOT / 'tests' / 'data' / 'study-version-1.json').read_text(encoding='utf-8'))
    study['after']['ball']['intermediate_differential_in'] = 0.06
    path = FOLDER / 'no-ball.json'
    path.write_text(json.dumps(study), encoding='utf-8')
    assert refused(3, '--numbers', path) == f'{path}: after.ball: {sentence}'


def check_nowhere_to_write():
    with open('/dev/full', 'w', encoding='utf-8') as full:
        done = run('--numbers', stdout=full)
    assert done.returncode == 3
    assert done.stderr == 'tenboard: Standard output cannot be written: No space left on device.\n', done.stderr


def check_nobody_reads():
    reader, writer = os.pipe()
    os.close(reader)
    done = run('--numbers', stdout=writer)
    os.close(writer)
    assert done.returncode == 3
    assert done.stderr == 'tenboard: Standard output cannot be written: Broken pipe.\n', done.stderr


def check_standard_output_is_closed():
    done = subprocess.run(['sh', '-c', '"$0" --numbers >&-', PROGRAM], stderr=subprocess.PIPE, check=False)
    assert done.returncode == 3, done


sys.exit(tap.run())
