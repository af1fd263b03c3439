// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/check_table.h"

#include <algorithm>
#include <cmath>

#include "model/unit/number_text.h"

namespace spoilbook {
namespace {

constexpr double deep_m = 15;    // deeper than any hopper or draught of a barge: likely typed in centimetres
constexpr double far_off = 0.2;  // share by which two figures of one thing may differ before it is odd

struct Checker {
    const Table& table;
    std::string code;
    std::string where;
    TableFindings found;

    void refuse(const std::string& what, const std::string& mend) {
        found.refusals.push_back({code, where, what, mend});
    }
    void note(const std::string& what) { found.notes.push_back({where, what}); }
    [[nodiscard]] std::string row_name(std::size_t i) const { return "row " + std::to_string(i + 1); }

    /// Rows of a length, at least two, no number below zero in the first two columns.
    bool shape(std::size_t least, std::size_t most) {
        if (table.size() < 2) {
            refuse("has fewer than two rows", "give at least two");
            return false;
        }
        for (std::size_t i = 0; i < table.size(); ++i) {
            const auto& row = table[i];
            if (row.size() < least || row.size() > most || row.size() != table.front().size()) {
                refuse(row_name(i) + " has " + std::to_string(row.size()) + " numbers",
                       "give every row the same columns");
                return false;
            }
            if (row[0] < 0 || row[1] < 0)
                refuse(row_name(i) + " has a number below zero", "give zero or more");
        }
        return found.refusals.empty();
    }

    /// First column in one order, second falling (sign −1) or growing (+1) with it.
    void order(double sign) {
        const double way = table[1][0] > table[0][0] ? 1 : -1;
        for (std::size_t i = 1; i < table.size(); ++i) {
            const double dx = table[i][0] - table[i - 1][0];
            const double dy = table[i][1] - table[i - 1][1];
            if (dx == 0) {
                refuse(row_name(i) + " repeats " + number_text(table[i][0]) + " m", "give each once");
            } else if (dx * way < 0) {
                refuse(row_name(i) + " at " + number_text(table[i][0]) + " m is out of order",
                       "sort the rows by their first number");
            } else if (dy * way * sign <= 0) {
                refuse(row_name(i) + ": " + number_text(table[i][1]) + " does not " +
                           (sign > 0 ? "grow with the draught" : "fall as the ullage grows"),
                       "look the row up again");
            }
        }
    }
    [[nodiscard]] double greatest(std::size_t column) const {
        double most = table[0][column];
        for (const auto& row : table)
            most = std::max(most, row[column]);
        return most;
    }
};

void check_tpc(Checker& check) {
    for (std::size_t i = 1; i < check.table.size(); ++i) {
        const auto& low = check.table[i - 1];
        const auto& high = check.table[i];
        const double per_cm = (high[1] - low[1]) / (high[0] - low[0]) / 100;
        const double given = (high[2] + low[2]) / 2;
        if (std::fabs(given - per_cm) <= far_off * per_cm) continue;
        check.note(check.row_name(i) + ": TPC " + number_text(given) + " t/cm, but the displacements say " +
                   number_text(std::round(per_cm * 1000) / 1000));
    }
}

}  // namespace

TableFindings check_ullage_table(const Barge& barge, const std::string& where) {
    if (barge.ullage_table.empty()) return {};
    Checker check{barge.ullage_table, "ullage-table", where, {}};
    if (!check.shape(2, 2)) return check.found;
    check.order(-1);
    if (!check.found.refusals.empty()) return check.found;
    if (check.greatest(0) > deep_m) {
        check.note("an ullage of " + number_text(check.greatest(0)) + " m: typed in centimetres?");
    }
    const double most = check.greatest(1);
    if (barge.capacity_m3 && std::fabs(most - *barge.capacity_m3) > far_off * *barge.capacity_m3) {
        check.note("the ullage table goes up to " + number_text(most) + " m³, the capacity is " +
                   number_text(*barge.capacity_m3));
    }
    return check.found;
}

TableFindings check_hydrostatic_table(const Barge& barge, const std::string& where) {
    if (barge.hydrostatic_table.empty()) return {};
    Checker check{barge.hydrostatic_table, "hydrostatic-table", where, {}};
    if (!check.shape(2, 5)) return check.found;
    check.order(1);
    if (!check.found.refusals.empty()) return check.found;
    if (check.greatest(0) > deep_m) {
        check.note("a draught of " + number_text(check.greatest(0)) + " m: typed in centimetres?");
    }
    const std::size_t columns = check.table.front().size();
    if (columns > 2) check_tpc(check);
    if (columns > 3 && barge.lbp_m) {
        for (std::size_t i = 0; i < check.table.size(); ++i) {
            if (std::fabs(check.table[i][3]) <= *barge.lbp_m / 2) continue;
            check.note(check.row_name(i) + ": LCF " + number_text(check.table[i][3]) +
                       " m lies beyond the ends of the barge (it is counted from midships)");
        }
    }
    return check.found;
}

}  // namespace spoilbook
