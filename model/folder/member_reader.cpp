// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/member_reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "model/folder/json_text.h"
#include "model/folder/nearest.h"
#include "model/record/field_text.h"
#include "model/record/reading.h"
#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

using nlohmann::json;

bool holds(std::initializer_list<std::string_view> names, std::string_view name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

std::string wanted(const Field& field) {
    switch (field.type) {
        case FieldType::number:
        case FieldType::integer:
            return "a number";
        case FieldType::numbers:
            return "a list of numbers";
        case FieldType::table:
            return "a list of lists of numbers";
        default:
            return "a text";
    }
}

/// The text that parse_field would be given, had it stood in a CSV file; nothing for a wrong type.
std::optional<std::string> as_text(const json& value, const Field& field) {
    switch (field.type) {
        case FieldType::number:
        case FieldType::integer:
            if (!value.is_number()) return std::nullopt;
            return value.is_number_float() ? number_text(value.get<double>()) : value.dump();
        case FieldType::numbers: {
            if (!value.is_array()) return std::nullopt;
            std::vector<double> numbers;
            for (const auto& number : value) {
                if (!number.is_number()) return std::nullopt;
                numbers.push_back(number.get<double>());
            }
            return numbers_text(numbers);
        }
        case FieldType::table:
            return parse_table(value.dump()) ? std::optional(value.dump()) : std::nullopt;
        default:
            if (!value.is_string()) return std::nullopt;
            return value.get<std::string>();
    }
}

}  // namespace

void JsonReading::refuse(std::string code, const std::string& path, std::string what,
                         std::string mend) const {
    complaints.refuse(file, {std::move(code), path.empty() ? file : fmt::format("{} {}", file, path),
                             std::move(what), std::move(mend)});
}

Value read_member(const json& value, const Field& field, const std::string& path,
                  const JsonReading& reading) {
    if (value.is_null()) return {};
    if (field.type == FieldType::json) return Value{canonical(value).dump()};
    const auto text = as_text(value, field);
    if (!text) {
        reading.refuse("wrong-type", path, fmt::format("{} stands here", what_it_is(value)),
                       fmt::format("{} is {}", field.name, wanted(field)));
        return {};
    }
    auto parsed = parse_field(field, *text, reading.zone);
    if (parsed) return std::move(*parsed);
    for (const Refusal& refusal : parsed.refusals())
        reading.refuse(refusal.code, path, refusal.what, refusal.mend);
    return {};
}

bool read_members(const json& object, const Kind& kind, std::initializer_list<std::string_view> elsewhere,
                  std::initializer_list<std::string_view> nested, const JsonReading& reading, GivenRow& row) {
    row.values.resize(kind.fields.size());
    if (!object.is_object()) {
        reading.refuse("wrong-shape", row.path, fmt::format("{} stands here", what_it_is(object)),
                       fmt::format("a {} is an object", kind.name));
        return false;
    }
    std::vector<std::string> known;
    for (std::size_t i = 0; i < kind.fields.size(); ++i) {
        const Field& field = kind.fields[i];
        if (holds(elsewhere, field.name)) continue;
        known.push_back(field.name);
        const auto found = object.find(field.name);
        if (found != object.end())
            row.values[i] = read_member(*found, field, member_path(row.path, field.name), reading);
    }
    known.insert(known.end(), nested.begin(), nested.end());
    refuse_unknown(object, known, row.path, reading);
    return true;
}

std::vector<const json*> items_of(const json& object, std::string_view member, const std::string& path,
                                  const JsonReading& reading) {
    std::vector<const json*> items;
    const auto found = object.is_object() ? object.find(member) : object.end();
    if (!object.is_object() || found == object.end() || found->is_null()) return items;
    if (!found->is_array()) {
        reading.refuse("wrong-shape", member_path(path, member),
                       fmt::format("{} stands here", what_it_is(*found)),
                       fmt::format("{} is a list", member));
        return items;
    }
    for (const auto& item : *found)
        items.push_back(&item);
    return items;
}

void refuse_unknown(const json& object, const std::vector<std::string>& known, const std::string& path,
                    const JsonReading& reading) {
    for (const auto& [name, value] : object.items()) {
        if (std::find(known.begin(), known.end(), name) != known.end()) continue;
        // A misspelt list at the top of a file takes all its rows along.
        if (path.empty()) reading.complaints.lose_rows(reading.file);
        reading.refuse("unknown-member", member_path(path, name),
                       fmt::format("\"{}\" is not a member here", name),
                       reading.complaints.full(reading.file) ? "" : did_you_mean(name, known));
    }
}

}  // namespace spoilbook
