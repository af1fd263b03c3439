// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/new_id.h"

#include "model/book/digest.h"

namespace spoilbook {

namespace {

void put(Id& id, std::size_t at, std::uint64_t value, std::size_t bytes) {
    for (std::size_t i = 0; i < bytes; ++i) {
        id.bytes[at + i] = static_cast<std::uint8_t>(value >> (8 * (bytes - 1 - i)));
    }
}

}  // namespace

Id new_id(const IdSource& source) {
    const std::string hash =
        HashParts().text(source.device).number(source.seq).number(source.stamp_ms).number(source.n).sha256();
    std::uint64_t tail = 0;
    for (std::size_t i = 0; i < 8; ++i)
        tail = (tail << 8) | static_cast<unsigned char>(hash[i]);
    const auto count = static_cast<std::uint64_t>(source.stamp_count) & 0xFFF;
    const auto n = static_cast<std::uint64_t>(source.n) & 0xFFFFFF;
    Id id;
    put(id, 0, static_cast<std::uint64_t>(source.stamp_ms), 6);
    put(id, 6, 0x7000 | count, 2);
    put(id, 8, 0x8000000000000000ULL | (n << 38) | (tail & 0x3FFFFFFFFFULL), 8);
    return id;
}

}  // namespace spoilbook
