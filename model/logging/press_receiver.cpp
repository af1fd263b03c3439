// SPDX-License-Identifier: GPL-3.0-or-later
// What a receiver adds to the presses of a trip.
#include "model/logging/newest_release.h"
#include "model/logging/press.h"
#include "model/logging/press_words.h"

namespace spoilbook {

namespace {

/// Seven decimals of a degree are a centimetre: finer than any receiver here.
constexpr int degree_decimals = 7;

bool says_place(const LogLine& line) {
    for (const auto& input : line.inputs) {
        if (input.column == "lat" || input.column == "lon") return true;
    }
    return false;
}

/// The record that has the place: the press's release, else the newest one, else the trip itself.
LogLine line_of_place(const Season& season, const Trip& trip, const LogLines& pressed) {
    for (const LogLine& line : pressed) {
        if (line.kind == &kind("release")) return {line.kind, line.label, {}};
    }
    if (const Release* release = newest_release(season, trip))
        return {&kind("release"), release->release, {}};
    return {&kind("trip"), trip.trip, {}};
}

bool has_place(const Season& season, const Trip& trip, const LogLine& at, const LogLines& pressed) {
    for (const LogLine& line : pressed) {
        if (line.label == at.label && says_place(line)) return true;
    }
    if (at.kind == &kind("trip")) return trip.lat.has_value() || trip.lon.has_value();
    const Release* release = newest_release(season, trip);
    return release != nullptr && release->release == at.label && (release->lat || release->lon);
}

}  // namespace

bool first_of_release(const Season& season, const Trip& trip) {
    const Release* release = newest_release(season, trip);
    if (release == nullptr) return !trip.release_start && !trip.release_end;
    return !release->doors_open && !release->empty && !release->doors_shut;
}

LogLines place_release(const Press& press, const Trip& trip, const LogLines& pressed,
                       const ReceiverPlace& receiver) {
    LogLine line = line_of_place(press.season, trip, pressed);
    if (has_place(press.season, trip, line, pressed)) return {};
    PressWords::number(line, "lat", receiver.lat_deg, degree_decimals);
    PressWords::number(line, "lon", receiver.lon_deg, degree_decimals);
    PressWords::number(line, "position_u_m", receiver.u_m, 1);
    PressWords::text(line, "position_from", "receiver");
    LogLines lines{line};
    if (trip.receiver_on.empty() && !receiver.receiver_on.empty())
        lines.push_back({&kind("trip"), trip.trip, {{"receiver_on", receiver.receiver_on}}});
    return lines;
}

}  // namespace spoilbook
