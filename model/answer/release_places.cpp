// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/release_places.h"

#include <algorithm>
#include <cmath>

#include "model/place/release_way.h"

namespace spoilbook {

namespace {

/// Where one release was, step by step.
class Placing {
 public:
    Placing(const Ledger& ledger, const ReleaseView& release, const Checked<TripTrack>* track)
        : ledger_(ledger), release_(release), track_(track) {
        place_.release = &release;
        place_.ground = release.ground;
        place_.position_u_m = release.position_u_m.value_or(usual_position_u_m);
        place_.u_assumed = !release.position_u_m;
    }

    ReleasePlace run() {
        place_.place = ledger_.grounds().place_of(release_);
        if (place_.place)
            move_astern();
        else
            place_by_track();
        place_.cell = release_.cell ? release_.cell : cell_at_place();
        judge();
        return std::move(place_);
    }

 private:
    [[nodiscard]] Checked<HopperPlace> hopper() const {
        if (track_ == nullptr || !release_.opened) return Refusal{"track", "", "no position", ""};
        if (!*track_) return track_->refusals();
        return hopper_on_track(*release_.trip, (*track_)->fixes, *release_.opened, place_.position_u_m,
                               usual_track_gap_s);
    }

    void place_by_track() {
        const auto at = hopper();
        if (!at) {
            place_.why = track_ == nullptr ? "no position" : "no position; " + at.refusals().front().what;
            return;
        }
        place_.place = at->place;
        place_.position_u_m = at->u_m;
        place_.by_track = true;
    }

    /// With the receiver on a tug that tows astern, the hopper lies one line-length off in a direction that
    /// only a track can tell: without one the line counts as uncertainty.
    void move_astern() {
        const Trip& trip = *release_.trip;
        if (!towed_behind_receiver(trip) || !trip.tow_line_m) return;
        const auto at = hopper();
        if (!at) {
            place_.position_u_m = std::hypot(place_.position_u_m, *trip.tow_line_m);
            return;
        }
        const auto receiver = place_on_track((*track_)->fixes, *release_.opened, usual_track_gap_s);
        place_.place->easting_m += at->place.easting_m - receiver->easting_m;
        place_.place->northing_m += at->place.northing_m - receiver->northing_m;
        place_.position_u_m = at->u_m;
    }

    [[nodiscard]] Id cell_at_place() const {
        return place_.place ? ledger_.grounds().cell_holding(release_.ground, *place_.place) : Id{};
    }

    void judge() {
        const Area* ground = ledger_.grounds().open_ground(release_.ground);
        if (!place_.place) return;
        if (ground == nullptr) {
            place_.why = "no ground named";
            return;
        }
        place_.distance_m = signed_distance_m(*ground, *place_.place);
        place_.verdict = verdict(*place_.distance_m, place_.position_u_m);
        if (place_.verdict == PlaceVerdict::cannot_tell)
            place_.why = "nearer to the boundary than the position is sure";
        if (place_.verdict != PlaceVerdict::inside || track_ == nullptr || !*track_) return;
        const auto way = hopper_way(release_, (*track_)->fixes, usual_track_gap_s);
        place_.left_ground = way && verdict(least_signed_distance_m(*ground, *way), place_.position_u_m) ==
                                        PlaceVerdict::outside;
    }

    const Ledger& ledger_;
    const ReleaseView& release_;
    const Checked<TripTrack>* track_;
    ReleasePlace place_;
};

}  // namespace

std::vector<ReleasePlace> release_places(const Ledger& ledger, Instant as_at, TripTracks* tracks) {
    std::vector<ReleasePlace> places;
    for (const auto& release : ledger.all_releases()) {
        if (!release.ended || *release.ended > as_at || !release.counts) continue;
        const auto* track = tracks == nullptr ? nullptr : tracks->of(*release.trip);
        places.push_back(Placing(ledger, release, track).run());
    }
    std::stable_sort(places.begin(), places.end(), [](const ReleasePlace& a, const ReleasePlace& b) {
        return *a.release->ended < *b.release->ended;
    });
    return places;
}

}  // namespace spoilbook
