// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/schema_check.h"

#include "model/book/inside.h"

namespace spoilbook {

namespace {

std::map<std::string, std::string> statements_of(const Book& book) {
    std::map<std::string, std::string> found;
    SQLite::Statement rows(*book.inside().db, "SELECT name, ifnull(sql, '') FROM sqlite_schema");
    while (rows.executeStep())
        found[rows.getColumn(0).getString()] = rows.getColumn(1).getString();
    return found;
}

}  // namespace

std::optional<std::string> odd_table(const Book& book) {
    const auto wanted = statements_of(Book::in_memory("schema"));
    const auto found = statements_of(book);
    for (const auto& [name, sql] : found) {
        const auto place = wanted.find(name);
        if (place == wanted.end()) return name + " is none of ours";
        if (place->second != sql) return name + " is made otherwise";
    }
    for (const auto& [name, sql] : wanted) {
        if (found.count(name) == 0) return name + " is missing";
    }
    return std::nullopt;
}

}  // namespace spoilbook
