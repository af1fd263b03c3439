// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace spoilbook {

/// A finite number with a point: 12, -0.5, 1.2e3. Nothing for anything else (group separators, decimal
/// comma, NaN, infinity, hexadecimal, blanks, a leading +, values beyond double).
std::optional<double> parse_number(std::string_view text);
/// A whole number within 64 bits; 12.0 is one.
std::optional<std::int64_t> parse_integer(std::string_view text);
/// The shortest text that reads back as the same double; never in the machine's language.
std::string number_text(double value);

}  // namespace spoilbook
