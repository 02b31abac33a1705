# SPDX-License-Identifier: GPL-3.0-or-later
"""What comes and goes, as a screen reader finds it: drive-dialogs.py TENBOARD, inside tests/session.sh.

Windows for one job, menus, cards, callouts and questions: every control in them has a name. The checks run in their
order, on one window.
"""

import os
import subprocess
import sys

import driver
import names
from driver import wait

PROGRAM = os.path.abspath(sys.argv[1])
N_STOPS = 8  # of the tour
app = None


def start():
    """In a folder of its own, where files go that nobody gave a place."""
    global app
    os.chdir(os.environ['XDG_RUNTIME_DIR'])
    app = driver.App(PROGRAM)


def by_menu(letter):
    """Chooses an entry of the main menu by its letter."""
    def choose():
        app.keys('F10')
        wait(lambda: app.find('menu item', starts='Loft lab'), 'the menu')
        app.keys(letter)
    return choose


def check_windows_for_one_job():
    driver.settings(tour_seen='true')
    start()
    for where, opening in (
            ('saving a picture', by_menu('p')),
            ('saving a clip', by_menu('i')),
            ('the preferences', lambda: app.keys('ctrl+comma')),
            ('the keyboard shortcuts', by_menu('k')),
            ('what it is about', by_menu('u')),
    ):
        names.closes(app, names.opens(app, where, opening), 'Escape')


def check_help_and_what_it_finds():
    before = names.opens(app, 'Help', by_menu('h'))
    app.keys('ctrl+f')
    wait(lambda: 'focused' in driver.states(app.find('entry', 'Search Help')), 'the search')
    app.type('axis')
    found = app.get('list', 'Found in Help')
    wait(lambda: len(found) > 3, 'rows of what was found')
    names.all_have_names('what Help found', 10, [found])
    app.keys('Escape')
    names.closes(app, before, 'Escape')


def coming(role, starts):
    """A card, a callout or a menu, once it is there."""
    return wait(lambda: app.find(role, starts=starts), f'{role} {starts}')


def going(role, starts, key='Escape'):
    app.keys(key)
    wait(lambda: app.find(role, starts=starts) is None, f'{role} {starts} to go')


def check_menus():
    app.keys('F10')
    names.all_have_names('the main menu', 10, [coming('menu', 'Menu')])
    app.keys('Escape')
    app.click(app.get('push button', 'Open'))
    names.all_have_names('the menu of studies', 2, [coming('menu', 'Open a study')])
    app.keys('Escape')


def check_the_menu_of_a_picture():
    app.click(app.get('image', 'Lane'), 3)
    names.all_have_names('the menu of a picture', 2, [coming('menu', 'Lane')])
    app.keys('Escape')


def check_the_menu_of_a_slider():
    app.click(app.get('label', 'Speed'), 3)
    names.all_have_names('the menu of a slider', 2, [coming('menu', 'Speed')])
    app.keys('Escape')


def check_the_card_of_a_word():
    app.click(app.get('text', 'Speed, typed'))
    app.keys('F1')
    names.all_have_names('the card of a word', 2, [coming('dialog', 'Speed: ')])
    going('dialog', 'Speed: ')


def check_title_and_notes():
    app.keys('F2')
    names.all_have_names('title and notes', 2, [coming('dialog', 'Title and notes')])
    app.keys('Escape')


def check_every_stop_of_the_tour():
    by_menu('r')()
    for stop in range(1, N_STOPS + 1):
        callout = coming('dialog', f'{stop} of {N_STOPS}: ')
        names.all_have_names(f'stop {stop} of the tour', 2, [callout])
        wait(lambda: app.focused().description.startswith(f'{stop} of {N_STOPS}: '), 'the focus in the callout')
        app.keys('Return')
    wait(lambda: app.find('dialog', starts=f'{N_STOPS} of ') is None, 'the end of the tour')


def chosen_in(window, role, name):
    return wait(lambda: next((node for node in driver.walk(window) if node.getRoleName() == role and node.name == name), None), name)


def check_the_handout_is_printed_to_a_file():
    """In GTK's own dialog: there is no printer, but a file is always offered."""
    folder = os.environ['XDG_RUNTIME_DIR']
    first = len(names.frames(app))
    app.keys('ctrl+p')
    wait(lambda: len(names.frames(app)) > first, 'the handout')
    wait(lambda: 'sensitive' in driver.states(chosen_in(names.frames(app)[first], 'push button', 'Print…')), 'the page')
    app.keys('ctrl+p')
    wait(lambda: len(names.frames(app)) > first + 1, 'the dialog')
    dialog = names.frames(app)[first + 1]
    chosen_in(dialog, 'label', 'Print to File')
    # To the list of printers, and the only one in it.
    app.keys('Tab', 'Down', 'space')
    press = chosen_in(dialog, 'push button', 'Print')
    wait(lambda: 'sensitive' in driver.states(press), 'a printer to be chosen')
    assert press.queryAction().doAction(0)
    page = wait(lambda: next((name for name in os.listdir(folder) if name.endswith('.pdf')), None), 'the file')
    assert page == 'Before and after.pdf', page
    told = wait(lambda: subprocess.run(['pdfinfo', os.path.join(folder, page)], check=True, text=True, stdout=subprocess.PIPE,
                                       stderr=subprocess.DEVNULL).stdout, 'all of the page')
    assert 'Pages:           1\n' in told and '(A4)' in told, told
    wait(lambda: len(names.frames(app)) == first + 1, 'the dialog to close')
    names.closes(app, first, 'Escape')


def check_the_question_about_changes():
    app.get('slider', 'Speed').queryValue().currentValue = 19.0
    before = names.opens(app, 'the question', lambda: app.keys('ctrl+w'))
    assert names.frames(app)[before].name == 'Save the changes to this study?', names.frames(app)[before].name
    names.closes(app, before, 'Escape')


def copies():
    folder = os.path.join(os.environ['XDG_DATA_HOME'], 'tenboard', 'unsaved')
    return os.listdir(folder) if os.path.isdir(folder) else []


def check_what_was_not_saved_comes_back():
    wait(copies, 'the copy of what is unsaved')
    # What looks for printers says that it has no system bus to ask.
    told = [line for line in app.log().splitlines() if line and 'avahi' not in line]
    assert not told, told
    app.process.kill()
    driver.running.remove(app.process)
    app.process.wait()
    wait(lambda: app._node() is None, 'the program to go from the bus')
    start()
    coming('alert', 'This study was not saved')
    names.all_have_names('what came back', 40, [app.frame])
    closer = app.get('push button', 'Close the message')
    wait(lambda: closer.queryComponent().getExtents(driver.pyatspi.WINDOW_COORDS).height > 0, 'the bar of messages')
    assert closer.queryAction().doAction(0)


def check_it_ends():
    app.keys('ctrl+q')
    app.keys('alt+d')
    assert app.ended() == 0, app.log()
    assert app.log() == '', app.log()


if __name__ == '__main__':
    sys.exit(driver.run_checks())
