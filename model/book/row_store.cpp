// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/row_store.h"

#include <algorithm>

#include "model/book/book_error.h"
#include "model/book/schema.h"

namespace spoilbook {

namespace {

std::string column_list(const Kind& kind) {
    std::string list = "uuid, struck";
    for (const auto& field : kind.fields)
        list += ", " + quoted(field.name);
    return list;
}

Value value_from(const SQLite::Column& column) {
    const int type = column.getType();  // each question takes SQLite's lock: asked once
    if (type == SQLite::Null) return {};
    if (type == SQLite::INTEGER) return column.getInt64();
    if (type == SQLite::FLOAT) return column.getDouble();
    if (type == SQLite::BLOB) return id_from(column);
    return column.getString();
}

}  // namespace

std::string select_sql(const Kind& kind, const std::string& where) {
    return "SELECT " + column_list(kind) + " FROM " + quoted(kind.name) + " " + where;
}

Id id_from(const SQLite::Column& column) {
    if (column.getBytes() != 16) throw BookError("the book holds an id that is not 16 bytes long");
    Id id;
    const auto* bytes = static_cast<const std::uint8_t*>(column.getBlob());
    std::copy(bytes, bytes + 16, id.bytes.begin());
    return id;
}

Row row_from(SQLite::Statement& statement, const Kind& kind) {
    Row row;
    row.id = id_from(statement.getColumn(0));
    row.values.reserve(kind.fields.size());
    for (std::size_t i = 0; i < kind.fields.size(); ++i) {
        row.values.push_back(value_from(statement.getColumn(static_cast<int>(first_field_column + i))));
    }
    row.struck = !statement.getColumn(static_cast<int>(struck_column)).isNull();
    return row;
}

void bind_id(SQLite::Statement& statement, int place, const Id& id) {
    statement.bind(place, id.bytes.data(), static_cast<int>(id.bytes.size()));
}

void bind_value(SQLite::Statement& statement, int place, const Value& value) {
    if (const auto* whole = std::get_if<std::int64_t>(&value)) {
        statement.bind(place, *whole);
    } else if (const auto* number = std::get_if<double>(&value)) {
        statement.bind(place, *number);
    } else if (const auto* text = std::get_if<std::string>(&value)) {
        statement.bind(place, *text);
    } else if (const auto* id = std::get_if<Id>(&value)) {
        bind_id(statement, place, *id);
    } else {
        statement.bind(place);
    }
}

std::string insert_sql(const Kind& kind) {
    std::string marks = "?";
    for (std::size_t i = 0; i <= kind.fields.size(); ++i)
        marks += ", ?";
    return "INSERT INTO " + quoted(kind.name) + " (" + column_list(kind) + ") VALUES (" + marks + ")";
}

}  // namespace spoilbook
