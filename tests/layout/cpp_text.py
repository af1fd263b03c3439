# SPDX-License-Identifier: GPL-3.0-or-later
"""Takes C++ text apart as far as the layout rules need it: code, comments and string literals.

The line structure is kept, so that a place in what comes out is the place in the file.
"""
import re

_TOKEN = re.compile(
    r"""(?P<comment>//[^\n]*|/\*.*?\*/)
      |(?P<raw>\bu?8?R"(?P<mark>[^()\\\s]{0,16})\((?P<body>.*?)\)(?P=mark)")
      |(?P<string>"(?:\\.|[^"\\\n])*")
      |(?P<char>(?<![0-9A-Za-z_])'(?:\\.[^'\n]*|[^'\\\n])')""",
    re.VERBOSE | re.DOTALL,
)
_INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*([<"])([^>"]+)[>"]', re.MULTILINE)


def _blank(text):
    return re.sub(r"[^\n]", " ", text)


def line_of(text, position):
    """The line, counted from 1, on which `position` stands."""
    return text.count("\n", 0, position) + 1


def without_comments(text):
    """The text with each comment blanked; string literals stay."""
    return _TOKEN.sub(lambda m: _blank(m.group()) if m.group("comment") else m.group(), text)


def bare_code(text):
    """The text with comments blanked and the inside of every literal blanked."""

    def repl(match):
        whole = match.group()
        if match.group("comment"):
            return _blank(whole)
        return whole[0] + _blank(whole[1:-1]) + whole[-1]

    return _TOKEN.sub(repl, text)


def string_literals(text):
    """All string literals as (line, content without the quotes)."""
    found = []
    for match in _TOKEN.finditer(text):
        if match.group("raw"):
            found.append((line_of(text, match.start("body")), match.group("body")))
        elif match.group("string"):
            found.append((line_of(text, match.start()), match.group("string")[1:-1]))
    return found


def includes(text):
    """All include lines as (line, '<' or '"', name)."""
    code = without_comments(text)
    return [(line_of(code, m.start(1)), m.group(1), m.group(2)) for m in _INCLUDE.finditer(code)]
