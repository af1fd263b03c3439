// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/shift_sheet.h"

#include <set>

#include "model/progress/running.h"
#include "model/record/release_view.h"

namespace spoilbook {

namespace {

class SheetWriter {
 public:
    SheetWriter(const Season& season, const Shift& shift) : season_(season), shift_(shift) {}

    std::vector<SheetLine> lines;

    void crew() {
        for (const auto& one : season_.crew.rows()) {
            if (one.shift == shift_.id) put({"crew", one.crew, one.name, one.on, one.off, {}, {}});
        }
    }
    void stations() {
        for (const auto& station : season_.stations.rows()) {
            if (station.shift != shift_.id) continue;
            stations_.insert(station.id);
            const Claim* claim = season_.claims.find(station.claim);
            SheetLine line{"station",
                           station.station,
                           claim ? claim->claim : "",
                           station.spuds_down,
                           station.spuds_up,
                           {},
                           {}};
            lacks(line, !claim, "claim");
            lacks(line, !station.spuds_down, "spuds_down");
            lacks(line, !station.easting_m || !station.northing_m, "position");
            put(line);
        }
    }
    void tallies() {
        for (const auto& tally : season_.tallies.rows()) {
            const bool ours = tally.shift ? tally.shift == shift_.id : stations_.contains(tally.station);
            if (!ours) continue;
            const Load* load = season_.loads.find(tally.load);
            const double count = tally.count.value_or(0) + tally.part_buckets.value_or(0);
            put({"tally", tally.tally, load ? load->load : "", {}, {}, count, {}});
        }
    }
    void delays() {
        for (const auto& delay : season_.delays.rows()) {
            if (delay.shift != shift_.id) continue;
            SheetLine line{"delay", delay.delay, delay.cause, delay.start, delay.end, {}, {}};
            lacks(line, delay.cause.empty(), "cause");
            lacks(line, !delay.end, "end");
            put(line);
        }
    }
    void soundings() {
        for (const auto& sounding : season_.soundings.rows()) {
            if (!stations_.contains(sounding.station)) continue;
            const auto number = sounding.level_m ? sounding.level_m : sounding.depth_m;
            put({"sounding", sounding.sounding, sounding.by, sounding.time, {}, number, {}});
        }
    }
    void loads() {
        for (const auto& load : season_.loads.rows()) {
            if (!ended_here(load)) continue;
            loads_.insert(load.id);
            const Barge* barge = season_.barges.find(load.barge);
            SheetLine line{"load",
                           load.load,
                           barge ? barge->name : "",
                           load.loading_start,
                           load.loading_end,
                           buckets_in(season_, load),
                           {}};
            lacks(line, !barge, "barge");
            lacks(line, load.dips_m.empty() && load.full_draughts_m.empty() && *line.number <= 0, "amount");
            put(line);
        }
    }
    void trips() {
        for (const auto& trip : season_.trips.rows()) {
            if (!loads_.contains(trip.load)) continue;
            const Load* load = season_.loads.find(trip.load);
            SheetLine line{"trip", trip.trip, load->load, trip.departed, trip.returned, {}, {}};
            lacks(line, !trip.tug, "tug");
            lacks(line, !trip.returned, "returned");
            put(line);
        }
        for (const auto& release : releases_of(season_)) {
            if (!loads_.contains(release.trip->load)) continue;
            const Ground* ground = season_.grounds.find(release.ground);
            SheetLine line{
                "release", release.label(), ground ? ground->ground : "", release.opened, release.ended, {},
                {}};
            lacks(line, release.counts && !ground, "ground");
            lacks(line, release.counts && (!release.lat || !release.lon), "position");
            lacks(line, release.counts && !release.ended, "release_end");
            put(line);
        }
    }

 private:
    void put(SheetLine line) { lines.push_back(std::move(line)); }
    static void lacks(SheetLine& line, bool blank, const char* field) {
        if (blank) line.missing.emplace_back(field);
    }
    [[nodiscard]] bool ended_here(const Load& load) const {
        if (!load.loading_end || !shift_.start || *load.loading_end < *shift_.start) return false;
        return !shift_.end || *load.loading_end <= *shift_.end;
    }

    const Season& season_;
    const Shift& shift_;
    std::set<Id> stations_, loads_;
};

}  // namespace

std::vector<SheetLine> shift_sheet(const Season& season, const Shift& shift) {
    SheetWriter sheet(season, shift);
    sheet.crew();
    sheet.stations();
    sheet.tallies();
    sheet.delays();
    sheet.soundings();
    sheet.loads();
    sheet.trips();
    return std::move(sheet.lines);
}

}  // namespace spoilbook
