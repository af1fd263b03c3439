// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "model/record/kind.h"

namespace spoilbook {

/// In the file's header: this is a book of ours ("SpBk"), in this version of the tables.
constexpr std::int64_t book_application_id = 0x5370426b;
constexpr std::int64_t book_schema_version = 1;

/// The statement that makes a kind's table: STRICT, the row's id as its key (in the column uuid: several
/// kinds have a label of the name id), every other column nullable, a CHECK for every range and choice
/// (docs/journal.md, "Rules for a record table").
std::string create_table(const Kind& kind);
/// Every statement of an empty book, in order.
std::vector<std::string> create_statements();
/// A name between double quotes, for columns such as "from" that are words of SQL.
std::string quoted(const std::string& name);

}  // namespace spoilbook
