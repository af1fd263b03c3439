// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/material_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <set>

#include "model/book/digest.h"
#include "model/folder/label_file.h"
#include "model/folder/logger_reader.h"
#include "model/folder/regular_file.h"
#include "model/folder/track_reader.h"
#include "model/record/evidence_text.h"
#include "model/record/kind.h"

namespace spoilbook {

namespace {

namespace fs = std::filesystem;

/// Names in a folder of the folder, sorted; nothing where it is not there.
std::vector<std::string> names_in_folder(const fs::path& folder, const std::string& shown,
                                         Complaints& complaints) {
    std::vector<std::string> names;
    std::error_code error;
    const auto state = fs::symlink_status(folder, error);
    if (state.type() == fs::file_type::not_found) return names;
    if (state.type() != fs::file_type::directory) {
        complaints.refuse(shown,
                          {"not-a-folder", shown, "it is no folder", "make it a folder, or leave it out"});
        return names;
    }
    for (fs::directory_iterator it(folder, error), end; !error && it != end; it.increment(error))
        names.push_back(it->path().filename().string());
    if (error) complaints.refuse(shown, {"unreadable", shown, error.message(), "make it readable"});
    std::sort(names.begin(), names.end());
    return names;
}

/// Keeps a file with its digest; nothing where it cannot be read.
std::optional<std::string> take_file(const fs::path& path, const std::string& shown, FolderContents& contents,
                                     Complaints& complaints) {
    auto bytes = read_regular_file(path.string(), shown, largest_file_bytes);
    if (!bytes) {
        for (Refusal& refusal : bytes.refusals())
            complaints.refuse(shown, refusal);
        return std::nullopt;
    }
    contents.files.push_back({path.string(), shown, hex_text(sha256(*bytes))});
    return std::move(*bytes);
}

void add_row(GivenTable& table, const std::string& parent_field, const std::string& parent,
             const std::string& name, const std::string& shown, const std::string& digest) {
    GivenRow row;
    row.path = shown;
    row.values.resize(table.kind->fields.size());
    row.values[*table.kind->index_of(parent_field)] = parent;
    row.values[*table.kind->index_of("file")] = name;
    row.values[*table.kind->index_of("digest")] = digest;
    table.rows.push_back(std::move(row));
}

bool has_ending(const std::string& name, std::initializer_list<std::string_view> endings) {
    return std::any_of(endings.begin(), endings.end(),
                       [&](auto ending) { return name.size() > ending.size() && name.ends_with(ending); });
}

std::string stem(const std::string& name) {
    return name.substr(0, name.rfind('.'));
}

void note_unknown(const std::string& shown, const std::string& mend, Complaints& complaints) {
    complaints.note(shown, "left out: " + mend);
}

}  // namespace

void read_tracks(const std::string& folder, const Zone& zone, FolderContents& contents,
                 Complaints& complaints) {
    const fs::path place = fs::path(folder) / "tracks";
    GivenTable& table = contents.table("track");
    std::set<std::string> trips;
    for (const std::string& name : names_in_folder(place, "tracks", complaints)) {
        const std::string shown = "tracks/" + name;
        if (!has_ending(name, {".gpx", ".nmea", ".csv"})) {
            if (!name.starts_with('.'))
                note_unknown(shown, "a track ends in .gpx, .nmea or .csv", complaints);
            continue;
        }
        const auto bytes = take_file(place / name, shown, contents, complaints);
        if (!bytes) continue;
        check_track(*bytes, zone, shown, complaints);
        const std::string trip = label_of_stem(stem(name));
        if (!trips.insert(trip).second) {
            complaints.refuse(shown,
                              {"twice", shown, fmt::format("a second track of trip {}", trip), "keep one"});
        }
        add_row(table, "trip", trip, name, shown, contents.files.back().digest);
    }
}

void read_logger_files(const std::string& folder, const Zone& zone, FolderContents& contents,
                       Complaints& complaints) {
    const fs::path place = fs::path(folder) / "turbidity";
    GivenTable& table = contents.table("logger_file");
    for (const std::string& name : names_in_folder(place, "turbidity", complaints)) {
        if (find_kind("turbidity/" + name) != nullptr) continue;
        const std::string shown = "turbidity/" + name;
        if (!has_ending(name, {".csv"})) {
            if (!name.starts_with('.')) note_unknown(shown, "a logger's file ends in .csv", complaints);
            continue;
        }
        const auto bytes = take_file(place / name, shown, contents, complaints);
        if (!bytes) continue;
        read_logger(*bytes, zone, shown, complaints);
        add_row(table, "site", label_of_stem(stem(name)), name, shown, contents.files.back().digest);
    }
}

void read_survey_files(const std::string& folder, FolderContents& contents, Complaints& complaints) {
    const fs::path place = fs::path(folder) / "surveys";
    GivenTable& table = contents.table("survey");
    const std::size_t digest = *table.kind->index_of("digest");
    const auto there = names_in_folder(place, "surveys", complaints);
    std::set<std::string> named;
    for (GivenRow& row : table.rows) {
        std::string name = text_of(*table.kind, row.values, "file");
        if (name.starts_with("surveys/")) name = name.substr(8);
        if (name.empty()) {
            row.values[digest] = {};  // a digest of nothing
            continue;
        }
        const std::string at = where(table.file, row, "file");
        if (!is_plain_name(name)) {
            complaints.refuse(table.file, {"path", at, fmt::format("\"{}\" does not stay in surveys/", name),
                                           "give the name of a file in surveys/"});
            continue;
        }
        named.insert(name);
        if (!std::binary_search(there.begin(), there.end(), name)) continue;
        if (!take_file(place / name, "surveys/" + name, contents, complaints)) continue;
        const std::string& found = contents.files.back().digest;
        const Value given = row.values[digest];
        if (!is_blank(given) && given != Value{found}) {
            complaints.refuse(table.file,
                              {"digest", where(table.file, row, "digest"),
                               fmt::format("surveys/{} has the digest {}", name, found),
                               "correct the digest or leave it out, or put the right file there"});
        }
        row.values[digest] = found;
    }
    for (const std::string& name : there) {
        if (!named.contains(name) && !name.starts_with('.'))
            note_unknown("surveys/" + name, "surveys.csv does not name it", complaints);
    }
}

void read_evidence_files(const std::string& folder, FolderContents& contents, Complaints& complaints) {
    const fs::path place = fs::path(folder) / "evidence";
    const GivenTable& done = contents.table("duty_done");
    std::set<std::string> named;
    for (const GivenRow& row : done.rows) {
        for (const auto& file : evidence_files(text_of(*done.kind, row.values, "evidence")))
            named.insert(file.digest);
    }
    std::set<std::string> taken;
    for (const std::string& name : names_in_folder(place, "evidence", complaints)) {
        const std::string shown = "evidence/" + name;
        const std::string digest = name.substr(0, name.find('.'));
        if (!named.contains(digest)) {
            if (!name.starts_with('.')) note_unknown(shown, "duties.csv names no such digest", complaints);
            continue;
        }
        if (!taken.insert(digest).second) {
            note_unknown(shown, "it is there already under another ending", complaints);
            continue;
        }
        if (!take_file(place / name, shown, contents, complaints)) continue;
        const std::string& found = contents.files.back().digest;
        if (found == digest) continue;
        complaints.refuse(shown, {"digest", shown, fmt::format("its bytes have the digest {}", found),
                                  "put the file there as it was written out, or leave it out"});
    }
}

}  // namespace spoilbook
