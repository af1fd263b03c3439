// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/forecast.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

#include "model/progress/burndown.h"
#include "model/progress/chance.h"
#include "model/progress/closed_days.h"
#include "model/progress/limit_path.h"
#include "model/progress/work_days.h"
#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

constexpr int week = 7;
constexpr int least_weeks = 4;

/// The p-quantile's day of draws that came to it after so many days, −1 for never.
Dates dates_of(std::vector<int> after, const std::vector<Day>& days) {
    Dates dates;
    const auto never = std::count(after.begin(), after.end(), -1);
    const auto all = static_cast<double>(after.size());
    dates.reached = 1 - static_cast<double>(never) / all;
    std::replace(after.begin(), after.end(), -1, static_cast<int>(days.size()));
    std::sort(after.begin(), after.end());
    const auto at = [&](double p) -> std::optional<Day> {
        const auto place = static_cast<std::size_t>(std::ceil(p * all)) - 1;
        const int day = after[place];
        return day < static_cast<int>(days.size()) ? std::optional(days[static_cast<std::size_t>(day)])
                                                   : std::nullopt;
    };
    dates.p10 = at(0.1);
    dates.p50 = at(0.5);
    dates.p90 = at(0.9);
    return dates;
}

class Forecaster {
 public:
    Forecaster(const Ledger& ledger, const ForecastAsked& asked)
        : ledger_(ledger), asked_(asked), chance_(asked.seed) {}

    Forecast make() {
        take_log();
        if (!made_.why_none.empty()) return made_;
        lay_out_days();
        lay_out_limits();
        for (int i = 0; i < asked_.draws; ++i)
            draw();
        sum_up();
        return made_;
    }

 private:
    void take_log() {
        const auto burn = burndown(ledger_, asked_.as_at);
        log_ = work_days(ledger_, asked_.as_at);
        const auto wanted = static_cast<std::size_t>(asked_.weeks) * week;
        if (log_.size() > wanted) log_.erase(log_.begin(), log_.end() - static_cast<std::ptrdiff_t>(wanted));
        made_.weeks = static_cast<int>(log_.size()) / week;
        if (burn.planned_m3 <= 0) made_.why_none = "no claim has a planned volume";
        if (made_.weeks < least_weeks) made_.why_none = "fewer than four weeks of dredging are logged";
        const double kept = 1 - asked_.supposed.over_dredge_share;
        planned_m3_ = burn.planned_m3;
        dredged_ = {burn.dredged_m3, burn.dredged_u_m3};
        made_.left_m3 = planned_m3_ / kept - burn.dredged_m3;
        const double u_share = planned_m3_ / (kept * kept) * asked_.supposed.over_dredge_share_u;
        made_.left_m3_u = std::hypot(burn.dredged_u_m3, u_share);
    }

    void lay_out_days() {
        const Zone& zone = ledger_.season().zone;
        const Day today = zone.day_of(asked_.as_at);
        for (int i = 1; i <= asked_.days; ++i) {
            days_.push_back(plus_days(today, i));
            evenings_.push_back(zone.day_start(plus_days(today, i + 1)) - 1);
        }
        close_days(today);
        // Weeks of the log that begin on the weekday of the first day to come.
        for (std::size_t i = 0; i + week <= log_.size(); ++i) {
            if (iso_weekday(log_[i].date) == iso_weekday(days_.front())) starts_.push_back(i);
        }
    }

    void close_days(Day today) {
        std::vector<Day> from_today{today};
        from_today.insert(from_today.end(), days_.begin(), days_.end());
        auto closed = closed_days(ledger_.season(), from_today);
        move_season(closed.season, from_today, asked_.supposed.season_opens, asked_.supposed.season_closes);
        for (std::size_t i = 0; i < days_.size(); ++i) {
            closed_.push_back(closed.at(i + 1));
            if (closed.season[i + 1] && !made_.season_closes) made_.season_closes = days_[i];
        }
    }

    void lay_out_limits() {
        const Zone& zone = ledger_.season().zone;
        std::vector<Instant> log_evenings;
        for (const auto& day : log_)
            log_evenings.push_back(zone.day_start(plus_days(day.date, 1)) - 1);
        for (auto& state : limits_at(ledger_, asked_.as_at)) {
            if (!state.quantity.at_most) continue;
            paths_.emplace_back(ledger_, state, evenings_, log_evenings);
            made_.limits.push_back({std::move(state), {}, std::nullopt});
        }
        limits_after_.resize(paths_.size());
    }

    DaysDrawn days_drawn(double error) {
        DaysDrawn drawn;
        drawn.error = error;
        drawn.factor = asked_.supposed.rate_factor * asked_.supposed.hours_factor;
        // Thirteen weeks do not tell the mean of all weeks exactly: each draw has weeks of its own to draw
        // from.
        std::vector<std::size_t> pool;
        for (std::size_t i = 0; i < starts_.size(); ++i)
            pool.push_back(starts_[chance_.below(starts_.size())]);
        std::size_t start = 0;
        for (std::size_t i = 0; i < days_.size(); ++i) {
            if (i % week == 0) start = pool[chance_.below(pool.size())];
            drawn.log_day.push_back(closed_[i] ? -1 : static_cast<int>(start + i % week));
        }
        return drawn;
    }

