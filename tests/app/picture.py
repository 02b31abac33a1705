# SPDX-License-Identifier: GPL-3.0-or-later
"""Makes the README's picture of the window: two miles an hour more, in mid-throw.

  GSETTINGS_SCHEMA_DIR=build/data sh tests/session.sh -- \
    /usr/bin/python3 tests/app/picture.py build/src/tenboard data/screenshots/window.png
"""

import subprocess
import sys
import time

import driver
from driver import wait

# The frame that a window has where nothing composes it, px.
FRAME = 5

driver.settings(window_maximized='true', color_scheme='light')
app = driver.App(sys.argv[1])
app.tab_to('Speed, typed')
app.type('19\n')
wait(lambda: app.value('Speed') == 19.0, 'the speed')
app.get('slider', 'Time since release').queryValue().currentValue = 1.6
app.keys('F2')
wait(lambda: app.focused() and app.focused().name == 'Title', 'the title')
app.type('Tuesday group: speed\n')
app.tab_to('Throw', 'shift+Tab')
app.move(640, 2)
time.sleep(1)
subprocess.run(['import', '-window', 'root', sys.argv[2]], check=True)
subprocess.run(['mogrify', '-shave', f'{FRAME}x{FRAME}', '-strip', sys.argv[2]], check=True)
app.process.kill()
