// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "model/folder/condition_members.h"
#include "model/folder/condition_reader.h"
#include "model/folder/json_reader.h"
#include "model/folder/json_text.h"
#include "model/folder/member_reader.h"
#include "model/folder/row_check.h"
#include "model/folder/text_shape.h"

namespace spoilbook {

namespace {

using nlohmann::json;

class ConsentReading {
 public:
    ConsentReading(FolderContents& contents, const JsonReading& reading)
        : contents_(contents), reading_(reading) {}

    void read(const json& file) {
        if (!file.is_object()) {
            return reading_.refuse("wrong-shape", "", what_it_is(file) + " stands here",
                                   "the file is an object with a list of consents");
        }
        refuse_unknown(file, {"consents"}, "", reading_);
        const auto consents = items_of(file, "consents", "", reading_);
        for (std::size_t i = 0; i < consents.size(); ++i)
            read_consent(*consents[i], item_path("consents", i));
        check_rows(contents_.table("consent"), reading_.complaints);
        check_rows(contents_.table("condition"), reading_.complaints);
    }

 private:
    void read_consent(const json& consent, std::string path) {
        GivenTable& table = contents_.table("consent");
        GivenRow row;
        row.path = std::move(path);
        if (!read_members(consent, *table.kind, {}, {"conditions"}, reading_, row)) return;
        check_year_starts(text_of(*table.kind, row.values, "year_starts"), row.path);
        check_not_working(consent, row.path);
        const Value& name = value_of(*table.kind, row.values, "consent");
        const auto conditions = items_of(consent, "conditions", row.path, reading_);
        for (std::size_t i = 0; i < conditions.size(); ++i)
            read_condition(*conditions[i], name, item_path(member_path(row.path, "conditions"), i));
        table.rows.push_back(std::move(row));
    }

    void check_year_starts(const std::string& text, const std::string& path) const {
        if (text.empty() || is_month_day(text)) return;
        reading_.refuse("not-a-time", member_path(path, "year_starts"),
                        fmt::format("\"{}\" is not MM-DD", text), "write a month and a day such as 07-01");
    }

    void check_not_working(const json& consent, const std::string& path) const {
        const auto found = consent.find("not_working");
        if (found == consent.end() || found->is_null()) return;
        const std::string at = member_path(path, "not_working");
        if (found->is_object()) return check_object(*found, not_working_shape(), at, reading_);
        reading_.refuse("wrong-type", at, what_it_is(*found) + " stands here",
                        "it is {weekends, dates[], yearly[]}");
    }

    /// The fields of a condition; whatever else stands there goes by its kind, into the body.
    void read_condition(const json& condition, const Value& consent, std::string path) {
        GivenTable& table = contents_.table("condition");
        GivenRow row;
        row.path = std::move(path);
        if (!condition.is_object()) {
            return reading_.refuse("wrong-shape", row.path, what_it_is(condition) + " stands here",
                                   "a condition is an object");
        }
        read_condition_members(condition, *table.kind, reading_, row);
        row.values[*table.kind->index_of("consent")] = consent;
        table.rows.push_back(std::move(row));
    }

    FolderContents& contents_;
    const JsonReading& reading_;
};

}  // namespace

void read_consents(std::string_view bytes, const Zone& zone, FolderContents& contents,
                   Complaints& complaints) {
    const std::string file = contents.table("consent").file;
    const auto json = read_json(bytes, file, complaints);
    if (json) ConsentReading(contents, {file, zone, complaints}).read(*json);
}

}  // namespace spoilbook
