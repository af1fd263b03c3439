#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What sbk must answer for the book made from a folder, by brute force, as JSON.

    oracle.py FOLDER --as-at TIME [--by claim,month …] [--load LOAD …]
"""
import argparse
import json

from bookfolder import Folder
from limits import Board
from volumes import Book, load_answer, releases, volumes


def main():
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("folder")
    arguments.add_argument("--as-at", required=True)
    arguments.add_argument("--by", action="append", default=[],
                           help="a grouping of volumes; may be given again")
    arguments.add_argument("--load", action="append", default=[])
    given = arguments.parse_args()
    folder = Folder(given.folder)
    book, as_at = Book(folder), folder.time(given.as_at)
    groupings = [""] + given.by
    print(json.dumps({
        "as_at": folder.clock.text(as_at),
        "volumes": [{"by": by, "rows": volumes(book, as_at, [k for k in by.split(",") if k])}
                    for by in groupings],
        "headroom": {"limits": Board(book).rows(as_at)},
        "releases": {"rows": releases(book, as_at)},
        "load": [load_answer(book, load) for load in given.load or folder.loads],
    }, indent=1, ensure_ascii=False))


if __name__ == "__main__":
    main()
