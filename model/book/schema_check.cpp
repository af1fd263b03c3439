// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/schema_check.h"

#include "model/book/inside.h"

namespace spoilbook {

namespace {

/// (name, type) → statement; a trigger may bear the name of a table. Keys' own indexes have no statement:
/// they follow from their table's.
std::map<std::pair<std::string, std::string>, std::string> statements_of(const Book& book) {
    std::map<std::pair<std::string, std::string>, std::string> found;
    SQLite::Statement rows(*book.inside().db,
                           "SELECT name, type, sql FROM sqlite_schema WHERE sql IS NOT NULL");
    while (rows.executeStep())
        found[{rows.getColumn(0).getString(), rows.getColumn(1).getString()}] = rows.getColumn(2).getString();
    return found;
}

}  // namespace

std::optional<OddTable> odd_table(const Book& book) {
    const auto wanted = statements_of(Book::in_memory("schema"));
    const auto found = read_from(book, [&] { return statements_of(book); });
    for (const auto& [key, sql] : found) {
        const auto place = wanted.find(key);
        if (place == wanted.end()) return OddTable{key.first, "this " + key.second + " is none of ours"};
        if (place->second != sql) return OddTable{key.first, "this " + key.second + " is made otherwise"};
    }
    for (const auto& [key, sql] : wanted) {
        if (!found.contains(key)) return OddTable{key.first, "this " + key.second + " is missing"};
    }
    return std::nullopt;
}

}  // namespace spoilbook
