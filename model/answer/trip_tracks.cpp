// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/trip_tracks.h"

#include "model/folder/track_reader.h"

namespace spoilbook {

TripTracks::TripTracks(const Season& season, Load load) : season_(season), load_(std::move(load)) {
    if (season.harbour.epsg) {
        const auto crs = Crs::from_epsg(static_cast<int>(*season.harbour.epsg));
        if (crs) crs_ = *crs;
    }
    for (const auto& row : season.tracks.rows())
        rows_.emplace(row.trip, &row);
}

const Checked<TripTrack>* TripTracks::of(const Trip& trip) {
    const auto row = rows_.find(trip.id);
    if (row == rows_.end()) return nullptr;
    const auto found = read_.find(trip.id);
    if (found != read_.end()) return &found->second;
    return &read_.emplace(trip.id, read(*row->second, trip)).first->second;
}

Checked<TripTrack> TripTracks::read(const Track& row, const Trip& trip) const {
    const auto bytes = load_(row.digest);
    if (!bytes || !crs_)
        return Refusal{"track", row.file, bytes ? "the book has no map" : "the track's file is not at hand",
                       "bring the file, or give harbour.json an EPSG code"};
    const auto near = trip.departed ? trip.departed : trip.release_start;
    auto reading = read_track(*bytes, row.file, season_.zone, near);
    if (!reading) return reading.refusals();
    TripTrack track;
    track.reading = std::move(*reading);
    std::vector<LonLat> places;
    for (const auto& fix : track.reading.fixes)
        places.push_back(fix.place);
    const auto on_map = crs_->project(places);
    for (std::size_t i = 0; i < on_map.size(); ++i) {
        if (is_known(on_map[i])) track.fixes.push_back({track.reading.fixes[i].at, on_map[i]});
    }
    return track;
}

}  // namespace spoilbook
