// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_text.h"

#include <algorithm>
#include <array>

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

/// Which byte of two is the lower in UTF-16 that has no mark: every other byte of its beginning is zero.
std::optional<std::size_t> low_byte_of(const std::string& beginning) {
    std::array<std::size_t, 2> zeros{};
    for (std::size_t i = 0; i < beginning.size(); ++i)
        zeros[i % 2] += beginning[i] == '\0' ? 1 : 0;
    const std::size_t half = beginning.size() / 2;
    if (half < 8) return std::nullopt;
    if (zeros[0] == 0 && 10 * zeros[1] >= 9 * half) return 0;
    if (zeros[1] == 0 && 10 * zeros[0] >= 9 * half) return 1;
    return std::nullopt;
}

}  // namespace

LoggerText::LoggerText(const ByteSource& bytes) : bytes_(bytes) {
    const std::string mark = bytes_.piece(0, 3);
    if (mark.starts_with("\xFF\xFE")) low_byte_ = 0;
    if (mark.starts_with("\xFE\xFF")) low_byte_ = 1;
    at_ = low_byte_ ? 2 : mark == "\xEF\xBB\xBF" ? 3 : 0;
    if (at_ == 0) low_byte_ = low_byte_of(bytes_.piece(0, 1000));
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
