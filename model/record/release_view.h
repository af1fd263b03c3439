// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/season.h"

namespace spoilbook {

/// One release as every calculation sees it, whether it stands in trips.csv (the one release of an ordinary
/// trip) or in releases.csv, which takes over where it has rows for the trip.
struct ReleaseView {
    const Trip* trip = nullptr;
    const Load* load = nullptr;     ///< null where the trip names none
    const Release* row = nullptr;   ///< null for the release of an ordinary trip
    std::optional<Instant> opened;  ///< doors open
    std::optional<Instant> ended;   ///< empty, else doors shut: the instant a release counts at
    std::optional<Instant> shut;
    Id ground, cell;  ///< as logged
    std::optional<double> lat, lon, position_u_m;
    std::string position_from;
    double share = 1;    ///< of the load; a blank share is 1 or what the trip's others leave
    bool counts = true;  ///< false where the outcome says that nothing was released at sea

    /// The release's own number, or the trip's.
    [[nodiscard]] const std::string& label() const { return row != nullptr ? row->release : trip->trip; }
    /// The same with what it is a number of: "trip T-7", "release R-12".
    [[nodiscard]] std::string named() const { return (row != nullptr ? "release " : "trip ") + label(); }
    /// It had happened by then: ended, or where no end is recorded, opened (or else departed).
    [[nodiscard]] bool happened_by(Instant as_at) const;
    /// It counts in figures at `as_at`: both ends of time included.
    [[nodiscard]] bool counted_by(Instant as_at) const { return counts && ended && *ended <= as_at; }
};

/// Every release of the season, in the order of its trips. Points into `season`, which must outlive it.
std::vector<ReleaseView> releases_of(const Season& season);

/// The one release of an ordinary trip. Points into both.
ReleaseView release_of_trip(const Trip& trip, const Load* load);
/// One of a trip's releases in a row of its own; `blank_share` is what it takes where it names no share.
/// Points into all three.
ReleaseView release_of_row(const Trip& trip, const Load* load, const Release& row, double blank_share);

}  // namespace spoilbook