    /// What is dredged until the end of each day to come.
    [[nodiscard]] std::vector<double> sums_of(const DaysDrawn& drawn) const {
        const double off = dredged_.m3 > 0 ? 1 + drawn.error * dredged_.u / dredged_.m3 : 1;
        std::vector<double> sums;
        double sum = 0;
        for (const int like : drawn.log_day) {
            if (like >= 0) sum += off * drawn.factor * log_[static_cast<std::size_t>(like)].in_situ_m3;
            sums.push_back(sum);
        }
        return sums;
    }

    void draw() {
        const double error = chance_.normal();
        const double share = std::clamp(
            asked_.supposed.over_dredge_share + chance_.normal() * asked_.supposed.over_dredge_share_u, 0.0,
            0.9);
        const double left = planned_m3_ / (1 - share) - (dredged_.m3 + error * dredged_.u);
        const auto drawn = days_drawn(error);
        auto sums = sums_of(drawn);
        const auto reached = std::find_if(sums.begin(), sums.end(), [&](double sum) { return sum >= left; });
        const int target = reached == sums.end() ? -1 : static_cast<int>(reached - sums.begin());
        target_after_.push_back(target);
        ComesFirst::What what = target < 0 ? ComesFirst::What::nothing : ComesFirst::What::target;
        std::size_t which = 0;
        int earliest = target < 0 ? asked_.days : target;
        for (std::size_t i = 0; i < paths_.size(); ++i) {
            const int after = paths_[i].known() ? paths_[i].first_over(drawn) : -1;
            limits_after_[i].push_back(after);
            if (after < 0 || after >= earliest) continue;
            earliest = after;
            what = ComesFirst::What::limit;
            which = i;
        }
        if (made_.season_closes && days_between(*made_.season_closes, days_.front()) < earliest) {
            what = ComesFirst::What::season;
            which = 0;
        }
        ++first_[{what, which}];
        for (double& sum : sums)
            sum = left - sum;
        left_.push_back(std::move(sums));
    }

    [[nodiscard]] double share_of_draws(const std::function<bool(std::size_t)>& is_so) const {
        std::size_t count = 0;
        for (std::size_t i = 0; i < target_after_.size(); ++i)
            count += is_so(i) ? 1 : 0;
        return static_cast<double>(count) / static_cast<double>(target_after_.size());
    }

    void sum_up() {
        made_.target = dates_of(target_after_, days_);
        const auto target = [&](std::size_t i) {
            return target_after_[i] < 0 ? asked_.days : target_after_[i];
        };
        for (std::size_t k = 0; k < paths_.size(); ++k) {
            if (!paths_[k].known()) continue;
            const auto& after = limits_after_[k];
            made_.limits[k].dates = dates_of(after, days_);
            made_.limits[k].p_before_target =
                share_of_draws([&](std::size_t i) { return after[i] >= 0 && after[i] < target(i); });
        }
        if (made_.season_closes) {
            const int closes = days_between(*made_.season_closes, days_.front());
            made_.p_season_before_target = share_of_draws([&](std::size_t i) { return closes <= target(i); });
        }
        for (const auto& [key, count] : first_)
            made_.first.push_back({key.first, key.second, count / static_cast<double>(asked_.draws)});
        std::stable_sort(made_.first.begin(), made_.first.end(),
                         [](const auto& a, const auto& b) { return a.p > b.p; });
        draw_fan();
    }

    void draw_fan() {
        for (std::size_t day = 0; day < days_.size(); ++day) {
            std::vector<double> left;
            for (const auto& draw : left_)
                left.push_back(std::max(0.0, draw[day]));
            std::sort(left.begin(), left.end());
            const auto at = [&](double p) {
                return left[static_cast<std::size_t>(p * static_cast<double>(left.size() - 1))];
            };
            made_.fan.push_back({days_[day], at(0.1), at(0.5), at(0.9)});
            if (made_.target.p90 && days_[day] >= *made_.target.p90) break;
        }
    }

    struct Dredged {
        double m3 = 0, u = 0;
    };

    const Ledger& ledger_;
    const ForecastAsked& asked_;
    Chance chance_;
    Forecast made_;
    double planned_m3_ = 0;
    Dredged dredged_;
    std::vector<WorkDay> log_;
    std::vector<std::size_t> starts_;
    std::vector<Day> days_;
    std::vector<Instant> evenings_;
    std::vector<bool> closed_;
    std::vector<LimitPath> paths_;
    std::vector<int> target_after_;
    std::vector<std::vector<int>> limits_after_;
    std::vector<std::vector<double>> left_;
    std::map<std::pair<ComesFirst::What, std::size_t>, double> first_;
};

}  // namespace

Forecast forecast(const Ledger& ledger, const ForecastAsked& asked) {
    return Forecaster(ledger, asked).make();
}

}  // namespace spoilbook
