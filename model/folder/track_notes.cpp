// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "model/folder/regular_file.h"
#include "model/folder/season_view.h"
#include "model/folder/track_reader.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

/// From the first to the last time that is logged of a trip; no end while she is not alongside.
struct Away {
    std::optional<Instant> from, to;

    void reach(const std::optional<Instant>& at) {
        if (!at) return;
        from = from ? std::min(*from, *at) : *at;
        to = to ? std::max(*to, *at) : *at;
    }
};

Away away_on(const SeasonView& season, const Trip& trip) {
    Away away;
    for (const auto& at : {trip.departed, trip.release_start, trip.release_end, trip.returned})
        away.reach(at);
    for (const auto& seen : season.releases.all()) {
        if (seen.record.trip != trip.id) continue;
        for (const auto& at : {seen.record.doors_open, seen.record.empty, seen.record.doors_shut})
            away.reach(at);
    }
    if (!trip.returned) away.to.reset();
    return away;
}

/// The fixes of a file that came with the folder; its faults were noted when it was read first.
std::vector<ReceiverFix> fixes_of(const MatchBoard& board, const Track& track, const Zone& zone,
                                  const std::optional<Instant>& near) {
    for (const GivenFile& file : board.contents.files) {
        if (file.digest != track.digest) continue;
        const auto bytes = read_regular_file(file.path, file.name, largest_file_bytes);
        if (!bytes) return {};
        auto reading = read_track(*bytes, file.name, zone, near);
        return reading ? std::move(reading->fixes) : std::vector<ReceiverFix>{};
    }
    return {};
}

}  // namespace

void note_tracks(const MatchBoard& board, const SeasonView& season, NoteDown& notes) {
    const Sight<Track> tracks(board);
    const auto named = Zone::named(board.contents.zone);
    const Zone zone = named ? *named : Zone::utc();
    for (const auto& seen : tracks.all()) {
        const auto* trip = seen.fresh() ? season.trips.find(seen.record.trip) : nullptr;
        if (trip == nullptr) continue;
        const Away away = away_on(season, trip->record);
        if (!away.from) continue;
        const auto fixes = fixes_of(board, seen.record, zone, away.from);
        if (fixes.empty()) continue;
        const Instant first = fixes.front().at, last = fixes.back().at;
        if (*away.from <= last && (!away.to || first <= *away.to)) continue;
        notes.push_back(
            {tracks.place(seen),
             fmt::format("none of the track is of the trip: it runs from {} to {}, trip {} from "
                         "{} to {}; is it another trip's?",
                         instant_text(first, zone), instant_text(last, zone), trip->record.trip,
                         instant_text(*away.from, zone), away.to ? instant_text(*away.to, zone) : "now")});
    }
}

}  // namespace spoilbook
