#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# app/without-display.sh BOOK: what app/run.sh shows where there is no display. On a copy of the sample book it
# logs a load and its trip, prints the headroom before and after, and makes a return; BOOK stays as it is.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

book=$1
sbk=build/bin/sbk
folder=$(mktemp -d "${TMPDIR:-/tmp}/spoilbook.XXXXXX")
cp "$book" "$folder/marram.sbook"
chmod u+w "$folder/marram.sbook"
book=$folder/marram.sbook
as_at=2026-05-30T18:00+12:00

# run COMMAND...: shows the command as one would type it, then its answer.
run() {
    echo
    echo "\$ sbk ${*//$folder\//}"
    "$sbk" "$@"
}

echo "No display: the sample book is taken through one trip on the command line, in $folder"
run headroom "$book" --as-at "$as_at"
run log "$book" load L-9001 barge=Teal material=silt loading_start=2026-05-30T13:10+12:00 \
    loading_end=2026-05-30T14:30+12:00 stated_in_situ_m3=331 "stated_how=from the barge's marks" --by Ana
run log "$book" trip T-9001 load=L-9001 tug=Plover departed=2026-05-30T14:40+12:00 \
    release_start=2026-05-30T16:05+12:00 release_end=2026-05-30T16:12+12:00 returned=2026-05-30T17:20+12:00 \
    "ground=Gannet Patch" --by Ana
run headroom "$book" --as-at "$as_at"

# The return is made whatever is missing; status 1 says that something is, and names it.
status=0
run return "$book" --period 2026-05 --out "$folder/return" --as-at "$as_at" || status=$?
if ((status > 1)); then
    echo "app/without-display.sh: sbk return ended with $status" >&2
    exit "$status"
fi
echo
echo "The book and the return are in $folder:"
find "$folder" -type f -printf '  %P  %s bytes\n' | sort
