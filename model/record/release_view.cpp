// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/release_view.h"

#include <algorithm>

namespace spoilbook {

namespace {

/// Back alongside with the load, or landed ashore: nothing was released, whatever times were logged.
bool released_at_sea(const Trip& trip) {
    return trip.outcome != "returned_loaded" && trip.outcome != "landed";
}

/// An ordinary trip has a release when anything of one is logged, or its outcome says so.
bool has_release(const Trip& trip) {
    return trip.release_start || trip.release_end || trip.outcome == "released" || trip.outcome == "part" ||
           trip.outcome == "emergency";
}

/// What each release without a share takes: the rest that the others of its trip leave, evenly.
double blank_share(const std::vector<const Release*>& rows) {
    double given = 0;
    int blank = 0;
    for (const auto* row : rows) {
        given += row->share.value_or(0);
        if (!row->share) ++blank;
    }
    return blank == 0 ? 0 : std::max(0.0, 1 - given) / blank;
}

}  // namespace

bool ReleaseView::happened_by(Instant as_at) const {
    const auto at = ended ? ended : opened ? opened : trip->departed;
    return at && *at <= as_at;
}

ReleaseView release_of_trip(const Trip& trip, const Load* load) {
    ReleaseView view;
    view.trip = &trip;
    view.load = load;
    view.opened = trip.release_start;
    view.ended = trip.release_end;
    view.shut = trip.release_end;
    view.ground = trip.ground;
    view.cell = trip.cell;
    view.lat = trip.lat;
    view.lon = trip.lon;
    view.position_u_m = trip.position_u_m;
    view.position_from = trip.position_from;
    view.counts = released_at_sea(trip);
    return view;
}

ReleaseView release_of_row(const Trip& trip, const Load* load, const Release& row, double blank_share) {
    ReleaseView view;
    view.trip = &trip;
    view.load = load;
    view.row = &row;
    view.opened = row.doors_open;
    view.ended = row.empty ? row.empty : row.doors_shut;
    view.shut = row.doors_shut ? row.doors_shut : row.empty;
    view.ground = row.ground ? row.ground : trip.ground;
    view.cell = row.cell;
    view.lat = row.lat;
    view.lon = row.lon;
    view.position_u_m = row.position_u_m;
    view.position_from = row.position_from;
    view.share = row.share.value_or(blank_share);
    view.counts = released_at_sea(trip);
    return view;
}

std::vector<ReleaseView> releases_of(const Season& season) {
    std::unordered_map<Id, std::vector<const Release*>> rows_of;
    for (const auto& row : season.releases.rows())
        rows_of[row.trip].push_back(&row);
    std::vector<ReleaseView> views;
    views.reserve(season.trips.size());
    for (const auto& trip : season.trips.rows()) {
        const Load* load = season.loads.find(trip.load);
        const auto rows = rows_of.find(trip.id);
        if (rows != rows_of.end()) {
            const double rest = blank_share(rows->second);
            for (const auto* row : rows->second)
                views.push_back(release_of_row(trip, load, *row, rest));
        } else if (has_release(trip)) {
            views.push_back(release_of_trip(trip, load));
        }
    }
    return views;
}

}  // namespace spoilbook
