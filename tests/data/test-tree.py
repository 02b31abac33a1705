#!/usr/bin/python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What a newcomer may rely on about the source tree.   test-tree.py ROOT"""

import os
import pathlib
import re
import sys

sys.path.insert(0, os.path.join(os.path.dirname(__file__), '..'))
import tap

ROOT = pathlib.Path(sys.argv[1])
TOP_LEVEL = {'README.md', 'DEVELOPERS.md', 'COPYING', 'meson.build', 'meson_options.txt',
             'src', 'ui', 'data', 'po', 'tests', 'flatpak'}
# A layer, and the layers whose headers it may include besides its own.
LAYERS = {
    'core': [],
    'study': ['core'],
    'store': ['core', 'study'],
    'view': ['core', 'study'],
    'headless': ['core', 'study', 'store', 'view'],
    'app': ['core', 'study', 'store', 'view', 'headless'],
}
# What a library's headers begin with, and the layers that may use it.
LIBRARIES = {
    r'g(lib|io|object)\b|glib-|gmodule': ['study', 'store', 'view', 'headless', 'app'],
    r'json-glib/': ['store', 'headless', 'app'],
    r'cairo|pango': ['view', 'headless', 'app'],
    r'g(tk|dk|sk)/|graphene': ['app'],
}
C17_HEADERS = {f'{name}.h' for name in (
    'assert complex ctype errno fenv float inttypes iso646 limits locale math setjmp signal stdalign stdarg '
    'stdatomic stdbool stddef stdint stdio stdlib stdnoreturn string tgmath time uchar wchar wctype').split()}
INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.MULTILINE)
COMMENT = re.compile(r'/\*.*?\*/|//[^\n]*', re.DOTALL)
# Input, output, clock and chance have no place in the physics; snprintf into a caller's buffer has.
CORE_CALLS = re.compile(r'\b(printf|fprintf|fopen|fread|fwrite|puts|time|clock|clock_gettime|rand|srand|getenv)\s*\(')
LEFT_OVER = re.compile(r'\b(TO' r'DO|FIX' r'ME|X' r'XX)\b')


# Texts of documents are shown as they are. These files make markup, of our own texts only, all of them escaped.
MARKUP = re.compile(r'\b(\w+_set_(?:tooltip_|secondary_)?markup(?:_with_mnemonic)?|pango_parse_markup|\w+_with_markup'
                    r'|g_markup_printf_escaped|(?:use|tooltip|secondary-use)-markup)\b')
MAKES_MARKUP = {'src/app/tb-compare-table.c', 'src/app/tb-help-words.c', 'src/app/tb-word.c', 'ui/tb-loft-lab.ui'}
# A file is written by one function, which leaves the old one or the new one; the view has GLib's, which does the same.
WRITES = re.compile(r'\b(g?_?fopen|creat|g_file_set_contents\w*|g_file_replace\w*|g_file_create\w*'
                    r'|cairo_surface_write_to_png|cairo_(?:pdf|svg)_surface_create|gdk_texture_save_to_\w+)\s*\(')
WRITERS = {'src/view/tb-export.c'}


def sources(*suffixes, folders=('src', 'ui', 'data', 'tests')):
    for folder in folders:
        for path in sorted((ROOT / folder).rglob('*')):
            if path.suffix in suffixes and path.is_file() and '__pycache__' not in path.parts:
                yield path


def name_of(path):
    return path.relative_to(ROOT).as_posix()


def report(problems):
    assert not problems, '\n'.join(problems)


def foreign_include(layer, kind, header):
    """Why a file of this layer may not include this header, or nothing."""
    if kind == '"':
        owners = [other for other in LAYERS if (ROOT / 'src' / other / header).exists()]
        if owners and layer not in owners and not set(owners) & set(LAYERS[layer]):
            return f'belongs to {owners[0]}'
        return None
    for pattern, layers in LIBRARIES.items():
        if re.match(pattern, header):
            return None if layer in layers else 'is a library this layer does without'
    if layer == 'core' and header not in C17_HEADERS:
        return 'is not part of C17'
    return None


def check_the_top_level_is_as_agreed():
    present = {path.name for path in ROOT.iterdir() if not re.match(r'\.|_?build', path.name)}
    assert present <= TOP_LEVEL, present - TOP_LEVEL
    assert {'README.md', 'DEVELOPERS.md', 'COPYING'} <= present


