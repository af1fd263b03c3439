# SPDX-License-Identifier: GPL-3.0-or-later
"""`sbk release-check` and `sbk duties` against the oracle over random seasons with conditions of every kind."""
import os

from bookfolder import Folder
from check import Check
from duties import duties
from placeafter import place_conditions
from duecell import due_cell
from planned import Ask
from season_check import CheckSeason
from volumes import Book

ASKS = 10
WAY = 0.2       # m: the oracle walks a way in steps
SUN = 120000    # ms: two algorithms of sunrise may be so far apart


def season(comparison, seed, trips, base, asks=ASKS):
    folder_path, book_path = os.path.join(base, "folder"), os.path.join(base, "season.sbook")
    made = CheckSeason(seed, trips, folder_path)
    made.write()
    name = f"check seed {seed} ({made.places.zone}, {trips} trips)"
    if not comparison.new_book(name, book_path, folder_path):
        return
    book = Book(Folder(folder_path))
    checked = Checked(comparison, book, book_path)
    for ask in made.asks(asks):
        words = checked.words(ask)
        comparison.answer(f"{name} release-check {' '.join(words)}", lambda: checked.differ(ask, words))
    for as_at in made.as_ats[::4]:
        time = book.folder.clock.text(as_at)
        comparison.answer(f"{name} place conditions as at {time}",
                          lambda: place_rows(comparison, book, book_path, as_at, time))
        comparison.answer(f"{name} duties as at {time}", lambda: duty_rows(comparison, book, book_path, as_at, time))


class Checked:
    def __init__(self, comparison, book, book_path):
        self.comparison, self.book, self.book_path = comparison, book, book_path
        self.clock, self.check = book.folder.clock, Check(book)

    def words(self, ask, at=None):
        words = ["--load", ask["load"], "--at", self.clock.text(ask["at"] if at is None else at),
                 "--ground", ask["ground"]]
        if "lat" in ask:
            words += ["--lat=" + ask["lat"], "--lon=" + ask["lon"], "--position-u", str(ask["u"])]
        if "cell" in ask:
            words += ["--cell", ask["cell"]]
        if "wave" in ask:
            words += ["--wave-height", str(ask["wave"])]
        return words

    def _of(self, ask):
        place = None
        if "lat" in ask:
            place = self.book.folder.projection.forward(float(ask["lat"]), float(ask["lon"]))
        return Ask(ask["load"], ask["at"], ask["ground"], ask.get("cell"), place, float(ask["u"]), ask.get("wave"))

    def _ask(self, words):
        got = self.comparison.ask("release-check", self.book_path, *words)
        self.due = got["due_cell"]
        return got["verdict"], {(r["consent"], r["condition"]): (r["state"], self.clock.parse(r["until"]))
                                for r in got["reasons"]}

    def differ(self, ask, words):
        # A cell named without a position is judged at a point of its own, which the oracle does not look for.
        if "cell" in ask and "lat" not in ask:
            return
        verdict, mine = self.check.answer(self._of(ask))
        got_verdict, got = self._ask(words)
        due = due_cell(self.check, self._of(ask))
        if due != self.due:
            yield f"due_cell: oracle {due}, sbk {self.due}"
        for key in sorted({*mine, *got} - self.check.unsure):
            a, b = mine.get(key, ("clear", None)), got.get(key, ("clear", None))
            if a[0] != b[0] or not self._same(a[1], b[1], key):
                yield f"{key}: oracle {a[0]} until {self.clock.text(a[1])}, sbk {b[0]} until {self.clock.text(b[1])}; " \
                      f"{[c for k in self.book.folder.consents for c in k['conditions'] if (k['consent'], c['condition']) == key]}"
        if not self.check.unsure and verdict != got_verdict:
            yield f"verdict: oracle {verdict}, sbk {got_verdict}"
        yield from self._flips(ask, got)

    def _conditions(self, key):
        return [c for k in self.book.folder.consents for c in k["conditions"]
                if (k["consent"], c["condition"]) == key]

    def _same(self, a, b, key):
        sunny = any(c.get("daylight") for c in self._conditions(key))
        return a == b or sunny and a is not None and b is not None and abs(a - b) <= SUN

    def _flips(self, ask, got):
        """A hold by time alone holds to the last millisecond before `until`, and no longer."""
        for key, (state, until) in got.items():
            if state != "hold" or until is None or self._conditions(key)[0]["kind"] != "time":
                continue
            for at, held in ((until - 1, True), (until, False)):
                _, then = self._ask(self.words(ask, at))
                if (then.get(key, ("clear",))[0] == "hold") != held:
                    yield f"{key} until {self.clock.text(until)}: at {self.clock.text(at)} {then.get(key)}"


def place_rows(comparison, book, book_path, as_at, time):
    got = comparison.ask("releases", book_path, "--as-at", time)["rows"]
    theirs = {(r["trip"], r["release"]): {(c["consent"], c["condition"]): (c["state"], c["room_m"])
                                          for c in r["conditions"]} for r in got}
    classes = {(k["consent"], c["condition"]) for k in book.folder.consents for c in k["conditions"]
               if "classes" in c.get("applies", {})}
    for key, mine in place_conditions(book, as_at).items():
        others = theirs[key]
        for condition in sorted({*mine, *others} - classes):
            a, b = mine.get(condition), others.get(condition)
            # Where nothing can be told, a room may be given or not.
            near = a and b and (a[1] is None or b[1] is None or abs(a[1] - b[1]) < WAY)
            if not (a and b and a[0] == b[0] and near):
                yield f"{key} {condition}: oracle {a}, sbk {b}"


def duty_rows(comparison, book, book_path, as_at, time):
    got = comparison.ask("duties", book_path, "--as-at", time)["duties"]
    parse, text = book.folder.clock.parse, book.folder.clock.text
    theirs = {}
    for r in got:
        theirs.setdefault((r["consent"], r["condition"]), []).append(
            (parse(r["arises"]), parse(r["covers_from"]), parse(r["covers_to"]), parse(r["due"]), r["state"],
             parse(r["done_at"])))
    for key, rows in duties(book, as_at).items():
        mine = [(r["arises"], r["covers_from"], r["covers_to"], r["due"], r["state"], r.get("done_at")) for r in rows]
        others = theirs.pop(key, [])
        for a in sorted({*mine, *others}, key=lambda r: (r[0], r[1] or 0)):
            if (a in mine) != (a in others):
                who = "oracle" if a in mine else "sbk"
                yield f"{key} only {who}: arises {text(a[0])} covers {text(a[1])} to {text(a[2])} due {text(a[3])} " \
                      f"{a[4]} done {text(a[5])}"
    for key in theirs:
        yield f"{key}: no duty in the oracle"
