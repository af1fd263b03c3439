// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "model/unit/byte_source.h"

namespace spoilbook {

/// A logger's file as text of bytes that ASCII can be read from, piece by piece: without a byte order mark;
/// UTF-16, with a mark or without, becomes one byte a character; CR is made LF where no LF ends a line.
class LoggerText {
 public:
    explicit LoggerText(const ByteSource& bytes);
    /// Puts the next piece behind `text`; false after the last.
    bool more(std::string& text);

 private:
    [[nodiscard]] std::string piece_at(std::uint64_t from) const;
    [[nodiscard]] bool has_line_feed() const;

    const ByteSource& bytes_;
    std::uint64_t at_ = 0;
    std::optional<std::size_t> low_byte_;  ///< UTF-16: which of two bytes is the lower
    bool cr_ends_ = false;
};

}  // namespace spoilbook
