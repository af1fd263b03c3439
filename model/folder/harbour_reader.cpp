// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "model/folder/condition_members.h"
#include "model/folder/json_reader.h"
#include "model/folder/json_text.h"
#include "model/folder/member_reader.h"
#include "model/folder/row_check.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

std::optional<Instant> time_in(const nlohmann::json& object, const char* member, const Zone& zone) {
    const auto found = object.find(member);
    if (found == object.end() || !found->is_string()) return std::nullopt;
    const auto at = parse_instant_or_day(found->get<std::string>(), zone);
    // What is no time has been refused by its shape.
    return at ? std::optional(*at) : std::nullopt;
}

void check_order(const nlohmann::json& campaign, const std::string& path, const JsonReading& reading) {
    const auto from = time_in(campaign, "from", reading.zone), to = time_in(campaign, "to", reading.zone);
    if (!from || !to || !(*to < *from)) return;
    reading.refuse("backwards", path, "to lies before from", "correct one of the two");
}

void check_campaigns(const nlohmann::json& harbour, const JsonReading& reading) {
    const auto campaigns = items_of(harbour, "campaigns", "", reading);
    for (std::size_t i = 0; i < campaigns.size(); ++i) {
        const std::string path = item_path("campaigns", i);
        if (campaigns[i]->is_object()) {
            check_object(*campaigns[i], campaign_shape(), path, reading);
            check_order(*campaigns[i], path, reading);
        } else {
            reading.refuse("wrong-type", path, what_it_is(*campaigns[i]) + " stands here",
                           "a campaign is {name, from, to}");
        }
    }
}

}  // namespace

std::optional<Zone> zone_of_harbour(const FolderContents& contents) {
    const GivenTable& table = contents.table("harbour");
    if (table.rows.empty()) return std::nullopt;
    const std::string name = text_of(*table.kind, table.rows.front().values, "zone");
    if (name.empty()) return std::nullopt;
    auto zone = Zone::named(name);
    return zone ? std::optional(*zone) : std::nullopt;
}

void read_harbour(std::string_view bytes, FolderContents& contents, Complaints& complaints) {
    GivenTable& table = contents.table("harbour");
    const auto json = read_json(bytes, table.file, complaints);
    if (!json) return;
    const Zone utc = Zone::utc();
    GivenRow row;
    if (!read_members(*json, *table.kind, {}, {}, {table.file, utc, complaints}, row)) return;
    table.rows.push_back(std::move(row));
    check_rows(table, complaints);

    const std::string name = text_of(*table.kind, table.rows.front().values, "zone");
    const auto zone = zone_of_harbour(contents);
    if (!zone && !name.empty()) {
        complaints.refuse(table.file, {"unknown-zone", table.file + " zone",
                                       fmt::format("\"{}\" is no time zone that this machine knows", name),
                                       "write its IANA name, such as Pacific/Auckland"});
    }
    check_campaigns(*json, {table.file, zone ? *zone : utc, complaints});
}

}  // namespace spoilbook
