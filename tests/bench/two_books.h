// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <fmt/format.h>

namespace spoilbook::bench {

/// The main of a bench NAME BOOK [LARGER_BOOK]: `measure(path)` tells of one book, `grown(small, large)` of
/// both.
template <class Measure, class Grown>
int over_two_books(int argc, char** argv, const char* name, Measure measure, Grown grown) {
    if (argc < 2) {
        fmt::print(stderr, "usage: {} BOOK [LARGER_BOOK]\n", name);
        return 2;
    }
    const auto small = measure(argv[1]);
    if (argc < 3) return 0;
    grown(small, measure(argv[2]));
    return 0;
}

}  // namespace spoilbook::bench
