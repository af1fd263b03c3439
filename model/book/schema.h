// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "model/record/kind.h"

namespace spoilbook {

/// In the file's header: this is a book of ours ("SpBk"), in this version of the tables.
constexpr std::int64_t book_application_id = 0x5370426b;
constexpr std::int64_t book_schema_version = 3;

/// Columns of a record table: uuid (the row's id: several kinds have a label of the name id), struck, then
/// the kind's fields in order. Fields come last, so that a field of a later version is appended.
constexpr std::size_t struck_column = 1;
constexpr std::size_t first_field_column = 2;

/// The statement that makes a kind's table: STRICT, the id as its key, every other column nullable, a CHECK
/// for every range and choice (docs/journal.md, "Rules for a record table").
std::string create_table(const Kind& kind);
/// Every statement of an empty book, in order.
std::vector<std::string> create_statements();
/// What makes the tables of `version` those of this program, in order; empty where they are.
std::vector<std::string> upgrade_statements(std::int64_t version);
/// A name between double quotes, for columns such as "from" that are words of SQL.
std::string quoted(const std::string& name);

}  // namespace spoilbook
