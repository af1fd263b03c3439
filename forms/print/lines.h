// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <vector>

#include "forms/print/piece.h"

namespace spoilbook::print {

/// Adds `lines` at x, the first line's box beginning at y. Returns the y below the last.
double add_lines(std::vector<Op>& ops, const std::vector<QString>& lines, double x, double y,
                 const Type& type);

/// Adds `text` so that it ends at `right`, its line's box beginning at y.
void add_right(std::vector<Op>& ops, const QString& text, double right, double y, const Type& type);

/// Adds the shape of `mark` for a line whose box begins at y. Returns the width to keep clear for it, 0 for
/// none.
double add_mark(std::vector<Op>& ops, Mark mark, double x, double y, const Type& type);

/// The width that add_mark keeps clear.
double mark_indent(Mark mark, const Type& type);

/// One piece a line, so that long text flows over pages; never one line alone at either end.
Pieces pieces_of_lines(const std::vector<QString>& lines, double x, const Type& type);

/// Every page break inside `pieces` that was free is now taken only if need be.
void keep_together(Pieces& pieces, Keep keep);

/// The same ops, moved.
std::vector<Op> moved(std::vector<Op> ops, double dx, double dy);

}  // namespace spoilbook::print
