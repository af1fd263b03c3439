// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/watched_folder.h"

#include <sys/stat.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <filesystem>
#include <system_error>

#include "model/book/season.h"
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

}  // namespace

Checked<std::vector<WatchedFile>> files_in_folder(const Book& book, const FolderWatch& watch) {
    const auto sites = sites_of(book);
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

PreparedFile prepare_watched(const Book& book, const FolderWatch& watch, WatchedFile file) {
    const auto path = (fs::path(watch.folder) / file.name).string();
    PreparedFile prepared{std::move(file), {}};
    auto& of = prepared.file;
    const auto refuse = [&](const Refusals& refusals) {
        of.state = WatchedState::refused;
        of.refusals = refusals;
        return std::move(prepared);
    };
    const Look before = look_at(path);
    of.state = WatchedState::waiting;
    if (unfinished_name(of.name) || watch.now.utc_ms - before.changed_ms < watch.still_ms) return prepared;
    if (of.site.empty())
        return refuse({{"no-such-row", of.name, "no site of the book is named by its folder or its name",
                        "put it into a folder named as its site, or say --site"}});
    auto bytes = open_regular_file(path, of.name, largest_file_bytes);
    if (!bytes) return refuse(bytes.refusals());
    Checked<ReadingsTaken> taken = ReadingsTaken{};
    try {
        taken = prepare_new_readings(book, of.site, of.name, **bytes, watch.answers, watch.clock);
    } catch (const std::system_error& error) {
        return refuse({{"unreadable", of.name, error.what(), "make it readable, or leave it out"}});
    }
    if (look_at(path) != before) return prepared;
    if (!taken) return refuse(taken.refusals());
    of.state = taken->fresh > 0 ? WatchedState::ready : WatchedState::held;
    of.readings = taken->look.rows.readings;
    of.fresh = taken->fresh;
    of.from_byte = taken->from_byte;
    of.unended = taken->unended;
    of.notes = notes_of(taken->look.rows, of.name, book_zone(book));
    prepared.taken = std::move(*taken);
    return prepared;
}

WatchedFile keep_watched(Book& book, const Act& act, const PreparedFile& prepared) {
    WatchedFile file = prepared.file;
    if (file.state != WatchedState::ready) return file;
    const auto kept = keep_readings(book, act, file.site, file.name, prepared.taken);
    file.state = kept ? WatchedState::taken : WatchedState::refused;
    if (kept)
        file.entry = kept->entry;
    else
        file.refusals = kept.refusals();
    return file;
}

Checked<std::vector<WatchedFile>> look_through_folder(Book& book, const Act& act, const FolderWatch& watch) {
    auto files = files_in_folder(book, watch);
    if (!files) return files.refusals();
    for (auto& file : *files)
        file = keep_watched(book, act, prepare_watched(book, watch, std::move(file)));
    return files;
}

}  // namespace spoilbook
