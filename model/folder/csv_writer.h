// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace spoilbook {

/// Appends one row of RFC 4180 with LF behind it. A field is quoted where it holds a quote, a comma or a line
/// end, and nowhere else, so that the same rows give the same bytes. Nothing is put before a text that begins
/// with = + - @: a book folder gives back what it was given. What leaves for a spreadsheet (the return) is
/// guarded there.
void append_csv_row(std::string& into, const std::vector<std::string>& fields);

}  // namespace spoilbook
