#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Each language of po/LINGUAS says everything, and says it with the same places for numbers.

test-languages.py ROOT
"""

import os
import pathlib
import re
import subprocess
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
import tap

ROOT = pathlib.Path(sys.argv[1])
KEYWORDS = ('_', 'N_', 'C_:1c,2', 'NC_:1c,2', 'ngettext:1,2', 'g_dngettext:2,3', 'g_dpgettext2:2c,3')
LANGUAGES = [line for line in (ROOT / 'po/LINGUAS').read_text().split('\n') if line and line[0] != '#']
PLACE = re.compile(r'\{[a-z_.]+\}')
# Beyond this a layout that is made for English gives way; texts shorter than this are let off: "Ball", "Kugel".
LONGEST, SHORT = 2.2, 24
found = {}


def run(*command, text=''):
    done = subprocess.run(command, input=text, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return done.stdout


def gathered():
    if 'all' not in found:
        files = [line.strip() for line in (ROOT / 'po/POTFILES').read_text().splitlines()
                 if line.strip() and not line.startswith('#')]
        found['all'] = run('xgettext', '--from-code=UTF-8', '--output=-', f'--directory={ROOT}',
                           *(f'--keyword={word}' for word in KEYWORDS), *files)
    return found['all']


def merged(language):
    """The language's texts for today's sources."""
    if language not in found:
        template = pathlib.Path(os.environ.get('TMPDIR', '/tmp')) / f'tenboard-{os.getpid()}.pot'
        template.write_text(gathered(), encoding='utf-8')
        try:
            found[language] = run('msgmerge', '--quiet', '--no-fuzzy-matching', '--no-wrap', '-o', '-',
                                  str(ROOT / f'po/{language}.po'), str(template))
        finally:
            template.unlink()
    return found[language]


def pairs(language):
    """Every (text, translation)."""
    flat = re.sub(r'"\n"', '', merged(language))
    entries = flat.split('\n\n')[1:]
    for entry in entries:
        if entry.startswith('#~') or '\n#~' in entry:
            continue
        ids = re.findall(r'^msgid(?:_plural)? "(.*)"$', entry, re.MULTILINE)
        for text in re.findall(r'^msgstr(?:\[\d\])? "(.*)"$', entry, re.MULTILINE):
            yield ids[-1], text


def check_there_are_four_languages_beside_english():
    assert set(LANGUAGES) >= {'de', 'es', 'fi', 'fr'}, LANGUAGES


def check_nothing_is_missing():
    for language in LANGUAGES:
        missing = [text for text, told in pairs(language) if text and not told]
        assert not missing, f'{language}: {len(missing)} texts, such as {missing[:8]}'


def check_letters_differ():
    """Of the entries of the menu, and of the buttons of the header bar: with one letter, pressing it takes neither."""
    menu, header = (ROOT / 'ui/tb-window.ui').read_text(encoding='utf-8').split('<template', 1)
    menu = menu[menu.index('id="primary_menu"'):]
    for language in LANGUAGES:
        told = dict(pairs(language))
        for part in (menu, header):
            texts = [told[text] for text in re.findall(r'translatable="yes">([^<]*_[^<]*)<', part)]
            letters = [text[text.index('_') + 1].lower() for text in texts]
            assert len(letters) >= 7, texts
            twice = [text for text, letter in zip(texts, letters) if letters.count(letter) > 1]
            assert not twice, f'{language}: {twice}'


def check_nothing_is_only_guessed():
    for language in LANGUAGES:
        assert '#, fuzzy' not in merged(language), language


def check_formats_and_plurals_are_right():
    for language in LANGUAGES:
        done = tap.command('msgfmt', '--check', '-o', os.devnull, str(ROOT / f'po/{language}.po'))
        assert done.returncode == 0 and not done.stderr.strip(), done.stderr


def check_places_in_braces_are_the_same():
    for language in LANGUAGES:
        wrong = [text for text, told in pairs(language)
                 if told and sorted(PLACE.findall(text)) != sorted(PLACE.findall(told))]
        assert not wrong, f'{language}: {wrong[:4]}'


def check_none_is_much_longer_than_in_english():
    for language in LANGUAGES:
        long = [told for text, told in pairs(language) if len(told) > max(SHORT, LONGEST * len(text))]
        assert not long, f'{language}: {long[:6]}'


sys.exit(tap.run())
