// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include "model/record/kind.h"

namespace spoilbook {

/// Rows ↔ SQL for any kind, from its description. `struck` is the last column.
std::string select_sql(const Kind& kind, const std::string& where);
/// The row that a statement made by select_sql stands on.
Row row_from(SQLite::Statement& statement, const Kind& kind);
void bind_value(SQLite::Statement& statement, int place, const Value& value);
void bind_id(SQLite::Statement& statement, int place, const Id& id);
/// The 16 bytes of a BLOB column as an id; throws BookError for any other length.
Id id_from(const SQLite::Column& column);

std::string insert_sql(const Kind& kind);

}  // namespace spoilbook
