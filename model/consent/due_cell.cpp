// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/due_cell.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <tuple>

#include "model/consent/kind_checks.h"
#include "model/consent/surface_rule.h"

namespace spoilbook {

void CellRooms::add(const std::vector<MemberRoom>& rooms) {
    for (const auto& room : rooms) {
        const auto [place, is_first] = rooms_.try_emplace(room.member, room);
        if (is_first) continue;
        MemberRoom& tightest = place->second;
        tightest.share = std::max(tightest.share, room.share);
        tightest.has_room = tightest.has_room && room.has_room;
        tightest.known = tightest.known && room.known;
    }
}

std::vector<Id> CellRooms::open(const Season& season, const Id& ground) const {
    std::vector<Id> cells;
    for (const auto& cell : season.cells.rows()) {
        const auto room = rooms_.find(cell.id);
        const bool is_there = !ground || cell.ground == ground;
        if (is_there && room != rooms_.end() && room->second.has_room && !closed_.contains(cell.id))
            cells.push_back(cell.id);
    }
    return cells;
}

std::string CellRooms::due(const Season& season, const Id& ground) const {
    const auto cells = open(season, ground);
    const auto first = std::min_element(cells.begin(), cells.end(), [&](const Id& a, const Id& b) {
        const auto rank = [&](const Id& cell) {
            const auto& room = rooms_.at(cell);
            return std::tuple(!room.known, room.share);
        };
        return rank(a) < rank(b);
    });
    return first == cells.end() ? "" : rooms_.at(*first).name;
}

bool tells_cells_apart(const Condition& condition, const nlohmann::json& body, const Zone& zone) {
    if (condition.kind == "series") {
        const auto rule = series_rule_from(condition, zone);
        return rule && asks_to_change_cell(*rule);
    }
    if (condition.kind == "surface") {
        const auto rule = surface_rule_from(body);
        return rule && rule->stops_releases && !rule->cells.empty();
    }
    if (condition.kind != "quantity" && condition.kind != "time") return false;
    return !scope_from(body).cells.empty() && body.value("each_of", "none") != "cell";
}

PlannedRelease going_to(PlannedRelease planned, const Id& cell) {
    planned.cell = cell;
    planned.lat = planned.lon = std::nullopt;
    return planned;
}

}  // namespace spoilbook
