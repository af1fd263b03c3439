// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "model/place/track.h"

namespace spoilbook {
namespace {

constexpr double precision_m = 0.01;

struct End {
    EastNorth place;
    double distance;
};

struct Leg {
    End from, to;

    [[nodiscard]] double length() const {
        return std::hypot(to.place.easting_m - from.place.easting_m,
                          to.place.northing_m - from.place.northing_m);
    }
    /// Distance changes by no more than a metre a metre, from either end.
    [[nodiscard]] double bound() const { return (from.distance + to.distance - length()) / 2; }
};

}  // namespace

double least_along(std::span<const EastNorth> way, const std::function<double(EastNorth)>& distance_m) {
    if (way.empty() || !std::ranges::all_of(way, [](EastNorth p) { return is_known(p); })) {
        return std::numeric_limits<double>::quiet_NaN();
    }
    const auto end = [&](EastNorth place) { return End{place, distance_m(place)}; };
    std::vector<Leg> open;
    End before = end(way.front());
    double least = before.distance;
    for (const EastNorth& place : way.subspan(1)) {
        const End here = end(place);
        least = std::min(least, here.distance);
        open.push_back({before, here});
        before = here;
    }
    while (!open.empty()) {
        const Leg leg = open.back();
        open.pop_back();
        if (!(leg.bound() < least - precision_m)) continue;
        const End middle = end({(leg.from.place.easting_m + leg.to.place.easting_m) / 2,
                                (leg.from.place.northing_m + leg.to.place.northing_m) / 2});
        least = std::min(least, middle.distance);
        open.push_back({leg.from, middle});
        open.push_back({middle, leg.to});
    }
    return least;
}

double least_signed_distance_m(const Area& area, std::span<const EastNorth> way) {
    return least_along(way, [&](EastNorth place) { return signed_distance_m(area, place); });
}

}  // namespace spoilbook
