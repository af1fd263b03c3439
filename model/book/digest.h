// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "model/unit/byte_source.h"

namespace spoilbook {

/// SHA-256 of bytes, 32 bytes (FIPS 180-4, by libsodium).
std::string sha256(std::string_view bytes);
/// The same of bytes that come piece by piece.
class Sha256 {
 public:
    Sha256();
    ~Sha256();
    Sha256(const Sha256&) = delete;
    Sha256& operator=(const Sha256&) = delete;
    void add(std::string_view bytes);
    /// Of all that was added. Once.
    [[nodiscard]] std::string hash();

 private:
    struct State;
    std::unique_ptr<State> state_;
};

/// SHA-256 as 64 hexadecimal digits, as a book names its materials.
std::string digest_of(const ByteSource& bytes);
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
