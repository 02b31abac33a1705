#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The test command's own counting: it must not lose a failure.   test-summary.py ROOT"""

import json
import os
import pathlib
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
import tap

ROOT = pathlib.Path(sys.argv[1])


def summary(entries, suites='core'):
    """Exit status and lines for one build with these (name, result, output) or (name, result, output, status)."""
    with tempfile.TemporaryDirectory() as folder:
        logs = pathlib.Path(folder) / 'build' / 'meson-logs'
        logs.mkdir(parents=True)
        lines = [json.dumps({'name': f'tenboard:{name}', 'result': result, 'stdout': output,
                             'returncode': status[0] if status else 0})
                 for name, result, output, *status in entries]
        (logs / 'testlog.json').write_text('\n'.join(lines), encoding='utf-8')
        build_list = pathlib.Path(folder) / 'list'
        build_list.write_text(f'gcc\t{logs.parent}\t{suites}\n', encoding='utf-8')
        done = tap.command(sys.executable, str(ROOT / 'tests' / 'summary.py'), str(build_list))
        assert not done.stderr, done.stderr
        return done.returncode, done.stdout.splitlines()


def expect(entries, status, suite_line, last_line, suites='core'):
    returned, lines = summary(entries, suites)
    assert (returned, lines[1].strip(), lines[-1]) == (status, suite_line, last_line), (returned, lines)


def check_single_checks_are_counted():
    expect([('core / a', 'OK', '1..2\nok 1 /x\nok 2 /y\n'), ('core / b', 'OK', '')], 0,
           'core: 3 passed, 0 failed', '3 passed, 0 failed')


def check_a_failed_check_is_counted_once():
    expect([('core / a', 'ERROR', '1..2\nok 1 /x\nnot ok 2 /y\n')], 1,
           'core: 1 passed, 1 failed', '1 passed, 1 failed')


def check_a_skipped_check_is_no_pass():
    expect([('core / a', 'OK', '1..2\nok 1 /x\nok 2 /y # SKIP no solver\n')], 0,
           'core: 1 passed, 0 failed, 1 skipped', '1 passed, 0 failed')


def check_a_program_may_skip_itself():
    expect([('core / a', 'SKIP', '', 77), ('core / b', 'OK', '')], 0,
           'core: 1 passed, 0 failed, 1 skipped', '1 passed, 0 failed')


def check_a_program_that_says_nothing_is_a_failure():
    expect([('core / a', 'SKIP', '', 0)], 1, 'core: 0 passed, 1 failed', '0 passed, 1 failed')


def check_a_crash_is_a_failure():
    expect([('core / a', 'ERROR', '1..3\nok 1 /x\n')], 1, 'core: 1 passed, 1 failed', '1 passed, 1 failed')


def check_a_leak_found_at_the_end_is_a_failure():
    expect([('core / a', 'ERROR', '1..1\nok 1 /x\n')], 1, 'core: 1 passed, 1 failed', '1 passed, 1 failed')


def check_checks_that_never_ran_are_a_failure():
    expect([('core / a', 'OK', '1..2\nok 1 /x\n')], 1, 'core: 1 passed, 1 failed', '1 passed, 1 failed')


def check_a_time_limit_is_a_failure():
    expect([('core / a', 'TIMEOUT', '')], 1, 'core: 0 passed, 1 failed', '0 passed, 1 failed')


def check_a_suite_that_ran_nothing_is_a_failure():
    expect([('core / a', 'OK', '')], 1, 'study: 0 passed, 1 failed (nothing ran)', '1 passed, 1 failed', 'study,core')


def check_a_build_that_stopped_is_a_failure():
    expect([], 1, 'does not build: 0 passed, 1 failed', '0 passed, 1 failed', '')


def check_a_file_of_checks_is_counted():
    for text, status, line in (('1..2\nok 1 a\nok 2 b\n', 0, '2 passed, 0 failed'),
                               ('1..2\nok 1 a\nnot ok 2 b\n', 1, '1 passed, 1 failed'),
                               ('1..2\nok 1 a\n', 1, '1 passed, 1 failed'), ('', 1, '0 passed, 1 failed')):
        with tempfile.TemporaryDirectory() as folder:
            checks, build_list = pathlib.Path(folder) / 'checks.tap', pathlib.Path(folder) / 'list'
            checks.write_text(text, encoding='utf-8')
            build_list.write_text(f'coverage\t{checks}\tcoverage\n', encoding='utf-8')
            done = tap.command(sys.executable, str(ROOT / 'tests' / 'summary.py'), str(build_list))
            assert (done.returncode, done.stdout.splitlines()[-1]) == (status, line), done.stdout


sys.exit(tap.run())
