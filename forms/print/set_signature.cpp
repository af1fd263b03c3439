// SPDX-License-Identifier: GPL-3.0-or-later
// The block that is signed: statement, rules to sign on, digests.
#include <algorithm>
#include <cstddef>

#include "forms/print/lines.h"
#include "forms/print/set_blocks.h"
#include "forms/print/typeface.h"

namespace spoilbook::print {
namespace {

// Two rules to sign on stand side by side.
Pieces set_lines(const std::vector<SignatureLine>& lines, const Room& room) {
    constexpr double gap = 24;
    constexpr double writing_room = 20;
    const double width = (room.width - gap) / 2;
    Pieces pieces;
    for (std::size_t i = 0; i < lines.size(); i += 2) {
        Piece piece;
        const std::size_t end = std::min(i + 2, lines.size());
        double rule = writing_room;
        for (std::size_t k = i; k < end; ++k) {
            const auto value = break_lines(printable(lines[k].value), body_type, width);
            rule = std::max(rule, writing_room - body_type.leading +
                                      body_type.leading * static_cast<double>(value.size()));
        }
        for (std::size_t k = i; k < end; ++k) {
            const double x = k == i ? 0 : width + gap;
            const auto value = break_lines(printable(lines[k].value), body_type, width);
            const double top = rule - 2 - body_type.leading * static_cast<double>(value.size());
            add_lines(piece.ops, value, x, top, body_type);
            piece.ops.emplace_back(RuleOp{x, rule, x + width, rule, 0.5, Tone::ink});
            const auto label = break_lines(printable(lines[k].label), small_type, width);
            piece.height = std::max(piece.height, add_lines(piece.ops, label, x, rule + 2, small_type));
        }
        piece.space_before = 10;
        pieces.push_back(std::move(piece));
    }
    return pieces;
}

// Groups of eight digits change their tone and stand without gaps: the eye finds its place, a copy is whole.
double add_hex(std::vector<Op>& ops, const QString& hex, double x, double y, double width) {
    constexpr qsizetype group = 8;
    const double group_width = width_of(QStringLiteral("00000000"), digest_type);
    const auto per_line = std::max<qsizetype>(1, static_cast<qsizetype>(width / group_width));
    for (qsizetype at = 0; at < hex.size(); at += group) {
        const qsizetype number = at / group;
        const qsizetype line = number / per_line;
        const double left = x + static_cast<double>(number % per_line) * group_width;
        const double top = y + static_cast<double>(line) * digest_type.leading;
        const Type type = in_tone(digest_type, number % 2 == 0 ? Tone::ink : Tone::accent);
        ops.emplace_back(TextOp{left, top + baseline_in_line(type), hex.mid(at, group), type});
    }
    const qsizetype groups = std::max<qsizetype>(1, (hex.size() + group - 1) / group);
    const qsizetype lines = (groups + per_line - 1) / per_line;
    return y + static_cast<double>(lines) * digest_type.leading;
}

Pieces set_digests(const std::vector<Digest>& digests, const Room& room) {
    constexpr double pad = 2;
    const double hex_width = 8 * width_of(QStringLiteral("00000000"), digest_type);
    const double x = std::max(room.width - hex_width - 1, room.width * 0.3);
    Pieces pieces;
    for (const Digest& digest : digests) {
        Piece piece;
        piece.space_before = pieces.empty() ? 12 : 0;
        const auto label = break_lines(printable(digest.label), small_type, x - 12);
        const double label_bottom = add_lines(piece.ops, label, 0, pad + 0.5, small_type);
        const double hex_bottom = add_hex(piece.ops, printable(digest.hex), x, pad, room.width - x);
        piece.height = std::max(label_bottom, hex_bottom) + pad;
        piece.ops.emplace_back(RuleOp{0, piece.height, room.width, piece.height, hair_thickness, Tone::hair});
        if (pieces.empty()) {
            piece.ops.emplace_back(RuleOp{0, 0, room.width, 0, hair_thickness, Tone::hair});
        }
        pieces.push_back(std::move(piece));
    }
    return pieces;
}

}  // namespace

Pieces set_signature(const Signature& signature, const Room& room) {
    Pieces pieces;
    if (!signature.statement.empty()) {
        pieces = set_paragraph(Paragraph{signature.statement, TextStyle::normal}, room);
    }
    for (Piece& piece : set_lines(signature.lines, room)) {
        pieces.push_back(std::move(piece));
    }
    // A signature on a page without what it signs would be worth nothing.
    keep_together(pieces, Keep::bound);
    for (Piece& piece : set_digests(signature.digests, room)) {
        pieces.push_back(std::move(piece));
    }
    keep_together(pieces, Keep::together);
    return pieces;
}

}  // namespace spoilbook::print
