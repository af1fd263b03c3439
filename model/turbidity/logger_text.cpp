// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_text.h"

#include <algorithm>

namespace spoilbook {

namespace {

constexpr std::size_t piece_bytes = std::size_t{1} << 18;  // even: it cuts no character of UTF-16

std::string narrow(const std::string& bytes, std::size_t low_byte) {
    std::string text;
    text.reserve(bytes.size() / 2);
    for (std::size_t i = 0; i + 1 < bytes.size(); i += 2)
        text += bytes[i + 1 - low_byte] == '\0' ? bytes[i + low_byte] : '?';
    return text;
}

}  // namespace

LoggerText::LoggerText(const ByteSource& bytes) : bytes_(bytes) {
    const std::string mark = bytes_.piece(0, 3);
    if (mark.starts_with("\xFF\xFE")) low_byte_ = 0;
    if (mark.starts_with("\xFE\xFF")) low_byte_ = 1;
    at_ = low_byte_ ? 2 : mark == "\xEF\xBB\xBF" ? 3 : 0;
    cr_ends_ = !has_line_feed();
}

std::string LoggerText::piece_at(std::uint64_t from) const {
    std::string piece = bytes_.piece(from, piece_bytes);
    return low_byte_ ? narrow(piece, *low_byte_) : piece;
}

bool LoggerText::has_line_feed() const {
    for (std::uint64_t from = at_; from < bytes_.size(); from += piece_bytes) {
        if (piece_at(from).find('\n') != std::string::npos) return true;
    }
    return false;
}

bool LoggerText::more(std::string& text) {
    if (at_ >= bytes_.size()) return false;
    std::string piece = piece_at(at_);
    at_ += piece_bytes;
    if (cr_ends_) std::replace(piece.begin(), piece.end(), '\r', '\n');
    text += piece;
    return true;
}

}  // namespace spoilbook
