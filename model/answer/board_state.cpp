// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/board_state.h"

#include <algorithm>
#include <array>
#include <map>
#include <nlohmann/json.hpp>

#include "model/answer/standing.h"
#include "model/consent/surface_rule.h"

namespace spoilbook {

namespace {

BoardState state_of(LimitStanding standing) {
    switch (standing) {
        case LimitStanding::no_limit:
            return BoardState::nothing_yet;
        case LimitStanding::within:
            return BoardState::within;
        case LimitStanding::warned:
            return BoardState::warned;
        case LimitStanding::was_over:
            return BoardState::was_over;
        case LimitStanding::below:
            return BoardState::below;
        case LimitStanding::over:
            return BoardState::over;
        case LimitStanding::cannot_tell:
            break;
    }
    return BoardState::cannot_tell;
}

/// Over beats cannot tell, which beats all else; then the worst.
BoardState of_limits(const std::vector<LimitState>& limits) {
    std::optional<LimitStanding> worst;
    for (const auto& limit : limits) {
        const auto standing = standing_of(limit);
        const bool is_told = standing != LimitStanding::cannot_tell || worst != LimitStanding::over;
        if (!worst || (standing > *worst && is_told) || standing == LimitStanding::over) worst = standing;
    }
    return worst ? state_of(*worst) : BoardState::nothing_yet;
}

BoardState of_findings(const BoardRow& row) {
    if (row.findings.empty()) return BoardState::nothing_yet;
    if (row.count(Compliance::breached) > 0) return BoardState::breached;
    return row.count(Compliance::cannot_tell) > 0 ? BoardState::cannot_tell : BoardState::within;
}

/// A place that nothing is past is judged by the last that was seen of it: what an earlier survey could not
/// tell is told by then.
BoardState of_surface(const BoardRow& row) {
    if (row.findings.empty() || row.count(Compliance::breached) > 0) return of_findings(row);
    std::map<std::string, Compliance> last;
    for (const auto& found : row.findings)
        last[found.place] = found.state;
    const bool all_told = std::all_of(last.begin(), last.end(),
                                      [](const auto& place) { return place.second == Compliance::complied; });
    return all_told ? BoardState::within : BoardState::cannot_tell;
}

std::string surface_not_judged(const Season& season, const nlohmann::json& body) {
    const auto rule = surface_rule_from(body);
    if (!rule) return no_bound;
    if (!season.harbour.epsg) return "the book has no map to lay a grid on";
    const bool has_place = !rule->is_by_target() || !rule->claims.empty() || judges_dredging(body);
    return has_place ? "" : "it names no level, and only claims have a target level";
}

BoardState of_water(const BoardRow& row, Instant at) {
    const auto any = [&](const auto& test) { return std::any_of(row.sites.begin(), row.sites.end(), test); };
    if (any([](const TriggerState& site) { return site.open.has_value(); })) return BoardState::over;
    const bool told = !row.sites.empty() && !any([at](const TriggerState& site) {
        return site.standing.last.telling == Telling::cannot_tell || is_stale(site, at);
    });
    if (!told) return BoardState::cannot_tell;
    return row.events.empty() ? BoardState::within : BoardState::was_over;
}

BoardState of_duties(const std::vector<DutyTime>& duties) {
    const auto any = [&](DutyState state) {
        return std::any_of(duties.begin(), duties.end(),
                           [state](const DutyTime& time) { return time.state == state; });
    };
    if (any(DutyState::overdue)) return BoardState::overdue;
    if (any(DutyState::due)) return BoardState::due;
    return duties.empty() ? BoardState::nothing_yet : BoardState::within;
}

}  // namespace

std::string_view text(BoardState state) {
    static constexpr std::array names{"within",      "warned",      "was_over",  "below",
                                      "over",        "breached",    "due",       "overdue",
                                      "cannot_tell", "nothing_yet", "not_judged"};
    return names.at(static_cast<std::size_t>(state));
}

std::string why_water_is_not_told(const BoardRow& row, Instant at, const Zone& zone) {
    if (row.sites.empty()) return "no site of it has a logger";
    std::string all;
    for (const auto& site : row.sites) {
        const auto why = why_site_is_not_told(site, at, zone);
        if (!why.empty()) all += (all.empty() ? "" : "; ") + site.standing.site + ": " + why;
    }
    return all;
}

std::string not_judged(const Season& season, const Condition& condition, const nlohmann::json& body) {
    if (condition.kind == "surface") return surface_not_judged(season, body);
    if (condition.kind == "text") return "no kind of condition fits it: read it yourself";
    const bool only_kept = condition.kind == "record" && !body.contains("required") &&
                           !body.contains("allowed") && !body.contains("bounds");
    if (only_kept) return "the book strikes nothing from its journal; that it is kept is its holder's";
    return "";
}

BoardState board_state(const BoardRow& row, Instant at) {
    const std::string& kind = row.condition->kind;
    if (!row.reads) return BoardState::cannot_tell;
    if (!row.why.empty()) return BoardState::not_judged;
    // Of a limit only floors have findings, and only those that ended.
    if (kind == "quantity" && row.count(Compliance::complied) == row.findings.size())
        return of_limits(row.limits);
    if (kind == "duty") return of_duties(row.duties);
    if (kind == "surface") return of_surface(row);
    const bool of_the_water = kind == "series" && row.findings.empty() && !row.sites.empty();
    return of_the_water ? of_water(row, at) : of_findings(row);
}

}  // namespace spoilbook
