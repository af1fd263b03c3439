#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# tests/picture/take.sh [FOLDER]: pictures of every screen of the real program, in a real X window, into docs/pictures.
# Needs build/bin/spoilbook and build/sample/sample.sbook, and from Debian xvfb openbox xdotool imagemagick.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
out=${1:-docs/pictures}
mkdir -p "$out"
work=$(mktemp -d)
trap 'kill $(jobs -p) 2>/dev/null || true; rm -rf "$work"' EXIT

for number in $(seq 130 160); do
    [[ -e /tmp/.X$number-lock ]] || break
done

# begin WIDTHxHEIGHT SCALE BOOK...: a window of its own, with settings of its own.
begin() {
    local size=$1 scale=$2
    shift 2
    rm -rf "$work/home"
    mkdir -p "$work/home" "$work/run"
    chmod 700 "$work/run"
    Xvfb ":$number" -screen 0 "${size}x24" -nolisten tcp -noreset >/dev/null 2>&1 &
    screen=$!
    export DISPLAY=":$number"
    until xdotool getdisplaygeometry >/dev/null 2>&1; do sleep 0.1; done
    openbox >/dev/null 2>&1 &
    until xprop -root _NET_SUPPORTING_WM_CHECK 2>/dev/null | grep -q "window id"; do sleep 0.1; done
    sleep 0.5
    env HOME="$work/home" XDG_RUNTIME_DIR="$work/run" QT_SCALE_FACTOR="$scale" QT_QPA_PLATFORM=xcb \
        build/bin/spoilbook --clock 2026-05-30T18:00+12:00 "$@" >/dev/null 2>&1 &
    until xdotool search --onlyvisible --name Spoilbook >/dev/null 2>&1; do sleep 0.1; done
    sleep 4
    xdotool search --onlyvisible --name Spoilbook windowsize --sync 100% 100% windowmove 0 0 >/dev/null 2>&1 || true
    sleep 1
}

end() {
    # shellcheck disable=SC2046
    kill $(jobs -p) 2>/dev/null || true
    wait 2>/dev/null || true
    rm -f "/tmp/.X$number-lock"
}

press() { xdotool key --clearmodifiers "$@"; sleep 1; }

# shot NAME: kept small, 256 colours are enough for quiet screens.
shot() {
    import -window root "$work/shot.png"
    convert "$work/shot.png" -colors 256 "png8:$out/$1.png"
    echo "$out/$1.png"
}

book=$work/marram.sbook
cp build/sample/sample.sbook "$book"
chmod u+w "$book"

begin 1280x800 1
shot start-day
end

begin 1280x800 1 "$book"
press ctrl+1; shot barge-day
press shift+F6; shot barge-ticket-day
press Escape
press ctrl+Page_Down; shot barge-trip-day
press ctrl+Page_Down; shot barge-shifts-day
press ctrl+2; shot works-day
press ctrl+Page_Down; shot works-volumes-day
press ctrl+Page_Down; sleep 1; shot works-pace-day
press ctrl+Page_Down; sleep 2; shot works-bed-day
press ctrl+Page_Down; shot works-barge-tables-day
press ctrl+3; shot consent-day
press ctrl+Page_Down; shot consent-releases-day
press ctrl+Page_Down; shot consent-duties-day
press ctrl+Page_Down; sleep 2; shot consent-turbidity-day
press ctrl+Page_Down; shot consent-return-day
press ctrl+d
press ctrl+Page_Up; sleep 1; shot consent-turbidity-night
press ctrl+Page_Up; shot consent-duties-night
press ctrl+Page_Up ctrl+Page_Up; shot consent-night
press ctrl+2; press ctrl+Page_Up ctrl+Page_Up; sleep 1; shot works-pace-night
press ctrl+Page_Up ctrl+Page_Up; sleep 2; shot works-night
press ctrl+1; press ctrl+Page_Up ctrl+Page_Up; shot barge-night
end

begin 2560x1600 2 "$book"
press ctrl+1; shot barge-200
press ctrl+2; shot works-200
press ctrl+Page_Down ctrl+Page_Down; sleep 1; shot works-pace-200
press ctrl+3; press ctrl+Page_Down ctrl+Page_Down; shot consent-duties-200
end
