// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/as_reported.h"

#include <algorithm>
#include <set>
#include <utility>
#include <vector>

namespace spoilbook {

namespace {

bool in_materials(const Factor& row, const Season& season) {
    const Material* material = season.materials.find(row.material);
    if (material == nullptr) return false;
    if (row.factor == "bulking") return material->bulking_factor.has_value();
    if (row.factor == "fill") return material->fill_factor.has_value();
    if (row.factor == "situ_density") return material->situ_density_t_m3.has_value();
    return material->grain_density_t_m3.has_value();
}

/// Rows not accepted by then that revise what stood before them.
std::set<Id> not_accepted(const Season& season, Instant as_at) {
    std::vector<const Factor*> rows;
    for (const auto& row : season.factors.rows()) {
        if (row.from && *row.from <= as_at && row.value) rows.push_back(&row);
    }
    std::stable_sort(rows.begin(), rows.end(),
                     [](const Factor* a, const Factor* b) { return a->from < b->from; });
    std::set<std::pair<Id, std::string>> begun;  // what has a version already
    std::set<Id> waiting;
    for (const Factor* row : rows) {
        const bool accepted = row->accepted && *row->accepted <= as_at;
        const bool revises = in_materials(*row, season) || begun.contains({row->material, row->factor});
        if (!accepted && revises)
            waiting.insert(row->id);
        else
            begun.insert({row->material, row->factor});
    }
    return waiting;
}

}  // namespace

std::optional<Season> season_as_reported(const Season& season, Instant as_at) {
    const auto waiting = not_accepted(season, as_at);
    if (waiting.empty()) return std::nullopt;
    std::optional<Season> reported(season);
    Shelf<Factor> accepted;
    for (const auto& row : season.factors.rows()) {
        if (!waiting.contains(row.id)) accepted.add(row);
    }
    reported->factors = std::move(accepted);
    return reported;
}

}  // namespace spoilbook
