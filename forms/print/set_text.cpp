// SPDX-License-Identifier: GPL-3.0-or-later
// The title, headings and paragraphs.
#include <algorithm>
#include <cstddef>

#include "forms/print/lines.h"
#include "forms/print/set_blocks.h"
#include "forms/print/typeface.h"

namespace spoilbook::print {
namespace {

// Longer lines than this many points tire the eye; tables may use the whole column.
constexpr double longest_line = 430;

Pieces set_caution(const QString& text, const Room& room) {
    constexpr double pad = 6;
    constexpr double inset = 10;
    const double indent = inset + mark_indent(Mark::near, strong_type) + 4;
    const auto lines = break_lines(text, body_type, std::min(room.width - indent - inset, longest_line));
    Pieces pieces = pieces_of_lines(lines, indent, body_type);
    const std::size_t last = pieces.size() - 1;
    for (std::size_t i = 0; i <= last; ++i) {
        Piece& piece = pieces[i];
        const double above = i == 0 ? pad : 0;
        const double height = piece.height + above + (i == last ? pad : 0);
        piece.ops = moved(std::move(piece.ops), 0, above);
        piece.ops.insert(piece.ops.begin(), FillOp{0, 0, room.width, height, Tone::tint});
        if (i == 0) {
            add_mark(piece.ops, Mark::near, inset, above, strong_type);
            piece.space_before = 10;
        }
        piece.height = height;
    }
    if (lines.size() <= 12) {
        keep_together(pieces, Keep::bound);
    }
    return pieces;
}

}  // namespace

Pieces set_title(const Document& document, const Room& room) {
    Piece piece;
    if (!document.title.empty()) {
        const auto lines = break_lines(printable(document.title), title_type, room.width);
        piece.height = add_lines(piece.ops, lines, 0, 6, title_type);
    }
    if (!document.subtitle.empty()) {
        const auto lines = break_lines(printable(document.subtitle), subtitle_type, room.width);
        piece.height = add_lines(piece.ops, lines, 0, piece.height + 1, subtitle_type);
    }
    if (piece.height == 0) {
        return {};
    }
    piece.height += 6;
    piece.keep = Keep::bound;
    return {piece};
}

Pieces set_heading(const Heading& heading, const Room& room) {
    const Type type = heading.level <= 1 ? part_type : heading.level == 2 ? section_type : strong_type;
    const auto lines = break_lines(printable(heading.text), type, room.width);
    Piece piece;
    piece.height = add_lines(piece.ops, lines, 0, 0, type);
    piece.height += heading.level <= 1 ? 4 : 2;
    piece.space_before = heading.level <= 1 ? 24 : heading.level == 2 ? 18 : 12;
    piece.keep = Keep::bound;
    return {piece};
}

Pieces set_paragraph(const Paragraph& paragraph, const Room& room) {
    const QString text = printable(paragraph.text);
    if (paragraph.style == TextStyle::caution) {
        return set_caution(text, room);
    }
    const Type type = paragraph.style == TextStyle::small ? small_type : body_type;
    Pieces pieces = pieces_of_lines(break_lines(text, type, std::min(room.width, longest_line)), 0, type);
    pieces.front().space_before = paragraph.style == TextStyle::small ? 5 : 7;
    return pieces;
}

Pieces set_block(const Block& block, const Room& room) {
    struct Setter {
        const Room& room;

        Pieces operator()(const Heading& b) const { return set_heading(b, room); }
        Pieces operator()(const Paragraph& b) const { return set_paragraph(b, room); }
        Pieces operator()(const Answer& b) const { return set_answer(b, room); }
        Pieces operator()(const Facts& b) const { return set_facts(b, room); }
        Pieces operator()(const Table& b) const { return set_table(b, room); }
        Pieces operator()(const Signature& b) const { return set_signature(b, room); }
        Pieces operator()(const PageBreak&) const {
            throw std::invalid_argument("a page break parts sections and cannot stand inside another block");
        }
        Pieces operator()(const KeepTogether& b) const {
            Pieces all;
            for (const Block& inner : b.blocks) {
                Pieces pieces = set_block(inner, room);
                all.insert(all.end(), std::make_move_iterator(pieces.begin()),
                           std::make_move_iterator(pieces.end()));
            }
            keep_together(all, Keep::together);
            return all;
        }
    };
    return std::visit(Setter{room}, block);
}

}  // namespace spoilbook::print
