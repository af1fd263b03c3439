// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

#include "model/unit/byte_source.h"
#include "model/unit/checked.h"

namespace spoilbook {

/// A copy of bytes in a file of its own, for a library that reads by path alone. In a folder that nobody
/// else may enter; gone with the object.
class ScratchCopy {
 public:
    /// `extension` with its point, or empty. Refused (code "no-room") where the copy cannot be written.
    /// Throws what `bytes` throws.
    static Checked<ScratchCopy> of(const ByteSource& bytes, const std::string& extension);

    ScratchCopy(ScratchCopy&& other) noexcept;
    ScratchCopy& operator=(ScratchCopy&& other) noexcept;
    ~ScratchCopy();

    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
    ScratchCopy() = default;
    void remove() noexcept;

    std::filesystem::path path_;
};

}  // namespace spoilbook
