// SPDX-License-Identifier: GPL-3.0-or-later
// Reads as much of a PDF as the tests need, on its own, without the code under test (ISO 32000-1, 7.5).
#pragma once

#include <charconv>
#include <map>
#include <stdexcept>
#include <string>
#include <utility>

namespace spoilbook::print::test {

/// The cross-reference table of a file with one table: object number → offset, entries in use only.
struct XrefTable {
    std::size_t at = 0;
    std::size_t entries = 0;
    std::map<std::size_t, std::size_t> offsets;
    std::string trailer;
};

inline std::size_t number(const std::string& bytes, std::size_t at) {
    std::size_t value = 0;
    const auto result = std::from_chars(bytes.data() + at, bytes.data() + bytes.size(), value);
    if (result.ec != std::errc{}) {
        throw std::runtime_error("no number at " + std::to_string(at));
    }
    return value;
}

inline XrefTable xref_table(const std::string& bytes) {
    const std::string end = "%%EOF";
    const std::size_t eof = bytes.rfind(end);
    const std::size_t mark = bytes.rfind("startxref");
    if (eof == std::string::npos || mark == std::string::npos || bytes.size() - eof > end.size() + 1) {
        throw std::runtime_error("no end of file");
    }
    XrefTable table;
    table.at = number(bytes, mark + 10);
    if (bytes.substr(table.at, 7) != "xref\n0 ") {
        throw std::runtime_error("startxref does not point at the table");
    }
    table.entries = number(bytes, table.at + 7);
    std::size_t line = bytes.find('\n', table.at + 5) + 1;
    for (std::size_t object = 0; object < table.entries; ++object, line += 20) {
        if (bytes[line + 10] != ' ' || bytes[line + 16] != ' ' || bytes[line + 19] != '\n') {
            throw std::runtime_error("an entry has not 20 bytes");
        }
        if (bytes[line + 17] == 'n') {
            std::size_t digits = line;
            while (bytes[digits] == '0') {
                ++digits;
            }
            table.offsets[object] = number(bytes, digits);
        }
    }
    table.trailer = bytes.substr(line, mark - line);
    if (table.trailer.rfind("trailer", 0) != 0) {
        throw std::runtime_error("no trailer behind the table");
    }
    return table;
}

/// How many entries point anywhere but at "N 0 obj".
inline std::size_t wrong_offsets(const std::string& bytes, const XrefTable& table) {
    std::size_t wrong = 0;
    for (const auto& [object, offset] : table.offsets) {
        const std::string head = std::to_string(object) + " 0 obj";
        wrong += bytes.compare(offset, head.size(), head) != 0 ? 1U : 0U;
    }
    return wrong;
}

}  // namespace spoilbook::print::test
