// SPDX-License-Identifier: GPL-3.0-or-later
// A table's text made printable, its type size chosen, its columns measured.
#pragma once

#include <QString>
#include <vector>

#include "forms/print/document.h"
#include "forms/print/piece.h"
#include "forms/print/type.h"

namespace spoilbook::print {

struct CellText {
    QString text;
    Mark mark = Mark::none;
};

struct ColumnText {
    QString title;
    QString unit;
    Align align = Align::left;
    double weight = 0;
    bool tabular = false;
};

/// The cells in the grid, filled up to its number of columns, and what stands below them.
struct RowText {
    std::vector<CellText> cells;
    QString below;
};

/// `columns` are those of the grid. No cells in `total`: there is none.
struct TableText {
    std::vector<ColumnText> columns;
    std::vector<RowText> rows;
    RowText total;
};

/// How closely a table is set: body size, the gap between columns, the room above and below a row's lines.
struct Closeness {
    Type body;
    double gap = 0;
    double pad = 0;
};

struct TablePlan {
    Closeness closeness;
    std::vector<double> x;
    std::vector<double> widths;
    double width = 0;     // of the whole table; a narrow one does not spread over the page
    double needed = 0;    // what the contents need for comfort, over what there is
    double tightest = 0;  // what they need at least, over what there is
};

/// Throws std::invalid_argument where a row has more cells than there are columns, or no column in
/// the grid.
TableText table_text(const Table& table);

/// The largest of 9, 8 and 7 points at which the contents fit into `width` without breaking tabular cells;
/// where none does, as small as it takes, down to 4 points: a number broken over two lines would be read as
/// two.
TablePlan plan_table(const TableText& text, double width);

}  // namespace spoilbook::print
