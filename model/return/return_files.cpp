// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/return_files.h"

#include <filesystem>

#include "model/book/digest.h"
#include "model/folder/written_folder.h"

namespace spoilbook {

namespace fs = std::filesystem;

namespace {

Refusal refused(const std::string& folder, const Refusal& why) {
    if (why.code == "not-empty") {
        return {"not-empty", folder, "the folder is not empty",
                "choose a new one: a return never writes over another"};
    }
    return {"cannot-write", folder, "the return cannot be written there: " + why.where + " " + why.what,
            "choose a folder that you may write to, with room"};
}

}  // namespace

std::string sha256_sums(const std::map<std::string, std::string>& files) {
    std::string sums;
    for (const auto& [name, bytes] : files)
        sums += hex_text(sha256(bytes)) + "  " + name + "\n";
    return sums;
}

Checked<Done> write_return_folder(const std::string& folder,
                                  const std::map<std::string, std::string>& files) {
    std::error_code ignored;
    fs::create_directories(fs::absolute(folder, ignored).lexically_normal().parent_path(), ignored);
    auto written = WrittenFolder::at(folder);
    if (!written) return refused(folder, written.refusals().front());
    for (const auto& [name, bytes] : files) {
        if (auto done = written->write(name, bytes); !done) return refused(folder, done.refusals().front());
    }
    if (auto done = written->put_in_place(); !done) return refused(folder, done.refusals().front());
    return Done{};
}

}  // namespace spoilbook
