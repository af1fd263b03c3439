// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <cstring>
#include <functional>
#include <string>

namespace spoilbook {

/// A book's own key for a row: a UUIDv7 (RFC 9562). All zeros means "none".
struct Id {
    std::array<std::uint8_t, 16> bytes{};

    auto operator<=>(const Id&) const = default;
    [[nodiscard]] bool is_nil() const { return *this == Id{}; }
    explicit operator bool() const { return !is_nil(); }
};

/// 32 lower-case hexadecimal digits.
std::string hex(const Id& id);

}  // namespace spoilbook

template <>
struct std::hash<spoilbook::Id> {
    std::size_t operator()(const spoilbook::Id& id) const noexcept {
        std::uint64_t high = 0;
        std::uint64_t low = 0;
        std::memcpy(&high, id.bytes.data(), 8);
        std::memcpy(&low, id.bytes.data() + 8, 8);
        return static_cast<std::size_t>(high * 0x9E3779B97F4A7C15ULL ^ low);
    }
};
