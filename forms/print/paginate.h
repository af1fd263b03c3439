// SPDX-License-Identifier: GPL-3.0-or-later
// Puts a document on pages. Needs a QGuiApplication.
#pragma once

#include <vector>

#include "forms/print/document.h"
#include "forms/print/piece.h"

namespace spoilbook::print {

/// A page's ops in points from its top left corner.
struct Page {
    bool landscape = false;
    std::vector<Op> ops;
};

/// A4 in whole points, as Qt writes it into the file.
inline constexpr double short_edge = 595;
inline constexpr double long_edge = 842;

/// At least one page, each with its head, foot and "page N of M".
/// Throws std::invalid_argument for a table that cannot be (see set_blocks.h).
std::vector<Page> paginate(const Document& document);

}  // namespace spoilbook::print
