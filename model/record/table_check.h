// SPDX-License-Identifier: GPL-3.0-or-later
// The one check of a barge's or dredger's tables: the folder's reader, what is written by hand and the plant
// editor all ask it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/record/kind.h"
#include "model/record/reading.h"

namespace spoilbook {

/// impossible: a row of too few or too many numbers, or a number outside its unit range; refused everywhere.
/// disordered: fewer than two rows, rows not in one order, one given twice, a curve that turns back; noted of
/// a folder, refused by hand. odd: possible, and to be looked at.
enum class TableGrade { impossible, disordered, odd };

struct TableFinding {
    TableGrade grade = TableGrade::odd;
    std::optional<std::size_t> row;  ///< from 0; nothing: the whole table
    std::string code;                ///< not-a-table, out-of-range, or the table's own: ullage-table, …
    std::string what, mend;          ///< without the place
};

using TableFindings = std::vector<TableFinding>;

/// One column of a table, as it is said and typed.
struct TableColumn {
    std::string name, unit;
    double low = 0, high = 0;
    bool needed = true;  ///< every row has it; the others may be left out together
};

/// The columns of reach_table, ullage_table or hydrostatic_table; empty for any other field.
const std::vector<TableColumn>& table_columns(std::string_view field);

/// [ullage m, hopper m³]. Disordered: a volume that grows or stays as the ullage grows. Odd: an ullage over
/// 15 m (typed in cm?), a greatest volume that differs from the capacity by over 20 %.
TableFindings check_ullage_table(const Table& table, std::optional<double> capacity_m3);

/// [draught m, displacement t, then TPC t/cm, LCF m (+ forward), MCTC t·m/cm]. Disordered: a displacement
/// that does not grow with draught. Odd: a draught over 15 m, TPC that differs from the table's own slope by
/// over 20 %, an LCF beyond half the length.
TableFindings check_hydrostatic_table(const Table& table, std::optional<double> lbp_m);

/// [depth m, reach m]. Nothing is asked of the reach.
TableFindings check_reach_table(const Table& table);

/// By the field's name, without what other fields would tell; nothing for a field that is none of the three.
TableFindings check_table(std::string_view field, const Table& table);

}  // namespace spoilbook
