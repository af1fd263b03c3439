// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/return_files.h"

#include <filesystem>
#include <fstream>

#include "model/book/digest.h"

namespace spoilbook {

namespace fs = std::filesystem;

std::string sha256_sums(const std::map<std::string, std::string>& files) {
    std::string sums;
    for (const auto& [name, bytes] : files)
        sums += hex_text(sha256(bytes)) + "  " + name + "\n";
    return sums;
}

Checked<Done> write_return_folder(const std::string& folder,
                                  const std::map<std::string, std::string>& files) {
    std::error_code error;
    if (fs::exists(folder) && (!fs::is_directory(folder) || !fs::is_empty(folder, error))) {
        return Refusal{"not-empty", folder, "the folder is not empty",
                       "choose a new one: a return never writes over another"};
    }
    const fs::path target = fs::absolute(folder).lexically_normal();
    const fs::path part = (target.has_filename() ? target : target.parent_path()).string() + "-part";
    fs::remove_all(part, error);
    fs::create_directories(part, error);
    for (const auto& [name, bytes] : files) {
        std::ofstream out(part / name, std::ios::binary);
        out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
        out.flush();
        if (!out) {
            fs::remove_all(part, error);
            return Refusal{"cannot-write", folder, "the return cannot be written there: " + name,
                           "choose a folder that you may write to, with room"};
        }
    }
    fs::remove(target, error);  // an empty folder gives way
    fs::rename(part, target.has_filename() ? target : target.parent_path(), error);
    if (!error) return Done{};
    fs::remove_all(part);
    return Refusal{"cannot-write", folder, "the return cannot be put in its place: " + error.message(),
                   "choose another folder"};
}

}  // namespace spoilbook
