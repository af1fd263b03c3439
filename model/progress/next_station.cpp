// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/next_station.h"

#include <cmath>
#include <numbers>

namespace spoilbook {

namespace {

constexpr double usual_step_m = 5;
constexpr double longest_step_m = 10;
const double most_off_heading = std::sin(15 * std::numbers::pi / 180);

bool placed(const Station& station) {
    return station.easting_m && station.northing_m && station.heading_deg;
}

/// Metres that the pontoon went along the heading; nothing where it went elsewhere than along its lane.
std::optional<double> step_between(const Station& before, const Station& after) {
    if (before.claim != after.claim) return std::nullopt;
    const double east = *after.easting_m - *before.easting_m;
    const double north = *after.northing_m - *before.northing_m;
    const double heading = *after.heading_deg * std::numbers::pi / 180;
    const double along = east * std::sin(heading) + north * std::cos(heading);
    const double across = east * std::cos(heading) - north * std::sin(heading);
    const double far = std::hypot(along, across);
    if (far < 0.5 || far > longest_step_m || std::abs(across) > far * most_off_heading) return std::nullopt;
    return along;
}

}  // namespace

std::optional<NextStation> next_station(const Season& season) {
    const Station* last = nullptr;
    const Station* before = nullptr;
    for (const auto& station : season.stations.rows()) {
        if (!station.spuds_down) continue;
        if (last == nullptr || !(*station.spuds_down < *last->spuds_down)) {
            before = last;
            last = &station;
        }
    }
    if (last == nullptr || !placed(*last)) return std::nullopt;
    double step = -usual_step_m;
    if (before != nullptr && placed(*before)) step = step_between(*before, *last).value_or(step);
    const double heading = *last->heading_deg * std::numbers::pi / 180;
    return NextStation{*last->easting_m + step * std::sin(heading),
                       *last->northing_m + step * std::cos(heading), *last->heading_deg, last->claim, step};
}

}  // namespace spoilbook
