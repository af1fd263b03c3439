// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/works_supposed.h"

#include <fmt/format.h>

#include "model/progress/work_days.h"
#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

constexpr int week = 7;

Refusal not_in_log(const char* where, const std::string& what, const char* mend) {
    return {"not-in-log", where, what, mend};
}

Refusal out_of_range(const char* where, const std::string& what, const char* mend) {
    return {"out-of-range", where, what, mend};
}

/// Puts the supposed plant and haul into `to_be`, with the factor of rate that they come to.
void suppose_plant(const WorksLogged& logged, const WorksSupposed& supposed, WorksToBe& to_be,
                   Refusals& refusals) {
    const bool asked =
        supposed.barges || supposed.tugs || supposed.round_trip_more_min || supposed.haul_more_km;
    if (!asked) return;
    const std::string why = logged.why_no_pace();
    if (!why.empty())
        refusals.push_back(not_in_log("barges, tugs and haul", "the log does not tell the pace: " + why,
                                      "log the times of loads and trips with their barge and tug"));
    if (supposed.barges.value_or(1) < 1)
        refusals.push_back(out_of_range("barges", fmt::format("{}", *supposed.barges), "1 or more"));
    if (supposed.tugs.value_or(1) < 1)
        refusals.push_back(out_of_range("tugs", fmt::format("{}", *supposed.tugs), "1 or more"));
    if (supposed.haul_more_km && !logged.tow)
        refusals.push_back(
            not_in_log("longer haul",
                       "the log does not tell how fast barges are towed: no trip with its times "
                       "and position, and a station with its own",
                       "give the minutes that a round trip would take longer"));
    if (!refusals.empty()) return;
    Pace& pace = to_be.pace;
    pace.barges = static_cast<std::size_t>(supposed.barges.value_or(static_cast<int>(pace.barges)));
    pace.tugs = static_cast<std::size_t>(supposed.tugs.value_or(static_cast<int>(pace.tugs)));
    to_be.round_trip_more_min = supposed.round_trip_more_min.value_or(0);
    if (supposed.haul_more_km)
        to_be.round_trip_more_min += *supposed.haul_more_km * logged.tow->minutes_a_km();
    for (double* minutes : {&pace.round_trip->p10, &pace.round_trip->median, &pace.round_trip->p90})
        *minutes += to_be.round_trip_more_min;
    if (pace.round_trip->median <= 0) {
        refusals.push_back(out_of_range(
            "longer haul", fmt::format("a round trip would take {:.0f} min", pace.round_trip->median),
            "a haul that leaves some"));
        return;
    }
    allow(pace, pace.fill->median, pace.change->median, pace.round_trip->median);
    to_be.supposed.rate_factor *= *pace.least() / *logged.pace.least();
}

void suppose_shifts(const WorksLogged& logged, const WorksSupposed& supposed, WorksToBe& to_be,
                    Refusals& refusals) {
    if (!supposed.hours_a_day && !supposed.days_a_week) return;
    const auto within = [&](const char* where, const std::optional<double>& given, double most) {
        if (given && !(*given > 0 && *given <= most))
            refusals.push_back(out_of_range(where, fmt::format("{}", *given),
                                            most == week ? "over 0 to 7" : "over 0 to 24"));
    };
    within("shift hours a day", supposed.hours_a_day, 24);
    within("days a week", supposed.days_a_week, week);
    if (!logged.pattern) {
        refusals.push_back(not_in_log("shift pattern", "no shift was opened in the weeks that are drawn from",
                                      "log shifts, or give the factor of hours"));
        return;
    }
    ShiftPattern& pattern = *to_be.pattern;
    const auto put = [&](double& figure, const std::optional<double>& given) {
        if (!given) return;
        to_be.supposed.hours_factor *= *given / figure;
        figure = *given;
    };
    put(pattern.hours_a_day, supposed.hours_a_day);
    put(pattern.days_a_week, supposed.days_a_week);
}

void check_season(const Supposed& supposed, Day today, int days, Refusals& refusals) {
    const auto check = [&](const char* where, const std::optional<Day>& day) {
        if (!day) return;
        const int after = days_between(*day, today);
        if (after < 1 || after > days)
            refusals.push_back({"out-of-range", where, day_text(*day),
                                fmt::format("a day from {} to {}", day_text(plus_days(today, 1)),
                                            day_text(plus_days(today, days)))});
    };
    check("season opens", supposed.season_opens);
    check("season closes", supposed.season_closes);
    if (supposed.season_opens && supposed.season_opens == supposed.season_closes)
        refusals.push_back(
            {"out-of-range", "season opens", "it opens and closes on one day", "two different days"});
}

}  // namespace

std::string WorksLogged::why_no_pace() const {
    if (!pace.fill) return "no filling is logged within a shift";
    if (!pace.change) return "no change of barge is logged within a shift";
    if (!pace.round_trip) return "no round trip is logged";
    if (pace.barges == 0) return "no load names its barge";
    if (pace.tugs == 0) return "no trip names its tug";
    return {};
}

WorksLogged works_logged(const Ledger& ledger, Instant as_at, int weeks) {
    const Season& season = ledger.season();
    const auto hours = season_hours(season, as_at);
    WorksLogged logged;
    logged.pace = pace(season, hours, as_at);
    logged.tow = tow_speed(ledger, as_at);
    const auto days = work_days(ledger, as_at);
    if (days.empty()) return logged;
    const Day to = days.back().date;
    const Day from = std::max(days.front().date, plus_days(to, 1 - week * weeks));
    logged.pattern = shift_pattern(hours, season.zone, from, to);
    return logged;
}

Checked<WorksToBe> suppose(const WorksLogged& logged, const WorksSupposed& supposed) {
    WorksToBe to_be{logged.pace, logged.pattern, 0, supposed.others};
    Refusals refusals;
    suppose_plant(logged, supposed, to_be, refusals);
    suppose_shifts(logged, supposed, to_be, refusals);
    if (!refusals.empty()) return refusals;
    return to_be;
}

Checked<WorksForecast> what_if(const Ledger& ledger, ForecastAsked asked, const WorksSupposed& supposed) {
    WorksForecast answer;
    answer.logged = works_logged(ledger, asked.as_at, asked.weeks);
    Refusals refusals;
    check_season(supposed.others, ledger.season().zone.day_of(asked.as_at), asked.days, refusals);
    auto to_be = suppose(answer.logged, supposed);
    for (auto& refusal : to_be.refusals())
        refusals.push_back(std::move(refusal));
    if (!refusals.empty()) return refusals;
    answer.to_be = std::move(*to_be);
    asked.supposed = {};
    answer.as_logged = forecast(ledger, asked);
    const bool is_other = !(answer.to_be.supposed == Supposed{});
    asked.supposed = answer.to_be.supposed;
    answer.as_supposed = is_other ? forecast(ledger, asked) : answer.as_logged;
    return answer;
}

}  // namespace spoilbook
