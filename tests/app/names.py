# SPDX-License-Identifier: GPL-3.0-or-later
"""Hunts for what a screen reader could not name: walks windows over AT-SPI."""

import driver
from driver import wait

# What takes the focus only to pass it on, or to scroll.
CONTAINERS = ('scroll pane', 'filler', 'panel')
# What is spoken when one comes into it, though it takes no focus itself.
SPOKEN = ('frame', 'dialog', 'menu', 'page tab list', 'image', 'progress bar')
# What has a value to tell: by GTK 4.8 only its own, a widget of ours tells it as its description.
VALUED = ('slider', 'spin button', 'progress bar')
# GTK's own parts of a table of columns: GTK 4.8 gives no way to name them, and what is in the cells is read.
PARTS_OF_TABLES = ('GtkColumnListView', 'GtkListItemWidget')


def frames(app):
    """Every window on the bus, whatever role GTK gives it."""
    return [node for node in app.node if node is not None]


def is_said_twice(name):
    """"_Save Save", as GTK 4.8 names a button with a mnemonic."""
    words = [word.strip('_….,') for word in name.split()]
    half = len(words) // 2
    return half > 0 and words[:half] == words[half:]


def fault(role, name):
    """What is wrong with a name; None if nothing is."""
    if not name or name.startswith(('Gtk', 'Tb')):
        return 'has no name'
    if '_' in name:
        return 'is named with an underscore'
    return 'is named twice' if is_said_twice(name) else None


def look_at(node):
    """Whether a node is a control, and what is wrong with it."""
    role, name, states = node.getRoleName(), node.name, driver.states(node)
    takes_focus = 'focusable' in states and role not in CONTAINERS
    if not takes_focus and role not in SPOKEN or role in ('list', 'table row') and name in PARTS_OF_TABLES:
        return takes_focus, None
    wrong = fault(role, name)
    if wrong is None and role in VALUED and not node.description:
        node.queryValue()
    return takes_focus, wrong and f'{role} “{name}” {wrong}, in {node.parent.getRoleName()} “{node.parent.name}”'


def names_of(window):
    """How many controls of a window take the focus, and what is wrong with which."""
    seen, faults = 0, []
    for node in driver.walk(window):
        try:
            takes_focus, wrong = look_at(node)
        except NotImplementedError:
            faults.append(f'{node.getRoleName()} “{node.name}” has no value')
            continue
        except Exception:  # it can vanish while it is looked at
            continue
        seen += takes_focus
        if wrong:
            faults.append(wrong)
    return seen, faults


def all_have_names(where, least, windows):
    seen, faults = 0, []
    for window in windows:
        more, wrong = names_of(window)
        seen += more
        faults += [f'{found} of {window.name}' for found in wrong]
    assert not faults, f'{where}: {"; ".join(sorted(set(faults)))}'
    assert seen >= least, f'{where}: only {seen} controls were looked at'
    return seen


def opens(app, where, opening):
    """Opens a window, looks at every control in it, on every page; how many windows there were before."""
    before = len(frames(app))
    opening()
    wait(lambda: len(frames(app)) > before, where)
    new = frames(app)[before:]
    wait(lambda: any('focusable' in driver.states(node) for window in new for node in driver.walk(window)), f'controls of {where}')
    all_have_names(where, 1, new)
    for tab in [node for window in new for node in driver.walk(window) if node.getRoleName() == 'page tab']:
        tab.queryAction().doAction(0)
        all_have_names(f'{where}, {tab.name}', 1, new)
    return before


def closes(app, before, key='ctrl+w'):
    left = [node.name for node in frames(app)[before:]]
    app.keys(key)
    wait(lambda: len(frames(app)) <= before, f'{left} to close')
