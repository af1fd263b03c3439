// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "model/folder/nearest.h"
#include "model/folder/season_view.h"

namespace spoilbook {

namespace {

/// Common practice, no source: sheets are kept to the minute, and two entries may each be off by some.
constexpr std::int64_t closes_within_ms = 5 * ms_per_minute;

using Periods = std::unordered_map<Id, std::vector<Period>>;

template <class R>
void gather(const Sight<R>& sight, Id R::*shift, std::optional<Instant> R::*start,
            std::optional<Instant> R::*end, Periods& periods) {
    for (const Seen<R>& seen : sight.all()) {
        const R& record = seen.record;
        if (record.*start && record.*end)
            periods[record.*shift].push_back({*(record.*start), *(record.*end)});
    }
}

/// How much of `whole` the periods cover; those that overlap count once.
std::int64_t covered_ms(std::vector<Period> periods, const Period& whole) {
    std::sort(periods.begin(), periods.end());
    std::int64_t covered = 0;
    Instant reached = whole.from;
    for (const Period& period : periods) {
        const Instant from = std::max(period.from, reached);
        const Instant to = std::min(period.to, whole.to);
        if (to <= from) continue;
        covered += to - from;
        reached = to;
    }
    return covered;
}

void note_closing(const SeasonView& season, const Seen<Shift>& seen, const Periods& periods,
                  NoteDown& notes) {
    const Shift& shift = seen.record;
    const auto found = periods.find(shift.id);
    if (!shift.start || !shift.end || found == periods.end()) return;
    const Period whole{*shift.start, *shift.end};
    const std::int64_t open = (whole.to - whole.from) - covered_ms(found->second, whole);
    if (open > closes_within_ms) {
        notes.push_back({season.shifts.place(seen),
                         fmt::format("shift {} does not close: {} minutes are neither station nor delay",
                                     shift.shift, open / ms_per_minute)});
    }
    for (const Period& period : found->second) {
        const std::int64_t outside = std::max(whole.from - period.from, period.to - whole.to);
        if (outside <= closes_within_ms) continue;
        notes.push_back(
            {season.shifts.place(seen),
             fmt::format("shift {} does not close: a station or delay reaches {} minutes beyond it",
                         shift.shift, outside / ms_per_minute)});
        return;
    }
}

bool is_listed_cause(const std::string& cause) {
    const auto& listed = delay_causes();
    const bool exact = std::any_of(listed.begin(), listed.end(),
                                   [&](const std::string& one) { return edit_distance(one, cause, 0) == 0; });
    return exact || cause.starts_with("other") || cause.starts_with("Other");
}

void note_causes(const SeasonView& season, NoteDown& notes) {
    std::map<std::string, std::pair<const Seen<Delay>*, std::size_t>> strange;
    for (const Seen<Delay>& seen : season.delays.all()) {
        const std::string& cause = seen.record.cause;
        if (!seen.fresh() || cause.empty() || is_listed_cause(cause)) continue;
        auto& [first, count] = strange[cause];
        if (count++ == 0) first = &seen;
    }
    for (const auto& [cause, found] : strange) {
        const auto& [first, count] = found;
        const std::string more = count > 1 ? fmt::format(", {} times", count) : "";
        notes.push_back({season.delays.place(*first),
                         fmt::format("the cause \"{}\" is not on the list of causes{}", cause, more)});
    }
}

}  // namespace

void note_shifts(const SeasonView& season, NoteDown& notes) {
    Periods periods;
    if (season.shifts.any_fresh()) {
        gather(season.stations, &Station::shift, &Station::spuds_down, &Station::spuds_up, periods);
        gather(season.delays, &Delay::shift, &Delay::start, &Delay::end, periods);
    }
    for (const Seen<Shift>& seen : season.shifts.all()) {
        if (!seen.fresh()) continue;
        const Shift& shift = seen.record;
        if (shift.signed_at && shift.end && *shift.signed_at < *shift.end)
            notes.push_back(
                {season.shifts.place(seen), fmt::format("shift {} is signed before it ended", shift.shift)});
        note_closing(season, seen, periods, notes);
    }
    note_causes(season, notes);
}

}  // namespace spoilbook
