#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""The shot that the model's starting values were tried out with, through the front door.

17 mph, 300 rpm, rotation 50°, tilt 12°, from board 24 at 2.5° to the right, on the built-in house pattern with the
middle hybrid. A first model gave the figures below; what the model has gained since (air drag, landing, the fit of
its friction numbers) may move them by a board and a half.   test-starting-values.py PROGRAM ROOT
"""

import math
import os
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
from command import near, numbers  # noqa: E402
import tap  # noqa: E402

BOARD_IN = 41.5 / 39
HALF_A_BOARD_MORE = 1.5
FEET = 2
DEGREES = 1


def aim_board(laydown, degrees):
    """Where a line to the right from the foul line crosses 15 ft."""
    return laydown - 15 * 12 * math.tan(math.radians(degrees)) / BOARD_IN


def shot(laydown):
    return numbers('bowler=league-right', 'ball=hybrid-middle', 'lane.pattern=house-evening',
                   f'delivery.laydown_board={laydown}', f'delivery.aim_board={aim_board(laydown, 2.5)}',
                   'delivery.release_height_in=0', 'delivery.loft_reach_in=0')['after']


def check_the_line():
    """Measured: 17.0 at the arrows, 8.9 at 41.5 ft."""
    side = shot(24)
    near('board at the arrows', side['board_at_arrows'], 17.0, 0.5)
    near('breakpoint', side['breakpoint_board'], 8.6, HALF_A_BOARD_MORE)
    near('distance of the breakpoint', side['breakpoint_ft'], 42, FEET)


def check_roll_and_pins():
    """Measured: rolls from 53.8 ft, 18.1 at 4.0°."""
    side = shot(24)
    near('start of the roll', side['roll_start_ft'], 54, FEET)
    near('board at the pins', side['board_at_pins'], 17.4, HALF_A_BOARD_MORE)
    near('angle at the pins', side['angle_at_pins_deg'], 4, DEGREES)


def check_two_boards_either_side():
    """The same angle from up to two boards away still arrives, as on a house shot: 17.4 to 17.9 in the first model."""
    for laydown in (22, 23, 25, 26):
        near(f'from board {laydown}', shot(laydown)['board_at_pins'], 17.65, HALF_A_BOARD_MORE)
    spread = [shot(laydown)['board_at_pins'] for laydown in (22, 23, 24, 25, 26)]
    # Five lay-downs four boards apart end within half of that: the oil sends a miss back.
    assert max(spread) - min(spread) < 2, spread


def check_the_built_in_study_finds_the_pocket():
    """The same shot, sent a quarter of a degree further out, so that it arrives in the middle of the pocket."""
    side = numbers()['after']
    assert side['board_at_ft']['0'] == 24
    # The pocket is board 16.5 to 18.5 (assumed). Measured: 17.6.
    assert 16.5 <= side['board_at_pins'] <= 18.5, side['board_at_pins']


sys.exit(tap.run())
