// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace spoilbook {

/// Bytes that are read piece by piece, as often as one likes, so that a large file need not lie in memory.
class ByteSource {
 public:
    virtual ~ByteSource() = default;
    [[nodiscard]] virtual std::uint64_t size() const = 0;
    /// `most` bytes from a place on; fewer only at the end. Throws std::runtime_error where they cannot be
    /// read.
    [[nodiscard]] virtual std::string piece(std::uint64_t from, std::size_t most) const = 0;
};

/// Bytes that lie in memory; they must outlive it.
class HeldBytes : public ByteSource {
 public:
    explicit HeldBytes(std::string_view bytes) : bytes_(bytes) {}
    [[nodiscard]] std::uint64_t size() const override { return bytes_.size(); }
    [[nodiscard]] std::string piece(std::uint64_t from, std::size_t most) const override {
        return std::string(bytes_.substr(std::min<std::uint64_t>(from, bytes_.size()), most));
    }

 private:
    std::string_view bytes_;
};

/// A part [from, to) of other bytes, which must outlive it. REQUIRES from ≤ to ≤ their size.
class PartOfBytes : public ByteSource {
 public:
    PartOfBytes(const ByteSource& whole, std::uint64_t from, std::uint64_t to)
        : whole_(whole), from_(from), size_(to - from) {}
    [[nodiscard]] std::uint64_t size() const override { return size_; }
    [[nodiscard]] std::string piece(std::uint64_t from, std::size_t most) const override {
        if (from >= size_) return {};
        return whole_.piece(from_ + from, std::min<std::uint64_t>(most, size_ - from));
    }

 private:
    const ByteSource& whole_;
    std::uint64_t from_, size_;
};

}  // namespace spoilbook
