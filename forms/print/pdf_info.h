// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>

namespace spoilbook::print {

/// What a PDF says of itself. `title` is UTF-8; `as_at_utc_ms` ms since 1970 UTC, years 1 to 9999.
struct PdfInfo {
    std::string title;
    std::string creator;
    std::string producer;
    std::int64_t as_at_utc_ms = 0;
};

/// The PDF `bytes` (one cross-reference table, as Qt 6.4 writes it) with its information dictionary replaced:
/// /CreationDate is the as-at in UTC, not the moment of printing, and each offset behind it is moved by the
/// difference in length (ISO 32000-1, 7.5.4, 14.3.3). Throws std::runtime_error if the table is not as
/// described, std::out_of_range for a year outside 1 to 9999.
std::string with_info(const std::string& bytes, const PdfInfo& info);

}  // namespace spoilbook::print
