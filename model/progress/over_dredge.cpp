// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/over_dredge.h"

#include <algorithm>

#include "model/record/survey_day.h"

namespace spoilbook {

namespace {

constexpr std::string_view no_u = "a report gives no uncertainty of its over-dredge, taken as exact";
constexpr std::string_view no_within = "a report does not tell what lay within the allowance, taken as none";
constexpr std::string_view no_beyond = "a report does not tell what lay beyond the allowance, taken as none";

/// A report that tells of over-dredge, and the time between its surveys.
struct Telling {
    const Removed* row = nullptr;
    std::optional<Instant> from;  ///< nothing: the survey before is not recorded
    Instant to;

    [[nodiscard]] bool overlaps(const Telling& other) const {
        return row->claim == other.row->claim && (!from || *from < other.to) &&
               (!other.from || *other.from < to);
    }
    [[nodiscard]] bool is_shorter(const Telling& other) const {
        if (!from || !other.from) return from.has_value() && !other.from;
        return to - *from < other.to - *other.from;
    }
};

void assume(OverDredge& dug, std::string_view what) {
    const bool told = std::find(dug.assumed.begin(), dug.assumed.end(), what) != dug.assumed.end();
    if (!told) dug.assumed.push_back(what);
}

void add(std::optional<Measured>& sum, const Measured& part) {
    if (!sum) sum = Measured{};
    sum->value += part.value;
    sum->u += part.u;
}

void add(OverDredge& to, std::optional<Measured> OverDredge::*part, std::optional<double> value,
         std::optional<double> u, std::string_view not_told) {
    if (!value) return assume(to, not_told);
    add(to.*part, Measured{*value, u.value_or(0)});
    if (!u) assume(to, no_u);
}

void add_report(OverDredge& to, const Removed& row) {
    const bool first = to.reports.empty();
    to.reports.push_back(row.removed);
    add(to, &OverDredge::within, row.within_allowance_m3, row.within_allowance_u_m3, no_within);
    add(to, &OverDredge::beyond, row.beyond_allowance_m3, row.beyond_allowance_u_m3, no_beyond);
    const bool known = row.removed_in_situ_m3 && (first || to.removed_m3);
    to.removed_m3 = known ? std::optional(to.removed_m3.value_or(0) + *row.removed_in_situ_m3) : std::nullopt;
}

/// Those whose later survey's day was over, the shorter ones first.
std::vector<Telling> telling_by(const Season& season, Instant as_at) {
    std::vector<Telling> reports;
    for (const auto& row : season.removed.rows()) {
        const auto to = end_of_survey(season.surveys.find(row.after), season.zone);
        if ((!row.within_allowance_m3 && !row.beyond_allowance_m3) || !to || *to > as_at) continue;
        reports.push_back({&row, end_of_survey(season.surveys.find(row.before), season.zone), *to});
    }
    std::stable_sort(reports.begin(), reports.end(),
                     [](const Telling& a, const Telling& b) { return a.is_shorter(b); });
    return reports;
}

}  // namespace

std::optional<Measured> OverDredge::below_target() const {
    std::optional<Measured> sum;
    if (within) add(sum, *within);
    if (beyond) add(sum, *beyond);
    return sum;
}

std::optional<double> OverDredge::share() const {
    const auto below = below_target();
    if (!below || !removed_m3 || *removed_m3 <= 0) return std::nullopt;
    return below->value / *removed_m3;
}

std::optional<Measured> OverDredge::cost(std::optional<double> unit_cost) const {
    const auto below = below_target();
    if (!below || !unit_cost) return std::nullopt;
    return Measured{below->value * *unit_cost, below->u * *unit_cost};
}

OverDredged over_dredge(const Season& season, Instant as_at) {
    OverDredged made;
    std::vector<Telling> taken;
    for (const auto& report : telling_by(season, as_at)) {
        const bool covered = std::any_of(taken.begin(), taken.end(),
                                         [&](const Telling& other) { return report.overlaps(other); });
        if (covered)
            made.left_out.push_back(report.row->removed);
        else
            taken.push_back(report);
    }
    std::stable_sort(taken.begin(), taken.end(),
                     [](const Telling& a, const Telling& b) { return a.to < b.to; });
    for (const auto& claim : season.claims.rows()) {
        OverDredge of_claim;
        of_claim.claim = &claim;
        for (const auto& report : taken) {
            if (report.row->claim != claim.id) continue;
            add_report(of_claim, *report.row);
            add_report(made.all, *report.row);
        }
        if (!of_claim.reports.empty()) made.claims.push_back(std::move(of_claim));
    }
    return made;
}

}  // namespace spoilbook
