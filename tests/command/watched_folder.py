# SPDX-License-Identifier: GPL-3.0-or-later
"""sbk readings --poll: a folder that loggers write into, looked through again and again."""
import os
import time

from trade import DEVICE, Trade

HEAD = "time,turbidity\n"


def rows(first, last, value=2.5):
    """A reading each quarter of an hour."""
    return "".join(f"2025-11-03T{i // 4:02}:{i % 4 * 15:02}Z,{value}\n" for i in range(first, last))


class WatchedFolder(Trade):
    def setUp(self):
        super().setUp()
        self.new()
        sites = {"turbidity/sites.csv": "site,role,unit,interval_min\nR1,impact,NTU,15\nR10,impact,NTU,15\n"}
        self.write("add", self.book, "--from", self.folder(sites, "more"))
        self.incoming = self.path("incoming")
        os.makedirs(self.incoming)

    def put(self, name, text, age_s=3600):
        path = os.path.join(self.incoming, name)
        os.makedirs(os.path.dirname(path), exist_ok=True)
        with open(path, "w", encoding="utf-8", newline="") as f:
            f.write(text)
        os.utime(path, (time.time() - age_s,) * 2)

    def poll(self, *more, status=0):
        """{file: its row}, and the exit status held."""
        said = self.write("readings", self.book, "--poll", self.incoming, *more, status=status)
        return {row["file"]: row for row in said["files"]}

    def readings(self, site="R1"):
        return self.ask("turbidity", self.book, "--site", site, "--as-at", "2025-12-31T00:00Z")["readings"]

    def test_a_file_is_taken_once_and_what_grew_is_taken_by_itself(self):
        self.put("R1-november.csv", HEAD + rows(0, 8))
        first = self.poll()["R1-november.csv"]
        self.assertEqual(("taken", "R1", 8, 8, 0),
                         tuple(first[k] for k in ("state", "site", "readings", "new", "from_byte")))
        self.assertEqual("held", self.poll()["R1-november.csv"]["state"])
        self.put("R1-november.csv", HEAD + rows(0, 12))
        grown = self.poll()["R1-november.csv"]
        self.assertEqual(("taken", 4, 4), (grown["state"], grown["readings"], grown["new"]))
        self.assertEqual(len(HEAD + rows(0, 8)), grown["from_byte"])
        self.put("R1-november.csv", HEAD + rows(0, 13))
        self.assertEqual(1, self.poll()["R1-november.csv"]["readings"])
        self.assertEqual("held", self.poll()["R1-november.csv"]["state"])
        self.assertEqual(13, self.readings())
        self.assertEqual("intact", self.ask("journal", self.book, "--check")["state"])

    def test_a_file_that_is_being_written_waits(self):
        self.put("R1.csv", HEAD + rows(0, 8), age_s=5)
        self.put("R1-2.csv.part", HEAD + rows(0, 8))
        self.assertEqual({"waiting"}, {row["state"] for row in self.poll().values()})
        self.assertEqual("taken", self.poll("--still", "2")["R1.csv"]["state"])

    def test_half_a_line_is_left_until_it_is_whole(self):
        whole = HEAD + rows(0, 4)
        self.put("R1.csv", whole[:-2])                  # ...,2 in place of 2.5
        first = self.poll()["R1.csv"]
        self.assertEqual((3, True), (first["new"], first["last_line_left"]))
        self.put("R1.csv", whole)
        self.assertEqual(1, self.poll()["R1.csv"]["new"])
        series = self.ask("turbidity", self.book, "--site", "R1", "--as-at", "2025-12-31T00:00Z")["series"]
        self.assertEqual([2.5] * 4, [row["value"] for row in series])

    def test_a_refused_file_says_where_and_the_others_are_taken(self):
        self.put("R1-a.csv", HEAD + rows(0, 2) + "2025-11-03T00:30Z,soon\n2025-11-03T00:45Z,2.5\n")
        self.put("R1-b.csv", HEAD + rows(8, 12))
        self.put("somewhere.csv", HEAD + rows(0, 4))
        self.put("R10/anything.txt", HEAD + rows(0, 6))
        found = self.poll(status=1)
        self.assertEqual({"R1-a.csv": "refused", "R1-b.csv": "taken", "somewhere.csv": "refused",
                          "R10/anything.txt": "taken"}, {name: row["state"] for name, row in found.items()})
        self.assertIn("soon", found["R1-a.csv"]["refusals"][0]["what"])
        self.assertEqual("no-such-row", found["somewhere.csv"]["refusals"][0]["code"])
        self.assertEqual((4, 6), (self.readings(), self.readings("R10")))

    def test_a_row_that_grew_wrong_is_told_by_its_line(self):
        self.put("R1.csv", HEAD + rows(0, 4))
        self.poll()
        self.put("R1.csv", HEAD + rows(0, 4) + "2025-11-03T01:00Z,2.5\n2025-11-03T01:15Z,wet\n")
        refused = self.poll(status=1)["R1.csv"]["refusals"][0]
        self.assertIn("R1.csv (lines counted from its line 6) line 2 column value", refused["where"])
        self.assertEqual(4, self.readings())

    def test_the_layout_of_the_site_s_last_file_holds(self):
        local = "time;turb\n03.04.2025 13:00;2,5\n03.04.2025 13:15;2,75\n"
        self.put("R1-1.csv", local)
        refused = self.poll(status=1)["R1-1.csv"]["refusals"]
        self.assertEqual({"must-ask"}, {r["code"] for r in refused})
        self.assertEqual("taken", self.poll("--zone", "+12:00", "--dates", "dmy")["R1-1.csv"]["state"])
        self.put("R1-2.csv", local.replace("03.04", "04.04"))
        self.assertEqual("taken", self.poll()["R1-2.csv"]["state"])
        self.assertEqual(4, self.readings())

    def test_all_files_are_of_the_site_that_is_said(self):
        self.put("a.csv", HEAD + rows(0, 4))
        self.assertEqual("R10", self.poll("--site", "R10")["a.csv"]["site"])
        self.assertEqual(4, self.readings("R10"))

    def test_a_link_is_refused_and_usage_is_held(self):
        os.symlink("/etc/hostname", os.path.join(self.incoming, "R1-x.csv"))
        self.assertEqual("not-a-file", self.poll("--still", "0", status=1)["R1-x.csv"]["refusals"][0]["code"])
        for words, status in (((), 2), (("--poll", self.incoming, "--file", "x"), 2),
                              (("--poll", os.path.join(self.incoming, "none")), 1)):
            self.assertEqual(status, self.sbk("readings", self.book, *words, *DEVICE).returncode, words)
