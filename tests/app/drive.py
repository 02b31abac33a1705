# SPDX-License-Identifier: GPL-3.0-or-later
"""The main job by a person's hands: drive.py TENBOARD, inside tests/session.sh.

The checks run in their order, on one window where they can: each leaves what the next begins with.
"""

import json
import os
import subprocess
import sys
import time

import driver
import tap
from driver import wait

PROGRAM = sys.argv[1]
FOLDER = os.environ['XDG_RUNTIME_DIR']
STUDY = os.path.join(FOLDER, 'tuesday.tenboard')
app = None


def numbers(*arguments):
    done = tap.command(PROGRAM, '--numbers', *arguments)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def agrees(name, column, measure, digits=1):
    """The table shows what the command prints for the same study."""
    shown, told = app.measure(name, column), measure
    assert abs(shown - told) <= 0.51 * 10 ** -digits, f'{name}, {column}: {shown} shown, {told} computed'


def read_difference(computed, measure, digits=1):
    """Of the two numbers as they are shown."""
    return round(computed['after'][measure], digits) - round(computed['before'][measure], digits)


def check_starts_with_a_ball_in_the_pocket():
    global app
    driver.animate(True)
    app = driver.App(PROGRAM)
    assert app.value('Speed') == 17.0
    agrees('Board at the pins', 'after', numbers()['after']['board_at_pins'])
    assert app.measure('Boards hooked', 'difference') == 0.0


def check_the_tour_is_offered_taken_and_skipped():
    """Offered in a bar, not forced; a real throw takes it on; Esc ends it for good."""
    app.click(app.get('push button', 'Start the tour'))
    wait(lambda: app.find('label', '1 of 8'), 'the first stop')
    app.keys('ctrl+t')
    wait(lambda: app.find('label', '2 of 8'), 'the second stop, after a throw')
    app.keys('Escape')
    wait(lambda: not app.find('label', '2 of 8'), 'the end of the tour')
    assert not app.find('push button', 'Start the tour')
    driver.wait(lambda: subprocess.run(['gsettings', 'get', driver.APP_ID, 'tour-seen'], check=True, text=True,
                                       stdout=subprocess.PIPE).stdout.strip() == 'true', 'the tour to be remembered')


def drag_speed_to(target):
    slider = app.get('slider', 'Speed')
    value = slider.queryValue()
    x, y, width, _ = app.place(slider)
    at = lambda v: x - width / 2 + width * (v - value.minimumValue) / (value.maximumValue - value.minimumValue)
    app.drag((at(value.currentValue), y), (at(target), y))
    return wait(lambda: abs(value.currentValue - target) < 0.5 and value.currentValue, f'the slider near {target}')


def check_a_dragged_slider_changes_path_and_table():
    lane = app.get('image', 'Lane')
    path, hook = lane.description, app.measure('Boards hooked', 'before')
    speed = drag_speed_to(19.0)
    computed = numbers('--set', f'after.delivery.speed_mph={speed}')
    wait(lambda: lane.description != path, 'the lane to tell of another path')
    assert app.measure('Boards hooked', 'after') < hook, 'more speed, less hook'
    assert app.measure('Boards hooked', 'before') == hook
    agrees('Boards hooked', 'after', computed['after']['hook_board'])
    agrees('Boards hooked', 'difference', read_difference(computed, 'hook_board'))
    agrees('Board at the pins', 'after', computed['after']['board_at_pins'])


def check_a_drag_is_undone_in_one_step():
    speed = app.value('Speed')
    app.keys('ctrl+z')
    wait(lambda: app.value('Speed') == 17.0, 'the speed of before the drag')
    app.keys('ctrl+shift+z')
    wait(lambda: app.value('Speed') == speed, 'the speed after it')
    app.keys('ctrl+z')
    wait(lambda: app.value('Speed') == 17.0, 'the speed of before the drag')


