// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command/figures_text.h"

#include <fmt/format.h>
#include <algorithm>

#include "model/consent/quantity_text.h"
#include "model/record/release_name.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

std::string estimate_text(const std::optional<Estimate>& estimate) {
    return estimate ? with_u(estimate->value, estimate->u(), 1) : "not known";
}

std::string limit_line(const LimitState& state, const Zone& zone) {
    const double scale = shown_scale(state.quantity);
    const int decimals = shown_decimals(state.quantity);
    std::string name = state.condition->condition;
    if (state.member) name += " " + (state.member->name.empty() ? "(none)" : state.member->name);
    std::string line =
        fmt::format("{:<14} {:>12.{}f} ± {:<10.{}f}", name, rounded_up(state.used * scale, decimals),
                    decimals, rounded_up(state.used_u * scale, decimals), decimals);
    if (state.limit) {
        // Of a floor what is still to be reached, which is never made less by rounding.
        const bool floor = !state.quantity.at_most;
        const double left = *state.headroom() * scale;
        line += fmt::format(" of {:>10.{}f}  {} {:>10.{}f} {:<10}", *state.limit * scale, decimals,
                            floor ? "to go" : "left",
                            floor ? std::max(0.0, rounded_up(left, decimals)) : rounded_down(left, decimals),
                            decimals, unit_text(state.quantity));
    } else {
        line += fmt::format(" no limit yet, {}", unit_text(state.quantity));
    }
    if (state.p_over)
        line += fmt::format("  P({}) {} %", state.quantity.at_most ? "over" : "reached",
                            chance_text(*state.p_over));
    if (state.unknown > 0) line += fmt::format("  loads not known: {}", state.unknown);
    if (state.not_recorded > 0)
        line += fmt::format("  loads that may count too, for all that is recorded: {}", state.not_recorded);
    if (state.used_as_reported && state.used_as_restated) {
        const auto reported = fmt::format("{:.{}f}", *state.used_as_reported * scale, decimals);
        const auto restated = fmt::format("{:.{}f}", *state.used_as_restated * scale, decimals);
        if (reported != restated) line += fmt::format("  as reported {}, as restated {}", reported, restated);
    }
    if (state.first_over) line += "  first over " + instant_text(*state.first_over, zone);
    return line + "  " + state.condition->text + "\n";
}

}  // namespace

std::string headroom_text(const std::vector<LimitState>& states, Instant as_at, const Season& season) {
    std::string text =
        fmt::format("{}: limits as at {}\n", season.harbour.name, instant_text(as_at, season.zone));
    if (states.empty()) text += "No condition of this book is a limit on a quantity.\n";
    for (const auto& state : states)
        text += limit_line(state, season.zone);
    return text;
}

std::string volumes_text(const std::vector<VolumeRow>& rows, const std::vector<GroupBy>& by) {
    std::string text;
    for (const auto group : by)
        text += fmt::format("{:<16}", group_text(group));
    text += fmt::format("{:>6} {:>6}  {:<24} {:<24}\n", "loads", "trips", "hopper m³", "in-situ m³");
    for (const auto& row : rows) {
        for (const auto& key : row.keys)
            text += fmt::format("{:<16}", key.value_or("(none)"));
        text += fmt::format("{:>6} {:>6}  {:<24} {:<24}", row.loads, row.trips,
                            estimate_text(row.amounts.hopper_m3), estimate_text(row.amounts.in_situ_m3));
        if (row.unknown > 0) text += fmt::format("  and loads not known: {}", row.unknown);
        text += "\n";
    }
    return text;
}

std::string load_text(const Load& load, const LoadFigures& figures, const Notes& notes,
                      const Season& season) {
    const auto* counted = figures.counted_by();
    std::string text = fmt::format("load {}", load.load);
    if (const auto* barge = season.barges.find(load.barge)) text += " in " + barge->name;
    text += counted == nullptr ? ": no method can value it\n"
                               : fmt::format(", counted by {}\n", method_name(counted->method));
    for (const auto& method : figures.methods) {
        text += fmt::format("  {:<10} hopper {} m³, in situ {} m³, wet {} t, dry {} t\n",
                            method_name(method.method), estimate_text(method.hopper_m3),
                            estimate_text(method.in_situ_m3), estimate_text(method.wet_t),
                            estimate_text(method.dry_t));
        for (const auto& sentence : method.assumed)
            text += fmt::format("             taken: {}\n", sentence);
    }
    for (const auto& note : notes)
        text += "  noted: " + note.what + "\n";
    return text;
}

std::string releases_text(const std::vector<ReleasePlace>& places, const Season& season) {
    std::string lines;
    for (const auto& place : places) {
        const auto* cell = season.cells.find(place.cell);
        lines += fmt::format("{:<13} {} {:<12}", name_with_trip(*place.release),
                             instant_text(*place.release->ended, season.zone), in_words(text(place.verdict)));
        if (place.distance_m)
            lines += fmt::format(" {:>9.1f} m from the boundary, ± {:.0f} m{}", *place.distance_m,
                                 rounded_up(place.position_u_m, 0), place.u_assumed ? " (taken)" : "");
        if (cell != nullptr) lines += ", cell " + cell->cell;
        if (!place.why.empty()) lines += ", " + place.why;
        lines += "\n";
    }
    return lines;
}

}  // namespace spoilbook
