// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/written_folder.h"

#include <fmt/format.h>
#include <cstdlib>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

namespace spoilbook {

namespace fs = std::filesystem;

namespace {

Refusal unwritable(const std::string& place, const std::string& why) {
    return {"unwritable", place, "cannot be written: " + why, "choose a place with room where you may write"};
}

}  // namespace

WrittenFolder::WrittenFolder(std::string to, std::string on_the_way)
    : to_(std::move(to)), on_the_way_(std::move(on_the_way)) {}

WrittenFolder::WrittenFolder(WrittenFolder&& other) noexcept
    : to_(std::move(other.to_)), on_the_way_(std::move(other.on_the_way_)), files_(other.files_) {
    other.on_the_way_.clear();
}

WrittenFolder::~WrittenFolder() {
    std::error_code ignored;
    if (!on_the_way_.empty()) fs::remove_all(on_the_way_, ignored);
}

Checked<WrittenFolder> WrittenFolder::at(const std::string& to) {
    std::error_code error;
    fs::path place = fs::absolute(to, error).lexically_normal();
    if (!place.has_filename()) place = place.parent_path();
    const auto state = fs::symlink_status(place, error);
    const bool empty = state.type() == fs::file_type::directory && fs::is_empty(place, error);
    if (state.type() != fs::file_type::not_found && !empty) {
        return Refusal{"not-empty", to, "something stands there already",
                       "name a folder that does not exist yet, or is empty"};
    }
    std::string pattern = place.string() + ".part-XXXXXX";
    if (::mkdtemp(pattern.data()) == nullptr) return unwritable(to, std::strerror(errno));
    return WrittenFolder(place.string(), pattern);
}

Checked<Done> WrittenFolder::write(const std::string& name, std::string_view bytes) {
    const fs::path path = fs::path(on_the_way_) / name;
    std::error_code error;
    fs::create_directories(path.parent_path(), error);
    if (error) return unwritable(name, error.message());
    std::ofstream file(path, std::ios::binary);
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    file.close();
    if (!file) return unwritable(name, "the disk does not take it");
    ++files_;
    return Done{};
}

Checked<Done> WrittenFolder::put_in_place() {
    std::error_code error;
    fs::permissions(on_the_way_,
                    fs::perms::owner_all | fs::perms::group_read | fs::perms::group_exec |
                        fs::perms::others_read | fs::perms::others_exec,
                    error);
    fs::rename(on_the_way_, to_, error);  // takes the place of an empty folder
    if (error) return unwritable(to_, error.message());
    on_the_way_.clear();
    return Done{};
}

}  // namespace spoilbook
