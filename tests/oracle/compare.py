#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""sbk against the oracle over random seasons.

    compare.py --sbk build/bin/sbk --seeds 1..20 --trips 60 [--about figures,check,turbidity] [--keep DIR] [--all]

An answer (one command at one as-at) passes when every figure agrees to 1e-6, relative or absolute. The first
differences of each season are printed with their facts; the last line counts the answers.
"""
import argparse
import contextlib
import json
import os
import shutil
import subprocess
import sys
import tempfile

import compare_check
import compare_turbidity
from bookfolder import Folder
from limits import Board
from season import Season
from volumes import Book, load_answer, releases, volumes

TOLERANCE = 1e-6
GROUPINGS = ("", "claim", "month", "ground", "cell", "material", "barge", "claim,month", "ground,cell,barge")
SUMS = ("loads", "trips", "hopper_m3", "hopper_m3_u", "in_situ_m3", "in_situ_m3_u", "wet_t", "dry_t")
LIMIT = ("quantity", "window_start", "window_end", "limit", "used", "used_u", "headroom", "p_over",
         "first_over", "unknown", "not_recorded", "used_at_most")
SHOWN = 6       # differences of one answer that are printed


class Refused(Exception):
    pass


class Nothing(dict):
    """What stands for an answer that was refused."""

    def __init__(self, why):
        super().__init__()
        self.why = why

    def __missing__(self, key):
        raise Refused(self.why)


def agree(a, b):
    """Numbers to the tolerance, everything else equal."""
    if type(a) in (int, float) and type(b) in (int, float):
        return abs(a - b) <= TOLERANCE * max(1.0, abs(a), abs(b))
    return a == b


class Comparison:
    def __init__(self, sbk, show_all):
        self.sbk, self.show_all = os.path.abspath(sbk), show_all
        self.passed = self.failed = 0

    def run(self, *words):
        done = subprocess.run([self.sbk, *words], capture_output=True, text=True, timeout=120, check=False)
        if done.returncode != 0:
            said = (done.stderr or done.stdout).strip().splitlines()
            raise Refused(f"sbk {' '.join(words)}: exit {done.returncode}: " + " / ".join(said[:8]))
        return done.stdout

    def ask(self, *words):
        text = self.run(*words, "--json")
        try:
            return json.loads(text)
        except ValueError as error:
            raise Refused(f"sbk {' '.join(words)}: no JSON: {error}: {text[:200]!r}") from error

    def answer(self, title, differ):
        """Count one answer; differ() gives its differences as lines."""
        try:
            found = list(differ())
        except (Refused, subprocess.TimeoutExpired, KeyError, TypeError, AttributeError, ValueError) as error:
            found = [f"{type(error).__name__}: {error}"]
        if not found:
            self.passed += 1
            return
        self.failed += 1
        print(f"FAILED {title}")
        for line in found if self.show_all else found[:SHOWN]:
            print("   ", line)
        if len(found) > SHOWN and not self.show_all:
            print(f"    and {len(found) - SHOWN} more")

    agree = staticmethod(agree)

    def try_ask(self, *words):
        """As ask; what was refused is told by the answer that looks into it."""
        try:
            return self.ask(*words)
        except (Refused, subprocess.TimeoutExpired) as error:
            return Nothing(str(error))

    def new_book(self, name, book_path, folder_path):
        try:
            self.run("new", book_path, "--from", folder_path)
        except Refused as refused:
            self.failed += 1
            print(f"FAILED {name} new\n    {refused}")
            return False
        return True

    # -- one season ----------------------------------------------------------------------------------------

    def season(self, seed, trips, base):
        folder_path, book_path = os.path.join(base, "folder"), os.path.join(base, "season.sbook")
        season = Season(seed, trips, folder_path)
        season.write()
        name = f"seed {seed} ({season.places.zone}, {trips} trips)"
        if not self.new_book(name, book_path, folder_path):
            return
        book = Book(Folder(folder_path))
        board = Board(book)
        for as_at in season.as_ats:
            self._at(f"{name} as at {book.folder.clock.text(as_at)}", book, board, book_path, as_at)
        last = book.folder.clock.text(season.as_ats[-1])
        for load in list(book.folder.loads)[::3]:
            self.answer(f"{name} load {load}", lambda load=load: self._load(book, book_path, load, last))

    def _at(self, title, book, board, book_path, as_at):
        time = book.folder.clock.text(as_at)
        for by in GROUPINGS:
            self.answer(f"{title} volumes --by {by}",
                        lambda by=by: self._volumes(book, book_path, as_at, time, by))
        self.answer(f"{title} headroom", lambda: self._headroom(board, book_path, as_at, time))
        self.answer(f"{title} releases", lambda: self._releases(book, book_path, as_at, time))

    def _volumes(self, book, book_path, as_at, time, by):
        keys = [k for k in by.split(",") if k]
        got = self.ask("volumes", book_path, "--as-at", time, *(["--by", by] if by else []))["rows"]
        mine = {tuple(r[k] for k in keys): r for r in volumes(book, as_at, keys)}
        yield from matched(mine, keyed(got, lambda r: tuple(r[k] for k in keys)), self._volume_row)

    @staticmethod
    def _volume_row(mine, got):
        for key in SUMS:
            # Where no load of a row can be valued the design leaves open whether the sum is null or zero.
            alike = mine[key] is None and not got[key] or agree(mine[key], got[key])
            if not alike:
                yield f"{key}: oracle {mine[key]!r}, sbk {got[key]!r}"

    def _headroom(self, board, book_path, as_at, time):
        def key(r):
            each = r.get("each") or {}
            return (r["consent"],
                    r["condition"]) + tuple(item for pair in sorted(each.items()) for item in pair)

        clock = board.book.folder.clock

        def row(mine, got):
            conditions = [v.condition for v in board.groups[(mine["consent"], mine["condition"])]]
            for name in compared(conditions, mine):
                a, b = mine[name], got.get(name) if name in ("unknown", "quantity") else got[name]
                if name in ("window_start", "window_end", "first_over"):
                    a, b = clock.parse(a), clock.parse(b)
                if not agree(a, b):
                    yield f"{name}: oracle {mine[name]!r}, sbk {got[name]!r}; used {mine['used']!r} of " \
                          f"{mine['limit']!r}; {json.dumps(conditions)}"

        got = self.ask("headroom", book_path, "--as-at", time)["limits"]
        mine, theirs = keyed(board.rows(as_at), key), keyed(got, key)
        yield from matched({k: r for k, r in mine.items() if k in theirs or not nothing(r)},
                           {k: r for k, r in theirs.items() if k in mine or not nothing(r)}, row)

    def _releases(self, book, book_path, as_at, time):
        def by_trip(rows):
            found = {}
            for r in rows:
                found.setdefault(r["trip"], []).append(r)
            order = {t: sorted(rs, key=lambda r: (str(r["cell"]), r["verdict"],
                                                  r["distance_to_boundary_m"] or 0))
                     for t, rs in found.items()}
            return {(t, i): r for t, rs in order.items() for i, r in enumerate(rs)}

        def row(mine, got):
            for key in ("verdict", "distance_to_boundary_m", "cell"):
                if not agree(mine[key], got[key]):
                    yield f"{key}: oracle {mine[key]!r}, sbk {got[key]!r}; oracle's row {mine}"

        got = self.ask("releases", book_path, "--as-at", time)["rows"]
        yield from matched(by_trip(releases(book, as_at)), by_trip(got), row)

    def _load(self, book, book_path, load, time):
        got, mine = self.ask("load", book_path, load, "--as-at", time), load_answer(book, load)
        if got["counted_by"] != mine["counted_by"]:
            yield f"counted_by: oracle {mine['counted_by']}, sbk {got['counted_by']}"

        def row(a, b):
            for key in SUMS[2:]:
                if not (a["method"] == "draughts" and key.endswith("_u")) and not agree(a[key], b[key]):
                    yield f"{key}: oracle {a[key]!r}, sbk {b[key]!r}; row {book.folder.loads[load]}"

        # A method that gives no volume may be left out or stand with nulls.
        theirs = [m for m in got["methods"] if any(m.get(k) is not None for k in SUMS[2:])]
        yield from matched({m["method"]: m for m in mine["methods"]}, {m["method"]: m for m in theirs}, row)


def compared(conditions, mine):
    """The members of a limit that the design fixes: no u for draughts, no used below a share's floor, and a
    trip window has neither end."""
    names = list(LIMIT)
    if any(c.get("method") == "draughts" for c in conditions):
        names = [n for n in names if n not in ("used_u", "p_over")]
    if mine["limit"] is None:
        names = [n for n in names if n not in ("used", "used_u", "used_at_most")]
    if any(c["window"]["kind"] == "trip" for c in conditions):
        names = [n for n in names if n not in ("window_start", "window_end")]
    return names


def nothing(row):
    """A row of the null member in which nothing counts: may stand or be left out."""
    members = list((row.get("each") or {"": ""}).values())
    return members == [None] and not row["used"] and not row.get("unknown")


def keyed(rows, key):
    found = {}
    for r in rows:
        if key(r) in found:
            raise ValueError(f"two rows for {key(r)}")
        found[key(r)] = r
    return found


def matched(mine, theirs, differ):
    """Differences row by row; differ(mine, theirs) gives those of one pair."""
    for key in mine:
        if key not in theirs:
            yield f"{key}: no row in sbk; oracle {mine[key]}"
            continue
        yield from (f"{key} {line}" for line in differ(mine[key], theirs[key]))
    for key in theirs:
        if key not in mine:
            yield f"{key}: no row in the oracle; sbk {theirs[key]}"


def seeds_of(text):
    for part in text.split(","):
        first, _, last = part.partition("..")
        yield from range(int(first), int(last or first) + 1)


@contextlib.contextmanager
def kept_or_temporary(keep, name):
    if not keep:
        with tempfile.TemporaryDirectory() as base:
            yield base
        return
    shutil.rmtree(base := os.path.join(keep, name), ignore_errors=True)
    os.makedirs(base)
    yield base


def main():
    arguments = argparse.ArgumentParser(description=__doc__,
                                        formatter_class=argparse.RawDescriptionHelpFormatter)
    arguments.add_argument("--sbk", required=True)
    arguments.add_argument("--seeds", required=True, help="numbers and A..B, both ends included: 1,4..7")
    arguments.add_argument("--trips", type=int, default=60)
    arguments.add_argument("--about", help="figures,turbidity,…; left out: all")
    arguments.add_argument("--keep", help="leave folders and books in this directory")
    arguments.add_argument("--all", action="store_true", help="print every difference")
    given = arguments.parse_args()
    comparison = Comparison(given.sbk, given.all)
    seasons = {"figures": lambda seed, base: comparison.season(seed, given.trips, base),
               "check": lambda seed, base: compare_check.season(comparison, seed, given.trips // 2, base),
               "turbidity": lambda seed, base: compare_turbidity.season(comparison, seed, base)}
    for seed in seeds_of(given.seeds):
        for about in given.about.split(",") if given.about else seasons:
            with kept_or_temporary(given.keep, f"{about}-{seed}") as base:
                seasons[about](seed, base)
            sys.stdout.flush()
    print(f"{comparison.passed} passed, {comparison.failed} failed")
    return 1 if comparison.failed else 0


if __name__ == "__main__":
    sys.exit(main())
