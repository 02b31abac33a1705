#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Every file with a text that people see stands in po/POTFILES.

test-translation.py ROOT            checks it
test-translation.py ROOT --list     prints the list as it should be
"""

import os
import pathlib
import re
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
import tap

ROOT = pathlib.Path(sys.argv[1])
C_MARK = re.compile(r'\b(?:_|N_|C_|NC_|Q_|ngettext|g_dngettext|g_dpgettext2)\s*\(')
UI_MARK = re.compile(r'translatable="(?:yes|true|1)"')
STRING = re.compile(r'"(?:[^"\\\n]|\\.)*"')
COMMENT = re.compile(r'/\*.*?\*/|//[^\n]*', re.DOTALL)
DEFINE = re.compile(r'^\s*#\s*define\b.*$', re.MULTILINE)
PATTERNS = ('src/**/*.c', 'src/**/*.h', 'ui/**/*.ui', 'data/*.desktop.in', 'data/*.metainfo.xml.in')


def has_text(path):
    text = path.read_text(encoding='utf-8')
    if path.suffix == '.in':
        return True
    if path.suffix == '.ui':
        return bool(UI_MARK.search(text))
    # What a string, a comment or the definition of the mark says about the mark does not count.
    return bool(C_MARK.search(DEFINE.sub('', COMMENT.sub('', STRING.sub('""', text)))))


def sources_with_text(root):
    paths = (path for pattern in PATTERNS for path in root.glob(pattern))
    return {path.relative_to(root).as_posix() for path in paths if has_text(path)}


def listed(root):
    lines = (root / 'po' / 'POTFILES').read_text(encoding='utf-8').splitlines()
    return [line.strip() for line in lines if line.strip() and not line.startswith('#')]


def missing(root):
    return sorted(sources_with_text(root) - set(listed(root)))


def check_every_source_with_text_is_listed():
    assert not missing(ROOT), 'add to po/POTFILES: ' + ' '.join(missing(ROOT))


def check_every_listed_file_exists():
    gone = [name for name in listed(ROOT) if not (ROOT / name).is_file()]
    assert not gone, 'take out of po/POTFILES: ' + ' '.join(gone)


def check_the_list_is_sorted_and_without_doubles():
    assert listed(ROOT) == sorted(set(listed(ROOT))), 'po/POTFILES is not sorted, or names a file twice'


def check_the_texts_are_gathered_without_a_warning():
    keywords = ['_', 'N_', 'C_:1c,2', 'NC_:1c,2', 'ngettext:1,2', 'g_dngettext:2,3', 'g_dpgettext2:2c,3']
    done = tap.command('xgettext', '--from-code=UTF-8', '--output=-', f'--directory={ROOT}',
                       *(f'--keyword={word}' for word in keywords), *listed(ROOT))
    assert done.returncode == 0 and not done.stderr, done.stderr
    assert done.stdout.count('\nmsgid ') > 50, 'hardly any text was found'


def check_letters_of_the_menu_differ():
    """Of two entries with one letter, pressing it takes neither."""
    menu = (ROOT / 'ui/tb-window.ui').read_text(encoding='utf-8').split('<menu id="primary_menu">')[1].split('</menu>')[0]
    letters = [letter.lower() for letter in re.findall(r'translatable="yes">[^<_]*_(.)', menu)]
    twice = sorted({letter for letter in letters if letters.count(letter) > 1})
    assert len(letters) > 10 and not twice, f'twice: {twice}'


def check_a_source_left_out_is_noticed():
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder)
        for name in ('po', 'src/app', 'ui'):
            (root / name).mkdir(parents=True)
        (root / 'po/POTFILES').write_text('# nothing\nsrc/app/listed.c\n')
        (root / 'src/app/listed.c').write_text('puts (_("a"));\n')
        (root / 'src/app/forgotten.c').write_text('static const char *s = N_ ("b");\n')
        (root / 'src/app/silent.c').write_text('/* _("no") */ #define X\n#define _(s) gettext (s)\nputs ("_(");\n')
        (root / 'ui/window.ui').write_text('<property name="label" translatable="yes">c</property>\n')
        assert missing(root) == ['src/app/forgotten.c', 'ui/window.ui'], missing(root)


if sys.argv[2:] == ['--list']:
    print('# Every file with a text people see, one a line, sorted; a test compares this list with the sources.')
    print('\n'.join(sorted(sources_with_text(ROOT))))
else:
    sys.exit(tap.run())
