# SPDX-License-Identifier: GPL-3.0-or-later
"""`sbk turbidity` against the oracle over random books about turbidity."""
import os

from bookfolder import Folder
from season_turbidity import TurbiditySeason
from triggers import turbidity
from volumes import Book

EVENT = ("trigger", "start", "end", "over_since", "due", "peak")


def season(comparison, seed, base):
    folder_path, book_path = os.path.join(base, "folder"), os.path.join(base, "season.sbook")
    made = TurbiditySeason(seed, folder_path)
    made.write()
    name = f"turbidity seed {seed}"
    if not comparison.new_book(name, book_path, folder_path):
        return
    book = Book(Folder(folder_path))
    clock = book.folder.clock
    for as_at in made.as_ats:
        for site in made.sites:
            ask = Asked(comparison, book, book_path, site, as_at)
            title = f"{name} {site} as at {clock.text(as_at)}"
            comparison.answer(title + " flags", ask.flags)
            comparison.answer(title + " series", ask.series)
            comparison.answer(title + " events", ask.events)


class Asked:
    """Both answers about one site, worked out once."""

    def __init__(self, comparison, book, book_path, site, as_at):
        self.agree, self.book = comparison.agree, book
        self.mine = turbidity(book, site, as_at)
        self.got = comparison.try_ask("turbidity", book_path, "--site", site, "--as-at",
                                      book.folder.clock.text(as_at))

    def flags(self):
        if self.got["flags"] != self.mine["flags"]:
            yield f"flags: oracle {self.mine['flags']}, sbk {self.got['flags']}"

    def series(self):
        time, mine, got = self.book.folder.time, self.mine["series"], self.got["series"]
        if len(mine) != len(got):
            yield f"oracle {len(mine)} readings, sbk {len(got)}"
        for a, b in zip(mine, got):
            for key in ("time", "value", "flag", "statistic"):
                theirs = time(b[key]) if key == "time" else b[key]
                if not self.agree(a[key], theirs):
                    paired = key == "statistic" and a.get("paired")
                    if not paired:
                        yield f"{b['time']} {key}: oracle {a[key]!r}, sbk {theirs!r} {self.got.get('statistic_of')}"

    def events(self):
        text = self.book.folder.clock.text

        def told(event, of):
            found = {k: event.get(k) for k in EVENT}
            return {k: of(v) if k in ("start", "end", "over_since", "due") else v for k, v in found.items()}

        mine, got = {}, {}
        for held, events, of in ((mine, self.mine["events"], text),
                                 (got, self.got["events"], lambda t: text(self.book.folder.time(t)))):
            for event in events:
                held.setdefault(event["condition"], []).append(told(event, of))
        for condition in sorted({*mine, *got}):
            yield from self._events_of(condition, mine.get(condition, []), got.get(condition, []))

    def _events_of(self, condition, mine, got):
        by_start = lambda e: (e["start"] or "", e["end"] or "")
        mine, got = sorted(mine, key=by_start), sorted(got, key=by_start)
        if len(mine) == len(got) and all(self.agree(a[k], b[k]) for a, b in zip(mine, got) for k in EVENT):
            return
        for i in range(max(len(mine), len(got))):
            a, b = (e[i] if i < len(e) else None for e in (mine, got))
            if a is None or b is None or not all(self.agree(a[k], b[k]) for k in EVENT):
                yield f"{condition} event {i}: oracle {a}, sbk {b}; of {len(mine)} and {len(got)}"
                return
