// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/scope_filter.h"

namespace spoilbook {

bool ScopeFilter::takes(const LedgerLine& line) const {
    if (scope_.activity == Activity::release) {
        if (!takes(scope_.grounds, season_.grounds, line.ground, &Ground::ground, not_known_is_in_))
            return false;
        const bool not_said_is_in = not_known_is_in_ && may_be_in_a_cell(line);
        if (!takes(scope_.cells, season_.cells, line.cell, &Cell::cell, not_said_is_in)) return false;
    }
    const Id material = line.load != nullptr ? line.load->material : Id{};
    return takes(scope_.materials, season_.materials, material, &Material::material, not_recorded_is_in_) &&
           takes_plant(line);
}

bool ScopeFilter::takes(const LoadPart& part, Instant at) const {
    return takes(scope_.claims, season_.claims, part.claim, &Claim::claim, not_recorded_is_in_) &&
           (scope_.classes.empty() || takes_class(part, at));
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
    if (scope_.plant.empty()) return true;
    const Id barge = line.load != nullptr ? line.load->barge : Id{};
    if (takes(scope_.plant, season_.barges, barge, &Barge::name, not_recorded_is_in_)) return true;
    if (line.release == nullptr) return false;
    const Id tug = line.release->trip->tug;
    const auto& tugs = season_.tugs.rows();
    const bool names_a_tug = std::any_of(tugs.begin(), tugs.end(),
                                         [this](const Tug& row) { return listed(scope_.plant, row.name); });
    // A tug that is not known yet can only be one where the condition names a tug.
    return (tug || names_a_tug) && takes(scope_.plant, season_.tugs, tug, &Tug::name, not_recorded_is_in_);
}

bool ScopeFilter::takes_class(const LoadPart& part, Instant at) const {
    bool classed = false;
    for (const auto& found : season_.suitabilities.rows()) {
        const bool fits = found.claim == part.claim && (found.material == part.material || !found.material) &&
                          (!found.from || *found.from <= at) && (!found.to || at < *found.to);
        if (fits && listed(scope_.classes, found.material_class)) return true;
        classed = classed || fits;
    }
    return !classed && not_known_is_in_;
}

}  // namespace spoilbook
