// SPDX-License-Identifier: GPL-3.0-or-later
// Tables: a caption, a head that is repeated on each page, rows, a total that stays with the last row, notes.
#include <algorithm>
#include <cstddef>
#include <memory>

#include "forms/print/lines.h"
#include "forms/print/set_blocks.h"
#include "forms/print/table_plan.h"
#include "forms/print/typeface.h"

namespace spoilbook::print {
namespace {

using Lines = std::vector<QString>;

// A row broken into lines: those of each cell, how many the grid takes, those below it.
struct RowLines {
    std::vector<Lines> cells;
    std::size_t grid = 1;
    Lines below;
};

// Lines [from, to) of a row.
struct Part {
    std::size_t from = 0;
    std::size_t to = 0;
};

Lines part_of(const Lines& lines, std::size_t from, std::size_t to) {
    Lines part;
    for (std::size_t i = from; i < std::min(to, lines.size()); ++i) {
        part.push_back(lines[i]);
    }
    return part;
}

class TableSetter {
 public:
    TableSetter(const TableText& text, const Room& room)
        : text_(text), room_(room), plan_(plan_table(text, room.width)) {}

    /// The head alone, from y = 0. Returns its height.
    double add_head(std::vector<Op>& ops) const;
    /// A row in one piece, or in several where it is taller than `limit`.
    Pieces set_row(const RowText& row, Face face, double limit) const;
    Piece set_zero_row(const QString& words) const;
    const Type& body() const { return plan_.closeness.body; }
    double width() const { return plan_.width; }

 private:
    Piece row_part(const RowLines& lines, const RowText& row, const Type& type, Part part) const;
    double below_x() const;
    Lines below_lines(const QString& text) const;
    void add_cell(std::vector<Op>& ops, std::size_t column, const Lines& lines, Mark mark,
                  const Type& type) const;

