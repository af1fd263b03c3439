// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/unit/number_text.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

namespace spoilbook {

std::optional<double> parse_number(std::string_view text) {
    for (const char c : text) {
        // from_chars would also take "inf" and "nan".
        const bool allowed =
            (c >= '0' && c <= '9') || c == '.' || c == '-' || c == '+' || c == 'e' || c == 'E';
        if (!allowed) return std::nullopt;
    }
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value))
        return std::nullopt;
    return value == 0 ? 0.0 : value;  // -0 would print as "-0"
}

std::optional<std::int64_t> parse_integer(std::string_view text) {
    std::int64_t value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error == std::errc{} && end == text.data() + text.size()) return value;
    const auto number = parse_number(text);
    constexpr double exact = 9007199254740992.0;  // 2^53
    if (!number || std::floor(*number) != *number || std::fabs(*number) > exact) return std::nullopt;
    return static_cast<std::int64_t>(*number);
}

std::string number_text(double value) {
    return fmt::format("{}", value == 0 ? 0.0 : value);
}

}  // namespace spoilbook
