// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/frame.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>

#include "forms/print/lines.h"
#include "forms/print/typeface.h"

namespace spoilbook::print {
namespace {

constexpr double side = 51;  // 18 mm: room for a binder's holes
constexpr double head_top = 30;
constexpr double foot_bottom = 30;
constexpr double rule_gap = 5;     // between head or foot and its rule
constexpr double column_gap = 17;  // between a rule and the text column
constexpr double number_width = 90;

double height_of(const std::vector<QString>& lines) {
    return small_type.leading * static_cast<double>(lines.size());
}

// The head's two texts share a line where they fit; otherwise each is broken in its own part.
double add_head(Frame& frame, const QString& left, const QString& right) {
    constexpr double gap = 24;
    const double width = frame.room.width;
    const bool one_line = width_of(left, small_type) + width_of(right, small_type) + gap <= width;
    const double left_width = one_line || right.isEmpty() ? width : width * 0.55 - gap / 2;
    const double right_width = one_line || left.isEmpty() ? width : width * 0.45 - gap / 2;
    const auto left_lines = break_lines(left, small_type, left_width);
    const auto right_lines = break_lines(right, small_type, right_width);
    add_lines(frame.ops, left_lines, frame.left, head_top, small_type);
    double y = head_top;
    for (const QString& line : right_lines) {
        add_right(frame.ops, line, frame.left + width, y, small_type);
        y += small_type.leading;
    }
    const double rule = head_top + std::max(height_of(left_lines), height_of(right_lines)) + rule_gap - 2;
    frame.ops.emplace_back(RuleOp{frame.left, rule, frame.left + width, rule, hair_thickness, Tone::quiet});
    return rule;
}

double add_foot(Frame& frame, const QString& text, double page_height) {
    const auto lines = break_lines(text, small_type, frame.room.width - number_width);
    frame.number_y = page_height - foot_bottom - height_of(lines);
    add_lines(frame.ops, lines, frame.left, frame.number_y, small_type);
    const double rule = frame.number_y - rule_gap;
    frame.ops.emplace_back(
        RuleOp{frame.left, rule, frame.left + frame.room.width, rule, hair_thickness, Tone::quiet});
    return rule;
}

}  // namespace

Frame frame_of(const Document& document, bool landscape) {
    Frame frame;
    frame.landscape = landscape;
    frame.left = side;
    frame.room.width = (landscape ? long_edge : short_edge) - 2 * side;
    const double page_height = landscape ? short_edge : long_edge;
    frame.top =
        add_head(frame, printable(document.header_left), printable(document.header_right)) + column_gap;
    frame.room.height = add_foot(frame, printable(document.footer), page_height) - column_gap + 5 - frame.top;
    return frame;
}

void add_number(Page& page, const Frame& frame, std::size_t number, std::size_t pages) {
    const QString words = QString::fromStdString(fmt::format("page {} of {}", number, pages));
    add_right(page.ops, words, frame.left + frame.room.width, frame.number_y, small_type);
}

}  // namespace spoilbook::print
