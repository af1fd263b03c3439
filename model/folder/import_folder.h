// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>

#include "model/book/book.h"
#include "model/folder/match_board.h"
#include "model/folder/read_folder.h"
#include "model/unit/checked.h"

namespace spoilbook {

/// What an import did.
struct ImportOutcome {
    std::map<std::string, std::size_t> added;         ///< rows by kind, kinds without any left out
    std::map<std::string, std::size_t> already_held;  ///< likewise
    Notes notes;                                      ///< one line each on standard error
    std::optional<EntryName> entry;                   ///< of the journal; the last, where it took several

    [[nodiscard]] std::size_t added_in_all() const;
    [[nodiscard]] std::size_t already_held_in_all() const;
};

/// A folder that was checked beside a book and may land there as it is.
struct ImportPlan {
    MatchBoard board;
    Notes notes;
};

/// What a book says of itself to a folder that brings no harbour.json; nothing while the book is empty.
std::optional<FolderBasis> basis_of(const Book& book);

/// Checks a folder beside a book (null: beside a new one): all reasons at once, those of reading it included.
/// Writes nothing.
Checked<ImportPlan> plan_import(FolderContents contents, const Book* book);

/// Lands a plan as one change of kind import: whole, or not at all. The book must be as it was when the plan
/// was made. Refused where a file is no longer what it was when it was checked.
Checked<ImportOutcome> land(Book& book, const ImportPlan& plan, const Act& act);

/// All three in one: `sbk add --from`, and `sbk new --from` with the book just made. To make no book at all
/// where the folder is refused, call read_folder and plan_import before Book::create. With a reason
/// (`act.why`) a track in the folder takes the place of another that its trip has, which is struck out and
/// noted.
Checked<ImportOutcome> import_folder(Book& book, const std::string& folder, const Act& act);

}  // namespace spoilbook
