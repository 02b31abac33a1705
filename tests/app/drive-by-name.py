# SPDX-License-Identifier: GPL-3.0-or-later
"""The main job as a screen reader does it: drive-by-name.py TENBOARD, inside tests/session.sh.

No pointer and no places: everything is found by its role and its name, and used through the value and the action
interfaces, or with the keyboard. The checks run in their order, on one window.
"""

import os
import sys

import driver
from driver import wait

PROGRAM = sys.argv[1]
STUDY = os.path.join(os.environ['XDG_RUNTIME_DIR'], 'by-name.tenboard')
# What takes the focus only to pass it on, or to scroll.
CONTAINERS = ('scroll pane', 'filler', 'panel')
app = None


def press(role, name=None, **how):
    """Does what a widget's first action is."""
    node = app.get(role, name, **how)
    assert node.queryAction().doAction(0), f'{role} {name or how} cannot be pressed'
    return node


def texts():
    return [node.name for node in driver.walk(app.node) if node.getRoleName() == 'label']


def check_speed_is_set_as_a_value():
    global app
    driver.settings(tour_seen='true')
    app = driver.App(PROGRAM)
    app.get('slider', 'Speed').queryValue().currentValue = 19.0
    wait(lambda: abs(app.value('Speed') - 19.0) < 1e-6, 'the speed')
    wait(lambda: app.measure('Boards hooked', 'difference') < 0.0, 'less hook in the table')


def check_the_ball_is_thrown():
    time = app.get('slider', 'Time since release').queryValue()
    press('push button', 'Throw')
    wait(lambda: time.currentValue == time.maximumValue, 'the end of the throw')


def check_what_the_throws_show_is_said():
    less = app.measure('Boards hooked', 'difference')
    app.keys('ctrl+i')
    said = wait(lambda: next((node.name for node in driver.walk(app.node) if node.getRoleName() in ('alert', 'notification')
                              and node.name.startswith('Before: ')), None), 'the words')
    assert ' After: ' in said and f'It hooks {-less:.1f} boards less.' in said, said
    assert app.get('image', 'Lane').description == said


def check_why_is_read():
    press('page tab', 'Why')
    wait(lambda: any('mph more' in text and 'boards' in text for text in texts()), 'a sentence about the speed')


def check_an_option_of_next_is_taken():
    speed, before = app.value('Speed'), app.get('image', 'Lane').description
    press('page tab', 'Next')
    press('push button', starts='Put in “after”: ')
    wait(lambda: app.get('image', 'Lane').description != before, 'another throw')
    app.keys('ctrl+z')
    wait(lambda: app.get('image', 'Lane').description == before and app.value('Speed') == speed, 'the throw of before')


def check_everything_that_takes_the_focus_has_a_name():
    nameless, seen = [], 0
    for node in driver.walk(app.node):
        try:
            if node.getRoleName() in CONTAINERS:
                continue
            seen += 'focusable' in driver.states(node)
            if 'focusable' in driver.states(node) and (not node.name or node.name.startswith(('Gtk', 'Tb'))):
                nameless.append(f'{node.getRoleName()} “{node.name}” in {node.parent.getRoleName()} “{node.parent.name}”')
        except Exception:  # it can vanish while it is looked at
            continue
    assert not nameless, '; '.join(nameless)
    assert seen > 40, f'only {seen} controls were looked at'


def check_after_is_kept_as_before_and_saved():
    press('push button', 'Keep as before')
    press('page tab', 'Compare')
    wait(lambda: app.measure('Boards hooked', 'difference') == 0.0, 'after kept as before')
    count = lambda: len(driver.xdotool('search', '--onlyvisible', '--class', 'tenboard').split())
    windows = count()
    press('push button', 'Save')
    wait(lambda: count() > windows, 'the file dialog')
    wait(lambda: app.focused(), 'the focus in it')
    app.keys('ctrl+a')
    app.type(STUDY + '\n')
    wait(lambda: os.path.exists(STUDY), 'the file')


def check_a_lesson_is_answered():
    press('push button', 'Lessons')
    wait(lambda: app.find('list item', 'Speed'), 'the list')
    app.tab_to('Speed')
    app.keys('Return')
    wait(lambda: app.find('radio button', 'It finishes further right'), 'the choices')
    app.keys('1')
    wait(lambda: 'checked' in driver.states(app.find('radio button', 'It finishes further right')), 'the choice')
    app.keys('ctrl+t')
    wait(lambda: any(app.find(role, 'Right') for role in ('label', 'alert', 'notification')), 'the verdict')
    app.keys('ctrl+w')
    wait(lambda: len([node for node in app.node if node.getRoleName() == 'frame']) == 1, 'the main window alone')


def check_it_ends():
    assert app.quit() == 0, app.log()
    assert app.log() == '', app.log()


if __name__ == '__main__':
    sys.exit(driver.run_checks())
