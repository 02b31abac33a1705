# SPDX-License-Identifier: GPL-3.0-or-later
"""A machine without a D-Bus session: the window opens, and nothing is said about it.   test-no-bus.py TENBOARD"""

import os
import shutil
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
import tap  # noqa: E402

PROGRAM = sys.argv[1]
# Longest that a window may take, s: slow for the sake of sanitizers.
PATIENCE = 30.0


def window_of(process):
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end and process.poll() is None:
        if tap.command('xdotool', 'search', '--onlyvisible', '--class', 'tenboard').stdout:
            return True
        time.sleep(0.05)
    return False


def assert_quiet(**bus):
    with tempfile.TemporaryDirectory() as folder:
        environment = dict(os.environ, XDG_RUNTIME_DIR=folder, XDG_DATA_HOME=folder, XDG_CONFIG_HOME=folder, XDG_CACHE_HOME=folder,
                           GSETTINGS_BACKEND='memory', GDK_BACKEND='x11', GSK_RENDERER='cairo', GDK_DEBUG='gl-disable')
        for name in ('DBUS_SESSION_BUS_ADDRESS', 'GTK_A11Y'):
            environment.pop(name, None)
        environment.update(bus)
        process = subprocess.Popen([PROGRAM], env=environment, stderr=subprocess.PIPE, text=True)
        came = window_of(process)
        process.kill()
        told = process.communicate()[1]
        assert came, told
        assert told == '', told


def check_no_bus_is_told_of():
    # Where this program is, it starts a bus of its own.
    if shutil.which('dbus-launch') is None:
        assert_quiet()


def check_nobody_answers():
    assert_quiet(DBUS_SESSION_BUS_ADDRESS='unix:path=/nonexistent/bus')


if __name__ == '__main__':
    sys.exit(tap.run())
