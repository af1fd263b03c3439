// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "model/folder/season_view.h"

namespace spoilbook {

namespace {

template <class R>
struct Span {
    Id of;  ///< the plant that cannot be in two at once
    Instant start, end;
    const Seen<R>* seen;
};

/// What a kind's spans are: whose they are, from when to when, and how one is called.
template <class R>
struct Spans {
    std::function<Id(const R&)> of;
    std::optional<Instant> R::*start;
    std::optional<Instant> R::*end;
    std::string R::*label;
    std::string word;
};

template <class R>
void note_spans(const Sight<R>& sight, const Spans<R>& how, NoteDown& notes) {
    if (!sight.any_fresh()) return;
    std::vector<Span<R>> spans;
    for (const Seen<R>& seen : sight.all()) {
        const auto& start = seen.record.*how.start;
        const auto& end = seen.record.*how.end;
        const Id of = how.of(seen.record);
        if (start && end && !of.is_nil()) spans.push_back({of, *start, *end, &seen});
    }
    std::stable_sort(spans.begin(), spans.end(), [](const auto& a, const auto& b) {
        return std::tie(a.of, a.start) < std::tie(b.of, b.start);
    });
    const Span<R>* longest = nullptr;
    for (const Span<R>& span : spans) {
        if (longest != nullptr && longest->of == span.of && span.start < longest->end) {
            const Span<R>& here = span.seen->fresh() ? span : *longest;
            const Span<R>& other = span.seen->fresh() ? *longest : span;
            if (here.seen->fresh()) {
                const std::string& name = other.seen->record.*how.label;
                notes.push_back({sight.place(*here.seen), fmt::format("overlaps in time with {} {}", how.word,
                                                                      name.empty() ? "of the same" : name)});
            }
        }
        if (longest == nullptr || longest->of != span.of || longest->end < span.end) longest = &span;
    }
}

}  // namespace

void note_overlaps(const SeasonView& season, NoteDown& notes) {
    note_spans<Shift>(season.shifts,
                      {[](const Shift& shift) { return shift.dredger; }, &Shift::start, &Shift::end,
                       &Shift::shift, "shift"},
                      notes);
    const auto dredger_of = [&](const Station& station) {
        const auto* shift = season.shifts.find(station.shift);
        return shift == nullptr ? Id{} : shift->record.dredger;
    };
    note_spans<Station>(season.stations,
                        {dredger_of, &Station::spuds_down, &Station::spuds_up, &Station::station, "station"},
                        notes);
    note_spans<Delay>(season.delays,
                      {[](const Delay& delay) { return delay.shift; }, &Delay::start, &Delay::end,
                       &Delay::cause, "the delay"},
                      notes);
    note_spans<Load>(season.loads,
                     {[](const Load& load) { return load.barge; }, &Load::loading_start, &Load::loading_end,
                      &Load::load, "load"},
                     notes);
    note_spans<Trip>(
        season.trips,
        {[](const Trip& trip) { return trip.tug; }, &Trip::departed, &Trip::returned, &Trip::trip, "trip"},
        notes);
}

}  // namespace spoilbook
