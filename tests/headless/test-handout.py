#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""--handout: one page, with the numbers of the other commands.   test-handout.py PROGRAM ROOT"""

import json
import os
import re
import subprocess
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
from command import FOLDER, ROOT, numbers, refused, run, settings  # noqa: E402
import tap  # noqa: E402

# Points: 210 × 297 mm and 8 1/2 × 11 in; pdfinfo tells three digits.
SIZES = {'a4': (595.276, 841.89), 'letter': (612, 792)}
# 12 mm.
MARGIN = 34.0
# Measures of the Compare table, their names on the page, and the digits they are told with (tb-measures.c).
ROWS = {'hook_board': ('Boards hooked', 1), 'board_at_pins': ('Board at the pins', 1),
        'angle_at_pins_deg': ('Angle at the pins, °', 1), 'breakpoint_board': ('Breakpoint, board', 1),
        'breakpoint_ft': ('Breakpoint, distance, ft', 1), 'board_at_arrows': ('Board at the arrows', 1),
        'hook_start_ft': ('Hooks from, ft', 1), 'roll_start_ft': ('Rolls from, ft', 1),
        'speed_at_pins_mph': ('Speed at the pins, mph', 1), 'time_s': ('Time to the pins, s', 2)}
FEWEST_ROWS = 6

STUDIES = {
    'start': [],
    'faster': ['after.delivery.speed_mph=19'],
    'left': ['bowler=league-left', 'after.delivery.laydown_board=26', 'after.delivery.aim_board=18'],
    'junior': ['bowler=junior', 'after.delivery.speed_mph=10.5'],
    'ball': ['after.ball=pearl-strong', 'after.delivery.aim_board=15'],
    'gutter': ['after.delivery.aim_board=3'],
    'much': ['after.delivery.speed_mph=18', 'after.delivery.rev_rate_rpm=350', 'after.delivery.axis_rotation_deg=60',
             'after.delivery.axis_tilt_deg=16', 'after.delivery.laydown_board=26', 'after.delivery.aim_board=17',
             'after.delivery.loft_reach_in=14', 'after.delivery.grip_pressure=6', 'after.ball.grit=500',
             'after.ball.pin_to_pap_in=3', 'after.lane.pattern_scale=0.9'],
}


def make(name, *arguments, **options):
    """The page of a name, made once."""
    path = FOLDER / f'{name}.pdf'
    if path.exists():
        return path
    done = run('--handout', path, *arguments, **options)
    assert done.returncode == 0 and done.stderr == '' and done.stdout == '', done.stderr
    return path


def tool(*words):
    done = subprocess.run([str(word) for word in words], capture_output=True, encoding='utf-8', check=True)
    assert done.stderr == '', done.stderr
    return done.stdout


def size_of(path):
    info = tool('pdfinfo', path)
    assert re.search(r'^Pages: +1$', info, re.M), info
    return tuple(map(float, re.search(r'^Page size: +([\d.]+) x ([\d.]+) pts', info, re.M).groups()))


def text_of(path, *crop):
    return tool('pdftotext', '-layout', *crop, path, '-')


def flat(text):
    return ' '.join(text.split())


def left_text(path):
    """The column of numbers and reasons."""
    return text_of(path, '-x', '0', '-y', '0', '-W', '288', '-H', '900')


def right_text(path):
    return text_of(path, '-x', '290', '-y', '0', '-W', '400', '-H', '900')


def told(value, digits, signed=False):
    if value is None:
        return '–'
    text = f'{abs(value):.{digits}f}'
    sign = '' if float(text) == 0 else '−' if value < 0 else '+' if signed else ''
    return sign + text


def words_of(path):
    """x, y, right, bottom of every word on the page."""
    box = re.compile(r'<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)</word>')
    return [(*map(float, match.groups()[:4]), match[5]) for match in box.finditer(tool('pdftotext', '-bbox', path, '-'))]


def assert_tidy(path, size):
    """Nothing in the margins, and no word on another. Boxes are as high as the type's tallest letters: the middle half
    is what a word covers at least."""
    words = words_of(path)
    assert len(words) > 100
    for x, y, right, bottom, word in words:
        assert x >= MARGIN and y >= MARGIN and right <= size[0] - MARGIN and bottom <= size[1] - MARGIN, \
            f'{word} at {x}, {y} is in the margin'
    cores = [(x + .5, y + (bottom - y) / 4, right - .5, bottom - (bottom - y) / 4, word)
             for x, y, right, bottom, word in words]
    for i, a in enumerate(cores):
        for b in cores[i + 1:]:
            assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1], f'{a} is on {b}'