    const TableText& text_;
    Room room_;
    TablePlan plan_;
};

double aligned(Align align, double x, double column_width, double text_width) {
    const double rest = column_width - text_width;
    return align == Align::left ? x : align == Align::right ? x + rest : x + rest / 2;
}

void TableSetter::add_cell(std::vector<Op>& ops, std::size_t column, const Lines& lines, Mark mark,
                           const Type& type) const {
    double y = plan_.closeness.pad;
    for (const QString& line : lines) {
        const double indent = mark_indent(mark, type);
        const double x = aligned(text_.columns[column].align, plan_.x[column], plan_.widths[column],
                                 indent + width_of(line, type));
        if (&line == &lines.front()) {
            add_mark(ops, mark, x, y, type);
        }
        add_lines(ops, {line}, x + indent, y, type);
        y += type.leading;
    }
}

double TableSetter::add_head(std::vector<Op>& ops) const {
    const Type strong = in_face(body(), Face::semibold);
    const Type quiet = in_tone(body(), Tone::quiet);
    std::vector<Lines> titles;
    std::size_t most = 1;
    bool any_unit = false;
    for (std::size_t i = 0; i < text_.columns.size(); ++i) {
        titles.push_back(break_lines(text_.columns[i].title, strong, plan_.widths[i]));
        most = std::max(most, titles.back().size());
        any_unit = any_unit || !text_.columns[i].unit.isEmpty();
    }
    for (std::size_t i = 0; i < text_.columns.size(); ++i) {
        std::vector<Op> cell;
        add_cell(cell, i, titles[i], Mark::none, strong);
        const double down = strong.leading * static_cast<double>(most - titles[i].size());
        cell = moved(std::move(cell), 0, down);
        std::vector<Op> unit;
        add_cell(unit, i, {text_.columns[i].unit}, Mark::none, quiet);
        unit = moved(std::move(unit), 0, strong.leading * static_cast<double>(most));
        ops.insert(ops.end(), cell.begin(), cell.end());
        ops.insert(ops.end(), unit.begin(), unit.end());
    }
    const double height =
        body().leading * static_cast<double>(most + (any_unit ? 1 : 0)) + 2 * plan_.closeness.pad;
    ops.emplace_back(RuleOp{0, 0, plan_.width, 0, rule_thickness, Tone::ink});
    ops.emplace_back(RuleOp{0, height, plan_.width, height, rule_thickness, Tone::quiet});
    return height;
}

// What stands below a row begins at the second column, so that the first keeps its edge for the eye.
double TableSetter::below_x() const {
    return plan_.x.size() > 1 ? plan_.x[1] : 0;
}

Lines TableSetter::below_lines(const QString& text) const {
    constexpr double longest = 460;
    return text.isEmpty() ? Lines{} : break_lines(text, body(), std::min(longest, room_.width - below_x()));
}

Piece TableSetter::row_part(const RowLines& lines, const RowText& row, const Type& type, Part part) const {
    const double pad = part.from == 0 ? plan_.closeness.pad : 0;
    Piece piece;
    for (std::size_t i = 0; i < lines.cells.size(); ++i) {
        const Lines cell = part_of(lines.cells[i], part.from, part.to);
        if (!cell.empty()) {
            add_cell(piece.ops, i, cell, part.from == 0 ? row.cells[i].mark : Mark::none, type);
        }
    }
    for (std::size_t i = 0; i < lines.below.size(); ++i) {
        const std::size_t at = lines.grid + i;
        if (at >= part.from && at < part.to) {
            const double y = plan_.closeness.pad + type.leading * static_cast<double>(at - part.from);
            add_lines(piece.ops, {lines.below[i]}, below_x(), y, in_tone(body(), Tone::quiet));
        }
    }
    if (part.from > 0) {  // the reader of a later page must see which row goes on
        add_cell(piece.ops_at_top, 0, {lines.cells[0].front()}, Mark::none, in_tone(type, Tone::quiet));
        piece.ops = moved(std::move(piece.ops), 0, -plan_.closeness.pad);
        piece.ops_at_top = moved(std::move(piece.ops_at_top), 0, -plan_.closeness.pad);
    }
    piece.height = type.leading * static_cast<double>(part.to - part.from) + pad;
    return piece;
}

Pieces TableSetter::set_row(const RowText& row, Face face, double limit) const {
    const Type type = in_face(body(), face);
    RowLines lines;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        const double width = plan_.widths[i] - mark_indent(row.cells[i].mark, type);
        lines.cells.push_back(break_lines(row.cells[i].text, type, width));
        lines.grid = std::max(lines.grid, lines.cells.back().size());
    }
    lines.below = below_lines(row.below);
    const std::size_t all = lines.grid + lines.below.size();
    const bool fits = type.leading * static_cast<double>(all) + 2 * plan_.closeness.pad <= limit;
    constexpr std::size_t lines_together = 3;
    const std::size_t step = fits ? all : lines_together;
    Pieces pieces;
    for (std::size_t from = 0; from < all; from += step) {
        pieces.push_back(row_part(lines, row, type, Part{from, std::min(from + step, all)}));
    }
    Piece& last = pieces.back();
    last.height += plan_.closeness.pad;
    last.ops.emplace_back(RuleOp{0, last.height, plan_.width, last.height, hair_thickness, Tone::hair});
    return pieces;
}

Piece TableSetter::set_zero_row(const QString& words) const {
    const Type quiet = in_tone(body(), Tone::quiet);
    Piece piece;
    const double pad = plan_.closeness.pad;
    piece.height = add_lines(piece.ops, break_lines(words, quiet, room_.width), 0, pad, quiet) + pad;
    return piece;
}

double add_caption(std::vector<Op>& ops, const QString& caption, bool continued, double width) {
    const QString rest = continued ? QStringLiteral("continued") : QString();
    if (caption.isEmpty()) {
        return continued ? add_lines(ops, {rest}, 0, 0, label_type) + 3 : 0;
    }
    const Lines lines = break_lines(caption, strong_type, width - (continued ? 60 : 0));
    const double bottom = add_lines(ops, lines, 0, 0, strong_type);
    if (continued) {
        const double x = width_of(lines.back(), strong_type);
        add_lines(ops, {QStringLiteral(", ") + rest}, x, bottom - strong_type.leading, label_type);
    }
    return bottom + 3;
}

std::shared_ptr<const TableRun> table_run(const TableSetter& setter, const QString& caption,
                                          const Room& room) {
    auto run = std::make_shared<TableRun>();
    const double top = add_caption(run->head, caption, true, room.width);
    std::vector<Op> head;
    run->head_height = top + setter.add_head(head);
    head = moved(std::move(head), 0, top);
    run->head.insert(run->head.end(), head.begin(), head.end());
    add_right(run->foot, QStringLiteral("continued on the next page"), std::max(setter.width(), 120.0), 2,
              small_type);
    run->foot_height = small_type.leading + 2;
    return run;
}

Piece opening_piece(const TableSetter& setter, const QString& caption, const Room& room) {
    Piece piece;
    piece.space_before = 12;
    piece.keep = Keep::bound;
    const double top = add_caption(piece.ops, caption, false, room.width);
    std::vector<Op> head;
    piece.height = top + setter.add_head(head);
    head = moved(std::move(head), 0, top);
    piece.ops.insert(piece.ops.end(), head.begin(), head.end());
    return piece;
}

// The last row is bound to the total, and that to the first note, which often says what the total holds.
void close_table(Pieces& pieces, Pieces total, double width) {
    if (!total.empty()) {
        pieces.back().keep = Keep::bound;
        pieces.back().ops.pop_back();  // its hairline gives way to the total's rule
        total.front().ops.emplace_back(RuleOp{0, 0, width, 0, rule_thickness, Tone::quiet});
        pieces.insert(pieces.end(), total.begin(), total.end());
    }
    Piece& last = pieces.back();
    last.ops.emplace_back(RuleOp{0, last.height, width, last.height, rule_thickness, Tone::ink});
}

// Neither at the top nor at the foot of a page one row alone, where two short ones can stand together.
void bind_pairs(Pieces& rows) {
    constexpr double most_bound = 80;
    const std::size_t count = rows.size();
    for (const std::size_t first : {std::size_t{0}, count - 2}) {
        if (count >= 4 && rows[first].height + rows[first + 1].height <= most_bound) {
            rows[first].keep = Keep::bound;
        }
    }
}

void add_notes(Pieces& pieces, const std::vector<std::string>& notes, const Room& room) {
    for (const std::string& note : notes) {
        Pieces lines = set_paragraph(Paragraph{note, TextStyle::small}, room);
        lines.front().space_before = 3;
        if (&note == &notes.front()) {
            pieces.back().keep = Keep::bound;
        }
        pieces.insert(pieces.end(), lines.begin(), lines.end());
    }
}

}  // namespace

Pieces set_table(const Table& table, const Room& room) {
    const TableText text = table_text(table);
    const TableSetter setter(text, room);
    const QString caption = printable(table.caption);
    const auto run = table_run(setter, caption, room);
    Pieces pieces{opening_piece(setter, caption, room)};
    const double limit = room.height - std::max(pieces.front().height, run->head_height) - run->foot_height;
    Pieces rows;
    for (const RowText& row : text.rows) {
        for (Piece& piece : setter.set_row(row, Face::regular, limit)) {
            rows.push_back(std::move(piece));
        }
    }
    bind_pairs(rows);
    pieces.insert(pieces.end(), rows.begin(), rows.end());
    if (text.rows.empty()) {
        Piece none = setter.set_zero_row(printable(table.zero_rows_text));
        none.ops.emplace_back(RuleOp{});  // where a row has its hairline
        pieces.push_back(std::move(none));
    }
    close_table(pieces,
                text.total.cells.empty() ? Pieces{} : setter.set_row(text.total, Face::semibold, limit),
                setter.width());
    for (Piece& piece : pieces) {
        piece.table = run;
    }
    add_notes(pieces, table.notes, room);
    return pieces;
}

}  // namespace spoilbook::print
