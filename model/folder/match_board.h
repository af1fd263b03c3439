// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <set>
#include <string>
#include <vector>

#include "model/book/book.h"
#include "model/folder/complaints.h"
#include "model/folder/given.h"
#include "model/folder/kind_shelf.h"

namespace spoilbook {

/// A folder laid beside a book: one shelf a kind, in the order of all_kinds(), and for each row of the folder
/// what it is in the book.
struct MatchBoard {
    FolderContents contents;  ///< references become ids as they are resolved
    const Book* book = nullptr;
    Complaints complaints;
    std::vector<KindShelf> shelves;
    /// Of each row of each table: the book's id where it is already held, else its planned id.
    std::vector<std::vector<Id>> ids;
    /// Names in conditions that were noted as unknown already.
    std::set<std::string> noted_names;

    MatchBoard(FolderContents folder, const Book* beside);

    [[nodiscard]] std::size_t table_of(std::string_view kind) const;
    [[nodiscard]] KindShelf& shelf(std::string_view kind) { return shelves[table_of(kind)]; }
    /// The values of a row of the book or of the folder; null for a nil or unknown id.
    [[nodiscard]] const std::vector<Value>* values(std::string_view kind, const Id& id) const;
    /// A reference of a row; nil where it is blank.
    [[nodiscard]] static Id reference(const Kind& kind, const std::vector<Value>& values,
                                      std::string_view field);
    /// A row's label for people; empty where it has none.
    [[nodiscard]] std::string label(std::string_view kind, const Id& id) const;
    /// A value for people: a reference as its label, "nothing" where it is blank.
    [[nodiscard]] std::string shown(const Field& field, const Value& value) const;
    [[nodiscard]] bool is_fresh(std::size_t table, std::size_t row) const;
};

}  // namespace spoilbook
