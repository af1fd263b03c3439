// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/font_name.h"

#include <cstddef>
#include <cstdint>
#include <stdexcept>

namespace spoilbook::print {
namespace {

std::uint32_t big_endian(const std::string& bytes, std::size_t at, std::size_t count) {
    if (at + count > bytes.size()) {
        throw std::runtime_error("a typeface is cut short");
    }
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < count; ++i) {
        value = value << 8 | static_cast<unsigned char>(bytes[at + i]);
    }
    return value;
}

std::string utf16(const std::string& ascii) {
    std::string wide;
    for (const char c : ascii) {
        wide += '\0';
        wide += c;
    }
    return wide;
}

void replace_between(std::string& bytes, std::size_t from, std::size_t to, const std::string& old,
                     const std::string& by) {
    for (std::size_t at = bytes.find(old, from); at != std::string::npos && at + old.size() <= to;
         at = bytes.find(old, at + old.size())) {
        bytes.replace(at, old.size(), by);
    }
}

}  // namespace

std::string rename_family(std::string bytes, const std::string& family, const std::string& own_name) {
    if (family.size() != own_name.size() || family.empty()) {
        throw std::invalid_argument("both names of a typeface must have one length");
    }
    const std::uint32_t tables = big_endian(bytes, 4, 2);
    for (std::uint32_t i = 0; i < tables; ++i) {
        const std::size_t record = 12 + std::size_t{16} * i;
        if (bytes.compare(record, 4, "name") == 0) {
            const std::size_t from = big_endian(bytes, record + 8, 4);
            const std::size_t to = from + big_endian(bytes, record + 12, 4);
            if (to > bytes.size()) {
                break;
            }
            replace_between(bytes, from, to, utf16(family), utf16(own_name));
            replace_between(bytes, from, to, family, own_name);
            return bytes;
        }
    }
    throw std::runtime_error("a typeface has no table of names");
}

}  // namespace spoilbook::print
