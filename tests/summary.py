#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Counts the single checks behind Meson's test runs, suite by suite.

summary.py LIST

Each line of the file LIST is a build: its label, its folder, and the suites that must have run in it
("core,study"), with tabs between. In place of a folder stands the TAP of a program that no build runs, as a file,
and then the name of its one suite. A build whose suites are left empty did not compile, which counts
as a failure. So does a suite that ran nothing: a test cannot vanish quietly. Prints a line a suite
and, last, "N passed, N failed"; the exit status is 1 if anything failed.
"""

import json
import pathlib
import re
import sys

RESULT_LINE = re.compile(r'^(not )?ok\b(.*)$')
PLAN_LINE = re.compile(r'^1\.\.(\d+)')
SKIPPED_STATUS = 77
SKIP_MARK = re.compile(r'#\s*SKIP', re.IGNORECASE)


class Count:
    def __init__(self):
        self.passed = self.failed = self.skipped = 0

    def add(self, other):
        self.passed += other.passed
        self.failed += other.failed
        self.skipped += other.skipped

    def __str__(self):
        skipped = f', {self.skipped} skipped' if self.skipped else ''
        return f'{self.passed} passed, {self.failed} failed{skipped}'


def suite_of(name):
    """The first suite in "project:suite+suite / test"."""
    if ' / ' not in name:
        return 'other'
    return name.split(' / ')[0].split(':')[-1].split('+')[0]


def count_tap(output):
    count, planned = Count(), None
    for line in output.splitlines():
        plan, result = PLAN_LINE.match(line), RESULT_LINE.match(line)
        if plan:
            planned = int(plan.group(1))
        elif result and SKIP_MARK.search(result.group(2)):
            count.skipped += 1
        elif result and result.group(1):
            count.failed += 1
        elif result:
            count.passed += 1
    return count, planned


def count_test(entry):
    """The checks of one test program; the program itself is one check if it lists none."""
    count, planned = count_tap(entry.get('stdout', ''))
    seen = count.passed + count.failed + count.skipped
    good = entry['result'] in ('OK', 'SKIP', 'EXPECTEDFAIL')
    if seen == 0 and not planned:
        # Meson also takes a program that should have listed its checks, and said nothing, for a skip.
        if entry['result'] == 'SKIP' and (planned == 0 or entry.get('returncode') == SKIPPED_STATUS):
            count.skipped = 1
        elif entry['result'] == 'SKIP':
            good = False
        elif good and planned is None:
            count.passed = 1
    # A crash, a time limit, a leak found at the end, or checks that were promised and never ran.
    if count.failed == 0 and (not good or (planned is not None and planned != seen)):
        count.failed += 1
    return count


def count_file(path):
    # A program that said nothing at all had something to say.
    return count_test({'result': 'OK', 'stdout': path.read_text(encoding='utf-8') or '1..1\n'})


def count_build(folder):
    suites = {}
    log = pathlib.Path(folder) / 'meson-logs' / 'testlog.json'
    if log.exists():
        for line in log.read_text(encoding='utf-8').splitlines():
            entry = json.loads(line)
            suites.setdefault(suite_of(entry['name']), Count()).add(count_test(entry))
    return suites


def report_build(label, folder, expected):
    total = Count()
    path = pathlib.Path(folder)
    suites = {expected[0]: count_file(path)} if path.is_file() else count_build(folder)
    print(f'{label}:')
    for suite in expected + sorted(set(suites) - set(expected)):
        count = suites.get(suite, Count())
        note = ''
        if suite in expected and count.passed + count.failed == 0:
            count.failed += 1
            note = ' (nothing ran)'
        print(f'  {suite}: {count}{note}')
        total.add(count)
    return total


def main(list_name):
    total = Count()
    for line in pathlib.Path(list_name).read_text(encoding='utf-8').splitlines():
        label, folder, suites = line.split('\t')
        if suites:
            total.add(report_build(label, folder, suites.split(',')))
        else:
            print(f'{label}:\n  does not build: 0 passed, 1 failed')
            total.failed += 1
    print(f'{total.passed} passed, {total.failed} failed')
    return 1 if total.failed or not total.passed else 0


if __name__ == '__main__':
    sys.exit(main(sys.argv[1]))
