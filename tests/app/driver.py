# SPDX-License-Identifier: GPL-3.0-or-later
"""Drives the program from outside: real keys and a real pointer (xdotool), read through AT-SPI.

Runs inside tests/session.sh. What is polled for has a time limit; nothing sleeps for a fixed time
where something can be waited for.
"""

import os
import subprocess
import sys
import time

import pyatspi

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
import tap  # noqa: E402

APP_ID = 'io.github.tenboard.Tenboard'
# Longest that anything may take, s: slow for the sake of sanitizers.
PATIENCE = 20.0


# Processes that are waited for; what they should do they will not do once they have ended.
running = []


def wait(condition, what, patience=PATIENCE):
    end = time.monotonic() + patience
    while time.monotonic() < end:
        if running and running[-1].poll() is not None:
            raise AssertionError(f'the program ended with {running[-1].poll()} before {what}')
        try:
            result = condition()
        except Exception:  # a widget can vanish while it is looked at
            result = None
        if result:
            return result
        time.sleep(0.03)
    raise AssertionError(f'timed out waiting for {what}')


def walk(node):
    """A widget and all below it; not tooltips, which GTK 4.8 cannot tell the state of."""
    yield node
    for child in node:
        if child is not None and child.getRoleName() != 'tool tip':
            yield from walk(child)


def states(node):
    return {pyatspi.stateToString(state) for state in node.getState().getStates()}


def xdotool(*arguments):
    return subprocess.run(['xdotool', *map(str, arguments)], check=True, text=True, stdout=subprocess.PIPE).stdout


def settings(**changes):
    for key, value in changes.items():
        subprocess.run(['gsettings', 'set', APP_ID, key.replace('_', '-'), str(value)], check=True)


def animate(enabled):
    """The session's settings.ini turns animations off; a throw needs them."""
    path = os.path.join(os.environ['XDG_CONFIG_HOME'], 'gtk-4.0', 'settings.ini')
    with open(path, encoding='utf-8') as file:
        lines = [line for line in file if not line.startswith('gtk-enable-animations')]
    with open(path, 'w', encoding='utf-8') as file:
        file.writelines(lines + [f'gtk-enable-animations={"true" if enabled else "false"}\n'])


class App:
    def __init__(self, program, *arguments):
        folder = os.environ['XDG_RUNTIME_DIR']
        self.log_path = os.path.join(folder, f'stderr-{time.monotonic_ns()}')
        environment = dict(os.environ, G_DEBUG=os.environ.get('APP_G_DEBUG', 'fatal-warnings'))
        with open(self.log_path, 'w', encoding='utf-8') as log:
            self.process = subprocess.Popen([program, *arguments], stderr=log, env=environment)
        running.append(self.process)
        self.node = wait(self._node, 'the program on the accessibility bus')
        self.frame = wait(lambda: self.find('frame'), 'the window')
        self.window = wait(self._window, 'the window on the screen').strip()
        wait(lambda: 'showing' in states(self.frame), 'the window to show')
        # The first layout has to be done before anything is pointed at.
        wait(lambda: self.find('slider', 'Speed').queryComponent().getExtents(pyatspi.WINDOW_COORDS).width > 10, 'the layout')

    def _node(self):
        for node in pyatspi.Registry.getDesktop(0):
            if node is not None and node.name == 'tenboard':
                return node
        return None

    def _window(self):
        found = xdotool('search', '--onlyvisible', '--class', 'tenboard').split()
        return found[0] if found else None

    def log(self):
        with open(self.log_path, encoding='utf-8', errors='replace') as file:
            return file.read()

    def find(self, role, name=None, starts=None, has=None, root=None):
        """The first widget of a role whose name is, starts with, or has in it what is asked for."""
        for node in walk(root or self.node):
            try:
                if node.getRoleName() != role:
                    continue
                if ((name is None or node.name == name) and (starts is None or node.name.startswith(starts))
                        and (has is None or has in node.name)):
                    return node
            except Exception:
                continue
        return None

    def get(self, role, name=None, starts=None, has=None):
        return wait(lambda: self.find(role, name, starts, has), f'{role} {name or starts or has or ""}')

    def value(self, name):
        return self.get('slider', name).queryValue().currentValue

    def measure(self, name, column):
        """The number that the table shows."""
        text = self.get('label', starts=f'{name}, {column}: ').name.rsplit(': ', 1)[1]
        return None if text == '–' else float(text.replace('−', '-').replace('+', ''))

    def place(self, node):
        """Middle of a widget on the screen, and its size."""
        extents = node.queryComponent().getExtents(pyatspi.WINDOW_COORDS)
        outside = dict(line.split('=') for line in xdotool('getwindowgeometry', '--shell', self.window).split())
        inside = self.frame.queryComponent().getExtents(pyatspi.WINDOW_COORDS)
        border_x = (int(outside['WIDTH']) - inside.width) / 2
        border_y = (int(outside['HEIGHT']) - inside.height) / 2
        return (extents.x + border_x + extents.width / 2, extents.y + border_y + extents.height / 2,
                extents.width, extents.height)

    def move(self, x, y):
        xdotool('mousemove', '--window', self.window, round(x), round(y))

    def drag(self, start, end, steps=24):
        """Press, move in small steps, let go."""
        self.move(*start)
        xdotool('mousedown', 1)
        for step in range(1, steps + 1):
            share = step / steps
            self.move(start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))
            time.sleep(0.01)
        xdotool('mouseup', 1)

    def click(self, node, button=1):
        x, y, _, _ = self.place(node)
        self.move(x, y)
        xdotool('click', button)

    def keys(self, *names):
        xdotool('key', '--clearmodifiers', *names)

    def type(self, text):
        """Types, with Return for a newline at the end."""
        xdotool('type', '--clearmodifiers', '--delay', 12, text.rstrip('\n'))
        if text.endswith('\n'):
            self.keys('Return')

    def focused(self):
        for node in walk(self.node):
            try:
                if 'focused' in states(node):
                    return node
            except Exception:
                continue
        return None

    def tab_to(self, name, key='Tab', most=80):
        """Presses Tab until the named widget has the focus."""
        for _ in range(most):
            node = self.focused()
            if node is not None and node.name == name:
                return node
            before = (node.getRoleName(), node.name) if node else None
            self.keys(key)
            wait(lambda: (lambda now: now and (now.getRoleName(), now.name) != before)(self.focused()), 'the focus to move', 5)
        raise AssertionError(f'{name} is not reached with {key}')

    def quit(self, key='ctrl+q'):
        self.keys(key)
        return self.ended()

    def ended(self):
        """Waits for the end that was asked for; the exit status."""
        status = self.process.wait(timeout=30)
        running.remove(self.process)
        return status


def run_checks():
    """Runs the checks of the script, and ends what one of them may have left running; the exit status."""
    result = tap.run()
    for process in running:
        process.kill()
    return result
