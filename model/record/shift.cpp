// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/shift.h"

namespace spoilbook {

template <>
const Definition<Shift>& definition() {
    static const auto d =
        Definition<Shift>("shift", "shifts.csv", "one crew's turn, opened, then signed")
            .label("shift", &Shift::shift, "its number")
            .instant("start", &Shift::start, "opened")
            .instant("end", &Shift::end, "ended")
            .ref("dredger", &Shift::dredger, "dredger", "the dredger")
            .ref("tug", &Shift::tug, "tug", "the tug")
            .text("skipper", &Shift::skipper, "who has the shift")
            .text("crew", &Shift::crew, "names, with ; between")
            .text("weather", &Shift::weather, "weather in words")
            .number("wave_height_m", &Shift::wave_height_m, "m", 0, 30, "significant wave height")
            .text("signed_by", &Shift::signed_by, "who signed the sheet")
            .instant("signed_at", &Shift::signed_at, "when")
            .ordered("start", "end");
    return d;
}

template <>
const Definition<Crew>& definition() {
    static const auto d = Definition<Crew>("crew", "crew.csv", "one person's time on a shift")
                              .own_label("id", &Crew::crew)
                              .ref("shift", &Crew::shift, "shift", "the shift")
                              .text("name", &Crew::name, "who")
                              .text("role", &Crew::role, "as what")
                              .instant("on", &Crew::on, "came on")
                              .instant("off", &Crew::off, "went off")
                              .ordered("on", "off");
    return d;
}

template <>
const Definition<Station>& definition() {
    static const auto d =
        Definition<Station>("station", "stations.csv", "one set-up of the pontoon, spuds down to spuds up")
            .label("station", &Station::station, "its number")
            .ref("shift", &Station::shift, "shift", "the shift")
            .ref("claim", &Station::claim, "claim", "the claim it stands in")
            .number("easting_m", &Station::easting_m, "m", -1e7, 1e7, "pontoon centre, easting")
            .number("northing_m", &Station::northing_m, "m", -2e7, 2e7, "pontoon centre, northing")
            .number("heading_deg", &Station::heading_deg, "°", 0, 360, "heading of the pontoon, grid")
            .instant("spuds_down", &Station::spuds_down, "spuds down")
            .instant("spuds_up", &Station::spuds_up, "spuds up")
            .ordered("spuds_down", "spuds_up");
    return d;
}

template <>
const Definition<Handover>& definition() {
    static const auto d =
        Definition<Handover>("handover", "handovers.csv", "what one shift tells the next")
            .own_label("id", &Handover::handover)
            .ref("shift", &Handover::shift, "shift", "the shift that hands over")
            .ref("to_shift", &Handover::to_shift, "shift", "the shift that takes over")
            .ref("station", &Handover::station, "station", "where the pontoon stands")
            .ref("barge", &Handover::barge, "barge", "the barge alongside")
            .number("buckets_in", &Handover::buckets_in, "", 0, 10000, "buckets in her so far")
            .text("holds", &Handover::holds, "what holds the release")
            .text("next_move", &Handover::next_move, "the next move of the pontoon")
            .text("defects", &Handover::defects, "what is broken")
            .text("said_by", &Handover::said_by, "who handed over")
            .text("taken_by", &Handover::taken_by, "who took over");
    return d;
}

template <>
const Definition<Delay>& definition() {
    static const auto d = Definition<Delay>("delay", "delays.csv", "time not digging, with one cause")
                              .own_label("id", &Delay::delay)
                              .ref("shift", &Delay::shift, "shift", "the shift")
                              .instant("start", &Delay::start, "began")
                              .instant("end", &Delay::end, "ended")
                              .text("cause", &Delay::cause, "its cause")
                              .text("remarks", &Delay::remarks, "remarks")
                              .ordered("start", "end");
    return d;
}

template <>
const Definition<Sounding>& definition() {
    static const auto d =
        Definition<Sounding>("sounding", "soundings.csv", "a depth by lead, pole or bucket")
            .own_label("id", &Sounding::sounding)
            .ref("station", &Sounding::station, "station", "the station")
            .instant("time", &Sounding::time, "when")
            .number("easting_m", &Sounding::easting_m, "m", -1e7, 1e7, "where, easting")
            .number("northing_m", &Sounding::northing_m, "m", -2e7, 2e7, "where, northing")
            .number("level_m", &Sounding::level_m, "m", -12000, 100,
                    "level of the bed; blank: tide less depth")
            .number("depth_m", &Sounding::depth_m, "m", -100, 12000, "depth below the water")
            .number("tide_m", &Sounding::tide_m, "m", -20, 20, "level of the water")
            .text("by", &Sounding::by, "who")
            .number("u_m", &Sounding::u_m, "m", 0, 50, "standard uncertainty");
    return d;
}

const std::vector<std::string>& delay_causes() {
    static const std::vector<std::string> causes{"shifting station",
                                                 "barge change",
                                                 "bucket or tool change",
                                                 "spuds or winches",
                                                 "waiting for daylight",
                                                 "mammal hold",
                                                 "turbidity hold",
                                                 "toolbox or drill",
                                                 "waiting for barge",
                                                 "waiting for tug",
                                                 "shipping movement",
                                                 "weather",
                                                 "tide",
                                                 "breakdown dredger",
                                                 "breakdown barge or tug",
                                                 "maintenance",
                                                 "refuel and stores",
                                                 "survey",
                                                 "crew change",
                                                 "consent hold",
                                                 "debris",
                                                 "obstruction or find",
                                                 "safety stop",
                                                 "not rostered",
                                                 "other"};
    return causes;
}

}  // namespace spoilbook