def check_sizes():
    pages = [(make(name, *settings(changes)), 'a4') for name, changes in STUDIES.items()]
    pages += [(make(f'{name}-letter', '--paper', 'letter', *settings(STUDIES[name])), 'letter') for name in ('left', 'much')]
    for path, paper in pages:
        size = size_of(path)
        assert all(abs(a - b) < .002 for a, b in zip(size, SIZES[paper])), (path, size)
        assert_tidy(path, size)


def check_numbers():
    for name, changes in STUDIES.items():
        if name == 'start':
            continue  # one throw
        text, expected = left_text(make(name, *settings(changes))), numbers(*changes)
        seen = 0
        for measure, (label, digits) in ROWS.items():
            row = re.search(rf'^ *{re.escape(label)}  +(\S+) +(\S+) +(\S+)$', text, re.M)
            if not row:
                continue
            seen += 1
            before, after = (expected[side][measure] for side in ('before', 'after'))
            # Of what is read, so that nobody who subtracts gets another.
            change = None if None in (before, after) else round(after, digits) - round(before, digits)
            values = [told(before, digits), told(after, digits), told(change, digits, True)]
            assert list(row.groups()) == values, (name, label, row.groups(), values)
        assert seen >= FEWEST_ROWS, (name, seen)
        # A page that has room for everything has all of them.
        assert seen == len(ROWS) or name == 'much', name


def check_numbers_of_one_throw():
    """Where after is what before is, each number is there once, and no difference of nought."""
    text, expected = left_text(make('start', *settings(STUDIES['start']))), numbers(*STUDIES['start'])
    assert re.search(r'^ *before and after$', text, re.M), text
    for measure, (label, digits) in ROWS.items():
        row = re.search(rf'^ *{re.escape(label)}  +(\S.*?)$', text, re.M)
        assert row and row[1] == told(expected['after'][measure], digits), (label, row)


def check_why():
    for name, changes in STUDIES.items():
        text = flat(left_text(make(name, *settings(changes))))
        sentences = run('--why', '--format', 'text', *settings(changes)).stdout.splitlines()
        told_ones = [sentence for sentence in sentences if sentence in text]
        assert told_ones and told_ones == sentences[:len(told_ones)], (name, told_ones)
        assert len(told_ones) == len(sentences) or name not in ('start', 'faster', 'junior'), (name, len(told_ones))


def check_bars():
    """The bars of one change are all that it did, the line that the ball was sent along as well."""
    changes = ['bowler=junior', 'after.delivery.aim_board=17.5']
    text = left_text(make('line', *settings(changes)))
    bars = re.findall(r'^ *(Launch line|Front, .*? ft|Middle, .*? ft|Back, .*? ft) +([+−]?\d+\.\d)$', text, re.M)
    total = sum(float(number.replace('−', '-')) for _, number in bars)
    difference = numbers(*changes)['difference']['board_at_pins']
    assert [name.split(',')[0] for name, _ in bars] == ['Launch line', 'Front', 'Middle', 'Back'], bars
    assert abs(total - difference) < .05 * (len(bars) + 1), (bars, difference)


def check_options():
    changes = STUDIES['faster']
    text = flat(right_text(make('faster', *settings(changes))))
    answer = json.loads(run('--next', 'pocket', *settings(changes)).stdout)
    assert answer['sentences'][0] in text
    for group in ('delivery', 'line', 'ball'):
        best = next(option for option in answer['options'] if option['group'] == group)
        assert best['text'] in text, best['text']


def check_practice():
    text = flat(right_text(make('faster', *settings(STUDIES['faster']))))
    expected = numbers(*STUDIES['faster'])
    assert 'Speed: from 17.0 to 19.0 mph' in text
    assert f"{told(expected['after']['time_s'], 2)} s from your hand to the pins, instead of " \
        f"{told(expected['before']['time_s'], 2)} s." in text
    assert 'Stop if anything hurts' in text
    # However little room there is, no change is left out.
    text = flat(right_text(make('much', *settings(STUDIES['much']))))
    for title in ('Feet 2.0 boards to the left', 'Speed: from 17.0', 'Rev rate: from 300', 'Axis rotation: from 50°',
                  'Axis tilt: from', 'Loft reach: from', 'Grip pressure: from', 'A rougher surface', 'nearer to the PAP',
                  '10 % less oil'):
        assert title in text, title
    assert 'Nothing differs between before and after' in flat(right_text(make('start')))


