// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/trip.h"

namespace spoilbook {

template <>
const Definition<Trip>& definition() {
    static const auto d =
        Definition<Trip>("trip", "trips.csv", "casting off to alongside again")
            .label("trip", &Trip::trip, "its number")
            .ref("load", &Trip::load, "load", "the load she carried")
            .ref("tug", &Trip::tug, "tug", "the tug")
            .instant("departed", &Trip::departed, "cast off")
            .instant("release_start", &Trip::release_start, "doors open")
            .instant("release_end", &Trip::release_end, "empty, else doors shut")
            .instant("returned", &Trip::returned, "alongside again")
            .ref("ground", &Trip::ground, "ground", "the disposal ground")
            .ref("cell", &Trip::cell, "cell", "the cell", "ground")
            .number("lat", &Trip::lat, "°", -90, 90, "where the doors opened, WGS 84")
            .on(Axis::latitude)
            .number("lon", &Trip::lon, "°", -180, 180, "where the doors opened, WGS 84; also 174°55.678'E")
            .on(Axis::longitude)
            .number("position_u_m", &Trip::position_u_m, "m", 0, 100000,
                    "its standard uncertainty, 68 %; blank: 10")
            .number("wave_height_m", &Trip::wave_height_m, "m", 0, 30, "significant wave height")
            .text("remarks", &Trip::remarks, "remarks")
            .choice("outcome", &Trip::outcome, {"released", "part", "returned_loaded", "emergency", "landed"},
                    "blank: released if it has a release end")
            .text("tug_master", &Trip::tug_master, "who had the tug")
            .choice("tow", &Trip::tow, {"astern", "alongside", "pushed"}, "how she was towed")
            .number("tow_line_m", &Trip::tow_line_m, "m", 0, 5000, "length of the tow line")
            .choice("receiver_on", &Trip::receiver_on, {"tug", "barge"}, "where the receiver stood")
            .text("source", &Trip::source, "where the entry comes from")
            .choice("position_from", &Trip::position_from, {"receiver", "deck log", "declared"},
                    "where the position is known from; declared: not recorded, and said so")
            .added()
            .ordered("departed", "returned")
            .ordered("release_start", "release_end");
    return d;
}

template <>
const Definition<Release>& definition() {
    static const auto d =
        Definition<Release>("release", "releases.csv", "one opening of the hopper")
            .label("release", &Release::release, "its number")
            .ref("trip", &Release::trip, "trip", "the trip")
            .instant("doors_open", &Release::doors_open, "doors open")
            .instant("empty", &Release::empty, "empty")
            .instant("doors_shut", &Release::doors_shut, "doors shut")
            .ref("ground", &Release::ground, "ground", "the disposal ground; blank: the trip's")
            .ref("cell", &Release::cell, "cell", "the cell", "ground")
            .number("lat", &Release::lat, "°", -90, 90, "where the doors opened, WGS 84")
            .on(Axis::latitude)
            .number("lon", &Release::lon, "°", -180, 180, "where the doors opened, WGS 84; also 174°55.678'E")
            .on(Axis::longitude)
            .number("position_u_m", &Release::position_u_m, "m", 0, 100000,
                    "its standard uncertainty, 68 %; blank: 10")
            .choice("position_from", &Release::position_from, {"receiver", "deck log", "declared"},
                    "where the position is known from; declared: not recorded, and said so")
            .number("share", &Release::share, "", 0, 1,
                    "share of the load; blank: 1, or what the trip's others leave")
            .text("emptied", &Release::emptied, "whether she came empty")
            .number("left_m3", &Release::left_m3, "m³", 0, 20000, "spoil that stayed in the hopper")
            .text("why", &Release::why, "why")
            .ordered("doors_open", "empty")
            .ordered("doors_open", "doors_shut");
    return d;
}

template <>
const Definition<Watch>& definition() {
    static const auto d =
        Definition<Watch>("watch", "watches.csv", "a watch kept before and during a release")
            .own_label("id", &Watch::watch)
            .ref("trip", &Watch::trip, "trip", "the trip")
            .text("observer", &Watch::observer, "who kept it")
            .instant("start", &Watch::start, "from")
            .instant("end", &Watch::end, "to")
            .text("seen", &Watch::seen, "what was seen")
            .text("species", &Watch::species, "species")
            .number("number", &Watch::number, "", 0, 1e6, "how many")
            .number("distance_m", &Watch::distance_m, "m", 0, 1e6, "how far off")
            .text("action", &Watch::action, "what was done")
            .instant("cleared", &Watch::cleared, "when the water was clear again")
            .ordered("start", "end");
    return d;
}

template <>
const Definition<Track>& definition() {
    static const auto d = Definition<Track>("track", "tracks", "one trip's fixes, kept as the file that came")
                              .ref("trip", &Track::trip, "trip", "the trip")
                              .text("file", &Track::file, "the file's name")
                              .text("digest", &Track::digest, "SHA-256 of its bytes")
                              .also_label("file");
    return d;
}

}  // namespace spoilbook
