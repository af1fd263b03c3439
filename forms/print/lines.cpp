// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/lines.h"

#include <cstddef>

#include "forms/print/typeface.h"

namespace spoilbook::print {
namespace {

constexpr double mark_share = 0.72;  // of the type size: about the height of its capitals
constexpr double mark_gap = 0.42;

struct Mover {
    double dx;
    double dy;

    void operator()(TextOp& op) const {
        op.x += dx;
        op.baseline += dy;
    }
    void operator()(RuleOp& op) const {
        op.x1 += dx;
        op.x2 += dx;
        op.y1 += dy;
        op.y2 += dy;
    }
    template <typename Box>
    void operator()(Box& op) const {
        op.x += dx;
        op.y += dy;
    }
};

}  // namespace

double add_lines(std::vector<Op>& ops, const std::vector<QString>& lines, double x, double y,
                 const Type& type) {
    for (const QString& line : lines) {
        if (!line.isEmpty()) {
            ops.emplace_back(TextOp{x, y + baseline_in_line(type), line, type});
        }
        y += type.leading;
    }
    return y;
}

void add_right(std::vector<Op>& ops, const QString& text, double right, double y, const Type& type) {
    if (!text.isEmpty()) {
        ops.emplace_back(TextOp{right - width_of(text, type), y + baseline_in_line(type), text, type});
    }
}

double add_mark(std::vector<Op>& ops, Mark mark, double x, double y, const Type& type) {
    if (mark != Mark::none) {
        const double size = type.size * mark_share;
        ops.emplace_back(MarkOp{x, y + baseline_in_line(type) - size, size, mark});
    }
    return mark_indent(mark, type);
}

double mark_indent(Mark mark, const Type& type) {
    return mark == Mark::none ? 0 : type.size * (mark_share + mark_gap);
}

Pieces pieces_of_lines(const std::vector<QString>& lines, double x, const Type& type) {
    Pieces pieces;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        Piece piece;
        piece.height = add_lines(piece.ops, {lines[i]}, x, 0, type);
        const bool parts_one_line = i == 0 || i + 2 == lines.size();
        piece.keep = parts_one_line && i + 1 < lines.size() ? Keep::bound : Keep::free;
        pieces.push_back(std::move(piece));
    }
    return pieces;
}

void keep_together(Pieces& pieces, Keep keep) {
    for (std::size_t i = 0; i + 1 < pieces.size(); ++i) {
        if (pieces[i].keep == Keep::free) {
            pieces[i].keep = keep;
        }
    }
}

std::vector<Op> moved(std::vector<Op> ops, double dx, double dy) {
    for (Op& op : ops) {
        std::visit(Mover{dx, dy}, op);
    }
    return ops;
}

}  // namespace spoilbook::print
