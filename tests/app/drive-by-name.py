# SPDX-License-Identifier: GPL-3.0-or-later
"""The main job as a screen reader does it: drive-by-name.py TENBOARD, inside tests/session.sh.

No pointer and no places: everything is found by its role and its name, and used through the value and the action
interfaces, or with the keyboard. The checks run in their order, on one window.
"""

import os
import sys

import driver
import names
from driver import wait

PROGRAM = sys.argv[1]
STUDY = os.path.join(os.environ['XDG_RUNTIME_DIR'], 'by-name.tenboard')
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
    names.all_have_names('the main window', 40, names.frames(app))


def use(*names):
    """Presses the first button, or chooses the first entry of a menu, of that name."""
    for role in ('push button', 'menu item', 'toggle button'):
        for name in names:
            node = app.find(role, starts=name)
            if node is not None and node.queryAction().doAction(0):
                return
    raise AssertionError(f'nothing is called {" or ".join(names)}')


def loft_lab():
    """By its letter in the menu."""
    app.keys('F10')
    wait(lambda: app.find('menu item', starts='Loft lab'), 'the menu')
    app.keys('o')


def check_every_window_names_its_controls():
    for where, opening in (
            ('the lessons', lambda: app.keys('ctrl+l')),
            ('the handout', lambda: app.keys('ctrl+p')),
            ('the ball counter', lambda: use('Ball counter')),
            ('lane play', lambda: use('Lane play')),
            ('the loft lab', loft_lab),
    ):
        names.closes(app, names.opens(app, where, opening))


def check_the_clinic_and_its_notes_name_their_controls():
    before = names.opens(app, 'the clinic', lambda: app.keys('F9'))
    app.keys('Page_Down', 'Page_Down')
    wait(lambda: any(' of 6: ' in text for text in texts()), 'a slide')
    app.keys('n')
    wait(lambda: any(node.getRoleName() == 'push button' and node.name.startswith('One vote more: ')
                     for node in driver.walk(app.node)), 'the votes')
    names.all_have_names('the notes', 40, names.frames(app))
    app.keys('n')
    wait(lambda: len(names.frames(app)) == before + 1, 'the notes to close')
    names.closes(app, before)


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
