# SPDX-License-Identifier: GPL-3.0-or-later
"""Fifteen invented consents that use every member of every kind (tests/consents): taken in, judged, given back."""
import json
import os

from trade import Trade

HERE = os.path.dirname(os.path.abspath(__file__))
with open(os.path.join(HERE, os.pardir, "consents", "consents.json"), encoding="utf-8") as consents_file:
    CONSENTS = json.load(consents_file)["consents"]
SITES = "site,role,unit,interval_min\nN1,impact,NTU,10\nN2,impact,NTU,10\nK1,control,NTU,10\n"
SURVEYS = "survey,surveyed_on,kind\nbefore,2025-08-01,before\nafter Q1,2025-12-01,after\n"
TIDE = "time,level_m\n2025-11-04T08:00,1.0\n2025-11-04T10:00,1.2\n"


def conditions(kind=None):
    return [(c["consent"], d) for c in CONSENTS for d in c["conditions"] if kind in (None, d["kind"])]


def instant(value):
    """A day stands for its local midnight; an export writes the instant."""
    if isinstance(value, dict):
        return {k: instant(v) for k, v in value.items()}
    if isinstance(value, list):
        return [instant(v) for v in value]
    return value[:10] if isinstance(value, str) and value[4:5] == "-" and value[:4].isdigit() else value


class Consents(Trade):
    def made(self):
        self.new(consents_json={"consents": CONSENTS},
                 **{"turbidity__sites_csv": SITES, "surveys_csv": SURVEYS, "tide_csv": TIDE})

    def test_all_are_given_back_as_they_came(self):
        self.made()
        out = self.path("out")
        self.assertEqual(0, self.sbk("export", self.book, "--to", out).returncode)
        with open(os.path.join(out, "consents.json"), encoding="utf-8") as file:
            back = {c["consent"]: c for c in json.load(file)["consents"]}
        for consent in CONSENTS:
            for told, read in zip(consent["conditions"], back[consent["consent"]]["conditions"], strict=True):
                self.assertEqual(instant(told), instant(read))

    def test_every_limit_in_force_has_its_row(self):
        self.made()
        rows = self.ask("headroom", self.book, "--as-at", "2025-11-05T00:00")["limits"]
        at = "2025-11-05"
        expected = {(c, d["condition"]) for c, d in conditions("quantity")
                    if d.get("from", "0") <= at < d.get("to", "9")}
        self.assertEqual(expected, {(r["consent"], r["condition"]) for r in rows})

    def test_the_release_check_reads_every_member(self):
        self.made()
        said = self.ask("release-check", self.book, "--load", "L-4", "--at", "2025-11-04T09:00",
                        "--lat=-40.59", "--lon=179.61", "--wave-height=1")
        for reason in said["reasons"]:
            self.assertNotIn("do not read", reason["why"])
            self.assertIn(reason["consent"], {c["consent"] for c in CONSENTS})

    def test_every_duty_has_its_times(self):
        self.made()
        rows = self.ask("duties", self.book, "--as-at", "2025-11-05T00:00")["duties"]
        waiting_for_an_event = {("TH-12", "4")}
        expected = {(c, d["condition"]) for c, d in conditions("duty")} - waiting_for_an_event
        self.assertEqual(expected, {(r["consent"], r["condition"]) for r in rows})
