// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/watched_folder.h"

#include <sys/stat.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <filesystem>

#include "model/folder/regular_file.h"
#include "model/record/watched_water.h"

namespace spoilbook {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_files = 20'000;

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

std::vector<std::string> sites_of(const Book& book) {
    std::vector<std::string> sites;
    for (const Row& row : book.rows(definition<Site>().kind()))
        sites.push_back(definition<Site>().read(row).site);
    return sites;
}

/// The site that a file's name begins with, the longest of several: R1-2025-11.csv, r1.dat.
std::string site_in_name(const std::vector<std::string>& sites, const std::string& name) {
    std::string found;
    for (const auto& site : sites) {
        const bool begins = lower(name).starts_with(lower(site)) && name.size() > site.size() &&
                            std::isalnum(static_cast<unsigned char>(name[site.size()])) == 0;
        if (begins && site.size() > found.size()) found = site;
    }
    return found;
}

/// When a file was last changed and how long it is; two looks that differ tell that someone writes.
struct Look {
    std::int64_t changed_ms = 0;
    std::int64_t bytes = -1;
    bool operator==(const Look&) const = default;
};

Look look_at(const std::string& path) {
    struct stat state {};
    if (::lstat(path.c_str(), &state) != 0) return {};
    return {state.st_mtim.tv_sec * ms_per_second + state.st_mtim.tv_nsec / 1'000'000, state.st_size};
}

bool unfinished_name(const std::string& name) {
    static constexpr std::array ends{".tmp", ".part", ".partial", ".crdownload", "~"};
    return std::any_of(ends.begin(), ends.end(), [&](const char* end) { return lower(name).ends_with(end); });
}

/// The files of the folder, and of folders in it that are named as a site.
Checked<std::vector<WatchedFile>> files_in(const FolderWatch& watch, const std::vector<std::string>& sites) {
    std::vector<WatchedFile> files;
    const auto add = [&](const fs::path& folder, const std::string& beneath, const std::string& site) {
        for (const auto& one : fs::directory_iterator(folder)) {
            const auto name = one.path().filename().string();
            if (name.starts_with('.') || files.size() > most_files || one.is_directory()) continue;
            WatchedFile file;
            file.name = beneath + name;
            file.site = !watch.site.empty() ? watch.site : !site.empty() ? site : site_in_name(sites, name);
            files.push_back(std::move(file));
        }
    };
    try {
        add(watch.folder, "", "");
        for (const auto& site : sites) {
            const auto folder = fs::path(watch.folder) / site;
            if (!site.empty() && site.find('/') == std::string::npos && fs::is_directory(folder))
                add(folder, site + "/", site);
        }
    } catch (const fs::filesystem_error& error) {
        return Refusal{"unreadable", watch.folder, error.code().message(),
                       "name a folder that this account may read"};
    }
    if (files.size() > most_files)
        return Refusal{"too-large", watch.folder, "over 20 000 files", "put old files elsewhere"};
    std::sort(files.begin(), files.end(), [](const auto& a, const auto& b) { return a.name < b.name; });
    return files;
}

void take(Book& book, const Act& act, const FolderWatch& watch, WatchedFile& file) {
    const auto path = (fs::path(watch.folder) / file.name).string();
    const auto refuse = [&](const Refusals& refusals) {
        file.state = WatchedState::refused;
        file.refusals = refusals;
    };
    const Look before = look_at(path);
    file.state = WatchedState::waiting;
    if (unfinished_name(file.name) || watch.now.utc_ms - before.changed_ms < watch.still_ms) return;
    if (file.site.empty())
        return refuse({{"no-such-row", file.name, "no site of the book is named by its folder or its name",
                        "put it into a folder named as its site, or say --site"}});
    const auto bytes = read_regular_file(path, file.name, largest_file_bytes);
    if (!bytes) return refuse(bytes.refusals());
    if (look_at(path) != before) return;
    const auto taken = take_new_readings(book, act, file.site, file.name, *bytes, watch.answers);
    if (!taken) return refuse(taken.refusals());
    file.state = taken->entry ? WatchedState::taken : WatchedState::held;
    file.readings = taken->look.rows.readings.size();
    file.fresh = taken->fresh;
    file.from_byte = taken->from_byte;
    file.unended = taken->unended;
    file.entry = taken->entry;
}

}  // namespace

Checked<std::vector<WatchedFile>> look_through_folder(Book& book, const Act& act, const FolderWatch& watch) {
    auto files = files_in(watch, sites_of(book));
    if (!files) return files.refusals();
    for (auto& file : *files)
        take(book, act, watch, file);
    return files;
}

}  // namespace spoilbook
