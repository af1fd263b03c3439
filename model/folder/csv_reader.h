// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "model/folder/complaints.h"

namespace spoilbook {

struct CsvRow {
    std::size_t line = 0;  ///< on which the row starts, from 1; a quoted text may run over several
    std::vector<std::string> fields;
};

/// The longest text of one field; longer ones are refused.
inline constexpr std::size_t longest_field_bytes = 1'048'576;
/// The most fields of one row.
inline constexpr std::size_t most_fields = 10000;

/// Reads RFC 4180: comma, double quotes, LF or CR LF, a leading byte order mark allowed. The first row is the
/// header and is handed over like the others; completely blank lines are skipped. Refused with file and line:
/// bytes that are not UTF-8, NUL, a quote where none may stand, a quote that is never closed, a carriage
/// return alone, a row with more or fewer fields than the header, a field over 1 MiB, a row of over 10 000
/// fields. After a fault of quoting the rest of the file is not read, since nobody knows what it says.
void read_csv(std::string_view bytes, const std::string& file,
              const std::function<void(const CsvRow&)>& on_row, Complaints& complaints);

}  // namespace spoilbook
