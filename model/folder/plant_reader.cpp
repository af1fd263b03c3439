// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "model/folder/json_reader.h"
#include "model/folder/json_text.h"
#include "model/folder/member_reader.h"
#include "model/folder/row_check.h"
#include "model/record/reading.h"
#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

using nlohmann::json;

struct Column {
    const char* name;
    double low, high;
};

/// A table of a record: what its columns are, and how many a row must have.
struct TableShape {
    const char* field;
    std::vector<Column> columns;
    std::size_t needed;
};

const TableShape reach{"reach_table", {{"depth", -20, 100}, {"reach", 0, 100}}, 2};
const TableShape ullage{"ullage_table", {{"ullage", 0, 50}, {"hopper volume", 0, 20000}}, 2};
const TableShape hydrostatic{"hydrostatic_table",
                             {{"draught", 0, 30},
                              {"displacement", 0, 200000},
                              {"TPC", 0, 1000},
                              {"LCF", -300, 300},
                              {"MCTC", 0, 100000}},
                             2};

void check_table_row(const std::vector<double>& row, const TableShape& shape, const std::string& path,
                     const JsonReading& reading) {
    if (row.size() < shape.needed || row.size() > shape.columns.size()) {
        reading.refuse(
            "not-a-table", path, fmt::format("a row of {} numbers", row.size()),
            fmt::format("a row of {} has {} to {}", shape.field, shape.needed, shape.columns.size()));
        return;
    }
    for (std::size_t i = 0; i < row.size(); ++i) {
        const Column& column = shape.columns[i];
        if (row[i] >= column.low && row[i] <= column.high) continue;
        reading.refuse("out-of-range", path,
                       fmt::format("{} is outside the range of {}", number_text(row[i]), column.name),
                       fmt::format("it must be {} to {}", number_text(column.low), number_text(column.high)));
    }
}

void check_table(const GivenTable& table, const GivenRow& row, const TableShape& shape,
                 const JsonReading& reading) {
    const auto rows = parse_table(text_of(*table.kind, row.values, shape.field));
    if (!rows) return;
    const std::string path = member_path(row.path, shape.field);
    bool rises = true;
    bool falls = true;
    for (std::size_t i = 0; i < rows->size(); ++i) {
        check_table_row((*rows)[i], shape, item_path(path, i), reading);
        if (i == 0 || (*rows)[i].empty() || (*rows)[i - 1].empty()) continue;
        rises = rises && (*rows)[i - 1][0] < (*rows)[i][0];
        falls = falls && (*rows)[i - 1][0] > (*rows)[i][0];
    }
    if (!rises && !falls) {
        reading.complaints.note(fmt::format("{} {}", table.file, path),
                                fmt::format("the rows do not run one way in {}", shape.columns[0].name));
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
        for (const TableShape& shape : {reach, ullage, hydrostatic})
            check_table(table, row, shape, reading_);
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
