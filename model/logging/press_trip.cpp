// SPDX-License-Identifier: GPL-3.0-or-later
// Presses of a trip: the tug master's part of the barge desk.
#include "model/logging/newest_release.h"
#include "model/logging/press.h"
#include "model/logging/press_words.h"

namespace spoilbook {

namespace {

LogLines on_trip(const Press& press, const Trip& trip, const char* column) {
    return {{&kind("trip"), trip.trip, {{column, PressWords(press).now()}}}};
}

LogLines on_release(const Press& press, const Release& release, const char* column) {
    return {{&kind("release"), release.release, {{column, PressWords(press).now()}}}};
}

LogLine begun_release(PressWords& words, const Season& season, const Trip& trip) {
    LogLine line{&kind("release"), words.fresh(kind("release")), {{"trip", trip.trip}}};
    PressWords::text(line, "ground", words.label(season.grounds, trip.ground, &Ground::ground));
    PressWords::text(line, "cell", words.label(season.cells, trip.cell, &Cell::cell));
    PressWords::number(line, "lat", trip.lat);
    PressWords::number(line, "lon", trip.lon);
    PressWords::number(line, "position_u_m", trip.position_u_m);
    PressWords::text(line, "position_from", trip.position_from);
    return line;
}

}  // namespace

LogLines cast_off(const Press& press, const Load* load, const Id& tug) {
    PressWords words(press);
    LogLine line{&kind("trip"), words.fresh(kind("trip")), {}};
    if (load != nullptr) PressWords::text(line, "load", load->load);
    PressWords::text(line, "tug", words.label(press.season.tugs, tug, &Tug::name));
    // Where the book has one ground alone she is bound for it; who knows better writes another.
    const auto& grounds = press.season.grounds.rows();
    if (grounds.size() == 1) PressWords::text(line, "ground", grounds.front().ground);
    line.inputs.push_back({"departed", words.now()});
    return {line};
}

LogLines doors_open(const Press& press, const Trip& trip) {
    const Release* release = newest_release(press.season, trip);
    if (release == nullptr && (trip.release_start || trip.release_end))
        return trip.release_start ? LogLines{} : on_trip(press, trip, "release_start");
    if (release != nullptr && !release->doors_open && !release->empty && !release->doors_shut)
        return on_release(press, *release, "doors_open");
    PressWords words(press);
    LogLine line = begun_release(words, press.season, trip);
    line.inputs.push_back({"doors_open", words.now()});
    return {line};
}

LogLines empty(const Press& press, const Trip& trip) {
    if (const Release* release = newest_release(press.season, trip); release != nullptr) {
        LogLines lines = on_release(press, *release, "empty");
        lines.front().inputs.push_back({"emptied", "yes"});
        return lines;
    }
    return on_trip(press, trip, "release_end");
}

LogLines doors_shut(const Press& press, const Trip& trip) {
    if (const Release* release = newest_release(press.season, trip); release != nullptr)
        return on_release(press, *release, "doors_shut");
    return trip.release_end ? LogLines{} : on_trip(press, trip, "release_end");
}

LogLines alongside(const Press& press, const Trip& trip) {
    return on_trip(press, trip, "returned");
}

LogLines turned_back(const Press& press, const Trip& trip) {
    (void)press;
    return {{&kind("trip"), trip.trip, {{"outcome", "returned_loaded"}}}};
}

}  // namespace spoilbook
