# SPDX-License-Identifier: GPL-3.0-or-later
"""The clinic with a presenter's remote: drive-clinic.py TENBOARD, inside tests/session.sh.

The checks run in their order, on one window: each leaves what the next begins with.
"""

import json
import os
import re
import subprocess
import sys
import time

import driver
from driver import wait

PROGRAM = sys.argv[1]
FOLDER = os.environ['XDG_RUNTIME_DIR']
app = None


def study():
    """A study of two miles an hour more, with notes."""
    path = os.path.join(FOLDER, 'room.tenboard')
    with open(sys.argv[2], encoding='utf-8') as file:
        made = json.load(file)
    made['title'], made['notes'] = 'Two miles an hour more', 'Let them explain first.'
    made['after']['delivery']['speed_mph'] = 19
    with open(path, 'w', encoding='utf-8') as file:
        json.dump(made, file)
    return path


def place():
    """What the foot of the screen says: '3 of 6: The throw'."""
    return next((node.name for node in driver.walk(app.node)
                 if node.getRoleName() == 'label' and ' of 6: ' in (node.name or '')), None)


def at(expected):
    wait(lambda: place() == expected, expected)


def clinic():
    """The clinic's window, whatever role GTK gives it."""
    return next((node for node in app.node if node.name == 'Clinic'), None)


def seconds():
    """The time of the throw, s."""
    for node in driver.walk(wait(clinic, 'the clinic')):
        found = node.getRoleName() == 'label' and re.match(r'(\d+\.\d\d)\s+s\b', node.name or '')
        if found:
            return float(found.group(1))
    return None


def words():
    """What a screen reader is told of the slide."""
    return ' '.join(f'{node.name} {node.description}' for node in driver.walk(app.node)
                    if node.getRoleName() == 'image' and node.name)


def screen():
    """Brightest and darkest value on the screen, 0 to 1."""
    done = subprocess.run('import -window root png:- | convert png:- -colorspace Gray -format "%[fx:maxima] %[fx:minima]" info:',
                          shell=True, check=True, text=True, stdout=subprocess.PIPE)
    return tuple(float(value) for value in done.stdout.split())


def windows():
    return driver.xdotool('search', '--onlyvisible', '--class', 'tenboard').split()


def covers_the_screen():
    """Whether the window that has the focus is as large as the screen."""
    inside = dict(line.split('=') for line in driver.xdotool('getwindowgeometry', '--shell', driver.xdotool('getactivewindow').strip()).split())
    width, height = driver.xdotool('getdisplaygeometry').split()
    return inside['WIDTH'] == width and inside['HEIGHT'] == height


def check_a_key_covers_the_screen():
    global app
    driver.animate(True)
    app = driver.App(PROGRAM, study())
    app.keys('F9')
    wait(lambda: 'What shall we look at?' in words(), 'the choice of a talk')
    wait(covers_the_screen, 'the whole screen')


def check_page_down_goes_through_the_talk():
    app.keys('Page_Down')
    at('1 of 6: The question')
    wait(lambda: 'Speed: 17.0 mph before, 19.0 mph after' in words(), 'the change in words')
    app.keys('Page_Down')
    at('2 of 6: The vote')
    app.keys('Page_Down')
    at('3 of 6: The throw')
    assert seconds() == 0.0, seconds()
    # A screen reader stands on the slide, and hears how it ended only then.
    told = wait(lambda: (lambda node: node.name.startswith('Will the ball hook') and node)(app.focused()), 'the question')
    assert told.description.startswith('Space: throw'), told.description
    app.keys('Page_Down')
    wait(lambda: seconds() > 0, 'the ball to move')
    app.keys('Page_Down')
    end = wait(lambda: seconds() > 2 and seconds(), 'the end of the throw')
    wait(lambda: told.description.startswith('Before: ') and ' After: ' in told.description, 'how both throws ended')
    at('3 of 6: The throw')
    assert end == seconds()
    for expected in ('4 of 6: The numbers', '5 of 6: The reasons', '6 of 6: What to try'):
        app.keys('Page_Down')
        at(expected)
        if expected == '5 of 6: The reasons':
            wait(lambda: re.search('Speed: .[0-9.]+ boards', words()), 'the part, with its unit')
            assert app.focused().getRoleName() == 'image'
    app.keys('Page_Down')
    time.sleep(0.2)
    at('6 of 6: What to try')


def check_f5_and_home_and_end():
    app.keys('F5')
    at('1 of 6: The question')
    app.keys('End')
    at('6 of 6: What to try')
    app.keys('Page_Up')
    at('5 of 6: The reasons')
    app.keys('Home')
    at('1 of 6: The question')


