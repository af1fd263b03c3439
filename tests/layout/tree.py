# SPDX-License-Identifier: GPL-3.0-or-later
"""The tree under test: its files, each read once, and the violations found in them."""
import os
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

import cpp_text

CPP = (".cpp", ".h")
SCRIPT = (".py", ".sh", ".cmake", ".R")
TEXT = CPP + SCRIPT + (".md", ".txt", ".json", ".csv", ".geojson", ".supp", ".qrc", ".svg", ".in", ".yml", "")


@dataclass(frozen=True, order=True)
class Violation:
    path: str
    line: int
    rule: str
    what: str

    def __str__(self):
        return f"{self.path}:{self.line}: {self.rule}: {self.what}"


class File:
    def __init__(self, root, path):
        self.path = path
        self.name = path.rsplit("/", 1)[-1]
        self.suffix = os.path.splitext(self.name)[1]
        self.text = (root / path).read_text(encoding="utf-8", errors="replace")

    @property
    def top(self):
        return self.path.split("/", 1)[0]

    @property
    def room(self):
        """The second folder: 'book' for model/book/journal.cpp; '' for a file right under the first."""
        parts = self.path.split("/")
        return parts[1] if len(parts) > 2 else ""

    @property
    def is_cpp(self):
        return self.suffix in CPP

    @property
    def is_script(self):
        return self.suffix in SCRIPT or self.name == "CMakeLists.txt" or self.text.startswith("#!")

    @cached_property
    def lines(self):
        return self.text.splitlines()

    @cached_property
    def code(self):
        return cpp_text.bare_code(self.text)

    @cached_property
    def includes(self):
        return cpp_text.includes(self.text)

    @cached_property
    def literals(self):
        return cpp_text.string_literals(self.text)


class Tree:
    """All text files below `root` but for builds, git's own and the layout test's bad examples."""

    def __init__(self, root):
        self.root = Path(root)
        self.top_names = sorted(os.listdir(self.root))
        self.files = [File(self.root, p) for p in self._paths()]

    def _paths(self):
        for folder, subfolders, names in os.walk(self.root):
            here = Path(folder).relative_to(self.root).as_posix()
            subfolders[:] = sorted(s for s in subfolders if not self._skipped(here, s))
            for name in sorted(names):
                path = name if here == "." else f"{here}/{name}"
                if os.path.splitext(name)[1] in TEXT and os.path.isfile(self.root / path):
                    yield path

    @staticmethod
    def _skipped(here, name):
        if here == ".":
            return name in (".git", "build", ".cache") or name.startswith("build-")
        return name == "__pycache__" or (here == "tests/layout" and name in ("bad", "good"))

    def find(self, path):
        return next((f for f in self.files if f.path == path), None)

    def cpp(self, *tops):
        return [f for f in self.files if f.is_cpp and f.top in tops]
