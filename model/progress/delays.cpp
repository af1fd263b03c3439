// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/delays.h"

#include <algorithm>
#include <map>

#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

template <class T>
void add_once(std::vector<T>& list, T one) {
    // What is added twice is added in turn.
    if (list.empty() || list.back() != one) list.push_back(one);
}

class HoursAdding {
 public:
    HoursAdding(const Zone& zone, HoursOver over) : zone_(zone), over_(over) {}

    void add(const ShiftHours& shift) {
        each_part(shift, {shift.time}, [&](HoursRow& row, double h) {
            row.shift_h += h;
            add_once(row.shifts, shift.shift);
        });
        each_part(shift, shift.digging, [](HoursRow& row, double h) { row.digging_h += h; });
        each_part(shift, shift.not_accounted, [](HoursRow& row, double h) { row.not_accounted_h += h; });
        for (const auto& span : shift.delays) {
            each_part(shift, {span.time}, [&](HoursRow& row, double h) {
                CauseHours& cause = cause_of(row, span.delay->cause);
                cause.hours += h;
                add_once(cause.delays, span.delay);
            });
        }
        ++shift_number_;
    }

    std::vector<HoursRow> rows() {
        std::vector<HoursRow> all;
        for (auto& [key, row] : rows_) {
            std::stable_sort(row.causes.begin(), row.causes.end(),
                             [](const CauseHours& a, const CauseHours& b) { return a.hours > b.hours; });
            all.push_back(std::move(row));
        }
        if (all.empty() && over_ == HoursOver::all) all.emplace_back();
        return all;
    }

 private:
    template <class Hand>
    void each_part(const ShiftHours& shift, const Periods& periods, const Hand& hand) {
        for (Period left : periods) {
            while (left.from < left.to) {
                const Period whole = holding(shift, left.from);
                const Period part{left.from, std::min(left.to, whole.to)};
                hand(row_of(shift, whole), hours({part}));
                left.from = part.to;
            }
        }
    }

    [[nodiscard]] Period holding(const ShiftHours& shift, Instant at) const {
        if (over_ == HoursOver::month) return month_holding(zone_, at);
        if (over_ == HoursOver::week) return iso_week_holding(zone_, at);
        return shift.time;
    }

    HoursRow& row_of(const ShiftHours& shift, const Period& whole) {
        const bool by_calendar = over_ == HoursOver::month || over_ == HoursOver::week;
        const std::int64_t key = by_calendar                 ? whole.from.utc_ms
                                 : over_ == HoursOver::shift ? shift_number_
                                                             : 0;
        const auto [place, is_new] = rows_.try_emplace(key);
        if (is_new) {
            place->second.from = whole.from;
            place->second.key = key_of(shift, whole);
        }
        return place->second;
    }

    [[nodiscard]] std::string key_of(const ShiftHours& shift, const Period& whole) const {
        switch (over_) {
            case HoursOver::month:
                return month_text(zone_.day_of(whole.from));
            case HoursOver::week:
                return day_text(zone_.day_of(whole.from));
            case HoursOver::shift:
                return shift.shift->shift;
            case HoursOver::all:
                break;
        }
        return "";
    }

    static CauseHours& cause_of(HoursRow& row, const std::string& name) {
        const auto found = std::find_if(row.causes.begin(), row.causes.end(),
                                        [&](const CauseHours& cause) { return cause.cause == name; });
        if (found != row.causes.end()) return *found;
        return row.causes.emplace_back(CauseHours{name, 0, {}});
    }

    const Zone& zone_;
    HoursOver over_;
    std::map<std::int64_t, HoursRow> rows_;
    std::int64_t shift_number_ = 0;
};

}  // namespace

double HoursRow::delay_h() const {
    double sum = 0;
    for (const auto& cause : causes)
        sum += cause.hours;
    return sum;
}

std::vector<HoursRow> hours_over(const SeasonHours& season, const Zone& zone, HoursOver over) {
    HoursAdding adding(zone, over);
    for (const auto& shift : season.shifts)
        adding.add(shift);
    return adding.rows();
}

}  // namespace spoilbook
