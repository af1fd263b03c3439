// SPDX-License-Identifier: GPL-3.0-or-later
// The answer that page one opens with, and lists of facts.
#include <algorithm>
#include <array>
#include <cstddef>

#include "forms/print/lines.h"
#include "forms/print/set_blocks.h"
#include "forms/print/typeface.h"

namespace spoilbook::print {
namespace {

constexpr double gutter = 14;
constexpr double unit_gap = 3;
constexpr Type unit_type{11, 15, Face::regular, Tone::quiet};

double figure_width(const KeyFigure& figure, const Type& value_type) {
    const double unit = figure.unit.empty() ? 0 : unit_gap + width_of(printable(figure.unit), unit_type);
    return width_of(printable(figure.value), value_type) + unit;
}

// The largest size of the scale at which every figure stands on one line of its column.
Type value_type_for(const std::vector<KeyFigure>& figures, double width) {
    constexpr std::array sizes{title_type, sentence_type, section_type};
    for (const Type& type : sizes) {
        const auto fits = [&](const KeyFigure& figure) { return figure_width(figure, type) <= width; };
        if (std::all_of(figures.begin(), figures.end(), fits)) {
            return type;
        }
    }
    return sizes.back();
}

// The labels share one height, so that the figures below them share one baseline.
double add_labels(Piece& piece, const std::vector<KeyFigure>& figures, double step, double width, double y) {
    double bottom = y;
    for (const KeyFigure& figure : figures) {
        const auto lines = break_lines(printable(figure.label), small_type, width);
        bottom = std::max(bottom, y + small_type.leading * static_cast<double>(lines.size()));
    }
    for (std::size_t i = 0; i < figures.size(); ++i) {
        const auto lines = break_lines(printable(figures[i].label), small_type, width);
        const double top = bottom - small_type.leading * static_cast<double>(lines.size());
        add_lines(piece.ops, lines, static_cast<double>(i) * step, top, small_type);
    }
    return bottom;
}

double add_value(Piece& piece, const KeyFigure& figure, const Type& type, double x, double y, double width) {
    const QString value = printable(figure.value);
    const QString unit = printable(figure.unit);
    if (figure_width(figure, type) <= width) {
        add_lines(piece.ops, {value}, x, y, type);
        if (!unit.isEmpty()) {
            const double unit_x = x + width_of(value, type) + unit_gap;
            piece.ops.emplace_back(TextOp{unit_x, y + baseline_in_line(type), unit, unit_type});
        }
        return y + type.leading;
    }
    return add_lines(piece.ops, break_lines(value + u' ' + unit, type, width), x, y, type);
}

double add_figure(Piece& piece, const KeyFigure& figure, const Type& type, double x, double y, double width) {
    y = add_value(piece, figure, type, x, y, width);
    if (!figure.state.empty() || figure.mark != Mark::none) {
        const double indent = add_mark(piece.ops, figure.mark, x, y + 2, small_strong_type);
        const auto lines = break_lines(printable(figure.state), small_strong_type, width - indent);
        y = add_lines(piece.ops, lines, x + indent, y + 2, small_strong_type);
    }
    if (!figure.note.empty()) {
        y = add_lines(piece.ops, break_lines(printable(figure.note), small_type, width), x, y + 2,
                      small_type);
    }
    return y;
}

// A fact of some lines is one piece; a long one flows over pages line by line.
Pieces set_fact(const Fact& fact, double label_width, const Room& room) {
    constexpr double pad = 2.5;
    constexpr std::size_t longest_whole = 14;
    const double x = label_width + 16;
    const double indent = mark_indent(fact.mark, body_type);
    const auto labels = break_lines(printable(fact.label), label_type, label_width);
    const auto values = break_lines(printable(fact.value), body_type, room.width - x - indent);
    const std::size_t lines = std::max(labels.size(), values.size());
    Pieces pieces(1);
    for (std::size_t i = 0; i < lines; ++i) {
        if (i > 0 && lines > longest_whole) {
            pieces.back().keep = i == 1 || i + 1 == lines ? Keep::bound : Keep::free;
            pieces.emplace_back();
        }
        Piece& piece = pieces.back();
        const double y = piece.height + (i == 0 ? pad : 0);
        if (i == 0) {
            add_mark(piece.ops, fact.mark, x, y, body_type);
        }
        add_lines(piece.ops, {i < labels.size() ? labels[i] : QString()}, 0, y, label_type);
        piece.height =
            add_lines(piece.ops, {i < values.size() ? values[i] : QString()}, x + indent, y, body_type);
    }
    Piece& last = pieces.back();
    last.height += pad;
    last.ops.emplace_back(RuleOp{0, last.height, room.width, last.height, hair_thickness, Tone::hair});
    return pieces;
}

}  // namespace

Pieces set_answer(const Answer& answer, const Room& room) {
    Piece piece;
    piece.space_before = 6;
    piece.ops.emplace_back(RuleOp{0, 0, room.width, 0, 1.5, Tone::accent});
    double y = 10;
    if (!answer.sentence.empty()) {
        y = add_lines(piece.ops, break_lines(printable(answer.sentence), sentence_type, room.width), 0, y,
                      sentence_type);
        y += 10;
    }
    if (!answer.figures.empty()) {
        const double step = (room.width + gutter) / static_cast<double>(answer.figures.size());
        const double width = step - gutter;
        const Type type = value_type_for(answer.figures, width);
        const double top = y;
        const double labels = add_labels(piece, answer.figures, step, width, y);
        for (std::size_t i = 0; i < answer.figures.size(); ++i) {
            y = std::max(
                y, add_figure(piece, answer.figures[i], type, static_cast<double>(i) * step, labels, width));
        }
        for (std::size_t i = 1; i < answer.figures.size(); ++i) {
            const double x = static_cast<double>(i) * step - gutter / 2 - 1;
            piece.ops.emplace_back(RuleOp{x, top + 2, x, y, hair_thickness, Tone::hair});
        }
        y += 10;
    }
    piece.ops.emplace_back(RuleOp{0, y, room.width, y, rule_thickness, Tone::accent});
    piece.height = y + 4;
    return {piece};
}

Pieces set_facts(const Facts& facts, const Room& room) {
    double label_width = 0;
    for (const Fact& fact : facts.facts) {
        label_width = std::max(label_width, width_of(printable(fact.label), label_type));
    }
    label_width = std::clamp(label_width, 110.0, std::max(110.0, room.width * 0.36));
    Pieces pieces;
    for (const Fact& fact : facts.facts) {
        for (Piece& piece : set_fact(fact, label_width, room)) {
            pieces.push_back(std::move(piece));
        }
    }
    if (!pieces.empty()) {
        pieces.front().space_before = 6;
    }
    return pieces;
}

}  // namespace spoilbook::print
