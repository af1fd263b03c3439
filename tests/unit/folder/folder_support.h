// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <stdlib.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>

#include "model/folder/export_folder.h"
#include "model/folder/import_folder.h"

namespace spoilbook::test {

/// A folder of the test's own, gone when it ends.
class TempFolder {
 public:
    TempFolder() {
        std::string pattern = (std::filesystem::temp_directory_path() / "sbfolder-XXXXXX").string();
        path_ = ::mkdtemp(pattern.data());
    }
    ~TempFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    TempFolder(const TempFolder&) = delete;
    TempFolder& operator=(const TempFolder&) = delete;

    TempFolder& with(const std::string& name, const std::string& text) {
        const auto file = std::filesystem::path(path_) / name;
        std::filesystem::create_directories(file.parent_path());
        std::ofstream(file, std::ios::binary) << text;
        return *this;
    }
    TempFolder& without(const std::string& name) {
        std::filesystem::remove_all(std::filesystem::path(path_) / name);
        return *this;
    }
    [[nodiscard]] const std::string& path() const { return path_; }
    [[nodiscard]] std::string in(const std::string& name) const { return path_ + "/" + name; }

 private:
    std::string path_;
};

inline std::string text_of_file(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

/// Every file below a folder with its bytes.
inline std::map<std::string, std::string> files_of(const std::string& folder) {
    std::map<std::string, std::string> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        if (entry.is_regular_file())
            files[std::filesystem::relative(entry.path(), folder).string()] =
                text_of_file(entry.path().string());
    }
    return files;
}

inline std::string all_lines(const Refusals& refusals) {
    std::string text;
    for (const Refusal& refusal : refusals)
        text += refusal.code + " | " + one_line(refusal) + "\n";
    return text;
}

inline std::string all_lines(const Notes& notes) {
    std::string text;
    for (const Note& note : notes)
        text += one_line(note) + "\n";
    return text;
}

inline Act act_at_noon() {
    Act act;
    act.at = Instant{1764547200000};  // 2025-12-01T00:00Z
    act.who = "Ana";
    return act;
}

/// A small season of Marram Harbour with a row of every common kind, sound in every way.
void write_marram(TempFolder& folder);

/// A book in memory with what `folder` holds. REQUIRES it sound.
Book book_from(const TempFolder& folder);

/// Reads and checks a folder beside no book, and answers what was refused.
Refusals refusals_of(const TempFolder& folder);
/// Likewise what was noted. REQUIRES it sound.
Notes notes_of(const TempFolder& folder);

}  // namespace spoilbook::test
