// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/burndown.h"

#include <algorithm>
#include <map>

#include "model/consent/random_parts.h"
#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

struct Planned {
    double m3 = 0;
    Day start, finish;
};

std::vector<Planned> plans_of(const Season& season) {
    std::vector<Planned> plans;
    for (const auto& claim : season.claims.rows()) {
        const auto start = parse_day(claim.planned_start);
        const auto finish = parse_day(claim.planned_finish);
        if (claim.planned_in_situ_m3 && start && finish)
            plans.push_back({*claim.planned_in_situ_m3, *start, *finish});
    }
    return plans;
}

/// Planned to be left at the end of a day.
double plan_at(const std::vector<Planned>& plans, Day day) {
    double left = 0;
    for (const auto& plan : plans) {
        const double length = days_between(plan.finish, plan.start) + 1;
        const double gone = std::clamp((days_between(day, plan.start) + 1) / length, 0.0, 1.0);
        left += plan.m3 * (1 - gone);
    }
    return left;
}

/// In-situ volume of each local day, and their sum.
class DredgedDays {
 public:
    DredgedDays(const Ledger& ledger, Instant as_at, BurnDown& burn) {
        Total total;
        RandomParts random;
        for (const auto& line : ledger.dredged()) {
            if (line.at > as_at) break;
            const auto amount = dredged_amount(line, "", Measure::in_situ_m3);
            if (!amount) {
                ++burn.unknown;
                continue;
            }
            total.add(*amount);
            random.add_of_load(line.load_number, amount->u_random);
            by_day_[line.day] += amount->value;
        }
        Estimate sum = total.estimate();
        sum.u_random = random.u();
        burn.dredged_m3 = sum.value;
        burn.dredged_u_m3 = sum.u();
    }
    [[nodiscard]] std::optional<Day> first() const {
        return by_day_.empty() ? std::nullopt : std::optional(by_day_.begin()->first);
    }
    [[nodiscard]] double on(Day day) const {
        const auto place = by_day_.find(day);
        return place == by_day_.end() ? 0 : place->second;
    }

 private:
    std::map<Day, double> by_day_;
};

}  // namespace

BurnDown burndown(const Ledger& ledger, Instant as_at) {
    BurnDown burn;
    const Season& season = ledger.season();
    for (const auto& claim : season.claims.rows())
        burn.planned_m3 += claim.planned_in_situ_m3.value_or(0);
    const auto plans = plans_of(season);
    const DredgedDays dredged(ledger, as_at, burn);
    const Day today = season.zone.day_of(as_at);
    std::optional<Day> first = dredged.first();
    Day last = today;
    for (const auto& plan : plans) {
        first = first ? std::min(*first, plan.start) : plan.start;
        last = std::max(last, plan.finish);
    }
    if (!first) return burn;
    double left = burn.planned_m3;
    for (Day day = *first; day <= last; day = plus_days(day, 1)) {
        left -= dredged.on(day);
        burn.days.push_back({day, day <= today ? std::optional(left) : std::nullopt,
                             plans.empty() ? std::nullopt : std::optional(plan_at(plans, day))});
    }
    return burn;
}

}  // namespace spoilbook
