// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/utf8.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <cstring>

namespace spoilbook {

namespace {

unsigned byte_at(std::string_view bytes, std::size_t i) {
    return i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0U;
}

/// Bytes of the character that starts at i; 0 where none does.
std::size_t character_length(std::string_view bytes, std::size_t i) {
    const unsigned lead = byte_at(bytes, i);
    if (lead < 0x80) return 1;
    const auto follows = [&](std::size_t n, unsigned low, unsigned high) {
        const unsigned b = byte_at(bytes, i + n);
        return b >= low && b <= high;
    };
    if (lead >= 0xC2 && lead <= 0xDF) return follows(1, 0x80, 0xBF) ? 2 : 0;
    if (lead >= 0xE0 && lead <= 0xEF) {
        const unsigned low = lead == 0xE0 ? 0xA0 : 0x80;   // overlong forms
        const unsigned high = lead == 0xED ? 0x9F : 0xBF;  // surrogates
        return follows(1, low, high) && follows(2, 0x80, 0xBF) ? 3 : 0;
    }
    if (lead >= 0xF0 && lead <= 0xF4) {
        const unsigned low = lead == 0xF0 ? 0x90 : 0x80;
        const unsigned high = lead == 0xF4 ? 0x8F : 0xBF;  // beyond U+10FFFF
        return follows(1, low, high) && follows(2, 0x80, 0xBF) && follows(3, 0x80, 0xBF) ? 4 : 0;
    }
    return 0;
}

/// True where the next eight bytes are ASCII without NUL, so that long plain files cost little.
bool plain_eight(const char* at) {
    constexpr std::uint64_t high_bits = 0x8080808080808080ULL;
    constexpr std::uint64_t ones = 0x0101010101010101ULL;
    std::uint64_t word = 0;
    std::memcpy(&word, at, 8);
    return (word & high_bits) == 0 && ((word - ones) & high_bits) == 0;
}

}  // namespace

TextPlace place_at(std::string_view bytes, std::size_t offset) {
    TextPlace place;
    for (std::size_t i = 0; i < std::min(offset, bytes.size()); ++i) {
        if (bytes[i] == '\n') {
            ++place.line;
            place.column = 1;
        } else if ((static_cast<unsigned char>(bytes[i]) & 0xC0U) != 0x80U) {
            ++place.column;
        }
    }
    return place;
}

std::string_view without_byte_order_mark(std::string_view bytes) {
    return bytes.starts_with("\xEF\xBB\xBF") ? bytes.substr(3) : bytes;
}

std::optional<Refusal> why_not_text(std::string_view bytes, const std::string& file) {
    std::size_t i = 0;
    while (i < bytes.size()) {
        if (i + 8 <= bytes.size() && plain_eight(bytes.data() + i)) {
            i += 8;
            continue;
        }
        const std::size_t length = byte_at(bytes, i) == 0 ? 0 : character_length(bytes, i);
        if (length > 0) {
            i += length;
            continue;
        }
        const TextPlace place = place_at(bytes, i);
        const std::string where = fmt::format("{} line {} column {}", file, place.line, place.column);
        if (byte_at(bytes, i) == 0)
            return Refusal{"nul-byte", where, "a zero byte", "save the file as plain text in UTF-8"};
        return Refusal{"not-utf-8", where, fmt::format("byte {:02x} is not UTF-8", byte_at(bytes, i)),
                       "save the file as plain text in UTF-8"};
    }
    return std::nullopt;
}

}  // namespace spoilbook