def check_b_blanks_and_any_key_brings_it_back():
    assert screen()[0] > 0.9, 'the slide is bright'
    app.keys('b')
    wait(lambda: screen()[0] < 0.02, 'a dark screen')
    app.keys('Page_Down')
    wait(lambda: screen()[0] > 0.9, 'the slide')
    at('1 of 6: The question')
    app.keys('period')
    wait(lambda: screen()[0] < 0.02, 'a dark screen')
    app.keys('period')
    wait(lambda: screen()[0] > 0.9, 'the slide')


def check_votes_are_typed_and_taken_back():
    app.keys('Page_Down')
    at('2 of 6: The vote')
    app.get('label', starts='1 to 3: a vote')
    app.keys('1', '3', '3', '3', '2', '6', 'BackSpace', 'shift+3')
    wait(lambda: 'It hooks more: 1 vote. About the same: 0 votes. It hooks less: 2 votes' in words(), 'the votes, counted')
    app.keys('KP_2')
    wait(lambda: 'About the same: 1 vote.' in words(), 'a vote of the number pad')
    app.keys('End', 'Page_Up', 'Page_Up')
    at('4 of 6: The numbers')
    wait(lambda: 'It hooks less' in words() and '2 of 4 had it right.' in words(), 'how the room did')


def check_the_throw_freezes_and_steps():
    app.keys('Page_Up')
    at('3 of 6: The throw')
    app.keys('Down', 'Down', 'Down', 'space')
    wait(lambda: seconds() > 0.02, 'the ball to move')
    app.keys('f')
    wait(lambda: app.find('label', has='frozen'), 'the pause')
    frozen = seconds()
    time.sleep(0.3)
    assert seconds() == frozen, 'time stands still'
    before = subprocess.run(['import', '-window', 'root', 'gray:-'], check=True, stdout=subprocess.PIPE).stdout
    app.keys('l', 'l', 'l')
    wait(lambda: abs(seconds() - frozen - 0.1) < 0.011, 'three frames')
    after = subprocess.run(['import', '-window', 'root', 'gray:-'], check=True, stdout=subprocess.PIPE).stdout
    assert before != after, 'the balls are drawn elsewhere'
    app.keys('j')
    wait(lambda: abs(seconds() - frozen - 0.067) < 0.011, 'a frame back')
    app.keys('Up', 'Up', 'Up', 'r')
    wait(lambda: seconds() < frozen or seconds() > 1, 'the throw again')
    app.keys('o')
    wait(lambda: app.find('image', 'Lane, both throws') and not app.find('image', 'Lane, before'), 'both on one lane')
    app.keys('o')
    wait(lambda: app.find('image', 'Lane, before'), 'each on its own')


def check_a_stray_escape_does_no_harm():
    app.keys('Escape')
    wait(lambda: any('Escape once more' in (node.name or '') for node in driver.walk(app.node)), 'what the next press does')
    assert covers_the_screen()
    app.keys('Page_Up', 'Escape')
    time.sleep(0.2)
    assert covers_the_screen(), 'another key in between: Escape begins anew'
    app.keys('Escape')
    wait(lambda: not covers_the_screen(), 'the window to leave full screen')
    at('2 of 6: The vote')
    wait(lambda: 'It hooks less: 2 votes' in words(), 'the votes, still there')
    app.keys('F11')
    wait(covers_the_screen, 'the whole screen')


def check_the_presenter_has_notes_and_the_answer():
    app.keys('n')
    wait(lambda: len(windows()) == 3, 'the presenter’s window')
    app.get('label', has='Let them explain first.')
    app.get('label', 'The answer: It hooks less')
    app.get('label', starts='Next: The throw')
    # The remote works there as well.
    app.keys('Page_Up')
    at('1 of 6: The question')
    app.keys('n')
    wait(lambda: len(windows()) == 2, 'it to go')


def check_closed_and_opened_it_goes_on():
    app.keys('ctrl+w')
    wait(lambda: len(windows()) == 1, 'the clinic to close')
    app.keys('F9')
    at('1 of 6: The question')
    app.keys('Page_Down')
    wait(lambda: 'It hooks less: 2 votes' in words(), 'the votes, still there')
    app.keys('ctrl+w')
    wait(lambda: len(windows()) == 1, 'the clinic to close')
    assert app.quit() == 0, app.log()
    assert app.log() == '', app.log()


if __name__ == '__main__':
    sys.exit(driver.run_checks())
