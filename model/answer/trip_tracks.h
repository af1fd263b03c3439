// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <unordered_map>

#include "model/place/crs.h"
#include "model/place/track.h"
#include "model/place/track_reading.h"
#include "model/record/season.h"

namespace spoilbook {

/// A trip's track as its file has it, and on the map.
struct TripTrack {
    TrackReading reading;
    std::vector<Fix> fixes;  ///< those that the map can hold, in the book's CRS
};

/// The tracks of a season's trips, each read from the book when it is first asked for. The season must
/// outlive it; one thread at a time.
class TripTracks {
 public:
    /// The bytes of a stored file by its digest; nothing where they are not at hand.
    using Load = std::function<std::optional<std::string>(const std::string& digest)>;

    TripTracks(const Season& season, Load load);

    /// Null where the trip has no track. Refused where its file is not at hand or does not read.
    const Checked<TripTrack>* of(const Trip& trip);

 private:
    [[nodiscard]] Checked<TripTrack> read(const Track& row, const Trip& trip) const;

    const Season& season_;
    Load load_;
    std::optional<Crs> crs_;
    std::unordered_map<Id, const Track*> rows_;
    std::unordered_map<Id, Checked<TripTrack>> read_;
};

}  // namespace spoilbook
