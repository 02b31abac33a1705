#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""A language nobody speaks, to see which texts are not translated and which layouts cannot take a longer one.

pseudo.py ROOT FOLDER

Gathers every text and writes FOLDER/xx/LC_MESSAGES/tenboard.mo, in which "Speed" reads "⟦Şpëëđ~~⟧": in brackets, with
accents and a third longer. To look at it:

    python3 po/pseudo.py . /tmp/pseudo
    LANGUAGE=xx LC_ALL=C.UTF-8 TENBOARD_LOCALEDIR=/tmp/pseudo GSETTINGS_SCHEMA_DIR=build/data build/src/tenboard
"""

import pathlib
import re
import subprocess
import sys

ROOT, FOLDER = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
KEYWORDS = ('_', 'N_', 'C_:1c,2', 'NC_:1c,2', 'ngettext:1,2', 'g_dngettext:2,3', 'g_dpgettext2:2c,3')
ACCENTS = str.maketrans('acdegilnorstuyzACDEGILNORSTUYZ', 'äćđëğîłñöŕşţüÿžÄĆĐËĞÎŁÑÖŔŞŢÜŸŽ')
# What must stay as it is: formats, {names}, escapes, tags and the mnemonic's sign with its letter.
KEPT = re.compile(r"%(?:\d+\$)?[-+ #'0]*\d*(?:\.\d+)?(?:hh|h|ll|l|z|j)?[a-zA-Z%]|%\w|\{[^}]*\}|\\.|<[^>]*>|&\w+;|_\w")
LONGER = 3
HEADER = '''msgid ""
msgstr ""
"Language: xx\\n"
"MIME-Version: 1.0\\n"
"Content-Type: text/plain; charset=UTF-8\\n"
"Content-Transfer-Encoding: 8bit\\n"
"Plural-Forms: nplurals=2; plural=(n != 1);\\n"

'''


def accented(text):
    parts, end = [], 0
    for kept in KEPT.finditer(text):
        parts += [text[end:kept.start()].translate(ACCENTS), kept.group()]
        end = kept.end()
    return ''.join(parts) + text[end:].translate(ACCENTS)


def pseudo(text):
    """text is what stands between the quotes of a .po file. A line break at either end stays there."""
    start = '\\n' if text.startswith('\\n') else ''
    end = '\\n' if text.endswith('\\n') and text != '\\n' else ''
    inner = text[len(start):len(text) - len(end)]
    letters = len(re.findall(r'\w', KEPT.sub('', inner)))
    return f'{start}⟦{accented(inner)}{"~" * (letters // LONGER)}⟧{end}'


def texts():
    """The .po entries, each with its text in one line."""
    files = [line.strip() for line in (ROOT / 'po/POTFILES').read_text().splitlines() if line.strip() and line[0] != '#']
    gathered = subprocess.run(['xgettext', '--from-code=UTF-8', '--output=-', f'--directory={ROOT}',
                               *(f'--keyword={word}' for word in KEYWORDS), *files],
                              check=True, capture_output=True, text=True).stdout
    one_line = subprocess.run(['msgcat', '--no-wrap', '--no-location', '-'], input=gathered, check=True,
                              capture_output=True, text=True).stdout
    # A text of several lines begins with an empty one.
    joined = re.sub(r'^(msg\w+(?:\[\d\])?) ""\n((?:".*"\n)+)',
                    lambda m: f'{m[1]} "' + ''.join(line[1:-1] for line in m[2].splitlines()) + '"\n', one_line,
                    flags=re.MULTILINE)
    return joined.split('\n\n')[1:]


def translated(entry):
    ids = dict(re.findall(r'^(msgid|msgid_plural) "(.*)"$', entry, re.MULTILINE))
    kept = [line for line in entry.splitlines() if line.startswith(('msgctxt', 'msgid', '#,'))]
    if 'msgid_plural' in ids:
        kept += [f'msgstr[0] "{pseudo(ids["msgid"])}"', f'msgstr[1] "{pseudo(ids["msgid_plural"])}"']
    else:
        kept.append(f'msgstr "{pseudo(ids["msgid"])}"')
    return '\n'.join(kept)


def main():
    catalogue = FOLDER / 'xx' / 'LC_MESSAGES'
    catalogue.mkdir(parents=True, exist_ok=True)
    entries = [translated(entry) for entry in texts() if 'msgid' in entry]
    subprocess.run(['msgfmt', '--check-format', '-o', str(catalogue / 'tenboard.mo'), '-'],
                   input=HEADER + '\n\n'.join(entries) + '\n', check=True, text=True)


main()
