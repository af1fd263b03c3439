// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdio>
#include <memory>
#include <vector>

#include "model/book/chunked_bytes.h"
#include "model/unit/checked.h"

namespace spoilbook {

constexpr std::size_t largest_kept_bytes = 1'000'000'000;

/// A file on its way into a book: packed as the book stores it, which is what takes long, and named by its
/// digest. It gives out the bytes as they came, so that what is read of the file is what is kept of it,
/// whatever becomes of the original. It lies in a temporary file without a name and is gone with the object:
/// memory does not grow with it. One thread at a time.
class PackedFile : public ChunkedBytes {
 public:
    /// Refused: over 1 GB; bytes that are others when they are held against the pack, for somebody writes
    /// them; no room for a temporary file. Throws what `bytes` throws.
    static Checked<std::shared_ptr<const PackedFile>> of(const ByteSource& bytes);

    /// SHA-256 of the bytes, 64 hexadecimal digits.
    [[nodiscard]] const std::string& digest() const { return digest_; }
    /// Chunk n as it is stored.
    [[nodiscard]] std::string pack(std::size_t n) const;

 private:
    struct Closes {
        void operator()(std::FILE* file) const { std::fclose(file); }
    };
    explicit PackedFile(std::uint64_t size) : ChunkedBytes(size) {}
    /// False where there is no room.
    bool add(const std::string& pack);
    [[nodiscard]] std::string chunk(std::size_t n) const override;

    std::string digest_;
    std::unique_ptr<std::FILE, Closes> file_;
    std::vector<std::uint64_t> ends_;  ///< of each pack in it
};

}  // namespace spoilbook
