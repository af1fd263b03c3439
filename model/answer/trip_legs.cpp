// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/trip_legs.h"

#include <algorithm>
#include <cmath>

#include "model/place/haul_distance.h"

namespace spoilbook {

namespace {

constexpr double knot_m_s = 1852.0 / 3600;
constexpr std::int64_t least_apart_ms = 10 * ms_per_second;
constexpr double least_way_m = 10;

double seconds(std::int64_t ms) {
    return static_cast<double>(ms) / static_cast<double>(ms_per_second);
}

std::span<const ReceiverFix> fixes_in(std::span<const ReceiverFix> fixes, Instant from, Instant to) {
    const auto first = std::ranges::lower_bound(fixes, from, {}, &ReceiverFix::at);
    const auto last = std::ranges::upper_bound(fixes, to, {}, &ReceiverFix::at);
    return first < last ? std::span(first, last) : std::span<const ReceiverFix>();
}

double longest_gap_s(std::span<const ReceiverFix> fixes, Instant from, Instant to) {
    double longest = 0;
    Instant before = from;
    for (const auto& fix : fixes) {
        longest = std::max(longest, seconds(fix.at - before));
        before = fix.at;
    }
    return std::max(longest, seconds(to - before));
}

/// Over fixes at least ten seconds apart.
void measure_way(std::span<const ReceiverFix> fixes, TripLeg& leg) {
    double way_m = 0, fastest = 0;
    const ReceiverFix* before = &fixes.front();
    for (const auto& fix : fixes) {
        const bool last = &fix == &fixes.back();
        const std::int64_t apart = fix.at - before->at;
        if (apart < least_apart_ms && !last) continue;
        const double piece_m = haul_distance_m(before->place, fix.place);
        way_m += piece_m;
        if (apart >= least_apart_ms) fastest = std::max(fastest, piece_m / seconds(apart) / knot_m_s);
        before = &fix;
    }
    const double took_s = seconds(fixes.back().at - fixes.front().at);
    leg.way_m = way_m;
    if (took_s > 0) leg.mean_speed_kn = way_m / took_s / knot_m_s;
    if (fastest > 0) leg.max_speed_kn = fastest;
    leg.straight_m = haul_distance_m(fixes.front().place, fixes.back().place);
    if (*leg.straight_m >= least_way_m) leg.course_deg = course_deg(fixes.front().place, fixes.back().place);
}

}  // namespace

std::vector<TripLeg> trip_legs(const Trip& trip, std::optional<Instant> opened, std::optional<Instant> shut,
                               std::span<const ReceiverFix> fixes) {
    std::vector<TripLeg> legs;
    const auto add = [&](std::string_view name, std::optional<Instant> from, std::optional<Instant> to) {
        if (!from || !to || *to < *from) return;
        const auto part = fixes_in(fixes, *from, *to);
        TripLeg leg;
        leg.leg = name;
        leg.from = *from;
        leg.to = *to;
        leg.fixes = part.size();
        leg.longest_gap_s = longest_gap_s(part, *from, *to);
        if (part.size() > 1) measure_way(part, leg);
        legs.push_back(leg);
    };
    add("out", trip.departed, opened);
    add("release", opened, shut);
    add("back", shut, trip.returned);
    return legs;
}

}  // namespace spoilbook
