// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/bed/levels_between.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace spoilbook {

namespace {

/// Grids that lie on each other do so to this share of a pixel.
constexpr double on_it = 1e-6;

/// Two pixels in a row and how much the second counts.
struct Pair {
    int first = 0;
    double second_counts = 0;
};

/// Of a coordinate counted from the grid's edge.
Pair pair_at(double place) {
    constexpr double far = 1e9;  // off any grid, and a whole number still
    const double from_middle = std::clamp(place - 0.5, -far, far);
    const double nearest = std::round(from_middle);
    if (std::abs(from_middle - nearest) < on_it) return {static_cast<int>(nearest), 0};
    const double first = std::floor(from_middle);
    return {static_cast<int>(first), from_middle - first};
}

}  // namespace

std::vector<double> LevelsBetween::at_middles_of(const BedGrid& other, const GridWindow& window) const {
    constexpr double not_surveyed = std::numeric_limits<double>::quiet_NaN();
    const BedGrid& grid = bed_.grid();
    const auto place_of = [&](int column, int row) {
        return grid.in_grid(other.on_map({window.column + column + 0.5, window.row + row + 0.5}));
    };
    // Both grids run along the map's axes, so the corners hold all that lies between.
    const GridPlace a = place_of(0, 0), b = place_of(window.columns - 1, window.rows - 1);
    const auto within = [](double place, int most) { return std::clamp(place, -2.0, most + 2.0); };
    const int left =
        std::max(0, static_cast<int>(std::floor(within(std::min(a.column, b.column), grid.columns()))) - 1);
    const int top =
        std::max(0, static_cast<int>(std::floor(within(std::min(a.row, b.row), grid.rows()))) - 1);
    const int right =
        std::min(grid.columns(),
                 static_cast<int>(std::ceil(within(std::max(a.column, b.column), grid.columns()))) + 1);
    const int bottom =
        std::min(grid.rows(), static_cast<int>(std::ceil(within(std::max(a.row, b.row), grid.rows()))) + 1);
    std::vector<double> result(window.size(), not_surveyed);
    if (left >= right || top >= bottom) return result;
    const GridWindow held{left, top, right - left, bottom - top};
    const auto levels = bed_.levels(held);
    const auto level = [&](int column, int row) {
        const bool is_held = column >= left && column < right && row >= top && row < bottom;
        return is_held ? levels[static_cast<std::size_t>(row - top) * static_cast<std::size_t>(held.columns) +
                                static_cast<std::size_t>(column - left)]
                       : not_surveyed;
    };
    // The axes are the same, so what a column lies between is the same in every row.
    std::vector<Pair> across, down;
    for (int column = 0; column < window.columns; ++column)
        across.push_back(pair_at(place_of(column, 0).column));
    for (int row = 0; row < window.rows; ++row)
        down.push_back(pair_at(place_of(0, row).row));
    std::size_t i = 0;
    for (const Pair& rows : down) {
        for (const Pair& columns : across) {
            // A pixel that does not count is not asked, for it may be blank.
            const auto along = [&](int row) {
                const double first = level(columns.first, row);
                if (columns.second_counts == 0) return first;
                return std::lerp(first, level(columns.first + 1, row), columns.second_counts);
            };
            const double upper = along(rows.first);
            result[i++] =
                rows.second_counts == 0 ? upper : std::lerp(upper, along(rows.first + 1), rows.second_counts);
        }
    }
    return result;
}

}  // namespace spoilbook