def check_every_source_states_its_licence():
    report([name_of(path) for path in sources('.c', '.h', '.py', '.sh', '.ui', '.css')
            if 'SPDX-License-Identifier: GPL-3.0-or-later' not in path.read_text(encoding='utf-8')[:2000]])


def check_no_layer_includes_what_is_above_it():
    problems = []
    for path in sources('.c', '.h', folders=('src',)):
        layer = path.relative_to(ROOT / 'src').parts[0]
        for kind, header in INCLUDE.findall(path.read_text(encoding='utf-8')):
            reason = foreign_include(layer, kind, header) if layer in LAYERS else None
            if reason:
                problems.append(f'{name_of(path)} includes {header}, which {reason}')
    report(problems)


def check_the_rule_about_layers_can_fail():
    assert foreign_include('core', '<', 'glib.h')
    assert foreign_include('view', '<', 'gtk/gtk.h')
    assert foreign_include('core', '<', 'unistd.h')
    assert foreign_include('core', '"', 'tb-study.h')
    assert not foreign_include('study', '"', 'tb-core.h')


def check_core_has_no_input_output_clock_or_chance():
    report([f'{name_of(path)} calls {call}'
            for path in sources('.c', '.h', folders=('src/core',))
            for call in CORE_CALLS.findall(COMMENT.sub('', path.read_text(encoding='utf-8')))])


def check_texts_of_documents_are_no_markup():
    found = {name_of(path): MARKUP.findall(COMMENT.sub('', path.read_text(encoding='utf-8')))
             for path in sources('.c', '.ui', folders=('src', 'ui'))}
    report([f'{name} calls {calls[0]}' for name, calls in found.items() if calls and name not in MAKES_MARKUP])
    assert all(found[name] for name in MAKES_MARKUP)


def check_files_are_written_whole():
    found = {name_of(path): WRITES.findall(COMMENT.sub('', path.read_text(encoding='utf-8')))
             for path in sources('.c', folders=('src',))}
    report([f'{name} calls {calls[0]}' for name, calls in found.items() if calls and name not in WRITERS])
    assert all(found[name] for name in WRITERS)
    assert 'G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE' in (ROOT / 'src/view/tb-export.c').read_text()


def check_nothing_is_left_for_later():
    report([name_of(path) for path in sources('.c', '.h', '.py', '.sh', '.ui', '.xml', '.in')
            if LEFT_OVER.search(path.read_text(encoding='utf-8'))])


def check_no_tab_or_blank_at_the_end_of_a_line():
    report([name_of(path) for path in sources('.c', '.h', '.py', '.sh', '.ui', '.css')
            if re.search(r'\t|[ ]$', path.read_text(encoding='utf-8'), re.MULTILINE)])


# A path of the tree in a document: `src/core/tb-fields.c`, `ui/help-overlay.ui`, `data/*/*.json`; NAME stands for any.
TOLD_PATH = re.compile(r'\b(?:src|ui|data|po|tests|flatpak)/[\w./*-]*\w')
# What is in a build folder, and what translators' tools make.
BUILT = re.compile(r'\b_?build[\w-]*[/ ]\S*|po/tenboard\.pot|po/xx\.po')
# The document's tables of parts say tb-NAME without the tb-.
TOLD_PART = re.compile(r'`([a-z]+(?:-[a-z]+)*)`')
TABLES = ('stops', 'preferences')


def check_what_the_documents_name_is_there():
    problems = []
    for name in ('README.md', 'DEVELOPERS.md'):
        text = (ROOT / name).read_text(encoding='utf-8')
        for told in sorted(set(TOLD_PATH.findall(BUILT.sub('', text)))):
            if not list(ROOT.glob(told.replace('NAME', '*'))):
                problems.append(f'{name} names {told}')
    report(problems)


def check_every_part_is_where_the_document_says():
    text = (ROOT / 'DEVELOPERS.md').read_text(encoding='utf-8').split('## The parts', 1)[1].split('\n## ', 1)[0]
    present = {path.stem for path in (ROOT / 'src').rglob('tb-*.[ch]')} | {path.stem for path in (ROOT / 'tests/app').iterdir()}
    told = TOLD_PART.findall(text)
    assert len(told) > 50, told
    report([f'there is no {part}' for part in told if not {part, f'tb-{part}'} & present and part not in TABLES])


sys.exit(tap.run())
