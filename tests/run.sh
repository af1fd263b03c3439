#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# tests/run.sh [--long]: every check of the tree on Debian 12; installs what is missing first.
# Builds build/ (Release) and build-sanitized/ (address and undefined-behaviour sanitizers), runs the suites of
# both, the layout of house and text, and clang-tidy. Closes with "N passed, N failed"; exit 1 if any failed.
#   --long           no time limit on clang-tidy, and the suites' own long cases (SPOILBOOK_LONG=1)
#   SPOILBOOK_SKIP   parts to leave out, said so in the end: "tidy", "sanitized" or both
#   SPOILBOOK_JOBS   how many compilers and tests at once (default: one a processor)
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

tidy_seconds=30
case "${1-}" in
    '') ;;
    --long)
        export SPOILBOOK_LONG=1
        tidy_seconds=1e9
        ;;
    *)
        echo "usage: tests/run.sh [--long]" >&2
        exit 2
        ;;
esac
jobs=${SPOILBOOK_JOBS:-$(nproc)}
export CMAKE_BUILD_PARALLEL_LEVEL=$jobs QT_QPA_PLATFORM=offscreen PYTHONDONTWRITEBYTECODE=1
# Another folder of the same sources finds what was compiled before.
export CCACHE_BASEDIR=$PWD CCACHE_NOHASHDIR=1
passed=0
failed=0
broken=()

# step NAME COMMAND...: runs one check that counts as one, and says how long it took.
step() {
    local name=$1 since=$SECONDS
    shift
    echo "== $name"
    if "$@"; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        broken+=("$name")
    fi
    echo "== $name: $((SECONDS - since)) s"
}

# skipped PART: whether it is to be left out.
skipped() {
    [[ " ${SPOILBOOK_SKIP-} " == *" $1 "* ]]
}

configure() {
    cmake --preset "$1" -DSPOILBOOK_TESTS=ON -DSPOILBOOK_TESTS_TOGETHER=ON >"$2/configure.log" 2>&1 || {
        cat "$2/configure.log"
        return 1
    }
}

build() {
    mkdir -p "$2"
    configure "$1" "$2" && cmake --build "$2" -- -k 0
}

# A suite whose room did not build is left out by CMake without a word: every folder of tests must be there.
suites_are_there() {
    local listed folder missing=0
    listed=$(ctest --test-dir "$1" -N)
    for folder in tests/unit/*/; do
        if compgen -G "${folder}*.cpp" >/dev/null &&
            ! grep -qE "Test +#[0-9]+: $(basename "$folder")\$" <<<"$listed"; then
            echo "no suite for $folder in $1"
            missing=1
        fi
    done
    return $missing
}

# suites PRESET FOLDER: ctest's own count goes into passed and failed, in test cases.
suites() {
    local since=$SECONDS good=0 bad=0 state=0
    echo "== suites, $1"
    rm -f "$2/results.xml"
    ctest --preset "$1" --parallel "$jobs" --output-junit "$PWD/$2/results.xml" \
        --test-output-size-passed 1000000 --test-output-size-failed 1000000 || state=$?
    if [[ -f $2/results.xml ]]; then
        read -r good bad < <(tests/results.py "$2/results.xml")
    fi
    if ((state != 0 && bad == 0)); then
        bad=1
    fi
    if ((bad > 0)); then
        broken+=("suites, $1")
    fi
    passed=$((passed + good))
    failed=$((failed + bad))
    echo "== suites, $1: $((SECONDS - since)) s"
}

format() {
    git ls-files -z -- '*.cpp' '*.h' ':!tests/layout' | xargs -0 -r clang-format-16 --dry-run -Werror
}

app/install.sh app/packages.txt tests/packages.txt
for folder in build build-sanitized; do
    mkdir -p "$folder"
done

step "layout of the house" python3 tests/layout/check_layout.py
step "layout of the text" format
step "build, release" build release build
if [[ -f build/build.ninja ]]; then
    step "every suite is there" suites_are_there build
    suites release build
fi
skipped sanitized || step "build, sanitized" build sanitized build-sanitized
skipped tidy || step "clang-tidy" tests/tidy.py build --jobs "$jobs" --seconds "$tidy_seconds"
if [[ -n ${SPOILBOOK_LONG-} ]]; then
    step "sbk against the oracle, 20 seasons" \
        python3 tests/oracle/compare.py --sbk build/bin/sbk --seeds 3..22 --trips 60
fi
if ! skipped sanitized && [[ -f build-sanitized/build.ninja ]]; then
    suites sanitized build-sanitized
fi

echo "all checks took $SECONDS s"
if [[ -n ${SPOILBOOK_SKIP-} ]]; then
    echo "left out: $SPOILBOOK_SKIP"
fi
if ((${#broken[@]} > 0)); then
    printf 'failed: %s\n' "${broken[@]}"
fi
echo "$passed passed, $failed failed"
((failed == 0))
