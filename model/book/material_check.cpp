// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/material_check.h"

#include "model/book/inside.h"
#include "model/book/journal.h"
#include "model/book/stored_file.h"

namespace spoilbook {

namespace {

/// Digest → the entry that stored it first.
std::map<std::string, std::string> files_told(const Book& book) {
    std::map<std::string, std::string> told;
    for_each_entry(book, EntryOrder::replay, [&](const Entry& entry) {
        for (const auto& digest : entry.materials)
            told.emplace(digest, name_text(entry.name));
        return true;
    });
    return told;
}

std::vector<std::string> digests(const Book& book, const char* sql) {
    SQLite::Statement rows(*book.inside().db, sql);
    std::vector<std::string> found;
    while (rows.executeStep())
        found.push_back(rows.getColumn(0).getString());
    return found;
}

}  // namespace

std::optional<FirstBad> bad_material(const Book& book) {
    auto told = files_told(book);
    const auto loose =
        digests(book, "SELECT digest FROM stored_chunk WHERE digest NOT IN (SELECT digest FROM stored_file)");
    if (!loose.empty()) return FirstBad{"stored_chunk", loose.front(), "", "no file has this chunk"};
    for (const auto& digest : digests(book, "SELECT digest FROM stored_file ORDER BY digest")) {
        const auto place = told.find(digest);
        if (place == told.end()) return FirstBad{"stored_file", digest, "", "no entry stored it"};
        try {
            load_file(book, digest);
        } catch (const BookError& error) {
            return FirstBad{"stored_file", digest, place->second, error.what()};
        }
        told.erase(place);
    }
    if (told.empty()) return std::nullopt;
    return FirstBad{"stored_file", told.begin()->first, told.begin()->second, "the file is missing"};
}

}  // namespace spoilbook
