#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# app/run.sh [--fresh]: installs what is missing (Debian 12), builds, and opens the sample book.
# With no display it takes the same book through one trip on the command line instead.
#   --fresh          throw the working copy of the sample book away and start from the shipped one
#   SPOILBOOK_JOBS   how many compilers at once (default: one a processor)
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

fresh=0
case "${1-}" in
    '') ;;
    --fresh) fresh=1 ;;
    *)
        echo "usage: app/run.sh [--fresh]" >&2
        exit 2
        ;;
esac

app/install.sh app/packages.txt

export CCACHE_BASEDIR=$PWD CCACHE_NOHASHDIR=1
# A new build/ needs no Catch2; one that has the tests already keeps them, and naming the targets leaves them be.
tests=()
if [[ ! -f build/CMakeCache.txt ]]; then
    tests=(-DSPOILBOOK_TESTS=OFF)
fi
echo "Building (the first time takes some minutes) ..."
log=$(mktemp)
trap 'rm -f "$log"' EXIT
if ! cmake --preset release "${tests[@]}" >"$log" 2>&1; then
    cat "$log" >&2
    echo "app/run.sh: configuring failed; the reason stands above." >&2
    exit 1
fi
cmake --build build --parallel "${SPOILBOOK_JOBS:-$(nproc)}" --target spoilbook sbk sample
rm -f "$log"

shipped=build/sample/sample.sbook
if [[ ! -f $shipped ]]; then
    echo "app/run.sh: the build made no $shipped" >&2
    exit 1
fi

if [[ -z ${DISPLAY-} && -z ${WAYLAND_DISPLAY-} ]]; then
    exec app/without-display.sh "$shipped"
fi

# The shipped book stays as it was built; what is tried out goes into a copy of one's own.
own=${XDG_STATE_HOME:-$HOME/.local/state}/spoilbook/marram.sbook
if ((fresh)) || [[ ! -f $own ]]; then
    mkdir -p "$(dirname "$own")"
    rm -f "$own" "$own-wal" "$own-shm"
    cp "$shipped" "$own"
    chmod u+w "$own"
fi
echo "Opening $own (app/run.sh --fresh starts over)."
# The sample's shift is running on 30 May 2026: the clock starts there, so that its desks have a day to show.
exec build/bin/spoilbook --clock 2026-05-30T18:00+12:00 "$own"
