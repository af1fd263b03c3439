// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "model/record/reading.h"

namespace spoilbook {

/// A value read from a table, and dy/dx there.
struct TablePoint {
    double y = 0;
    double slope = 0;
};

/// A table of numbers read linearly between its rows; the rows may ascend or descend in x.
class LinearTable {
 public:
    LinearTable() = default;
    /// x is the first number of a row, y the number in `column`. Empty where a row lacks one of them.
    explicit LinearTable(const Table& table, std::size_t column = 1);

    /// Nothing outside the rows (never extrapolated) or where there are fewer than two. On a row the slope is
    /// that of the stretch below it. An x less than 1e-9 outside is taken as the end: means of readings carry
    /// such rounding.
    [[nodiscard]] std::optional<TablePoint> at(double x) const;
    [[nodiscard]] bool empty() const { return rows_.size() < 2; }
    [[nodiscard]] double least_x() const { return rows_.front().x; }
    [[nodiscard]] double greatest_x() const { return rows_.back().x; }

 private:
    struct Row {
        double x;
        double y;
    };
    std::vector<Row> rows_;  ///< ascending in x, each x once
};

}  // namespace spoilbook
