// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/site_statistic.h"

namespace spoilbook {

std::optional<double> SiteStatistic::at(Instant t) {
    for (std::size_t i = trigger_.versions.size(); i-- > 0;) {
        const auto& version = trigger_.versions[i];
        if (!version.holds_at(t)) continue;
        auto cursor = cursors_.find(i);
        if (cursor == cursors_.end())
            cursor = cursors_.try_emplace(i, series_, version.rule.statistic, version.rule.over_min).first;
        const auto found = cursor->second.at(t);
        if (!complete_enough(found, version.rule.min_complete)) return std::nullopt;
        return found.value;
    }
    return std::nullopt;
}

}  // namespace spoilbook
