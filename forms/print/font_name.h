// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace spoilbook::print {

/// The TrueType font `bytes` with `family` replaced by `own_name` wherever its name table (OpenType
/// specification, "name") holds it in UTF-16 or one byte a letter; both names ASCII and of one length,
/// otherwise std::invalid_argument. PostScript names, which the PDF shows, hold no blanks and stay. Throws
/// std::runtime_error if there is no name table inside the file.
std::string rename_family(std::string bytes, const std::string& family, const std::string& own_name);

}  // namespace spoilbook::print
