// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/press.h"

#include "model/logging/press_words.h"

namespace spoilbook {

Checked<Done> log_lines_in(Change& change, const LogLines& lines) {
    for (const auto& line : lines) {
        if (auto done = log_record_in(change, *line.kind, line.label, line.inputs); !done)
            return done.refusals();
    }
    return Done{};
}

LogLines open_shift(const Press& press, const Shift* before, const std::string& skipper) {
    const Season& season = press.season;
    PressWords words(press);
    const std::string label = next_label_of(press.book, kind("shift"));
    LogLine shift{&kind("shift"), label, {{"start", words.now()}}};
    LogLines lines;
    if (before == nullptr) {
        PressWords::text(shift, "skipper", skipper);
        return {shift};
    }
    PressWords::text(shift, "dredger", words.label(season.dredgers, before->dredger, &Dredger::name));
    PressWords::text(shift, "tug", words.label(season.tugs, before->tug, &Tug::name));
    PressWords::text(shift, "skipper", skipper.empty() ? before->skipper : skipper);
    PressWords::text(shift, "crew", before->crew);
    PressWords::text(shift, "weather", before->weather);
    // The sea is a number that conditions are judged by: what was seen a shift ago is not carried over.
    lines.push_back(shift);
    for (const auto& one : season.crew.rows()) {
        if (one.shift != before->id) continue;
        LogLine crew{&kind("crew"), words.fresh(kind("crew")), {{"shift", label}}};
        PressWords::text(crew, "name", one.name);
        PressWords::text(crew, "role", one.role);
        PressWords::text(crew, "on", words.now());
        lines.push_back(crew);
    }
    return lines;
}

LogLines end_shift(const Press& press, const Shift& shift) {
    const PressWords words(press);
    LogLines lines{{&kind("shift"), shift.shift, {{"end", words.now()}}}};
    for (const auto& one : press.season.crew.rows()) {
        if (one.shift == shift.id && !one.off && !one.crew.empty())
            lines.push_back({&kind("crew"), one.crew, {{"off", words.now()}}});
    }
    return lines;
}

LogLines spuds_down(const Press& press, const Shift& shift, const Id& claim,
                    const std::optional<StationPlace>& place) {
    PressWords words(press);
    LogLine line{&kind("station"), words.fresh(kind("station")), {{"shift", shift.shift}}};
    PressWords::text(line, "claim", words.label(press.season.claims, claim, &Claim::claim));
    if (place) {
        PressWords::number(line, "easting_m", place->easting_m, 1);
        PressWords::number(line, "northing_m", place->northing_m, 1);
        PressWords::number(line, "heading_deg", place->heading_deg, 1);
    }
    line.inputs.push_back({"spuds_down", words.now()});
    return {line};
}

LogLines spuds_up(const Press& press, const Station& station) {
    return {{&kind("station"), station.station, {{"spuds_up", PressWords(press).now()}}}};
}

LogLines delay_begins(const Press& press, const Shift& shift, const std::string& cause) {
    PressWords words(press);
    LogLine line{
        &kind("delay"), words.fresh(kind("delay")), {{"shift", shift.shift}, {"start", words.now()}}};
    PressWords::text(line, "cause", cause);
    return {line};
}

LogLines delay_ends(const Press& press, const Delay& delay) {
    return {{&kind("delay"), delay.delay, {{"end", PressWords(press).now()}}}};
}

LogLines sounding(const Press& press, const Station& station, const std::string& by) {
    PressWords words(press);
    LogLine line{&kind("sounding"),
                 words.fresh(kind("sounding")),
                 {{"station", station.station}, {"time", words.now()}}};
    PressWords::text(line, "by", by);
    return {line};
}

LogLines hand_over(const Press& press, const Shift& shift, const Station* station, const Load* load,
                   double buckets_in) {
    PressWords words(press);
    LogLine line{&kind("handover"), words.fresh(kind("handover")), {{"shift", shift.shift}}};
    if (station != nullptr) PressWords::text(line, "station", station->station);
    if (load != nullptr) {
        PressWords::text(line, "barge", words.label(press.season.barges, load->barge, &Barge::name));
        PressWords::number(line, "buckets_in", buckets_in);
    }
    PressWords::text(line, "said_by", shift.skipper);
    return {line};
}

}  // namespace spoilbook
