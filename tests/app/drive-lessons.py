# SPDX-License-Identifier: GPL-3.0-or-later
"""Lessons by a person's hands: drive-lessons.py TENBOARD, inside tests/session.sh.

The checks run in their order, on one window: each leaves what the next begins with.
"""

import sys

import driver
from driver import wait

PROGRAM = sys.argv[1]
app = None


def lessons_window():
    """The lessons' frame, once it is there; pointer and places are from then on told in it."""
    frame = wait(lambda: next((node for node in app.node if node.getRoleName() == 'frame'
                               and node.name.startswith('Lesson')), None), 'the lessons')
    app.frame = frame
    app.window = wait(lambda: driver.xdotool('search', '--onlyvisible', '--name', '^Lesson').split()[-1], 'its window')
    return frame


def guess():
    """The board in its box: GTK 4.8 tells no value of the marker itself but in words."""
    return app.get('spin button', 'Board of your guess').queryValue()


def check_a_whole_lesson_with_the_keyboard():
    global app
    app = driver.App(PROGRAM)
    app.keys('ctrl+l')
    lessons_window()
    wait(lambda: app.find('list item', 'Speed'), 'the list')
    app.tab_to('Speed')
    app.keys('Return')
    wait(lambda: app.find('label', 'Two miles an hour more'), 'the first step')
    wait(lambda: app.find('radio button', 'It finishes further right'), 'the choices')
    app.keys('1')
    wait(lambda: 'checked' in driver.states(app.find('radio button', 'It finishes further right')), 'the choice')
    app.keys('ctrl+t')
    wait(lambda: app.find('label', 'Right') or app.find('alert', 'Right') or app.find('notification', 'Right'), 'the verdict')
    app.keys('alt+Right')
    wait(lambda: app.find('slider', 'Marker of your guess'), 'the marker')
    wait(lambda: app.focused().name == 'Marker of your guess', 'the focus on the marker')
    board = guess()
    app.keys('Left', 'Left')
    wait(lambda: board.currentValue == 21.0, 'two half boards to the left')
    app.keys('Next')
    wait(lambda: board.currentValue == 16.0, 'five boards lower')
    app.keys('ctrl+t')
    wait(lambda: app.find('label', starts='You said board 16.0'), 'how far off')
    app.keys('Return')
    wait(lambda: app.find('label', starts='1 of 2 guesses right'), 'the end')


def check_the_marker_is_dragged():
    app.keys('Escape')
    wait(lambda: app.find('list item', 'Grip pressure'), 'the list')
    app.tab_to('Grip pressure')
    app.keys('Return')
    marker = wait(lambda: app.find('slider', 'Marker of your guess'), 'the marker')
    wait(lambda: app.focused().name == 'Marker of your guess', 'the step')
    x, y, _, _ = app.place(marker)
    app.drag((x, y), (x - 60, y))
    value = guess()
    board = wait(lambda: value.currentValue > 20.0 and value.currentValue, 'a board further to the left')
    now, _, _, _ = app.place(marker)
    assert abs(now - (x - 60)) <= 3, f'the marker lies under the pointer: {now}, {x - 60}'
    app.keys('ctrl+t')
    wait(lambda: app.find('label', starts=f'You said board {board:.1f}'), 'how far off')


def check_it_ends_with_nothing_to_ask():
    """The study has not been touched, so that nothing could be lost."""
    app.keys('Escape')
    wait(lambda: app.find('list item', 'Speed'), 'the list')
    app.keys('Escape')
    wait(lambda: len([node for node in app.node if node.getRoleName() == 'frame']) == 1, 'the main window alone')
    assert app.quit() == 0
    assert app.log() == '', app.log()


if __name__ == '__main__':
    sys.exit(driver.run_checks())