def check_keyboard_alone_does_the_job():
    app.tab_to('Speed, typed')
    app.type('19 mph\n')
    wait(lambda: app.value('Speed') == 19.0, 'the typed speed')
    computed = numbers('--set', 'after.delivery.speed_mph=19')
    agrees('Boards hooked', 'difference', read_difference(computed, 'hook_board'))
    app.keys('ctrl+k')
    wait(lambda: app.measure('Boards hooked', 'difference') == 0.0, 'after kept as before')
    app.tab_to('Speed')
    app.keys('Right', 'Right', 'Right')
    wait(lambda: abs(app.value('Speed') - 19.3) < 1e-6, 'three steps of the arrow key')
    app.keys('Page_Up')
    wait(lambda: abs(app.value('Speed') - 20.3) < 1e-6, 'a page')
    app.keys('ctrl+e')
    wait(lambda: app.value('Speed') == 19.0, 'swapped runs')
    app.keys('ctrl+b')
    wait(lambda: abs(app.value('Speed') - 20.3) < 1e-6, 'after put back')
    app.keys('ctrl+z', 'ctrl+z')
    wait(lambda: abs(app.value('Speed') - 20.3) < 1e-6, 'both undone')


def check_what_is_mistyped_is_told_and_loses_nothing():
    speed = app.value('Speed')
    app.tab_to('Speed, typed', 'shift+Tab')
    app.type('fast\n')
    wait(lambda: app.find('label', starts='“fast” is not understood'), 'the sentence')
    assert app.value('Speed') == speed
    app.keys('Escape')
    wait(lambda: not app.find('label', starts='“fast” is not understood') or
         'visible' not in driver.states(app.find('label', starts='“fast” is not understood')), 'the sentence to go')
    assert app.value('Speed') == speed


def check_a_throw_runs_pauses_and_ends():
    scrub = app.get('slider', 'Time since release').queryValue()
    duration = scrub.maximumValue
    driver.settings(time_rate=0.1)
    app.keys('ctrl+t')
    seen = set()
    wait(lambda: seen.add(scrub.currentValue) or len(seen) > 5, 'the ball to move')
    app.keys('ctrl+space')
    wait(lambda: app.find('push button', 'Go on'), 'the pause')
    paused = scrub.currentValue
    time.sleep(0.3)
    assert scrub.currentValue == paused, 'time stands still'
    assert 0.0 < paused < duration
    driver.settings(time_rate=1.0)
    app.keys('ctrl+space')
    wait(lambda: scrub.currentValue == duration and app.find('push button', 'Go on'), 'the end of the throw')


def check_the_lane_is_read_and_scrubbed_with_the_pointer():
    scrub = app.get('slider', 'Time since release').queryValue()
    x, y, _, height = app.place(app.get('image', 'Lane'))
    app.move(x, y - height / 10)
    wait(lambda: app.find('label', starts='Board '), 'the reading of a place')
    app.drag((x, y - height / 4), (x, y + height / 8))
    early = wait(lambda: 0 < scrub.currentValue < scrub.maximumValue and scrub.currentValue, 'a moment on the way')
    app.drag((x, y + height / 8), (x, y - height / 4))
    wait(lambda: scrub.currentValue > early, 'a later moment further up')


def check_drop_downs_choose():
    button = app.find('push button', root=app.get('combo box', 'Pattern'))
    before = app.measure('Board at the pins', 'after')
    app.click(button)
    wait(lambda: app.find('list item'), 'the list')
    app.keys('Down', 'Return')
    wait(lambda: app.measure('Board at the pins', 'after') != before, 'another pattern')
    app.keys('ctrl+z')
    wait(lambda: app.measure('Board at the pins', 'after') == before, 'the pattern of before')


def check_units():
    app.keys('F10')
    wait(lambda: app.find('menu item', starts='Preferences') or app.find('menu item', starts='_Preferences'), 'the menu')
    app.keys('Escape')
    driver.settings(units='metric')
    wait(lambda: app.find('label', starts='Speed at the pins km/h'), 'metric measures')
    assert abs(app.value('Speed') - 20.3 * 1.609344) < 0.06
    driver.settings(units='imperial')
    wait(lambda: app.find('label', starts='Speed at the pins mph'), 'imperial measures')


def check_shortcuts_are_told():
    windows = len(driver.xdotool('search', '--onlyvisible', '--class', 'tenboard').split())
    count = lambda: len(driver.xdotool('search', '--onlyvisible', '--class', 'tenboard').split())
    app.keys('ctrl+question')
    wait(lambda: count() > windows, 'the shortcuts')
    app.keys('Escape')
    wait(lambda: count() == windows, 'them to go')


