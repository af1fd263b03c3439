// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/site_statistic.h"

#include "model/turbidity/pairs.h"

namespace spoilbook {

StatisticCursor& SiteStatistic::cursor_of(std::size_t version) {
    Walk& walk = walks_[version];
    if (walk.cursor) return *walk.cursor;
    const auto& rule = trigger_.versions[version].rule;
    const SiteSeries* series = series_of_(site_);
    const bool of_pairs = rule.compare.form == CompareForm::paired_above_control && site_ != rule.control;
    const SiteSeries* control = of_pairs ? series_of_(rule.control) : nullptr;
    if (control != nullptr) {
        walk.pairs = paired_differences(*series, *control, rule.compare.lag_min, rule.compare.tolerance_min);
    }
    return walk.cursor.emplace(of_pairs ? walk.pairs : *series, rule.statistic, rule.over_min);
}

std::optional<double> SiteStatistic::at(Instant t) {
    for (std::size_t i = trigger_.versions.size(); i-- > 0;) {
        const auto& version = trigger_.versions[i];
        if (!version.holds_at(t)) continue;
        const auto found = cursor_of(i).at(t);
        if (!complete_enough(found, version.rule.min_complete)) return std::nullopt;
        return found.value;
    }
    return std::nullopt;
}

}  // namespace spoilbook
