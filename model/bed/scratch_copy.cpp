// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/bed/scratch_copy.h"

#include <stdlib.h>

#include <cstdio>
#include <fstream>
#include <utility>

namespace spoilbook {

namespace {

constexpr std::size_t copied_at_once = std::size_t{1} << 20;

Refusal no_room() {
    return {"no-room", "the temporary folder", "a copy of the survey's file cannot be written there",
            "make room for it"};
}

}  // namespace

Checked<ScratchCopy> ScratchCopy::of(const ByteSource& bytes, const std::string& extension) {
    std::string folder = P_tmpdir "/spoilbook-XXXXXX";
    if (mkdtemp(folder.data()) == nullptr) return no_room();
    ScratchCopy copy;
    copy.path_ = std::filesystem::path(folder) / ("grid" + extension);
    std::ofstream file(copy.path_, std::ios::binary);
    for (std::uint64_t from = 0; from < bytes.size(); from += copied_at_once) {
        const std::string piece = bytes.piece(from, copied_at_once);
        file.write(piece.data(), static_cast<std::streamsize>(piece.size()));
    }
    file.close();
    if (!file) return no_room();
    return copy;
}

ScratchCopy::ScratchCopy(ScratchCopy&& other) noexcept : path_(std::exchange(other.path_, {})) {}

ScratchCopy& ScratchCopy::operator=(ScratchCopy&& other) noexcept {
    if (this == &other) return *this;
    remove();
    path_ = std::exchange(other.path_, {});
    return *this;
}

ScratchCopy::~ScratchCopy() {
    remove();
}

void ScratchCopy::remove() noexcept {
    if (path_.empty()) return;
    std::error_code ignored;  // what stays in the temporary folder does no harm
    std::filesystem::remove_all(path_.parent_path(), ignored);
}

}  // namespace spoilbook
