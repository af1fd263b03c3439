// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/part_folder.h"

#include <cstdlib>

#include <cerrno>
#include <cstring>
#include <filesystem>

namespace spoilbook {

PartFolder::PartFolder(std::string folder) : folder_(std::move(folder)) {}

PartFolder::PartFolder(PartFolder&& other) noexcept : folder_(std::move(other.folder_)) {
    other.folder_.clear();
}

PartFolder::~PartFolder() {
    std::error_code ignored;
    if (!folder_.empty()) std::filesystem::remove_all(folder_, ignored);
}

Checked<PartFolder> PartFolder::beside(const std::string& path) {
    std::string folder = path + ".part-XXXXXX";
    if (::mkdtemp(folder.data()) != nullptr) return PartFolder(std::move(folder));
    return Refusal{"cannot-write", path, std::string("it cannot be written there: ") + std::strerror(errno),
                   "look for room on the disk, and for a folder that you may write to"};
}

std::string PartFolder::file() const {
    return folder_ + "/part.sbook";
}

}  // namespace spoilbook
