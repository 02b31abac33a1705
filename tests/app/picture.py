# SPDX-License-Identifier: GPL-3.0-or-later
"""Makes the pictures of data/screenshots, for the README and the metainfo.

  GSETTINGS_SCHEMA_DIR=build/data sh tests/session.sh -- \
    /usr/bin/python3 tests/app/picture.py build/src/tenboard data/screenshots [NAME...]

NAME is window, clinic or handout; all of them unless told. All show the same study: two miles an hour more.
"""

import json
import os
import pathlib
import subprocess
import sys

import driver
from driver import wait

PROGRAM, FOLDER = sys.argv[1], pathlib.Path(sys.argv[2])
STARTING_STUDY = pathlib.Path(__file__).parents[2] / 'data/studies/start.json'
# The frame that a window has where nothing composes it, px.
FRAME = 5
# In mid-throw, s: both balls have turned, and are apart.
MOMENT = 1.6
# How many of the throw's marks the clinic's picture has gone past.
MARKS = 3


def study():
    """A file with the study of all pictures."""
    path = os.path.join(os.environ['XDG_RUNTIME_DIR'], 'picture.tenboard')
    made = json.loads(STARTING_STUDY.read_text(encoding='utf-8'))
    made['title'] = 'Tuesday group: speed'
    made['after']['delivery']['speed_mph'] = 19
    with open(path, 'w', encoding='utf-8') as file:
        json.dump(made, file)
    return path


def save(name, window='root', frame=FRAME):
    path = FOLDER / f'{name}.png'
    steady(window)
    subprocess.run(['import', '-window', window, path], check=True)
    subprocess.run(['mogrify', '-shave', f'{frame}x{frame}', '-strip', '-define', 'png:compression-level=9', path], check=True)


def steady(window):
    """Waits until two looks in a row see the same."""
    seen = []

    def same():
        done = subprocess.run(['import', '-window', window, 'gray:-'], check=True, stdout=subprocess.PIPE)
        seen.append(done.stdout)
        return len(seen) > 2 and seen[-1] == seen[-2] == seen[-3]
    wait(same, 'a picture that stands still')


def open_study():
    app = driver.App(PROGRAM, study())
    wait(lambda: app.value('Speed') == 19.0, 'the study')
    return app


def end(app):
    driver.running.remove(app.process)
    app.process.kill()
    app.process.wait()


def window():
    app = open_study()
    app.get('slider', 'Time since release').queryValue().currentValue = MOMENT
    app.tab_to('Throw', 'shift+Tab')
    app.move(640, 2)
    save('window')
    end(app)


def clinic():
    """The throw, before a room, in mid-throw."""
    app = open_study()
    # Once the pointer has moved in the clinic its controls show: it moves before.
    app.move(640, 400)
    app.keys('F9')
    wait(lambda: app.find('label', has='1 of 6') or app.keys('Page_Down'), 'the question')
    wait(lambda: app.find('label', has='3 of 6') or app.keys('Page_Down'), 'the throw')
    app.keys(*['space'] * MARKS)
    save('clinic', frame=0)
    end(app)


def handout():
    """The page to take home, in the window that prints it."""
    app = open_study()
    app.keys('ctrl+p')
    wait(lambda: app.find('check box', has='Feet'), 'what else to try')
    save('handout', driver.xdotool('search', '--onlyvisible', '--name', '^Handout').split()[-1])
    end(app)


pictures = {'window': window, 'clinic': clinic, 'handout': handout}
driver.settings(window_maximized='true', color_scheme='light', tour_seen='true')
for wanted in sys.argv[3:] or pictures:
    pictures[wanted]()
