#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""--lesson-check and --lesson-texts: the built-in lessons hold what they claim.   test-lessons.py PROGRAM ROOT"""

import json
import os
import re
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
from command import FOLDER, ROOT, numbers, refused, run  # noqa: E402
import tap  # noqa: E402

LESSONS = sorted((ROOT / 'data' / 'lessons').glob('*.json'))


def read(path):
    return json.loads(path.read_text(encoding='utf-8'))


def shown(argument='all'):
    done = run('--lesson-check', argument)
    assert done.returncode == 0 and done.stderr == '', done.stderr
    return json.loads(done.stdout)


def save(lesson):
    path = FOLDER / 'lesson.json'
    path.write_text(json.dumps(lesson), encoding='utf-8')
    return path


def altered(change):
    """The sentence about the first lesson after a change to it."""
    lesson = read(ROOT / 'data' / 'lessons' / 'speed.json')
    change(lesson)
    return refused(3, '--lesson-check', save(lesson))


def value(step, figures):
    return figures[step['of']][step['measure']]


def holds(claim, figures):
    found = value(claim, figures)
    return claim.get('above', float('-inf')) < found < claim.get('below', float('inf'))


def figures_of(step):
    """What --numbers says of a step's throws."""
    changes = [f'{key}={number}' for key, number in step.get('before', {}).items()]
    return numbers(*changes, *(f'after.{key}={number}' for key, number in step['after'].items()))


def steps_on_one_line():
    for path in LESSONS:
        for index, step in enumerate(read(path)['steps']):
            if step.get('line') != 'pocket':
                yield path.stem, index, step


def check_there_are_twelve_and_each_holds():
    lessons = shown()
    assert len(lessons) >= 12, len(lessons)
    assert {lesson['id'] for lesson in lessons} == {path.stem for path in LESSONS}


def check_each_claim_against_the_numbers():
    seen = 0
    for lesson, index, step in steps_on_one_line():
        figures = figures_of(step)
        for claim in step['claims']:
            assert holds(claim, figures), f'{lesson}[{index}]: {claim} is {value(claim, figures)}'
            seen += 1
    assert seen >= 30, seen


def check_each_answer_is_the_computed_number():
    answers = {lesson['id']: lesson['steps'] for lesson in shown()}
    for lesson, index, step in steps_on_one_line():
        told = answers[lesson][index]
        assert told['answer'] == value(step['ask'], figures_of(step)), lesson
        choices = step['ask'].get('choices', [])
        right = [choice['text'] for choice in choices
                 if choice.get('above', float('-inf')) < told['answer'] <= choice.get('below', float('inf'))]
        assert told['right'] == (right[0] if choices else None)


def check_no_answer_is_stored():
    for path in LESSONS:
        for step in read(path)['steps']:
            assert not {'answer', 'right', 'expected'} & {*step, *step['ask']}, path.name


def check_no_place_is_left_empty():
    for lesson in shown():
        for step in lesson['steps']:
            assert not re.search(r'[{}]', step['explanation'])
            assert re.search(r'\d', step['explanation']), step['explanation']


def check_differences_are_of_what_is_told():
    """Board 12.0 instead of 17.8 is 5.8 boards less, whatever the digits are that nobody sees."""
    answers = {lesson['id']: [step['explanation'] for step in lesson['steps']] for lesson in shown()}
    seen = 0
    for lesson, index, step in steps_on_one_line():
        pattern = re.sub(r'\\{(\w+)\\\.(\w+)\\}', r'(?P<\1_\2>[\\d.−]+)', re.escape(step['explain']))
        told = re.fullmatch(pattern, answers[lesson][index]).groupdict()
        for name, text in told.items():
            of, measure = name.split('_', 1)
            if of == 'size':
                figures, digits = figures_of(step), len(text.partition('.')[2])
                before, after = (round(figures[side][measure], digits) for side in ('before', 'after'))
                assert text == f'{abs(after - before):.{digits}f}', (lesson, index, measure, text, before, after)
                seen += 1
    assert seen > 5, seen


def check_the_answer_follows_the_constants():
    lesson = read(ROOT / 'data' / 'lessons' / 'speed.json')
    before = shown(save(lesson))[0]['steps'][1]['answer']
    lesson['steps'][1]['after']['delivery.speed_mph'] = 14
    assert shown(save(lesson))[0]['steps'][1]['answer'] > before + 1


def check_a_claim_that_does_not_hold_is_told():
    def turn(lesson):
        lesson['steps'][0]['claims'][0] = {'measure': 'board_at_pins', 'of': 'difference', 'above': 1}
    sentence = altered(turn)
    assert 'steps[1]: claims[1]: board_at_pins is -' in sentence, sentence


def check_what_is_wrong_is_named():
    def gap(lesson):
        lesson['steps'][0]['ask']['choices'][1]['above'] = 0
    for word, change in (
            ('steps[1].ask.choices[2].above', gap),
            ('steps[1].ask.measure', lambda lesson: lesson['steps'][0]['ask'].update(measure='hope')),
            ('steps[2].claims', lambda lesson: lesson['steps'][1].update(claims=[])),
            ('steps[1].after', lambda lesson: lesson['steps'][0].pop('after')),
            ('delivery.speed', lambda lesson: lesson['steps'][0]['after'].update({'delivery.speed': 1})),
            ('delivery.speed_mph: 90 is out of range', lambda lesson: lesson['steps'][0]['after'].update({'delivery.speed_mph': 90})),
            ('{after.hope}', lambda lesson: lesson['steps'][0].update(explain='{after.hope}')),
            ('colour', lambda lesson: lesson.update(colour='red')),
            ('steps', lambda lesson: lesson.update(steps=[])),
            ('this is a study', lambda lesson: lesson.update(tenboard='study'))):
        sentence = altered(change)
        assert word in sentence, f'{word} is not in: {sentence}'
    refused(3, '--lesson-check', FOLDER / 'none.json')


def check_the_texts_for_translators_are_the_lessons_own():
    done = run('--lesson-texts', 'all')
    source = (ROOT / 'src' / 'store' / 'tb-lesson-texts.c').read_text(encoding='utf-8')
    assert done.returncode == 0 and done.stdout == source, 'tenboard --lesson-texts all writes it anew'


def check_the_examples_for_those_who_write_one_hold():
    document = (ROOT / 'DEVELOPERS.md').read_text(encoding='utf-8')
    blocks = re.findall(r'(?:^ {4,}.*\n)+', document, re.MULTILINE)
    lesson = json.loads(next(block for block in blocks if '"tenboard": "lesson"' in block))
    ask = json.loads('{' + next(block for block in blocks if block.lstrip().startswith('"ask"')) + '}')
    assert shown(save(lesson))[0]['steps'][0]['right'] is None, 'a marker'
    lesson['steps'][0].update(ask)
    assert shown(save(lesson))[0]['steps'][0]['right'] == 'Less'


sys.exit(tap.run())
