// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/tow_speed.h"

#include <algorithm>

#include "model/place/haul_distance.h"
#include "model/progress/pace.h"

namespace spoilbook {

namespace {

/// Where the load was dug: at the first of its stations whose position is logged.
std::optional<LonLat> dug_at(const Ledger& ledger, const Load& load) {
    const auto& crs = ledger.grounds().crs();
    if (!crs) return std::nullopt;
    for (const Tally* tally : ledger.loads().tallies_of(load.id)) {
        const Station* station = ledger.season().stations.find(tally->station);
        if (station == nullptr || !station->easting_m || !station->northing_m) continue;
        const LonLat place = crs->unproject({*station->easting_m, *station->northing_m});
        if (is_known(place)) return place;
    }
    return std::nullopt;
}

/// The way there, and when doors opened first and closed last.
struct Haul {
    const Trip* trip = nullptr;
    double km = 0;
    Instant opened, shut;
};

std::optional<Haul> haul_of(const Ledger& ledger, const ReleaseView& release, Instant as_at) {
    const Trip& trip = *release.trip;
    if (release.load == nullptr || !release.opened || !release.lat || !release.lon) return std::nullopt;
    if (!trip.departed || !trip.returned || *trip.returned > as_at) return std::nullopt;
    const auto shut = release.shut ? release.shut : release.ended;
    if (!shut || *release.opened <= *trip.departed || *trip.returned <= *shut) return std::nullopt;
    const auto from = dug_at(ledger, *release.load);
    if (!from) return std::nullopt;
    const double km = haul_distance_m(*from, {*release.lat, *release.lon}) / 1000;
    if (!(km > 0)) return std::nullopt;
    return Haul{&trip, km, *release.opened, *shut};
}

double km_h(double km, Instant from, Instant to) {
    return km * static_cast<double>(ms_per_hour) / static_cast<double>(to - from);
}

}  // namespace

std::optional<TowSpeed> tow_speed(const Ledger& ledger, Instant as_at) {
    std::vector<Haul> hauls;
    for (const auto& release : ledger.all_releases()) {
        // Of several releases the first is what the way out ends with; one trip has one speed.
        if (!hauls.empty() && hauls.back().trip == release.trip) {
            const auto shut = release.shut ? release.shut : release.ended;
            if (shut) hauls.back().shut = std::max(hauls.back().shut, *shut);
            continue;
        }
        if (const auto haul = haul_of(ledger, release, as_at)) hauls.push_back(*haul);
    }
    std::erase_if(hauls, [](const Haul& haul) { return *haul.trip->returned <= haul.shut; });
    std::stable_sort(hauls.begin(), hauls.end(),
                     [](const Haul& a, const Haul& b) { return *a.trip->departed < *b.trip->departed; });
    if (hauls.size() > pace_of_newest)
        hauls.erase(hauls.begin(), hauls.end() - static_cast<std::ptrdiff_t>(pace_of_newest));
    std::vector<double> out;
    std::vector<double> home;
    for (const auto& haul : hauls) {
        out.push_back(km_h(haul.km, *haul.trip->departed, haul.opened));
        home.push_back(km_h(haul.km, haul.shut, *haul.trip->returned));
    }
    const auto out_spread = spread_of(out);
    const auto home_spread = spread_of(home);
    if (!out_spread || !home_spread) return std::nullopt;
    return TowSpeed{*out_spread, *home_spread};
}

}  // namespace spoilbook
