// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/export_rows.h"

#include <fmt/format.h>

#include <algorithm>

#include "model/folder/csv_writer.h"
#include "model/folder/json_text.h"
#include "model/folder/pretty_json.h"
#include "model/folder/references.h"
#include "model/record/field_text.h"

namespace spoilbook {

namespace {

using nlohmann::ordered_json;

/// What follows from the file itself is not written beside it.
bool is_left_out(const Kind& kind, const Field& field) {
    return kind.name == "survey" && field.name == "digest";
}

bool is_used(const std::vector<Row>& rows, std::size_t field) {
    return std::any_of(rows.begin(), rows.end(),
                       [&](const Row& row) { return !is_blank(row.values[field]); });
}

}  // namespace

std::string Exporting::label(const Kind& kind, const Row& row) const {
    return kind.label.empty() ? "" : text_of(kind, row.values, kind.label.front());
}

std::string Exporting::text(const Kind& kind, const Row& row, const Field& field) const {
    const Value& value = value_of(kind, row.values, field.name);
    if (field.type != FieldType::reference || is_blank(value)) return field_text(field, value, zone);
    auto reference = reference_text(board, kind, row.values, field);
    if (reference) return *reference;
    notes.push_back({kind.file, fmt::format("{} {}: the {} it refers to is struck out: left blank", kind.name,
                                            label(kind, row), field.name)});
    return "";
}

ordered_json Exporting::json(const Kind& kind, const Row& row, const Field& field) const {
    const Value& value = value_of(kind, row.values, field.name);
    if (is_blank(value)) return nullptr;
    if (const auto* number = std::get_if<double>(&value)) return ordered(canonical(nlohmann::json(*number)));
    if (const auto* whole = std::get_if<std::int64_t>(&value);
        whole != nullptr && field.type == FieldType::integer)
        return *whole;
    if (field.type == FieldType::json || field.type == FieldType::table)
        return ordered(canonical(nlohmann::json::parse(std::get<std::string>(value))));
    const std::string written = text(kind, row, field);
    return written.empty() ? ordered_json(nullptr) : ordered_json(written);
}

ordered_json Exporting::members(const Kind& kind, const Row& row,
                                std::initializer_list<std::string_view> but) const {
    ordered_json object = ordered_json::object();
    for (const Field& field : kind.fields) {
        if (std::find(but.begin(), but.end(), field.name) != but.end()) continue;
        ordered_json value = json(kind, row, field);
        if (!value.is_null()) object[field.name] = std::move(value);
    }
    return object;
}

const std::vector<Row>& Exporting::held(std::string_view kind) const {
    return board.shelf(kind).held();
}

std::string csv_file(const Exporting& exporting, const Kind& kind) {
    const auto& rows = exporting.held(kind.name);
    std::string text;
    if (rows.empty()) return text;
    std::vector<std::size_t> columns;
    std::vector<std::string> fields;
    for (std::size_t i = 0; i < kind.fields.size(); ++i) {
        const Field& field = kind.fields[i];
        if (is_left_out(kind, field) || (field.added && !is_used(rows, i))) continue;
        columns.push_back(i);
        fields.push_back(field.name);
    }
    append_csv_row(text, fields);
    for (const Row& row : rows) {
        fields.clear();
        for (const std::size_t column : columns)
            fields.push_back(exporting.text(kind, row, kind.fields[column]));
        append_csv_row(text, fields);
    }
    exporting.rows[kind.name] = rows.size();
    return text;
}

}  // namespace spoilbook
