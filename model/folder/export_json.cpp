// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "model/folder/export_rows.h"
#include "model/folder/pretty_json.h"

namespace spoilbook {

namespace {

using nlohmann::ordered_json;

/// The rows that belong to `parent`, in their order.
std::vector<const Row*> rows_of(const Exporting& exporting, const Kind& kind, const std::string& field,
                                const Id& parent) {
    std::vector<const Row*> found;
    for (const Row& row : exporting.held(kind.name)) {
        if (MatchBoard::reference(kind, row.values, field) == parent) found.push_back(&row);
    }
    return found;
}

/// Rows whose parent is struck out have no place in a nested file.
void note_orphans(const Exporting& exporting, const Kind& kind, std::size_t written) {
    const std::size_t all = exporting.held(kind.name).size();
    if (written > 0) exporting.rows[kind.name] = written;
    if (written < all)
        exporting.notes.push_back(
            {kind.file, fmt::format("{} {} rows belong to nothing: left out", all - written, kind.name)});
}

ordered_json plain_list(const Exporting& exporting, const Kind& kind) {
    ordered_json list = ordered_json::array();
    for (const Row& row : exporting.held(kind.name))
        list.push_back(exporting.members(kind, row, {}));
    if (!list.empty()) exporting.rows[kind.name] = list.size();
    return list;
}

ordered_json condition_json(const Exporting& exporting, const Row& row) {
    const Kind& condition = kind("condition");
    ordered_json object = exporting.members(condition, row, {"consent", "body"});
    const std::string body = text_of(condition, row.values, "body");
    if (body.empty()) return object;
    const ordered_json members = ordered(nlohmann::json::parse(body));
    if (!members.is_object()) return object;
    for (const auto& [name, value] : members.items())
        object[name] = value;
    return object;
}

}  // namespace

std::string harbour_file(const Exporting& exporting) {
    const Kind& harbour = kind("harbour");
    const auto& rows = exporting.held("harbour");
    if (rows.empty()) return "";
    exporting.rows["harbour"] = 1;
    return pretty_json(exporting.members(harbour, rows.front(), {}));
}

std::string plant_file(const Exporting& exporting) {
    const Kind& dredger = kind("dredger");
    const Kind& bucket = kind("bucket");
    ordered_json plant = ordered_json::object();
    plant["dredgers"] = ordered_json::array();
    std::size_t buckets = 0;
    for (const Row& row : exporting.held("dredger")) {
        ordered_json object = exporting.members(dredger, row, {});
        object["buckets"] = ordered_json::array();
        for (const Row* own : rows_of(exporting, bucket, "dredger", row.id)) {
            object["buckets"].push_back(exporting.members(bucket, *own, {"dredger"}));
            ++buckets;
        }
        plant["dredgers"].push_back(std::move(object));
    }
    if (!plant["dredgers"].empty()) exporting.rows["dredger"] = plant["dredgers"].size();
    note_orphans(exporting, bucket, buckets);
    plant["tugs"] = plain_list(exporting, kind("tug"));
    plant["barges"] = plain_list(exporting, kind("barge"));
    const bool empty = plant["dredgers"].empty() && plant["tugs"].empty() && plant["barges"].empty();
    return empty ? "" : pretty_json(plant);
}

std::string consents_file(const Exporting& exporting) {
    const Kind& consent = kind("consent");
    ordered_json list = ordered_json::array();
    std::size_t conditions = 0;
    for (const Row& row : exporting.held("consent")) {
        ordered_json object = exporting.members(consent, row, {});
        object["conditions"] = ordered_json::array();
        for (const Row* own : rows_of(exporting, kind("condition"), "consent", row.id)) {
            object["conditions"].push_back(condition_json(exporting, *own));
            ++conditions;
        }
        list.push_back(std::move(object));
    }
    note_orphans(exporting, kind("condition"), conditions);
    if (list.empty()) return "";
    exporting.rows["consent"] = list.size();
    ordered_json file = ordered_json::object();
    file["consents"] = std::move(list);
    return pretty_json(file);
}

}  // namespace spoilbook
