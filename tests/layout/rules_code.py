# SPDX-License-Identifier: GPL-3.0-or-later
"""Rules on what code may say: where SQL, clocks, the environment and globals may stand."""
import re

import cpp_text
from tree import Violation

_SQL = re.compile(
    r"""^\s*(?:SELECT\s+\S|select\s+[\w*.,\s()]+\s+from\s+\w
       |(?:INSERT|REPLACE)\s+(?:OR\s+\w+\s+)?INTO\s|insert\s+into\s|UPDATE\s+\S+\s+SET\s|update\s+\w+\s+set\s
       |DELETE\s+FROM\s|delete\s+from\s|PRAGMA\s+\w|pragma\s+\w+\s*[=;(]|ATTACH\s+(?:DATABASE\s)?
       |(?:CREATE|DROP|ALTER|create|drop|alter)\s+(?:(?i:UNIQUE|TEMP|TEMPORARY|VIRTUAL)\s+)?
        (?i:TABLE|INDEX|TRIGGER|VIEW)\b
       |WITH\s+\w+\s*(?:\([^)]*\)\s*)?AS\s*\(|SAVEPOINT\s|BEGIN(?:\s+(?:IMMEDIATE|EXCLUSIVE|DEFERRED))?\s*;?\s*$)""",
    re.VERBOSE,
)
_CLOCK = re.compile(
    r"\b(?:system|steady|utc|high_resolution)_clock::now\b|\btime\s*\(\s*(?:nullptr|NULL|0|&\w+)\s*\)"
    r"|\bcurrent(?:DateTime\w*|Date|Time|MSecsSinceEpoch|SecsSinceEpoch)\s*\(|\bgettimeofday\b"
    r"|\bclock_gettime\b|\babsl::Now\s*\(|\btimespec_get\b|\bQ(?:Elapsed|Deadline)Timer\b.*\bnow\b"
)
_SQL_CLOCK = re.compile(
    r"\bCURRENT_(?:TIMESTAMP|DATE|TIME)\b|\b(?:datetime|date|time|julianday|unixepoch|strftime)\([^)]*'now'", re.I
)
_AMBIENT = re.compile(
    r"\b(?:secure_)?(?:getenv|setenv|putenv|unsetenv)\b|\bsetlocale\b|\blocaleconv\b|\bstd::locale\b"
    r"|\bimbue\s*\(|\babsl::LocalTimeZone\b|\blocaltime(?:_r)?\b|\bmktime\b|\bstd::random_device\b"
    r"|\bs?rand\s*\(|\bstd::c(?:out|err|log|in)\b"
)
_GLOBAL = re.compile(
    r"^(?!(?:using|namespace|return|class|struct|enum|union|typedef|template|friend|extern|const|constexpr"
    r"|public|private|protected|goto|case|delete|throw|else|requires|concept)\b)"
    r"(?!(?:static|inline)\s+(?:inline\s+|static\s+)?(?:const|constexpr)\b)"
    r"[A-Za-z_][\w:<>,*& ]*[\w>*&]\s+[*&]?\w+\s*(?:\[\w*\]\s*)?(?:=[^=]|;|\{)",
    re.MULTILINE,
)
_STATIC = re.compile(
    r"^[ \t]+(?:thread_local\s|static\s+(?!const\b|constexpr\b|inline\s+const)[\w:<>,*& ]*[\w>*&]\s+[*&]?\w+"
    r"\s*(?:\[\w*\]\s*)?(?:=[^=]|;|\{))",
    re.MULTILINE,
)


def no_sql_outside_book(tree):
    """sql-outside-book: no string of a program is SQL, but in model/book/."""
    for file in tree.cpp("model", "forms", "app"):
        if file.path.startswith("model/book/"):
            continue
        for line, literal in file.literals:
            if _SQL.match(literal):
                what = f'"{literal.strip()[:40]}": SQL stands in model/book/ only'
                yield Violation(file.path, line, "sql-outside-book", what)


def no_clock(tree):
    """clock: model/ and forms/ read no clock; app/ hands the time in."""
    for file in tree.cpp("model", "forms"):
        yield from _found(file, file.code, _CLOCK, "clock", "the time is handed in; only app/ reads a clock")
        for line, literal in file.literals:
            if _SQL_CLOCK.search(literal):
                yield Violation(file.path, line, "clock", "SQL that asks for the present time")


def nothing_ambient(tree):
    """ambient: model/ reads no environment, locale, chance or screen."""
    why = "model/ takes values and returns values"
    for file in tree.cpp("model"):
        yield from _found(file, file.code, _AMBIENT, "ambient", why)


def no_globals(tree):
    """global: nothing in model/ can change at namespace scope or in a static."""
    for file in tree.cpp("model"):
        code = re.sub(r"^[ \t]*#.*", "", file.code, flags=re.MULTILINE)
        yield from _found(file, code, _GLOBAL, "global", "a value that can change at namespace scope")
        yield from _found(file, code, _STATIC, "global", "a static that can change")


def _found(file, text, pattern, rule, why):
    for match in pattern.finditer(text):
        line = cpp_text.line_of(text, match.start())
        words = match.group().strip().splitlines()[0][:50]
        yield Violation(file.path, line, rule, f"{words}: {why}")


RULES = [no_sql_outside_book, no_clock, nothing_ambient, no_globals]
