// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/table.h"

#include <algorithm>

namespace spoilbook {
namespace {

constexpr double end_tolerance = 1e-9;

}  // namespace

LinearTable::LinearTable(const Table& table, std::size_t column) {
    for (const auto& row : table) {
        if (row.size() <= column) {
            rows_.clear();
            return;
        }
        rows_.push_back({row.front(), row.at(column)});
    }
    std::stable_sort(rows_.begin(), rows_.end(), [](const Row& a, const Row& b) { return a.x < b.x; });
    const auto doubled =
        std::unique(rows_.begin(), rows_.end(), [](const Row& a, const Row& b) { return a.x == b.x; });
    rows_.erase(doubled, rows_.end());
}

std::optional<TablePoint> LinearTable::at(double x) const {
    if (empty()) return std::nullopt;
    if (!(x >= least_x() - end_tolerance && x <= greatest_x() + end_tolerance)) return std::nullopt;
    x = std::clamp(x, least_x(), greatest_x());
    auto above =
        std::lower_bound(rows_.begin(), rows_.end(), x, [](const Row& row, double v) { return row.x < v; });
    if (above == rows_.begin()) ++above;
    const Row& high = *above;
    const Row& low = *(above - 1);
    const double slope = (high.y - low.y) / (high.x - low.x);
    // From the nearer row, so that each row gives back its own number exactly.
    const double y = high.x - x < x - low.x ? high.y - slope * (high.x - x) : low.y + slope * (x - low.x);
    return TablePoint{y, slope};
}

}  // namespace spoilbook
