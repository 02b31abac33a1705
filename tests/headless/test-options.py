#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Options that make sense, and the sentences about those that do not.   test-options.py PROGRAM ROOT"""

import os
import re
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
from command import ROOT, refused, run, settings  # noqa: E402
import tap  # noqa: E402

# KEY=VALUE, and what is said of it.
CHANGES = {
    'delivery.speed_mph': 'KEY=VALUE was expected',
    'delivery.speed=19': 'this key is not known; --help lists them',
    'speed_mph=19': 'this key is not known; --help lists them',
    'between.delivery.speed_mph=19': 'this key is not known; --help lists them',
    'delivery.=19': 'this key is not known; --help lists them',
    '=19': 'this key is not known; --help lists them',
    'ball.holes=2': 'this key is not known; --help lists them',
    'assumed.luck=1': 'this key is not known; --help lists them',
    'delivery.speed_mph=90': '90 is out of range; a number from 5 to 28 mph was expected',
    'before.delivery.speed_mph=-1': '-1 is out of range; a number from 5 to 28 mph was expected',
    'delivery.speed_mph=': 'a number from 5 to 28 mph was expected',
    'delivery.speed_mph=nan': 'a number from 5 to 28 mph was expected',
    'delivery.speed_mph=17,5': 'a number from 5 to 28 mph was expected',
    'delivery.speed_mph=0x11': 'a number from 5 to 28 mph was expected',
    'delivery.hand=1': 'one of right, left was expected',
    'ball.weight_lb=17': '17 is out of range; a number from 6 to 16 lb was expected',
    'ball.cover=wood': 'one of plastic, urethane, reactive-pearl, reactive-hybrid, reactive-solid was expected',
    'ball.grit=shiny': 'a number from 500 to 5000 grit, or polish was expected',
    'ball=wood': 'there is no ball with the id “wood”',
    'bowler=': 'there is no bowler with the id “”',
    'lane.pattern=../flat': 'there is no pattern with the id “../flat”',
    'assumed.film_friction=1': 'a number from 0.004 to 0.04 was expected',
}
# A command line, and the beginning of what is said of it.
LINES = {
    ('--numbers', '--bogus'): '“--bogus” is not an option; --help lists them.',
    ('--numbers', '-n'): '“-n” is not an option; --help lists them.',
    ('--numbers', '--set'): '--set: a value was expected after it.',
    ('--numbers=5',): '--numbers=5: no value was expected.',
    ('--numbers', 'one.json', 'two.json'): '“two.json”: only one study was expected.',
    ('--numbers', '--view', 'lane'): '--view and --size go with --picture, --clip.',
    ('--numbers', '--size', '100x100'): '--view and --size go with --picture, --clip.',
    ('--set', 'delivery.speed_mph=19'): '--set, --view and --size go with a command such as --numbers.',
    ('--picture',): '--picture: a value was expected after it.',
    ('--picture', 'x.png', '--view', 'sky'): '--view sky: lane, plan, sideways, approach, ball, ball-side, loft or both',
    ('--picture', 'x.png', '--size', '10'): '--size 10: a width and a height of 16 pixels or more',
    ('--picture', 'x.png', '--size', '15x100'): '--size 15x100: a width and a height of 16 pixels or more',
    ('--picture', 'x.png', '--size', '10x-1'): '--size 10x-1: a width and a height of 16 pixels or more',
    ('--picture', 'x.png', '--size', '10x10x10'): '--size 10x10x10: a width and a height of 16 pixels or more',
    ('--picture', 'x.png', '--size', '99999999x99999999'): '--size 99999999x99999999: a width and a height',
}


def check_changes_that_will_not_do():
    for change, sentence in CHANGES.items():
        said = refused(2, '--numbers', *settings([change]))
        assert said == f'--set {change}: {sentence}.', said


def check_a_change_that_writes_on_the_terminal():
    said = refused(2, '--numbers', '--set', 'ball=\x1b[2J')
    assert '\x1b' not in said, said


def check_one_bad_change_spoils_all():
    refused(2, '--numbers', *settings(['delivery.speed_mph=19', 'delivery.speed_mph=99', 'delivery.speed_mph=18']))


def check_command_lines_that_make_no_sense():
    for line, sentence in LINES.items():
        said = refused(2, *line)
        assert said.startswith(sentence), said


def check_values_may_be_attached():
    assert run('--numbers', '--set=delivery.speed_mph=19').stdout == \
        run('--set', 'delivery.speed_mph=19', '--numbers').stdout


def check_help_names_every_key():
    text = run('--help').stdout
    table = (ROOT / 'src' / 'core' / 'tb-fields.c').read_text(encoding='utf-8')
    fields = re.findall(r'\{ TB_GROUP_(\w+), "(\w+)"', table)
    assert len(fields) > 20
    for group, name in fields:
        assert f'{group.lower()}.{name} ' in text, name
    for option in ('--numbers', '--set', '--picture', '--view', '--size', '--help', '--version'):
        assert f'  {option} ' in text, option
    for folder in ('bowlers', 'balls', 'patterns'):
        for path in (ROOT / 'data' / folder).glob('*.json'):
            assert f'  {path.stem} ' in text, path.stem


def check_help_keys_are_accepted():
    for line in run('--help').stdout.splitlines():
        row = re.match(r'  ((?:delivery|ball|lane|assumed)\.\w+) .*a number from (\S+) to', line)
        if row:
            done = run('--numbers', '--set', f'{row[1]}={row[2]}')
            assert done.returncode == 0 or f'{row[1]}=' not in done.stderr, done.stderr


def check_version():
    done = run('--version')
    assert done.returncode == 0 and re.fullmatch(r'tenboard \d+\.\d+\.\d+\n', done.stdout), done.stdout


def check_two_commands_at_once():
    done = run('--version', '--help')
    assert done.stdout == run('--version').stdout + run('--help').stdout


def check_one_line_whatever_the_name():
    for option in ('--picture', '--clip', '--path', '--handout'):
        for name in ('a\nb', 'a\tb.zzz', '/no-such-folder/a\nb.png', '/no-such-folder/a\nb.pdf'):
            done = run(option, name)
            assert done.returncode != 0 and done.stderr.count('\n') == 1 and '\t' not in done.stderr, done.stderr



sys.exit(tap.run())
