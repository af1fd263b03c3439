// SPDX-License-Identifier: GPL-3.0-or-later
// What stands around the text column of every page.
#pragma once

#include "forms/print/document.h"
#include "forms/print/paginate.h"

namespace spoilbook::print {

/// The text column of a page in points: its left edge, its top, and the room in it.
struct Frame {
    bool landscape = false;
    double left = 0;
    double top = 0;
    Room room;
    std::vector<Op> ops;  // head and foot but for the number of the page
    double number_y = 0;  // top of the line of the number
};

Frame frame_of(const Document& document, bool landscape);

/// Adds "page N of M".
void add_number(Page& page, const Frame& frame, std::size_t number, std::size_t pages);

}  // namespace spoilbook::print
