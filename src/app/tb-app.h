/* The program with its windows.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Runs until the last window closes; arguments are studies to open. The exit status. Where there is no
 * display: one sentence on standard error, and EXIT_FAILURE. */
int tb_app_run (int argc, char **argv);
