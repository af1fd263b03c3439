// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace spoilbook::test {

/// A closed line of {easting, northing}, m.
using Line = std::vector<std::pair<double, double>>;

/// A whole number of millimetres in [low, high), as metres.
inline double any_metres(double low, double high) {
    return *rc::gen::inRange(static_cast<int>(low * 1000), static_cast<int>(high * 1000)) / 1000.0;
}

/// A star about a centre, sound by the way it is made, either way round; of `fewest` to `most` - 1 corners.
inline Line any_star(double east, double north, double least_m, double most_m, int fewest, int most) {
    const int corners = *rc::gen::inRange(fewest, most);
    Line line;
    for (int i = 0; i < corners; ++i) {
        const double radius = any_metres(least_m, most_m), angle = 2 * M_PI * i / corners;
        line.emplace_back(east + radius * std::cos(angle), north + radius * std::sin(angle));
    }
    line.push_back(line.front());
    if (*rc::gen::arbitrary<bool>()) std::reverse(line.begin(), line.end());
    return line;
}

}  // namespace spoilbook::test
