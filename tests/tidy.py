#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""clang-tidy over the programs' sources, what changed last first, within a time.

A room of the model is read as one source that includes all of its own: most of the time goes into the headers of
libraries, which are then read once a room. (No two of a room's sources may give two things one name for that, be it
within their own unnamed namespaces.) The commands are read one by one.

tests/tidy.py BUILD [--seconds N]   BUILD is a built folder with compile_commands.json.
What passed before is passed over while its sources, their headers, its command and .clang-tidy are the same.
Exit 1 where a finding is left. When the time is up the rest is named as not read, and is no failure.
"""
import argparse
import concurrent.futures
import hashlib
import json
import os
import re
import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
READ = ("model/", "app/command/")
TOGETHER = "model/"
CACHE = Path(os.environ.get("XDG_CACHE_HOME", Path.home() / ".cache")) / "spoilbook" / "tidy"
TIDY = "clang-tidy-16"
GCC_ONLY = "--extra-arg=-Wno-unknown-warning-option"  # the compile commands are g++'s


def output_of(*command):
    return subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False).stdout


def commands(build):
    """source -> its compile command, for the sources that are read."""
    found = {}
    for entry in json.loads((build / "compile_commands.json").read_text(encoding="utf-8")):
        source = os.path.relpath(os.path.join(entry["directory"], entry["file"]), ROOT)
        if source.startswith(READ) and (ROOT / source).exists():
            found[source] = entry["command"]
    return found


def units_of(sources):
    """What is read at once -> its sources: a room by its folder's name, else a source by its own."""
    found = {}
    for source in sorted(sources):
        found.setdefault(os.path.dirname(source) if source.startswith(TOGETHER) else source, []).append(source)
    return found


def prepared(build, units, of):
    """A folder with the commands of the units, without g++'s precompiled headers, which are not clang's, and the
    sources that include those of a room."""
    folder = build / "tidy"
    folder.mkdir(exist_ok=True)
    entries = []
    for unit, sources in units.items():
        file = written(folder, unit, sources) if unit not in sources else ROOT / unit
        plain = re.sub(r" -include \S*cmake_pch\.hxx| -Winvalid-pch| -fpch-preprocess| -o \S+| -c \S+", "", of[sources[0]])
        entries.append({"directory": str(build), "command": f"{plain} -c {file}", "file": str(file)})
    (folder / "compile_commands.json").write_text(json.dumps(entries), encoding="utf-8")
    return {unit: entry["file"] for unit, entry in zip(units, entries)}


def written(folder, unit, sources):
    file = folder / (unit.replace("/", "_") + ".cpp")
    file.write_text("".join(f'#include "{ROOT / source}"\n' for source in sources), encoding="utf-8")
    return file


def headers(build):
    """source -> the files of ours that it was compiled from, as ninja noted them."""
    found = {}
    for block in output_of("ninja", "-C", str(build), "-t", "deps").split("\n\n"):
        paths = [os.path.join(build, line.strip()) for line in block.splitlines()[1:]]
        ours = sorted(p for p in (os.path.relpath(p, ROOT) for p in paths) if not p.startswith(".."))
        for source in (p for p in ours if p.endswith(".cpp")):
            found[source] = ours
    return found


def key(command, sources, noted):
    """What a verdict stands on; None where the build has not noted the headers."""
    if not all(noted.get(source) for source in sources):
        return None
    digest = hashlib.sha256(command.encode())
    for path in [".clang-tidy", *sorted({path for source in sources for path in noted[source]})]:
        full = ROOT / path
        digest.update(path.encode() + b"\0" + (full.read_bytes() if full.exists() else b"") + b"\0")
    return CACHE / digest.hexdigest()


def newest_first(units):
    """Uncommitted changes first, then by the last commit that touched one of the sources."""
    changed = {line[3:] for line in output_of("git", "status", "--porcelain", "-uall").splitlines()}
    order = list(dict.fromkeys(output_of("git", "log", "--format=", "--name-only").split("\n")))
    rank = {path: i for i, path in enumerate(order)}
    return sorted(units, key=lambda unit: min((s not in changed, rank.get(s, len(rank)), s) for s in units[unit]))


def unseen(findings, seen):
    """Those findings that no earlier source showed: a header's stand with every source that includes it."""
    blocks = re.split(r"^(?=/\S+:\d+:\d+: (?:error|warning):)", findings, flags=re.MULTILINE)
    fresh = [b for b in blocks if b.strip() and b.split("\n", 1)[0] not in seen]
    seen.update(b.split("\n", 1)[0] for b in fresh)
    return "".join(fresh).rstrip()


def read(build, unit, file, until):
    """(unit, seconds, findings): findings is None where the time was up before it began."""
    start = time.monotonic()
    if start > until:
        return unit, 0.0, None
    call = [TIDY, "-p", str(build / "tidy"), f"--config-file={ROOT / '.clang-tidy'}", "--quiet", GCC_ONLY]
    if unit.startswith(TOGETHER):
        # A local name of one source may be that of a function in the next; the release build watches for the rest.
        call += ["--checks=-bugprone-suspicious-include", "--extra-arg=-Wno-shadow"]
    done = subprocess.run([*call, file], cwd=ROOT, capture_output=True, text=True, check=False)
    findings = done.stdout if done.returncode else ""
    if done.returncode and not findings.strip():
        findings = done.stderr or f"{unit}: {TIDY} ended with {done.returncode}"
    return unit, time.monotonic() - start, findings


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("build", type=Path)
    options.add_argument("--seconds", type=float, default=float("inf"))
    options.add_argument("--jobs", type=int, default=os.cpu_count())
    given = options.parse_args()
    build = given.build.resolve()
    if not (build / "compile_commands.json").exists():
        print(f"tidy: {given.build} is not configured")
        return 1
    CACHE.mkdir(parents=True, exist_ok=True)

    noted = headers(build)
    of = commands(build)
    units = units_of(of)
    files = prepared(build, units, of)
    keys = {unit: key(of[sources[0]], sources, noted) for unit, sources in units.items()}
    left = newest_first({u: units[u] for u in units if not (keys[u] and keys[u].exists())})
    until = time.monotonic() + given.seconds
    bad, unread, seen = [], [], set()
    with concurrent.futures.ThreadPoolExecutor(given.jobs) as pool:
        for unit, seconds, findings in pool.map(lambda u: read(build, u, files[u], until), left):
            if findings is None:
                unread.append(unit)
            elif findings:
                bad.append(unit)
                print(unseen(findings, seen) or f"{unit}: as above", flush=True)
            elif keys[unit]:
                keys[unit].write_text(f"{unit} {seconds:.1f} s\n", encoding="utf-8")
    if unread:
        print("not read, the time was up: " + " ".join(unread))
    print(f"tidy: {len(of)} sources in {len(units)} readings, {len(units) - len(left)} unchanged since they passed, "
          f"{len(left) - len(unread)} read, {len(unread)} not read, {len(bad)} with findings")  # fmt: skip
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
