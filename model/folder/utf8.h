// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "model/unit/refusal.h"

namespace spoilbook {

/// A place in a text as a person counts it: both from 1, the column in characters.
struct TextPlace {
    std::size_t line = 1;
    std::size_t column = 1;
};

TextPlace place_at(std::string_view bytes, std::size_t offset);

/// The bytes behind a leading byte order mark, where there is one.
std::string_view without_byte_order_mark(std::string_view bytes);

/// Nothing where the bytes are UTF-8 (RFC 3629: no overlong forms, no surrogates) without NUL; else the first
/// bad byte, refused with line and column. Codes "not-utf-8", "nul-byte".
std::optional<Refusal> why_not_text(std::string_view bytes, const std::string& file);

}  // namespace spoilbook