def check_a_study_is_titled_and_saved():
    app.keys('F2')
    wait(lambda: app.focused() and app.focused().name == 'Title', 'the title')
    app.keys('ctrl+a')
    app.type('Tuesday group: speed\n')
    app.get('push button', starts='Study: Tuesday group: speed')
    app.keys('ctrl+s')
    wait(lambda: len(driver.xdotool('search', '--onlyvisible', '--class', 'tenboard').split()) > 1, 'the file dialog')
    time.sleep(0.5)
    app.keys('ctrl+a')
    app.type(STUDY + '\n')
    wait(lambda: os.path.exists(STUDY), 'the file')
    assert abs(numbers(STUDY)['after']['actual_speed_mph'] - 20.3) < 1e-9


def check_a_picture_is_saved_from_the_menu():
    path = os.path.join(FOLDER, 'lane.png')
    app.keys('F10')
    wait(lambda: app.find('menu item', has='icture'), 'the menu')
    app.keys('p')
    wait(lambda: app.find('frame', 'Save a picture'), 'the window')
    app.keys('ctrl+s')
    wait(lambda: len(driver.xdotool('search', '--onlyvisible', '--class', 'tenboard').split()) > 2, 'the file dialog')
    time.sleep(0.5)
    app.keys('ctrl+a')
    app.type(path + '\n')
    wait(lambda: os.path.exists(path), 'the picture')
    wait(lambda: any(node.name == 'Saved as “lane.png”.' for node in driver.walk(app.node)), 'the sentence')
    with open(path, 'rb') as file:
        head = file.read(24)
    assert head[:8] == b'\x89PNG\r\n\x1a\n'
    assert (int.from_bytes(head[16:20], 'big'), int.from_bytes(head[20:24], 'big')) in ((900, 1200), (1280, 800))
    app.keys('Escape')
    wait(lambda: len(driver.xdotool('search', '--onlyvisible', '--class', 'tenboard').split()) == 1, 'it to go')


def check_the_study_reopened_is_the_same():
    global app
    shown = {column: app.measure('Boards hooked', column) for column in ('before', 'after', 'difference')}
    assert app.quit() == 0, app.log()
    assert app.log() == ''
    app = driver.App(PROGRAM, STUDY)
    app.get('push button', starts='Study: Tuesday group: speed')
    assert shown == {column: app.measure('Boards hooked', column) for column in ('before', 'after', 'difference')}
    with open(STUDY, encoding='utf-8') as file:
        text = file.read()
    os.unlink(STUDY)
    app.keys('ctrl+s')
    wait(lambda: os.path.exists(STUDY), 'the file, saved again')
    with open(STUDY, encoding='utf-8') as file:
        assert file.read() == text, 'saved again, it is the same to the byte'


def check_changes_are_not_lost_without_a_question():
    app.tab_to('Speed')
    app.keys('Left')
    wait(lambda: abs(app.value('Speed') - 20.2) < 1e-6, 'a change')
    app.keys('ctrl+w')
    app.get('push button', has='Discard')
    app.keys('Escape')
    wait(lambda: app.find('push button', has='Discard') is None, 'the question to go')
    assert app.process.poll() is None
    app.keys('ctrl+w')
    wait(lambda: app.find('push button', has='Discard'), 'the question')
    app.keys('alt+d')
    assert app.ended() == 0, app.log()


def check_nothing_was_warned_of():
    assert app.log() == '', app.log()


def check_a_file_that_is_none_is_told_of():
    path = os.path.join(FOLDER, 'broken.tenboard')
    with open(path, 'w', encoding='utf-8') as file:
        file.write('{"tenboard": "study", "version": 1, ')
    other = driver.App(PROGRAM, path)
    wait(lambda: any('broken.tenboard' in (node.name or '') for node in driver.walk(other.node)), 'the sentence')
    assert other.value('Speed') == 17.0
    assert other.quit() == 0
    assert other.log() == ''


def check_without_a_display_it_says_what_to_use():
    environment = {key: value for key, value in os.environ.items() if key not in ('DISPLAY', 'WAYLAND_DISPLAY')}
    done = tap.command(PROGRAM, env=environment)
    assert done.returncode == 1
    assert '--numbers' in done.stderr and len(done.stderr.splitlines()) == 1, done.stderr


if __name__ == '__main__':
    sys.exit(driver.run_checks())
