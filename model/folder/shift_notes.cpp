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

/// The pontoon stays down over a change of shift: a station counts for every shift of its dredger.
Periods stations_by_dredger(const SeasonView& season) {
    Periods periods;
    for (const auto& seen : season.stations.all()) {
        const Station& station = seen.record;
        const auto* shift = season.shifts.find(station.shift);
        if (shift != nullptr && station.spuds_down && station.spuds_up)
            periods[shift->record.dredger].push_back({*station.spuds_down, *station.spuds_up});
    }
    for (auto& [dredger, spans] : periods)
        std::sort(spans.begin(), spans.end());
    return periods;
}

Periods delays_by_shift(const SeasonView& season) {
    Periods periods;
    for (const auto& seen : season.delays.all()) {
        const Delay& delay = seen.record;
        if (delay.start && delay.end) periods[delay.shift].push_back({*delay.start, *delay.end});
    }
    return periods;
}

/// Of sorted spans those that meet `whole`; a span that is longer than ten days is not looked for.
void add_meeting(const std::vector<Period>& spans, const Period& whole, std::vector<Period>& into) {
    const Period from{whole.from - 10 * ms_per_day, whole.from};
    for (auto span = std::lower_bound(spans.begin(), spans.end(), from);
         span != spans.end() && span->from < whole.to; ++span) {
        if (whole.from < span->to) into.push_back(*span);
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

class ClosingNotes {
 public:
    ClosingNotes(const SeasonView& season, NoteDown& notes)
        : season_(season),
          notes_(notes),
          stations_(stations_by_dredger(season)),
          delays_(delays_by_shift(season)) {}

    void look_at(const Seen<Shift>& seen) {
        const Shift& shift = seen.record;
        if (!shift.start || !shift.end) return;
        const Period whole{*shift.start, *shift.end};
        const auto delays = delays_.find(shift.id);
        std::vector<Period> periods = delays == delays_.end() ? std::vector<Period>{} : delays->second;
        for (const Period& delay : periods) {
            const std::int64_t outside = std::max(whole.from - delay.from, delay.to - whole.to);
            if (outside <= closes_within_ms) continue;
            note(seen, fmt::format("a delay reaches {} minutes beyond it", outside / ms_per_minute));
            break;
        }
        // Where no station of the dredger is recorded at all, nobody can say how long she dug.
        const auto stations = stations_.find(shift.dredger);
        if (stations == stations_.end()) return;
        add_meeting(stations->second, whole, periods);
        const std::int64_t open = (whole.to - whole.from) - covered_ms(periods, whole);
        if (open > closes_within_ms)
            note(seen, fmt::format("{} minutes are neither station nor delay", open / ms_per_minute));
    }

 private:
    void note(const Seen<Shift>& seen, const std::string& what) {
        notes_.push_back({season_.shifts.place(seen),
                          fmt::format("shift {} does not close: {}", seen.record.shift, what)});
    }

    const SeasonView& season_;
    NoteDown& notes_;
    Periods stations_, delays_;
};

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
    ClosingNotes closing(season, notes);
    for (const Seen<Shift>& seen : season.shifts.all()) {
        if (!seen.fresh()) continue;
        const Shift& shift = seen.record;
        if (shift.signed_at && shift.end && *shift.signed_at < *shift.end)
            notes.push_back(
                {season.shifts.place(seen), fmt::format("shift {} is signed before it ended", shift.shift)});
        closing.look_at(seen);
    }
    note_causes(season, notes);
}

}  // namespace spoilbook
