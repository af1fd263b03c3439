#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""clang-tidy over the programs' sources, what changed last first, within a time.

tests/tidy.py BUILD [--seconds N]   BUILD is a built folder with compile_commands.json.
A source that passed before is passed over while it, its headers, its command and .clang-tidy are the same.
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


def without_precompiled(build):
    """A folder with the same commands without g++'s precompiled headers, which are not clang's: every source is
    read as it stands, and one that forgot to name a header is found."""
    folder = build / "tidy"
    folder.mkdir(exist_ok=True)
    entries = json.loads((build / "compile_commands.json").read_text(encoding="utf-8"))
    for entry in entries:
        entry["command"] = re.sub(r" -include \S*cmake_pch\.hxx| -Winvalid-pch| -fpch-preprocess", "", entry["command"])
    (folder / "compile_commands.json").write_text(json.dumps(entries), encoding="utf-8")
    return folder


def headers(build):
    """source -> the files of ours that it was compiled from, as ninja noted them."""
    found = {}
    for block in output_of("ninja", "-C", str(build), "-t", "deps").split("\n\n"):
        paths = [os.path.join(build, line.strip()) for line in block.splitlines()[1:]]
        ours = sorted(p for p in (os.path.relpath(p, ROOT) for p in paths) if not p.startswith(".."))
        for source in (p for p in ours if p.endswith(".cpp")):
            found[source] = ours
    return found


def key(source, command, files):
    """What a verdict stands on; None where the build has not noted the headers."""
    if not files:
        return None
    digest = hashlib.sha256(command.encode())
    for path in [".clang-tidy", *files]:
        full = ROOT / path
        digest.update(path.encode() + b"\0" + (full.read_bytes() if full.exists() else b"") + b"\0")
    return CACHE / digest.hexdigest()


def newest_first(sources):
    """Uncommitted changes first, then by the last commit that touched the source."""
    changed = {line[3:] for line in output_of("git", "status", "--porcelain", "-uall").splitlines()}
    order = list(dict.fromkeys(output_of("git", "log", "--format=", "--name-only").split("\n")))
    rank = {path: i for i, path in enumerate(order)}
    return sorted(sources, key=lambda s: (s not in changed, rank.get(s, len(rank)), s))


def unseen(findings, seen):
    """Those findings that no earlier source showed: a header's stand with every source that includes it."""
    blocks = re.split(r"^(?=/\S+:\d+:\d+: (?:error|warning):)", findings, flags=re.MULTILINE)
    fresh = [b for b in blocks if b.strip() and b.split("\n", 1)[0] not in seen]
    seen.update(b.split("\n", 1)[0] for b in fresh)
    return "".join(fresh).rstrip()


def read(build, source, until):
    """(source, seconds, findings): findings is None where the time was up before it began."""
    start = time.monotonic()
    if start > until:
        return source, 0.0, None
    done = subprocess.run([TIDY, "-p", str(build), "--quiet", GCC_ONLY, source], cwd=ROOT, capture_output=True, text=True,
                          check=False)  # fmt: skip
    findings = done.stdout if done.returncode else ""
    if done.returncode and not findings.strip():
        findings = done.stderr or f"{source}: {TIDY} ended with {done.returncode}"
    return source, time.monotonic() - start, findings


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
    build = without_precompiled(build)
    of = commands(build)
    keys = {source: key(source, of[source], noted.get(source)) for source in of}
    left = newest_first([s for s in of if not (keys[s] and keys[s].exists())])
    until = time.monotonic() + given.seconds
    bad, unread, seen = [], [], set()
    with concurrent.futures.ThreadPoolExecutor(given.jobs) as pool:
        for source, seconds, findings in pool.map(lambda s: read(build, s, until), left):
            if findings is None:
                unread.append(source)
            elif findings:
                bad.append(source)
                print(unseen(findings, seen) or f"{source}: as above", flush=True)
            elif keys[source]:
                keys[source].write_text(f"{source} {seconds:.1f} s\n", encoding="utf-8")
    if unread:
        print("not read, the time was up: " + " ".join(unread))
    print(f"tidy: {len(of)} sources, {len(of) - len(left)} unchanged since they passed, "
          f"{len(left) - len(unread)} read, {len(unread)} not read, {len(bad)} with findings")  # fmt: skip
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
