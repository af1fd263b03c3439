// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/table_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "model/unit/number_text.h"

namespace spoilbook {
namespace {

constexpr double deep_m = 15;    // deeper than any hopper or draught of a barge: likely typed in centimetres
constexpr double far_off = 0.2;  // share by which two figures of one thing may differ before it is odd

struct Checker {
    const Table& table;
    std::string field;
    std::string code;
    TableFindings found{};

    void add(TableGrade grade, std::optional<std::size_t> row, std::string what, std::string mend,
             std::string own_code = {}) {
        found.push_back(
            {grade, row, own_code.empty() ? code : std::move(own_code), std::move(what), std::move(mend)});
    }
    [[nodiscard]] bool sound() const {
        return std::none_of(found.begin(), found.end(),
                            [](const TableFinding& one) { return one.grade != TableGrade::odd; });
    }

    /// Rows of a length within what the columns allow, all alike, each number within its range.
    void shape() {
        const auto& columns = table_columns(field);
        const auto needed = static_cast<std::size_t>(
            std::count_if(columns.begin(), columns.end(), [](const auto& one) { return one.needed; }));
        for (std::size_t i = 0; i < table.size(); ++i) {
            const auto& row = table[i];
            if (row.size() < needed || row.size() > columns.size()) {
                add(TableGrade::impossible, i, fmt::format("a row of {} numbers", row.size()),
                    needed == columns.size()
                        ? fmt::format("a row of {} has {}", field, needed)
                        : fmt::format("a row of {} has {} to {}", field, needed, columns.size()),
                    "not-a-table");
                continue;
            }
            if (row.size() != table.front().size())
                add(TableGrade::disordered, i, fmt::format("{} numbers, unlike the first row", row.size()),
                    "give every row the same columns");
            for (std::size_t c = 0; c < row.size(); ++c)
                range(i, row[c], columns[c]);
        }
    }
    void range(std::size_t row, double number, const TableColumn& column) {
        if (number >= column.low && number <= column.high) return;
        add(TableGrade::impossible, row,
            fmt::format("{} is outside the range of {}", number_text(number), column.name),
            fmt::format("it must be {} to {}", number_text(column.low), number_text(column.high)),
            "out-of-range");
    }

    /// First column in one order; with a sign, the second falling (−1) or growing (+1) with it.
    void order(double sign, const std::string& turns) {
        if (table.empty() || !sound()) return;
        if (table.size() < 2)
            return add(TableGrade::disordered, {}, "fewer than two rows", "give at least two");
        const double way = table[1][0] > table[0][0] ? 1 : -1;
        for (std::size_t i = 1; i < table.size(); ++i) {
            const double dx = table[i][0] - table[i - 1][0];
            const double dy = table[i][1] - table[i - 1][1];
            if (dx == 0) {
                add(TableGrade::disordered, i, "repeats " + number_text(table[i][0]) + " m",
                    "give each once");
            } else if (dx * way < 0) {
                add(TableGrade::disordered, i, "at " + number_text(table[i][0]) + " m is out of order",
                    "sort the rows by their first number");
            } else if (sign != 0 && dy * way * sign <= 0) {
                add(TableGrade::disordered, i, number_text(table[i][1]) + turns, "look the row up again");
            }
        }
    }
    void deep(const std::string& reading) {
        for (std::size_t i = 0; i < table.size(); ++i) {
            if (table[i][0] <= deep_m) continue;
            return add(TableGrade::odd, i,
                       reading + " of " + number_text(table[i][0]) + " m: typed in centimetres?", {});
        }
    }
    void tpc() {
        for (std::size_t i = 1; i < table.size(); ++i) {
            const auto& low = table[i - 1];
            const auto& high = table[i];
            const double per_cm = (high[1] - low[1]) / (high[0] - low[0]) / 100;
            const double given = (high[2] + low[2]) / 2;
            if (std::fabs(given - per_cm) <= far_off * per_cm) continue;
            add(TableGrade::odd, i,
                "TPC " + number_text(given) + " t/cm, but the displacements say " +
                    number_text(std::round(per_cm * 1000) / 1000),
                {});
        }
    }
};

}  // namespace

const std::vector<TableColumn>& table_columns(std::string_view field) {
    static const std::vector<TableColumn> none;
    static const std::vector<TableColumn> reach{{"depth", "m", -20, 100}, {"reach", "m", 0, 100}};
    static const std::vector<TableColumn> ullage{{"ullage", "m", 0, 50}, {"hopper volume", "m³", 0, 20000}};
    static const std::vector<TableColumn> hydrostatic{{"draught", "m", 0, 30},
                                                      {"displacement", "t", 0, 200000},
                                                      {"TPC", "t/cm", 0, 1000, false},
                                                      {"LCF", "m", -300, 300, false},
                                                      {"MCTC", "t·m/cm", 0, 100000, false}};
    if (field == "reach_table") return reach;
    if (field == "ullage_table") return ullage;
    return field == "hydrostatic_table" ? hydrostatic : none;
}

TableFindings check_ullage_table(const Table& table, std::optional<double> capacity_m3) {
    Checker check{table, "ullage_table", "ullage-table"};
    check.shape();
    check.order(-1, " m³ does not fall as the ullage grows");
    if (table.empty() || !check.sound()) return check.found;
    check.deep("an ullage");
    const double most = std::max(table.front()[1], table.back()[1]);
    if (capacity_m3 && std::fabs(most - *capacity_m3) > far_off * *capacity_m3) {
        check.add(
            TableGrade::odd, {},
            "the table goes up to " + number_text(most) + " m³, the capacity is " + number_text(*capacity_m3),
            {});
    }
    return check.found;
}

TableFindings check_hydrostatic_table(const Table& table, std::optional<double> lbp_m) {
    Checker check{table, "hydrostatic_table", "hydrostatic-table"};
    check.shape();
    check.order(1, " t does not grow with the draught");
    if (table.empty() || !check.sound()) return check.found;
    check.deep("a draught");
    const std::size_t columns = table.front().size();
    if (columns > 2) check.tpc();
    for (std::size_t i = 0; columns > 3 && lbp_m && i < table.size(); ++i) {
        if (std::fabs(table[i][3]) <= *lbp_m / 2) continue;
        check.add(TableGrade::odd, i,
                  "LCF " + number_text(table[i][3]) +
                      " m lies beyond the ends of the barge (it is counted from midships)",
                  {});
    }
    return check.found;
}

TableFindings check_reach_table(const Table& table) {
    Checker check{table, "reach_table", "reach-table"};
    check.shape();
    check.order(0, {});
    return check.found;
}

TableFindings check_table(std::string_view field, const Table& table) {
    if (field == "ullage_table") return check_ullage_table(table, std::nullopt);
    if (field == "hydrostatic_table") return check_hydrostatic_table(table, std::nullopt);
    return field == "reach_table" ? check_reach_table(table) : TableFindings{};
}

}  // namespace spoilbook
