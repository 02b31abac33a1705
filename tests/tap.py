# SPDX-License-Identifier: GPL-3.0-or-later
"""Runs the functions of a script whose names begin with check_ and reports them as TAP.

A check passes if it returns, and fails with what its AssertionError says.
"""

import subprocess
import sys
import traceback


def run(module_name='__main__'):
    module = sys.modules[module_name]
    checks = [(name, value) for name, value in vars(module).items() if name.startswith('check_') and callable(value)]
    print(f'1..{len(checks)}')
    failures = 0
    for number, (name, check) in enumerate(checks, start=1):
        title = name.removeprefix('check_').replace('_', ' ')
        try:
            check()
            print(f'ok {number} {title}')
        except Exception:
            failures += 1
            print(f'not ok {number} {title}')
            for line in traceback.format_exc().splitlines():
                print(f'# {line}')
                print(line, file=sys.stderr)
    sys.stdout.flush()
    return 1 if failures else 0


def command(*arguments, **options):
    """Runs a command and returns what it did, with its output as text."""
    return subprocess.run(arguments, text=True, stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False, **options)
