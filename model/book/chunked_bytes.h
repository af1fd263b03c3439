// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/unit/byte_source.h"

namespace spoilbook {

/// A kept file is cut into chunks of this size, each packed with zstd.
constexpr std::size_t chunk_bytes = std::size_t{1} << 20;

std::string packed_chunk(std::string_view bytes);
/// Throws BookError for what does not unpack.
std::string unpacked_chunk(std::string_view pack);

/// Bytes that lie in chunks; the chunk read last stays in memory. One thread at a time.
class ChunkedBytes : public ByteSource {
 public:
    explicit ChunkedBytes(std::uint64_t size) : size_(size) {}
    [[nodiscard]] std::uint64_t size() const override { return size_; }
    [[nodiscard]] std::string piece(std::uint64_t from, std::size_t most) const override;
    [[nodiscard]] std::size_t chunks() const { return (size_ + chunk_bytes - 1) / chunk_bytes; }

 private:
    /// Chunk n, unpacked: chunk_bytes of it, or what is left at the end.
    [[nodiscard]] virtual std::string chunk(std::size_t n) const = 0;

    std::uint64_t size_;
    mutable std::string last_;
    mutable std::size_t n_ = 0;  ///< which it is
};

}  // namespace spoilbook
