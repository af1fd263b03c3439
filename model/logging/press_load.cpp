// SPDX-License-Identifier: GPL-3.0-or-later
// Presses of the barge alongside: what goes into her.
#include <algorithm>

#include "model/logging/press.h"
#include "model/logging/press_words.h"

namespace spoilbook {

namespace {

/// What the barge's newest release says it left in the hopper; nothing where it says nothing.
std::optional<double> left_in_hopper(const Season& season, const Barge& barge) {
    std::optional<double> left;
    for (const auto& load : season.loads.rows()) {
        if (load.barge != barge.id) continue;
        left = std::nullopt;
        for (const auto& trip : season.trips.rows()) {
            if (trip.load != load.id) continue;
            for (const auto& release : season.releases.rows()) {
                if (release.trip == trip.id) left = release.left_m3;
            }
        }
    }
    return left;
}

/// The line that counts this bucket from this station into this load on this shift.
const Tally* tally_line(const Season& season, const Shift& shift, const Station& station, const Load& load,
                        const Id& bucket) {
    for (const auto& tally : season.tallies.rows()) {
        const Id counted_on = tally.shift ? tally.shift : station.shift;
        if (tally.load == load.id && tally.station == station.id && tally.bucket == bucket &&
            counted_on == shift.id && !tally.tally.empty())
            return &tally;
    }
    return nullptr;
}

}  // namespace

LogLines barge_alongside(const Press& press, const Barge& barge) {
    PressWords words(press);
    LogLine line{&kind("load"), words.fresh(kind("load")), {{"barge", barge.name}}};
    PressWords::number(line, "left_before_m3", left_in_hopper(press.season, barge));
    return {line};
}

LogLines count_buckets(const Press& press, const Shift& shift, const Station& station, const Load& load,
                       const Id& bucket, double buckets, bool typed) {
    PressWords words(press);
    const Tally* tally = tally_line(press.season, shift, station, load, bucket);
    const double before = tally == nullptr ? 0 : tally->count.value_or(0);
    const double after = std::max(0.0, before + buckets);
    if (after == before) return {};
    LogLine line{&kind("tally"), tally == nullptr ? words.fresh(kind("tally")) : tally->tally, {}};
    if (tally == nullptr) {
        line.inputs = {{"load", load.load}, {"station", station.station}};
        PressWords::text(line, "bucket", words.label(press.season.buckets, bucket, &Bucket::name));
        if (station.shift != shift.id) PressWords::text(line, "shift", shift.shift);
        line.inputs.push_back({"counted", typed ? "typed" : "pressed"});
    }
    PressWords::number(line, "count", after);
    LogLines lines{line};
    if (!load.loading_start && !load.loading_end)
        lines.push_back({&kind("load"), load.load, {{"loading_start", words.now()}}});
    return lines;
}

double buckets_counted(const Season& season, const Shift& shift, const Station& station, const Load& load,
                       const Id& bucket) {
    const Tally* tally = tally_line(season, shift, station, load, bucket);
    return tally == nullptr ? 0 : tally->count.value_or(0);
}

LogLines full(const Press& press, const Load& load) {
    return {{&kind("load"), load.load, {{"loading_end", PressWords(press).now()}}}};
}

}  // namespace spoilbook
