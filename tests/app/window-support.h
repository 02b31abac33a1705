/* What tests of windows share: the program in a data folder of its own, its windows, finding and using what
 * is in them.
 *
 * A test program begins with start_tests(), then start_application() if it needs the program, adds its tests
 * and returns what run_tests() gives.
 *
 * SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "../scratch.h"
#include "../waiting.h"
#include "tb-application.h"
#include "tb-field-row.h"
#include "tb-window.h"

/* NULL before start_application(). */
extern TbApplication *application;

/* GTK, with the user's data kept out (scratch_folder() is the data folder), accessibility that can be asked,
 * and nothing that moves by itself. */
void start_tests (int *argc, char ***argv);

/* Animations of the toolkit, which start_tests() turns off: with them a throw takes its time. */
void set_animations (gboolean enabled);

/* The program as the tests know it: any number of them at once, and none answers for another. */
void start_application (void);

/* Runs what was added, ends the program; the exit status. */
int run_tests (void);

/* Puts a window on the screen and waits for its first picture. */
void show_window (gpointer window);

/* A window of the program, on the screen, with the study that it starts with. */
TbWindow *new_window (void);

/* Destroys a window, without the question about changes, and waits until nothing holds it any more. */
void close_for_good (gpointer window);

/* Does what a menu's entry does, in the window or the program ("win.…", "app.…"); parameter may be NULL. */
void choose_action (TbWindow *window, const char *action, const char *parameter);

/* The window of a type that is open; NULL if there is none. */
gpointer find_window (GType type);

/* The first of a type in a widget, itself included, from the top; NULL if there is none. */
GtkWidget *find (gpointer widget, GType type);

typedef gboolean (*WidgetTest) (GtkWidget *widget);

/* The first of which a test is true, likewise. */
GtkWidget *find_with (gpointer widget, WidgetTest is_it);

/* The first stack with more than one page, but for those in lists and menus; NULL if there is none. */
GtkStack *find_stack (GtkWidget *widget);

/* Whether a label in a widget, that is on the screen, has these words. */
gboolean says (gpointer widget, const char *words);

/* Presses every button in a widget with this label, mnemonic and all. */
void click (gpointer widget, const char *label);

/* Sends a key to the controllers of a widget, as a press would; whether one of them took it. */
gboolean press_key (GtkWidget *widget, guint keyval);

/* Types into an entry or a spin button, with Enter. */
void enter_text (GtkWidget *entry, const char *text);

/* Time for what is worked out in a thread; nothing may depend on whether it is through. */
void rest (guint ms);

/* The row of a field among the controls on the left. */
TbFieldRow *row_of (TbWindow *window, const char *field);

/* The ball's speed in "after", mph. */
double speed_after (TbSession *session);
void set_speed (TbSession *session, double mph);
