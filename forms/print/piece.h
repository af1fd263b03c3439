// SPDX-License-Identifier: GPL-3.0-or-later
// What is set, before it has a place on a page. Lengths in points; x from the left edge of the text column,
// y downwards from the top of the piece.
#pragma once

#include <QString>
#include <memory>
#include <variant>
#include <vector>

#include "forms/print/document.h"
#include "forms/print/type.h"

namespace spoilbook::print {

struct TextOp {
    double x = 0;
    double baseline = 0;
    QString text;
    Type type;
};

/// A horizontal or vertical rule from (x1, y1) to (x2, y2).
struct RuleOp {
    double x1 = 0;
    double y1 = 0;
    double x2 = 0;
    double y2 = 0;
    double thickness = 0.5;
    Tone tone = Tone::hair;
};

struct FillOp {
    double x = 0;
    double y = 0;
    double width = 0;
    double height = 0;
    Tone tone = Tone::tint;
};

/// A drawn shape in a box of `size` whose top left corner is (x, y).
struct MarkOp {
    double x = 0;
    double y = 0;
    double size = 0;
    Mark mark = Mark::none;
};

using Op = std::variant<TextOp, RuleOp, FillOp, MarkOp>;

/// Whether a page may end behind a piece: freely; if need be (KeepTogether); or only where nothing else
/// helps.
enum class Keep { free, together, bound };

struct Piece;

/// What a table repeats at the top of its next page, and says at the foot of the page it leaves.
struct TableRun {
    std::vector<Op> head;
    double head_height = 0;
    std::vector<Op> foot;
    double foot_height = 0;
};

/// The smallest thing that a page break cannot part. `space_before` is dropped at the top of a page.
struct Piece {
    double space_before = 0;
    double height = 0;
    Keep keep = Keep::free;
    std::vector<Op> ops;
    std::vector<Op> ops_at_top;  // drawn as well where the piece is the first on its page
    std::shared_ptr<const TableRun> table;
};

using Pieces = std::vector<Piece>;

/// The room that a text column gives.
struct Room {
    double width = 0;
    double height = 0;
};

inline constexpr double rule_thickness = 0.75;
inline constexpr double hair_thickness = 0.4;

}  // namespace spoilbook::print
