// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/table_plan.h"

#include <QStringList>
#include <algorithm>
#include <array>
#include <cstddef>
#include <stdexcept>

#include "forms/print/column_widths.h"
#include "forms/print/lines.h"
#include "forms/print/typeface.h"

namespace spoilbook::print {
namespace {

constexpr std::array closenesses{
    Closeness{Type{9, 13, Face::regular, Tone::ink}, 10, 2.5},
    Closeness{Type{8, 11, Face::regular, Tone::ink}, 8, 2.25},
    Closeness{Type{7, 9.5, Face::regular, Tone::ink}, 6, 2},
};

RowText row_text(const Row& row, const std::vector<Column>& columns) {
    if (row.size() > columns.size()) {
        throw std::invalid_argument("a row of a printed table has more cells than the table has columns");
    }
    RowText text;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const CellText cell = i < row.size() ? CellText{printable(row[i].text), row[i].mark} : CellText{};
        if (!columns[i].below) {
            text.cells.push_back(cell);
        } else if (!cell.text.isEmpty()) {
            text.below += text.below.isEmpty() ? QString() : QStringLiteral("\n");
            text.below += printable(columns[i].title) + QStringLiteral(": ") + cell.text;
        }
    }
    return text;
}

double widest_line(const QString& text, const Type& type) {
    double widest = 0;
    for (const QString& line : text.split(u'\n')) {
        widest = std::max(widest, width_of(line, type));
    }
    return widest;
}

// A word longer than this share of the table is broken rather than let it take the other columns' room.
constexpr double widest_word_share = 0.18;
constexpr double title_on_one_line = 90;

struct Wish {
    ColumnWish wish;
    double comfortable = 0;  // under this a column of words becomes a ladder of one word a line
};

void ask_for(Wish& wish, const CellText& cell, bool tabular, const Type& type, double table_width) {
    const double indent = mark_indent(cell.mark, type);
    const double line = indent + widest_line(cell.text, type);
    const double word = indent + std::min(widest_word(cell.text, type), table_width * widest_word_share);
    wish.wish.natural = std::max(wish.wish.natural, line);
    wish.wish.least = std::max(wish.wish.least, tabular ? line : word);
}

Wish wish_of(const TableText& text, std::size_t column, const Closeness& closeness, double table_width) {
    const ColumnText& head = text.columns[column];
    const Type strong = in_face(closeness.body, Face::semibold);
    Wish wish;
    wish.wish.least = std::max(widest_word(head.title, strong), width_of(head.unit, closeness.body));
    wish.wish.natural = std::min(width_of(head.title, strong), title_on_one_line);
    for (const RowText& row : text.rows) {
        ask_for(wish, row.cells[column], head.tabular, closeness.body, table_width);
    }
    if (!text.total.cells.empty()) {
        ask_for(wish, text.total.cells[column], head.tabular, strong, table_width);
    }
    wish.wish.natural = std::max(wish.wish.natural, wish.wish.least);
    wish.wish.weight = head.weight;
    const double some_words = head.weight > 0 ? 120 : 48;
    wish.comfortable =
        head.tabular ? wish.wish.least : std::max(wish.wish.least, std::min(wish.wish.natural, some_words));
    return wish;
}

Closeness scaled(Closeness closeness, double share) {
    closeness.body.size *= share;
    closeness.body.leading *= share;
    closeness.gap *= share;
    closeness.pad *= share;
    return closeness;
}

// Columns further apart than this lose the eye on its way along a row.
constexpr double widest_spread = 40;

TablePlan plan_at(const TableText& text, double width, const Closeness& closeness) {
    const double gaps = closeness.gap * static_cast<double>(text.columns.size() - 1);
    const double available = std::max(1.0, width - gaps);
    std::vector<ColumnWish> wishes;
    TablePlan plan;
    plan.closeness = closeness;
    for (std::size_t i = 0; i < text.columns.size(); ++i) {
        const Wish wish = wish_of(text, i, closeness, width);
        wishes.push_back(wish.wish);
        plan.needed += wish.comfortable / available;
    }
    // By gaps and least widths together, since both shrink with the size.
    plan.tightest = (sum_of(wishes, &ColumnWish::least) + gaps) / width;
    const double spread =
        sum_of(wishes, &ColumnWish::natural) + widest_spread * static_cast<double>(wishes.size());
    const bool weighted = sum_of(wishes, &ColumnWish::weight) > 0;
    plan.widths = column_widths(wishes, weighted ? available : std::min(available, spread));
    double x = 0;
    for (const double column : plan.widths) {
        plan.x.push_back(x);
        x += column + closeness.gap;
    }
    plan.width = x - closeness.gap;
    return plan;
}

}  // namespace

TableText table_text(const Table& table) {
    TableText text;
    for (const Column& column : table.columns) {
        if (!column.below) {
            text.columns.push_back({printable(column.title), printable(column.unit), column.align,
                                    std::max(0.0, column.weight), column.tabular});
        }
    }
    if (text.columns.empty()) {
        throw std::invalid_argument("a printed table needs a column");
    }
    for (const Row& row : table.rows) {
        text.rows.push_back(row_text(row, table.columns));
    }
    if (!table.total.empty()) {
        text.total = row_text(table.total, table.columns);
    }
    return text;
}

TablePlan plan_table(const TableText& text, double width) {
    TablePlan plan;
    for (const Closeness& closeness : closenesses) {
        plan = plan_at(text, width, closeness);
        if (plan.needed <= 1) {
            return plan;
        }
    }
    // Measured widths go with the size but for rounding to the device's units, hence a little less.
    constexpr double smallest = 4;
    const Closeness& last = closenesses.back();
    const double share = std::max(0.99 / plan.tightest, smallest / last.body.size);
    return share < 1 ? plan_at(text, width, scaled(last, share)) : plan;
}

}  // namespace spoilbook::print
