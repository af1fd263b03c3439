// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/shift_hours.h"

#include <algorithm>

#include "model/progress/shift_timeline.h"

namespace spoilbook {

namespace {

/// From start to end, or as long as a row without one is taken to go on; nothing where that is not by then.
std::optional<Period> cut_at(const std::optional<Instant>& from, const std::optional<Instant>& to,
                             Instant as_at) {
    if (!from || *from >= as_at) return std::nullopt;
    const Period time{*from, std::min(to.value_or(*from + longest_open_ms), as_at)};
    if (time.to <= time.from) return std::nullopt;
    return time;
}

class HoursOf {
 public:
    HoursOf(const Season& season, Instant as_at) : season_(season), as_at_(as_at) {
        for (const auto& load : season.loads.rows()) {
            const auto time = cut_at(load.loading_start, load.loading_end, as_at);
            if (!time) continue;
            filling_.push_back(*time);
            found_.loading[load.id].push_back(*time);
        }
        filling_ = joined(std::move(filling_));
        add_stations();
        for (const auto& delay : season.delays.rows()) {
            const Shift* shift = season.shifts.find(delay.shift);
            if (shift == nullptr || !shift->start || !delay.start)
                ++found_.delays_left_out;
            else
                delays_[shift->id].push_back(&delay);
        }
    }

    SeasonHours run() {
        for (const auto& shift : season_.shifts.rows()) {
            if (const auto time = cut_at(shift.start, shift.end, as_at_)) add_shift(shift, *time);
        }
        std::stable_sort(found_.shifts.begin(), found_.shifts.end(),
                         [](const ShiftHours& a, const ShiftHours& b) { return a.time < b.time; });
        return std::move(found_);
    }

 private:
    void add_stations() {
        for (const auto& station : season_.stations.rows()) {
            const Shift* shift = season_.shifts.find(station.shift);
            const auto time = cut_at(station.spuds_down, station.spuds_up, as_at_);
            if (shift != nullptr && time) standing_[shift->dredger].push_back(*time);
        }
        for (auto& [dredger, periods] : standing_)
            periods = both(joined(std::move(periods)), filling_);
    }

    void add_shift(const Shift& shift, const Period& time) {
        ShiftHours hours{&shift, time, {}, {}, {}};
        add_delays(hours);
        Periods taken;
        for (const auto& span : hours.delays)
            taken.push_back(span.time);
        taken = joined(std::move(taken));
        hours.digging = both(inside(standing_[shift.dredger], time), left_of(time, taken));
        taken.insert(taken.end(), hours.digging.begin(), hours.digging.end());
        hours.not_accounted = left_of(time, joined(std::move(taken)));
        found_.shifts.push_back(std::move(hours));
    }

    void add_delays(ShiftHours& hours) {
        auto delays = delays_[hours.shift->id];
        std::stable_sort(delays.begin(), delays.end(),
                         [](const Delay* a, const Delay* b) { return *a->start < *b->start; });
        Instant free_from = hours.time.from;
        for (const Delay* delay : delays) {
            const Instant end = std::min(delay->end.value_or(hours.time.to), hours.time.to);
            const Period own{std::max(*delay->start, free_from), end};
            if (own.from >= own.to) continue;
            hours.delays.push_back({delay, own});
            free_from = own.to;
        }
    }

    const Season& season_;
    Instant as_at_;
    SeasonHours found_;
    Periods filling_;
    std::unordered_map<Id, Periods> standing_;  ///< by dredger, while a barge is filled
    std::unordered_map<Id, std::vector<const Delay*>> delays_;
};

}  // namespace

double ShiftHours::delay_h() const {
    double sum = 0;
    for (const auto& span : delays)
        sum += hours({span.time});
    return sum;
}

SeasonHours season_hours(const Season& season, Instant as_at) {
    return HoursOf(season, as_at).run();
}

Periods digging_periods(const Season& season, Instant as_at) {
    const auto found = season_hours(season, as_at);
    Periods digging;
    const auto add = [&](const Periods& part) { digging.insert(digging.end(), part.begin(), part.end()); };
    for (const auto& shift : found.shifts)
        add(shift.digging);
    if (season.shifts.rows().empty()) {
        for (const auto& [load, filled] : found.loading)
            add(filled);
    }
    return joined(std::move(digging));
}

}  // namespace spoilbook
