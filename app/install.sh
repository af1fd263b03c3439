#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# app/install.sh LIST...: installs those Debian packages named in the lists that are not there yet.
# A list has one package a line and its reason after '#'. Touches no network when nothing is missing.
set -euo pipefail

if (($# == 0)); then
    echo "usage: app/install.sh LIST..." >&2
    exit 2
fi
if ! command -v dpkg >/dev/null || ! command -v apt-get >/dev/null; then
    echo "app/install.sh: this is not a Debian system (no dpkg or apt-get)." >&2
    echo "Install by hand what these lists name: $*" >&2
    exit 1
fi

missing=()
while read -r package; do
    if ! dpkg -s "$package" 2>/dev/null | grep -q '^Status: .* ok installed$'; then
        missing+=("$package")
    fi
done < <(sed -e 's/#.*//' -e 's/[[:space:]]*$//' -e '/^$/d' "$@")

if ((${#missing[@]} == 0)); then
    exit 0
fi

as_root=()
if (($(id -u) != 0)); then
    if ! command -v sudo >/dev/null; then
        echo "These packages are missing, and neither root nor sudo is at hand to install them:" >&2
        printf '  %s\n' "${missing[@]}" >&2
        exit 1
    fi
    as_root=(sudo)
fi

echo "Installing ${#missing[@]} missing packages: ${missing[*]}"
apt=("${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -q)
# A source that has nothing to do with ours may be out of reach; whether ours are, the install will say.
"${apt[@]}" update || echo "Some package lists could not be refreshed; going on with what is known." >&2
if ! "${apt[@]}" install --yes --no-install-recommends "${missing[@]}"; then
    echo "apt-get could not install all of: ${missing[*]}" >&2
    exit 1
fi
