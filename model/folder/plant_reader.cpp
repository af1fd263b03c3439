// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "model/folder/json_reader.h"
#include "model/folder/json_text.h"
#include "model/folder/member_reader.h"
#include "model/folder/row_check.h"
#include "model/record/table_check.h"

namespace spoilbook {

namespace {

using nlohmann::json;

void check_table_of(const GivenTable& table, const GivenRow& row, const std::string& field,
                    const JsonReading& reading) {
    const auto rows = parse_table(text_of(*table.kind, row.values, field));
    if (!rows) return;
    const std::string path = member_path(row.path, field);
    for (const TableFinding& finding : check_table(field, *rows)) {
        const std::string place = finding.row ? item_path(path, *finding.row) : path;
        if (finding.grade == TableGrade::impossible)
            reading.refuse(finding.code, place, finding.what, finding.mend);
        else
            reading.complaints.note(fmt::format("{} {}", table.file, place), finding.what);
    }
}

class PlantReading {
 public:
    PlantReading(FolderContents& contents, const JsonReading& reading)
        : contents_(contents), reading_(reading) {}

    void read(const json& plant) {
        if (!plant.is_object()) {
            return reading_.refuse("wrong-shape", "", what_it_is(plant) + " stands here",
                                   "the file is an object of dredgers, tugs and barges");
        }
        refuse_unknown(plant, {"dredgers", "tugs", "barges"}, "", reading_);
        read_list(plant, "dredgers", "dredger");
        read_list(plant, "tugs", "tug");
        read_list(plant, "barges", "barge");
        for (const char* kind : {"dredger", "bucket", "tug", "barge"})
            check_rows(contents_.table(kind), reading_.complaints);
    }

 private:
    void read_list(const json& plant, const char* member, const char* kind) {
        const auto items = items_of(plant, member, "", reading_);
        for (std::size_t i = 0; i < items.size(); ++i)
            read_item(*items[i], contents_.table(kind), item_path(member, i));
    }

    void read_item(const json& item, GivenTable& table, std::string path) {
        GivenRow row;
        row.path = std::move(path);
        const bool dredger = table.kind->name == "dredger";
        const bool read = dredger ? read_members(item, *table.kind, {}, {"buckets"}, reading_, row)
                                  : read_members(item, *table.kind, {}, {}, reading_, row);
        if (!read) return;
        for (const char* field : {"reach_table", "ullage_table", "hydrostatic_table"})
            check_table_of(table, row, field, reading_);
        if (dredger) read_buckets(item, row.values[*table.kind->index_of("name")], row.path);
        table.rows.push_back(std::move(row));
    }

    void read_buckets(const json& dredger, const Value& name, const std::string& path) {
        GivenTable& table = contents_.table("bucket");
        const auto buckets = items_of(dredger, "buckets", path, reading_);
        for (std::size_t i = 0; i < buckets.size(); ++i) {
            GivenRow row;
            row.path = item_path(member_path(path, "buckets"), i);
            if (!read_members(*buckets[i], *table.kind, {"dredger"}, {}, reading_, row)) continue;
            row.values[*table.kind->index_of("dredger")] = name;
            table.rows.push_back(std::move(row));
        }
    }

    FolderContents& contents_;
    const JsonReading& reading_;
};

}  // namespace

void read_plant(std::string_view bytes, const Zone& zone, FolderContents& contents, Complaints& complaints) {
    const std::string file = contents.table("dredger").file;
    const auto json = read_json(bytes, file, complaints);
    if (json) PlantReading(contents, {file, zone, complaints}).read(*json);
}

}  // namespace spoilbook
