// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace spoilbook {

/// SHA-256 of bytes, 32 bytes (FIPS 180-4, by libsodium).
std::string sha256(std::string_view bytes);
/// Lower-case hexadecimal digits.
std::string hex_text(std::string_view bytes);

/// Collects parts for one hash, each with its length before it (8 bytes, little-endian), so that no two
/// different lists of parts are the same bytes.
class HashParts {
 public:
    HashParts& text(std::string_view part);
    HashParts& number(std::int64_t part);
    [[nodiscard]] std::string sha256() const;

 private:
    std::string bytes_;
};

}  // namespace spoilbook
