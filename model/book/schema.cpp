// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/schema.h"

#include <fmt/format.h>

#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

std::string column_type(FieldType type) {
    switch (type) {
        case FieldType::number:
            return "REAL";
        case FieldType::integer:
        case FieldType::instant:
            return "INTEGER";
        case FieldType::reference:
            return "BLOB";
        default:
            return "TEXT";
    }
}

std::string column(const Field& field) {
    std::string sql = quoted(field.name) + " " + column_type(field.type);
    if (field.type == FieldType::reference) {
        // Deferred, so that a changeset may bring parent and child in either order.
        sql += fmt::format(" REFERENCES {}(uuid) DEFERRABLE INITIALLY DEFERRED", quoted(field.refers_to));
    }
    const bool single = field.type == FieldType::number || field.type == FieldType::integer;
    if (single && field.bounded) {
        sql += fmt::format(" CHECK ({} BETWEEN {} AND {})", quoted(field.name), number_text(field.low),
                           number_text(field.high));
    }
    if (field.type == FieldType::choice) {
        std::string list;
        for (const auto& choice : field.choices)
            list += (list.empty() ? "'" : ", '") + choice + "'";
        sql += fmt::format(" CHECK ({} IN ({}))", quoted(field.name), list);
    }
    return sql;
}

/// Labels are looked up at each logged row, references at each figure of a load or a shift.
void add_index(const Kind& kind, const Field& field, std::vector<std::string>& statements) {
    const bool label = !kind.label.empty() && field.name == kind.label.front();
    if (!label && field.type != FieldType::reference) return;
    statements.push_back(
        fmt::format("CREATE INDEX \"{0}_by_{1}\" ON \"{0}\" (\"{1}\")", kind.name, field.name));
}

void add_kind(const Kind& kind, std::vector<std::string>& statements) {
    statements.push_back(create_table(kind));
    for (const auto& field : kind.fields)
        add_index(kind, field, statements);
}

const char* journal_table =
    "CREATE TABLE journal (device TEXT NOT NULL, seq INTEGER NOT NULL, at INTEGER NOT NULL, "
    "stamp_ms INTEGER NOT NULL, stamp_count INTEGER NOT NULL, who TEXT NOT NULL, why TEXT NOT NULL, "
    "kind TEXT NOT NULL, takes_back INTEGER NOT NULL, schema INTEGER NOT NULL, changeset BLOB NOT NULL, "
    "materials TEXT NOT NULL, seen TEXT NOT NULL, prev BLOB NOT NULL, hash BLOB NOT NULL, "
    "PRIMARY KEY (device, seq)) STRICT";

const char* entry_row_table =
    "CREATE TABLE entry_row (uuid BLOB NOT NULL, device TEXT NOT NULL, seq INTEGER NOT NULL, "
    "PRIMARY KEY (uuid, device, seq)) STRICT, WITHOUT ROWID";

const char* stored_file_table =
    "CREATE TABLE stored_file (digest TEXT NOT NULL PRIMARY KEY, bytes INTEGER NOT NULL, "
    "chunks INTEGER NOT NULL) STRICT";

const char* stored_chunk_table =
    "CREATE TABLE stored_chunk (digest TEXT NOT NULL REFERENCES stored_file(digest), n INTEGER NOT NULL, "
    "packed BLOB NOT NULL, PRIMARY KEY (digest, n)) STRICT";

}  // namespace

std::string quoted(const std::string& name) {
    return "\"" + name + "\"";
}

std::string create_table(const Kind& kind) {
    std::string sql = "CREATE TABLE " + quoted(kind.name) +
                      " (uuid BLOB NOT NULL PRIMARY KEY, struck INTEGER CHECK (struck = 1)";
    for (const auto& field : kind.fields)
        sql += ", " + column(field);
    return sql + ") STRICT";
}

std::vector<std::string> create_statements() {
    std::vector<std::string> statements;
    for (const auto& kind : all_kinds())
        add_kind(kind, statements);
    // Which signed shift a load belongs to is asked at each change of the load.
    statements.emplace_back("CREATE INDEX shift_by_end ON shift (\"end\")");
    statements.emplace_back(journal_table);
    statements.emplace_back("CREATE INDEX journal_by_stamp ON journal (stamp_ms, stamp_count, device)");
    statements.emplace_back(entry_row_table);
    statements.emplace_back(stored_file_table);
    statements.emplace_back(stored_chunk_table);
    return statements;
}

std::vector<std::string> upgrade_statements(std::int64_t version) {
    std::vector<std::string> statements;
    for (const auto& kind : all_kinds()) {
        if (kind.since > version) {
            add_kind(kind, statements);
            continue;
        }
        for (const auto& field : kind.fields) {
            if (field.since <= version) continue;
            statements.push_back("ALTER TABLE " + quoted(kind.name) + " ADD COLUMN " + column(field));
            add_index(kind, field, statements);
        }
    }
    return statements;
}

}  // namespace spoilbook
