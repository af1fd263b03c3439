// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/condition_reader.h"

#include "model/folder/condition_members.h"
#include "model/folder/json_text.h"
#include "model/folder/pretty_json.h"
#include "model/folder/row_check.h"
#include "model/record/field_text.h"

namespace spoilbook {

namespace {

using nlohmann::json;

void check_body(const json& condition, const json& body, const Kind& kind, const GivenRow& row,
                const JsonReading& reading) {
    const std::string name = text_of(kind, row.values, "kind");
    if (!name.empty()) return check_condition(body, name, row.path, reading);
    if (const auto given = condition.find("kind"); given != condition.end() && !given->is_null()) return;
    reading.refuse("missing-member", member_path(row.path, "kind"), "a condition without a kind",
                   "say its kind");
}

}  // namespace

void read_condition_members(const json& condition, const Kind& kind, const JsonReading& reading,
                            GivenRow& row) {
    row.values.resize(kind.fields.size());
    json body = json::object();
    for (const auto& [name, value] : condition.items()) {
        const auto index = kind.index_of(name);
        if (!index || name == "body" || name == "consent") {
            body[name] = value;
            continue;
        }
        row.values[*index] = read_member(value, kind.fields[*index], member_path(row.path, name), reading);
    }
    check_body(condition, body, kind, row, reading);
    body = canonical(body);
    if (!body.empty()) row.values[*kind.index_of("body")] = body.dump();
}

Checked<Condition> condition_from(const json& condition, const std::string& file, const Zone& zone) {
    const auto& description = definition<Condition>();
    Complaints complaints;
    const JsonReading reading{file, zone, complaints};
    if (!condition.is_object()) {
        reading.refuse("wrong-shape", "", what_it_is(condition) + " stands here", "a condition is an object");
        return complaints.refusals();
    }
    GivenTable table{&description.kind(), file, {}};
    GivenRow row;
    read_condition_members(condition, *table.kind, reading, row);
    check_row(table, row, complaints);
    if (complaints.any()) return complaints.refusals();
    return description.read(Row{Id{}, std::move(row.values)});
}

Checked<Condition> condition_from_text(std::string_view bytes, const std::string& file, const Zone& zone) {
    Complaints complaints;
    const auto members = read_json(bytes, file, complaints);
    if (!members) return complaints.refusals();
    return condition_from(*members, file, zone);
}

nlohmann::ordered_json condition_as_json(const Condition& condition, const Zone& zone) {
    const Kind& kind = definition<Condition>().kind();
    nlohmann::ordered_json object = nlohmann::ordered_json::object();
    const auto put = [&](const char* name, const Value& value) {
        if (!is_blank(value)) object[name] = field_text(kind.field(name), value, zone);
    };
    const auto text = [](const std::string& words) { return words.empty() ? Value() : Value(words); };
    const auto time = [](const std::optional<Instant>& at) { return at ? Value(at->utc_ms) : Value(); };
    put("condition", text(condition.condition));
    put("from", time(condition.from));
    put("to", time(condition.to));
    put("text", text(condition.text));
    put("wording", text(condition.wording));
    put("kind", text(condition.kind));
    const json body = json::parse(condition.body.empty() ? "{}" : condition.body, nullptr, false);
    if (!body.is_object()) return object;
    const auto members = ordered(body);
    for (const auto& [name, value] : members.items())
        object[name] = value;
    return object;
}

}  // namespace spoilbook
