// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/document.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "model/folder/document_words.h"
#include "model/record/field_text.h"
#include "model/record/kind.h"

namespace spoilbook {

namespace {

std::string type_words(const Field& field) {
    switch (field.type) {
        case FieldType::text:
            return "text";
        case FieldType::number:
            return "number";
        case FieldType::integer:
            return "whole number";
        case FieldType::instant:
            return field.day_allowed ? "time, or a day for its midnight" : "time";
        case FieldType::day:
            return "day";
        case FieldType::choice:
            return fmt::format("one of {}", fmt::join(field.choices, ", "));
        case FieldType::numbers:
            return "numbers, a space between";
        case FieldType::table:
            return "list of lists of numbers";
        case FieldType::json:
            return "see the text";
        case FieldType::reference:
            return fmt::format("a {}", field.refers_to);
    }
    return "";
}

std::string row_of(const Kind& kind, const Field& field) {
    const bool label = !kind.label.empty() && kind.label.front() == field.name && kind.label_required;
    std::string range = range_text(field);
    if (range.empty()) range = field.unit;
    return fmt::format("| {}{} | {} | {} | {}{} |\n", field.name, label ? " (id)" : "", type_words(field),
                       range, field.doc, field.added ? " *(our own, optional)*" : "");
}

/// Fields that follow from where a row stands, and so are not written.
bool is_written(const Kind& kind, const Field& field) {
    if (kind.form == FileForm::geojson) return field.name != "geometry" && field.name != "crs";
    if (kind.name == "bucket") return field.name != "dredger";
    if (kind.name == "condition") return field.name != "consent" && field.name != "body";
    return true;
}

std::string place_of(const Kind& kind) {
    if (kind.name == "bucket") return "plant.json: dredgers[].buckets[]";
    if (kind.name == "condition") return "consents.json: consents[].conditions[]";
    if (kind.name == "track") return "tracks/TRIP.gpx, .nmea or .csv";
    if (kind.name == "logger_file") return "turbidity/SITE.csv";
    if (kind.name == "survey") return "surveys.csv and surveys/";
    if (kind.name == "duty_done") return "duties.csv and evidence/";
    return kind.list.empty() ? kind.file : fmt::format("{}: {}[]", kind.file, kind.list);
}

std::string section(const Kind& kind) {
    std::string text = fmt::format("### {}\n\nOne {}: {}.", place_of(kind), kind.name, kind.doc);
    if (!kind.label_required) text += " Rows need no id; the same row may stand more than once.";
    text += "\n\n";
    const std::string more = kind_words(kind.name);
    if (!more.empty()) text += more + "\n\n";
    if (kind.name == "track" || kind.name == "logger_file") return text;
    text += "| name | what stands there | range, unit | meaning |\n|---|---|---|---|\n";
    for (const Field& field : kind.fields) {
        if (is_written(kind, field)) text += row_of(kind, field);
    }
    for (const auto& [start, end] : kind.ordered)
        text += fmt::format("\n`{}` must not lie before `{}`.\n", end, start);
    return text + "\n";
}

}  // namespace

std::string book_folder_document() {
    std::string text = rules_words();
    for (const Kind& kind : all_kinds())
        text += section(kind);
    return text;
}

}  // namespace spoilbook
