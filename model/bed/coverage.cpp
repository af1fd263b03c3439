// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/bed/coverage.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>

namespace spoilbook {

namespace {

/// A share that is less is none: what is left of sums of rounded numbers.
constexpr double rounding = 1e-9;

/// Twice the signed area of a closed line of places.
double twice_area(const std::vector<GridPlace>& line) {
    double sum = 0;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const GridPlace a{line[i].column - line[0].column, line[i].row - line[0].row};
        const GridPlace b{line[i + 1].column - line[0].column, line[i + 1].row - line[0].row};
        sum += a.column * b.row - b.column * a.row;
    }
    return sum;
}

/// Adds what a straight piece of an edge gains to the right of it within one row of pixels: `height` of the
/// row where the piece lies wholly to the left, less over the pixels that it crosses. Each pixel's gain
/// stands as its difference from the pixel before: a running sum over the row makes gains of them.
void add_piece(std::span<double> row, double left, double right, double height) {
    if (left >= static_cast<double>(row.size())) return;
    // How much of the pixels from the left as far as x lies right of the piece.
    const auto gained = [&](double x) {
        if (x <= left) return 0.0;
        if (x >= right) return x - (left + right) / 2;
        return (x - left) * (x - left) / (2 * (right - left));
    };
    auto pixel = static_cast<std::size_t>(std::max(left, 0.0));
    double so_far = gained(static_cast<double>(pixel)), gain_before = 0;
    for (; pixel < row.size(); ++pixel) {
        const double next = gained(static_cast<double>(pixel + 1));
        const double gain = (next - so_far) * height;
        row[pixel] += gain - gain_before;
        if (static_cast<double>(pixel) >= right) return;
        so_far = next;
        gain_before = gain;
    }
}

}  // namespace

Coverage::Coverage(const Area& area, const BedGrid& grid) : columns_(grid.columns()), rows_(grid.rows()) {
    for (const auto& part : area.parts) {
        for (std::size_t i = 0; i < part.rings.size(); ++i)
            add(part.rings[i], i > 0, grid);
    }
}

void Coverage::add(const Ring& ring, bool is_hole, const BedGrid& grid) {
    std::vector<GridPlace> line;
    for (const auto& point : ring.points)
        line.push_back(grid.in_grid(point));
    if (line.empty()) return;
    line.push_back(line.front());
    // Rows run downward: going up with the ground on the right is one way round, and a hole the other.
    const double turn = (twice_area(line) > 0) == is_hole ? 1 : -1;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const GridPlace a = line[i], b = line[i + 1];
        if (a.row < b.row) edges_.push_back({a, b, turn});
        if (a.row > b.row) edges_.push_back({b, a, -turn});
    }
}

std::optional<GridWindow> Coverage::window() const {
    constexpr double far = std::numeric_limits<double>::infinity();
    double left = far, right = -far, top = far, bottom = -far;
    for (const auto& edge : edges_) {
        left = std::min({left, edge.from.column, edge.to.column});
        right = std::max({right, edge.from.column, edge.to.column});
        top = std::min(top, edge.from.row);
        bottom = std::max(bottom, edge.to.row);
    }
    left = std::max(std::floor(left), 0.0);
    top = std::max(std::floor(top), 0.0);
    right = std::min(std::ceil(right), static_cast<double>(columns_));
    bottom = std::min(std::ceil(bottom), static_cast<double>(rows_));
    if (!(left < right) || !(top < bottom)) return std::nullopt;
    return GridWindow{static_cast<int>(left), static_cast<int>(top), static_cast<int>(right - left),
                      static_cast<int>(bottom - top)};
}

std::vector<double> Coverage::shares(const GridWindow& window) const {
    const auto columns = static_cast<std::size_t>(window.columns);
    std::vector<double> shares(window.size(), 0.0);
    const auto row_of = [&](int row) {
        return std::span(shares).subspan(static_cast<std::size_t>(row) * columns, columns);
    };
    for (const auto& edge : edges_) {
        const double first_row = edge.from.row - window.row;
        const double top = std::max(first_row, 0.0);
        const double bottom = std::min(edge.to.row - window.row, static_cast<double>(window.rows));
        if (!(top < bottom)) continue;
        const double slope = (edge.to.column - edge.from.column) / (edge.to.row - edge.from.row);
        const auto column_at = [&](double row) {
            return edge.from.column - window.column + (row - first_row) * slope;
        };
        for (auto row = static_cast<int>(top); row < bottom; ++row) {
            const double from = std::max(top, static_cast<double>(row));
            const double to = std::min(bottom, static_cast<double>(row + 1));
            const auto [left, right] = std::minmax({column_at(from), column_at(to)});
            add_piece(row_of(row), left, right, (to - from) * edge.turn);
        }
    }
    for (int row = 0; row < window.rows; ++row) {
        double sum = 0;
        for (double& share : row_of(row)) {
            sum += share;
            share = std::clamp(sum < rounding ? 0.0 : sum, 0.0, 1.0);
        }
    }
    return shares;
}

}  // namespace spoilbook
