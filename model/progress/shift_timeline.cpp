// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/shift_timeline.h"

#include <algorithm>

#include "model/progress/periods.h"
#include "model/record/release_view.h"

namespace spoilbook {

namespace {

class Collector {
 public:
    Collector(const Season& season, const Shift& shift, const Period& time) : season_(season), time_(time) {
        for (const auto& s : season.shifts.rows()) {
            if (s.dredger == shift.dredger) same_dredger_.push_back(s.id);
        }
        shift_ = shift.id;
    }

    void add(SpanKind kind, const std::string& label, const std::string& words,
             const std::optional<Instant>& from, const std::optional<Instant>& to) {
        if (!from) return;
        const Period cut{std::max(*from, time_.from), std::min(to.value_or(time_.to), time_.to)};
        if (cut.from > cut.to || cut.from > time_.to) return;
        if (cut.from == cut.to && (to || cut.from < time_.to)) return;
        spans.push_back({kind, label, words, cut, !to || *to > time_.to});
    }
    void stations() {
        for (const auto& station : season_.stations.rows()) {
            if (std::find(same_dredger_.begin(), same_dredger_.end(), station.shift) == same_dredger_.end())
                continue;
            const Claim* claim = season_.claims.find(station.claim);
            add(SpanKind::station, station.station, claim ? claim->claim : "", station.spuds_down,
                station.spuds_up);
        }
    }
    void loads() {
        for (const auto& load : season_.loads.rows()) {
            const Barge* barge = season_.barges.find(load.barge);
            add(SpanKind::load, load.load, barge ? barge->name : "", load.loading_start, load.loading_end);
        }
    }
    void trips() {
        for (const auto& trip : season_.trips.rows()) {
            const Load* load = season_.loads.find(trip.load);
            const Barge* barge = load ? season_.barges.find(load->barge) : nullptr;
            add(SpanKind::trip, trip.trip, barge ? barge->name : "", trip.departed, trip.returned);
        }
        for (const auto& release : releases_of(season_)) {
            if (!release.opened || *release.opened < time_.from || *release.opened > time_.to) continue;
            const Cell* cell = season_.cells.find(release.cell);
            add(SpanKind::release, release.label(), cell ? cell->cell : "", release.opened,
                release.shut ? release.shut : release.ended);
        }
    }
    void delays() {
        for (const auto& delay : season_.delays.rows()) {
            if (delay.shift == shift_) add(SpanKind::delay, delay.delay, delay.cause, delay.start, delay.end);
        }
    }
    [[nodiscard]] Periods of(SpanKind kind) const {
        Periods periods;
        for (const auto& span : spans) {
            if (span.kind == kind) periods.push_back(span.time);
        }
        return joined(periods);
    }

    std::vector<ShiftSpan> spans;

 private:
    const Season& season_;
    Period time_;
    Id shift_;
    std::vector<Id> same_dredger_;
};

}  // namespace

ShiftTimeline shift_timeline(const Season& season, const Shift& shift, Instant as_at) {
    ShiftTimeline line;
    if (!shift.start || *shift.start > as_at) return line;
    line.time = {*shift.start, std::min(shift.end.value_or(*shift.start + longest_open_ms), as_at)};
    Collector logged(season, shift, line.time);
    logged.stations();
    logged.loads();
    logged.trips();
    logged.delays();
    const Periods delays = logged.of(SpanKind::delay);
    const Periods digging = both(logged.of(SpanKind::station), logged.of(SpanKind::load));
    Periods accounted = digging;
    accounted.insert(accounted.end(), delays.begin(), delays.end());
    accounted = joined(accounted);
    Periods gaps = left_of(line.time, accounted);
    std::erase_if(gaps, [](const Period& gap) { return gap.to - gap.from < least_gap_ms; });
    for (const auto& gap : gaps)
        logged.add(SpanKind::gap, "", "", gap.from, gap.to);
    line.delayed_h = hours(delays);
    line.dug_h = hours(digging) - hours(both(digging, delays));
    line.unlogged_h = hours(gaps);
    line.spans = std::move(logged.spans);
    std::stable_sort(line.spans.begin(), line.spans.end(), [](const ShiftSpan& a, const ShiftSpan& b) {
        return a.kind != b.kind ? a.kind < b.kind : a.time.from < b.time.from;
    });
    return line;
}

}  // namespace spoilbook