def check_cautions_and_source():
    text = flat(text_of(make('loft', *settings(['after.delivery.loft_angle_deg=6', 'after.ball.grit=500']))))
    for words in ('Lofting can damage a lane.', 'Dust, solvents and the rules.', 'Take care', 'assumed constants'):
        assert words in text, words
    for name, changes in STUDIES.items():
        assert 'not from a measurement' in flat(text_of(make(name, *settings(changes)))), name


def long_study():
    study = json.loads((ROOT / 'tests' / 'data' / 'study-version-1.json').read_text(encoding='utf-8'))
    study['title'] = 'Tuesday clinic, lanes seven and eight: ' + 'what two miles an hour do to a strong ball; ' * 3
    study['notes'] = 'Look at the second arrow until the ball is over it. ' * 40 + 'W' * 300
    path = FOLDER / 'long.json'
    path.write_text(json.dumps(study), encoding='utf-8')
    return path


def check_long_words():
    study = long_study()
    for paper, size in SIZES.items():
        path = make(f'long-{paper}', '--paper', paper, study, *settings(STUDIES['much']))
        size_of(path)
        assert_tidy(path, size)
        assert 'Tuesday clinic' in text_of(path) and '…' in text_of(path)


def long_language():
    """A translation half as long again as the English, in the place of a German one."""
    sources = [path for folder in ('core', 'study', 'store', 'view', 'headless')
               for path in sorted((ROOT / 'src' / folder).glob('*.c'))]
    folder = FOLDER / 'locale' / 'de' / 'LC_MESSAGES'
    folder.mkdir(parents=True)
    template = subprocess.run(['xgettext', '--from-code=UTF-8', '-k_', '-kN_', '-o', '-', *map(str, sources)],
                              capture_output=True, check=True).stdout
    english = subprocess.run(['msgen', '-'], input=template.replace(b'CHARSET', b'UTF-8'), capture_output=True, check=True).stdout
    longer = subprocess.run(['msgfilter', '--keep-header', 'sed', '-e', 's/e/eêe/g; s/a/aä/g'], input=english,
                            capture_output=True, check=True).stdout
    subprocess.run(['msgfmt', '-o', folder / 'tenboard.mo', '-'], input=longer, check=True)
    return {'TENBOARD_LOCALEDIR': str(FOLDER / 'locale'), 'LC_ALL': 'C.UTF-8', 'LANGUAGE': 'de'}


def check_long_language():
    environment = long_language()
    for paper, size in SIZES.items():
        for name, arguments in {'left': settings(STUDIES['left']), 'ball': settings(STUDIES['ball']),
                                'long': [long_study(), *settings(STUDIES['much'])]}.items():
            path = make(f'{name}-{paper}-de', '--paper', paper, *arguments, environment=environment)
            assert 'Theêe' in text_of(path), 'the long language is not in use'
            size_of(path)
            assert_tidy(path, size)


def check_about_the_file():
    path = make('about', long_study())
    assert re.search(r'^Title: +Tuesday clinic', tool('pdfinfo', path), re.M)
    assert re.search(r'^Creator: +Tenboard', tool('pdfinfo', path), re.M)
    assert path.read_bytes().count(b'/Lang (en-GB)') == 1
    assert path.read_bytes() == make('again', long_study()).read_bytes()


def check_what_makes_no_sense():
    assert refused(2, '--handout', FOLDER / 'x.png').endswith('the name of a handout ends in .pdf.')
    assert 'a4 or letter' in refused(2, '--handout', FOLDER / 'x.pdf', '--paper', 'a5')
    refused(2, '--numbers', '--paper', 'a4')
    refused(2, '--handout')
    assert not (FOLDER / 'x.pdf').exists()


def check_what_cannot_be_written():
    refused(3, '--handout', FOLDER / 'nowhere' / 'x.pdf')
    (FOLDER / 'folder.pdf').mkdir()
    refused(3, '--handout', FOLDER / 'folder.pdf')
    (FOLDER / 'full.pdf').symlink_to('/dev/full')
    refused(3, '--handout', FOLDER / 'full.pdf')
    assert os.path.exists('/dev/full') and not os.path.isfile('/dev/full')


def check_an_old_file_is_left_alone():
    path = FOLDER / 'old.pdf'
    path.write_bytes(b'old')
    refused(2, '--handout', path, '--set', 'delivery.speed_mph=99')
    refused(3, '--handout', path, FOLDER / 'none.json')
    assert path.read_bytes() == b'old'


sys.exit(tap.run())
