// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/watchkeeping.h"

namespace spoilbook {

template <>
const Definition<Observation>& definition() {
    static const auto d =
        Definition<Observation>("observation", "observations.csv", "sea and weather as seen")
            .own_label("id", &Observation::observation)
            .instant("time", &Observation::time, "when")
            .text("place", &Observation::place, "where")
            .number("wind_kn", &Observation::wind_kn, "kn", 0, 200, "wind")
            .number("wave_height_m", &Observation::wave_height_m, "m", 0, 30, "significant wave height")
            .number("period_s", &Observation::period_s, "s", 0, 60, "wave period")
            .text("visibility", &Observation::visibility, "visibility")
            .text("source", &Observation::source, "buoy, mast, eye")
            .text("by", &Observation::by, "who");
    return d;
}

template <>
const Definition<Event>& definition() {
    static const auto d =
        Definition<Event>("event", "events.csv",
                          "a passed trigger, breach or incident and what was done about it")
            .own_label("id", &Event::event)
            .choice("kind", &Event::kind,
                    {"trigger", "breach", "incident", "spill", "complaint", "near_miss"}, "what it is")
            .instant("from", &Event::from, "began")
            .instant("to", &Event::to, "ended")
            .text("condition", &Event::condition, "number of the condition")
            .text("place", &Event::place, "where")
            .text("what", &Event::what, "what happened")
            .number("peak", &Event::peak, "", -1e9, 1e9, "greatest value")
            .text("cause", &Event::cause, "why")
            .text("told", &Event::told, "who was told, when")
            .text("action", &Event::action, "what was done")
            .text("closed_by", &Event::closed_by, "who closed it")
            .text("files", &Event::files, "evidence")
            .ordered("from", "to");
    return d;
}

template <>
const Definition<Find>& definition() {
    static const auto d = Definition<Find>("find", "finds.csv", "something found in the bed")
                              .own_label("id", &Find::find)
                              .instant("time", &Find::time, "when")
                              .ref("station", &Find::station, "station", "at which station")
                              .text("place", &Find::place, "where")
                              .choice("kind", &Find::kind, {"debris", "ordnance", "bones", "other"}, "what")
                              .text("told", &Find::told, "who was told")
                              .text("landed_to", &Find::landed_to, "where it went")
                              .text("cleared_by", &Find::cleared_by, "who cleared it");
    return d;
}

template <>
const Definition<Tide>& definition() {
    static const auto d =
        Definition<Tide>("tide", "tide.csv", "level of the water")
            .instant("time", &Tide::time, "when")
            .number("level_m", &Tide::level_m, "m", -20, 20, "level above the vertical datum")
            .also_label("time");
    return d;
}

template <>
const Definition<Notice>& definition() {
    static const auto d = Definition<Notice>("notice", "notices.csv", "a notice to mariners")
                              .label("number", &Notice::number, "its number")
                              .instant_or_day("from", &Notice::from, "from")
                              .instant_or_day("to", &Notice::to, "to")
                              .text("text", &Notice::text, "what it says")
                              .ordered("from", "to");
    return d;
}

template <>
const Definition<Fuel>& definition() {
    static const auto d = Definition<Fuel>("fuel", "fuel.csv", "fuel taken")
                              .own_label("id", &Fuel::fuel)
                              .instant("time", &Fuel::time, "when")
                              .text("plant", &Fuel::plant, "by whom")
                              .number("litres", &Fuel::litres, "L", 0, 1e7, "litres")
                              .text("docket", &Fuel::docket, "docket");
    return d;
}

}  // namespace spoilbook
