#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# app/without-display.sh BOOK [SBK]: what app/run.sh shows where there is no display. On a copy of the sample book it
# prints the headroom, logs a trip, adds what the return misses and makes it; BOOK stays as it is.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

book=$1
sbk=${2:-build/bin/sbk}
folder=$(mktemp -d "${TMPDIR:-/tmp}/spoilbook.XXXXXX")
cp "$book" "$folder/marram.sbook"
chmod u+w "$folder/marram.sbook"
book=$folder/marram.sbook
# The book stands at 30 May 2026, 18:00: Teal lies full alongside with load L-0601.
before=2026-05-30T18:00+12:00
after=2026-05-30T21:30+12:00

# run COMMAND...: shows the command as one would type it, then its answer.
run() {
    echo
    echo "\$ sbk ${*//$folder\//}"
    "$sbk" "$@"
}

echo "No display: the sample book is taken through one trip on the command line, in $folder"
run headroom "$book" --as-at "$before"
run log "$book" trip T-0602 load=L-0601 tug=Plover departed=2026-05-30T18:05+12:00 \
    release_start=2026-05-30T19:40+12:00 release_end=2026-05-30T19:48+12:00 returned=2026-05-30T21:15+12:00 \
    "ground=Gannet Patch" cell=A2 lat=-40.584900 lon=179.628000 position_u_m=5 position_from=receiver \
    wave_height_m=0.7 tow=astern receiver_on=barge --by Dex --clock "$after"
run headroom "$book" --as-at "$after"

# Status 1 says that something is missing, and names it; no return is made then.
make_return() {
    local status=0
    run return "$book" --period 2026-05 --out "$folder/return" --as-at 2026-06-01T09:00+12:00 || status=$?
    if ((status > 1)); then
        echo "app/without-display.sh: sbk return ended with $status" >&2
        exit "$status"
    fi
}
make_return
run log "$book" shift S-0213 end="$after" --by Bram --clock "$after"
run sign "$book" S-0213 --by Bram --clock "$after"
run log "$book" event EV-102 "action=lookout doubled at the mouth of the basin" --by Esi --clock "$after"
make_return
run journal "$book" --check
echo
echo "The book and the return are in $folder:"
find "$folder" -type f -printf '  %P  %s bytes\n' | sort
