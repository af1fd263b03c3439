# SPDX-License-Identifier: GPL-3.0-or-later
"""Rules on files as such: names, sizes, first lines, words, registration."""
import fnmatch
import posixpath
import re
import statistics

import cmake_text
from tree import Violation

MOST_LINES = 400
MEDIAN_LINES = 150
SPDX = "SPDX-License-Identifier: GPL-3.0-or-later"
TOP = {
    "CMakeLists.txt", "CMakePresets.json", "README.md", "DEVELOPERS.md", "LICENSE",
    "app", "build", "docs", "forms", "model", "sample-db", "tests",
}  # fmt: skip
# Written in two halves, so that this file does not hold what it looks for.
_UNFINISHED = re.compile(r"\b(?:TO" r"DO|FIX" r"ME|XX" r"X)\b|\b(?i:st" r"ub|place" r"holder)s?\b")
_MACHINE = re.compile(r"(?<![\w.])/wo" r"rk/|\.libr" r"ary\b|(?<![\w.])/ro" r"ot/|\bshared/(?:de" r"sign|style|checks)\b")


def top_level(tree):
    """top-level: at the root stand only the names that house and build know."""
    for name in tree.top_names:
        if name not in TOP and not name.startswith((".", "build-")):
            yield Violation(name, 1, "top-level", "is not a name of the top level")


def spdx_first(tree):
    """spdx: the licence stands in the first line of each source and script (after #!, where there is one)."""
    for file in tree.files:
        if not (file.is_cpp or file.is_script):
            continue
        mark = "//" if file.is_cpp else "#"
        line = 1 if file.text.startswith("#!") else 0
        if len(file.lines) <= line or file.lines[line] != f"{mark} {SPDX}":
            yield Violation(file.path, line + 1, "spdx", f'the line must be "{mark} {SPDX}"')


def size(tree):
    """size: no source or script is longer than two or three screens of a careful reader."""
    for file in tree.files:
        if (file.is_cpp or file.is_script) and len(file.lines) > MOST_LINES:
            yield Violation(file.path, MOST_LINES + 1, "size", f"{len(file.lines)} lines, at most {MOST_LINES}")


def median_size(tree):
    """median: half of the sources of the programs are shorter than 150 lines."""
    lengths = [len(f.lines) for f in tree.cpp("model", "forms", "app")]
    if lengths and statistics.median(lengths) >= MEDIAN_LINES:
        what = f"the median source has {statistics.median(lengths):g} lines, it must be under {MEDIAN_LINES}"
        yield Violation("model", 1, "median", what)


def finished(tree):
    """unfinished: no word promises what is not there."""
    yield from _words(tree, _UNFINISHED, "unfinished", "finish it, or say what is")


def no_machine_path(tree):
    """machine-path: no path of the machine where the text was written."""
    yield from _words(tree, _MACHINE, "machine-path", "a path that only the writer's machine has")


def banned_words(tree):
    """banned: no word of tests/layout/banned.txt (WORD, a tab, what to write instead)."""
    path = "tests/layout/banned.txt"
    listed = tree.find(path)
    for entry in listed.lines if listed else []:
        word, _, hint = entry.partition("\t")
        if not word.strip() or word.startswith("#"):
            continue
        pattern = re.compile(rf"\b{re.escape(word.strip())}\b", re.IGNORECASE)
        yield from _words(tree, pattern, "banned", hint or "is not a word of this house", but=path)


def tests_registered(tree):
    """test-unregistered: every test is named in a CMake file, by itself or by a wildcard."""
    named = set()
    for file in tree.files:
        if file.top == "tests" and file.name == "CMakeLists.txt":
            folder = posixpath.dirname(file.path)
            named.update(posixpath.normpath(f"{folder}/{n}") for n in cmake_text.named_files(file.text))
    for file in tree.files:
        is_test = file.suffix == ".cpp" or file.name.endswith("_test.py")
        if file.top == "tests" and is_test and not any(_same(file.path, n) for n in named):
            yield Violation(file.path, 1, "test-unregistered", "no CMakeLists.txt below tests/ names it")


def tidy_reasons(tree):
    """tidy-reason: each check that .clang-tidy leaves out has its reason in a comment there."""
    file = tree.find(".clang-tidy")
    for name in re.findall(r"^\s+-([a-z][\w.*-]+),?", file.text if file else "", re.MULTILINE):
        if not re.search(rf"^#\s+{re.escape(name)}: \S", file.text, re.MULTILINE):
            yield Violation(file.path, 1, "tidy-reason", f"no comment says why {name} is left out")


def dependencies_documented(tree):
    """dependency: each package of the two lists stands in docs/dependencies.md, with its reason in the list."""
    page = tree.find("docs/dependencies.md")
    for path in ("app/packages.txt", "tests/packages.txt"):
        file = tree.find(path)
        for number, line in enumerate(file.lines if file else [], 1):
            package, _, reason = (part.strip() for part in line.partition("#"))
            if package and not reason:
                yield Violation(path, number, "dependency", f"{package} has no reason beside it")
            if package and (page is None or f"`{package}`" not in page.text):
                yield Violation(path, number, "dependency", f"docs/dependencies.md does not name {package}")


def _same(path, pattern):
    # A wildcard of CMake's file(GLOB) stays within its folder; fnmatch's does not.
    return posixpath.dirname(path) == posixpath.dirname(pattern) and fnmatch.fnmatch(path, pattern)


def _words(tree, pattern, rule, why, but=None):
    for file in tree.files:
        if file.path in (but, "LICENSE"):
            continue
        for number, line in enumerate(file.lines, 1):
            match = pattern.search(line)
            if match:
                yield Violation(file.path, number, rule, f"{match.group()}: {why}")


RULES = [
    top_level,
    spdx_first,
    size,
    median_size,
    finished,
    no_machine_path,
    banned_words,
    tests_registered,
    tidy_reasons,
    dependencies_documented,
]
