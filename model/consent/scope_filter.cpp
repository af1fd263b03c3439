// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/scope_filter.h"

namespace spoilbook {

template <class R>
ScopeFilter::Named ScopeFilter::named_in(const std::vector<std::string>& names, const Shelf<R>& shelf,
                                         std::string R::*member) {
    Named named;
    named.any = names.empty();
    if (named.any) return named;
    for (const auto& row : shelf.rows()) {
        if (listed(names, row.*member)) named.ids.push_back(row.id);
    }
    std::sort(named.ids.begin(), named.ids.end());
    return named;
}

ScopeFilter::ScopeFilter(const Scope& scope, const Season& season, bool not_known_is_in, bool load_is_known)
    : scope_(scope),
      season_(season),
      not_known_is_in_(not_known_is_in),
      not_recorded_is_in_(not_known_is_in && !load_is_known),
      claims_(named_in(scope.claims, season.claims, &Claim::claim)),
      grounds_(named_in(scope.grounds, season.grounds, &Ground::ground)),
      cells_(named_in(scope.cells, season.cells, &Cell::cell)),
      materials_(named_in(scope.materials, season.materials, &Material::material)),
      barges_(named_in(scope.plant, season.barges, &Barge::name)),
      tugs_(named_in(scope.plant, season.tugs, &Tug::name)) {}

bool ScopeFilter::takes(const LedgerLine& line) const {
    if (scope_.activity == Activity::release) {
        if (!takes(grounds_, season_.grounds, line.ground, not_known_is_in_)) return false;
        const bool not_said_is_in = not_known_is_in_ && may_be_in_a_cell(line);
        if (!takes(cells_, season_.cells, line.cell, not_said_is_in)) return false;
    }
    return takes(materials_, season_.materials, line.material, not_recorded_is_in_) && takes_plant(line);
}

bool ScopeFilter::takes_part(const Id& claim, const Id& material, Instant at) const {
    return takes(claims_, season_.claims, claim, not_recorded_is_in_) &&
           (scope_.classes.empty() || takes_class(claim, material, at));
}

bool ScopeFilter::takes_any_of(const LedgerLine& line) const {
    if (!takes(line)) return false;
    if (!by_part() || line.figures == nullptr) return true;
    const auto& parts = line.figures->parts;
    return std::any_of(parts.begin(), parts.end(),
                       [&](const LoadPart& part) { return takes_part(part.claim, part.material, line.at); });
}

/// What lies in no cell by its position is in none, and a ground has its own cells: that is known.
bool ScopeFilter::may_be_in_a_cell(const LedgerLine& line) const {
    if (line.release != nullptr && line.release->lat && line.release->lon) return false;
    const auto& cells = season_.cells.rows();
    return !line.ground || std::any_of(cells.begin(), cells.end(), [&](const Cell& cell) {
        return cell.ground == line.ground && listed(scope_.cells, cell.cell);
    });
}

bool ScopeFilter::takes_plant(const LedgerLine& line) const {
    if (barges_.any) return true;
    if (takes(barges_, season_.barges, line.barge, not_recorded_is_in_)) return true;
    if (line.release == nullptr) return false;
    const Id tug = line.release->trip->tug;
    // A tug that is not known yet can only be one where the condition names a tug.
    return (tug || !tugs_.ids.empty()) && takes(tugs_, season_.tugs, tug, not_recorded_is_in_);
}

bool ScopeFilter::takes_class(const Id& claim, const Id& material, Instant at) const {
    bool classed = false;
    for (const auto& found : season_.suitabilities.rows()) {
        const bool fits = found.claim == claim && (found.material == material || !found.material) &&
                          (!found.from || *found.from <= at) && (!found.to || at < *found.to);
        if (fits && listed(scope_.classes, found.material_class)) return true;
        classed = classed || fits;
    }
    return !classed && not_known_is_in_;
}

}  // namespace spoilbook
