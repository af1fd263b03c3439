// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/place_findings.h"

#include <fmt/format.h>

#include <functional>
#include <nlohmann/json.hpp>

#include "model/consent/limit.h"
#include "model/consent/place_room.h"
#include "model/place/release_way.h"

namespace spoilbook {

namespace {

using nlohmann::json;

/// Where a condition looks, and how surely that is known.
struct Looked {
    std::vector<EastNorth> way;
    double u_m = 0;
};

/// One release, wherever conditions look at it.
class Look {
 public:
    Look(const LedgerLine& line, const ReleasePlace& start, const Checked<TripTrack>* track)
        : line_(line), start_(start), track_(track) {}

    [[nodiscard]] Checked<Looked> at(const std::string& test, double longest_gap_s) const {
        if (test == "release_start") {
            if (!start_.place) return Refusal{"track", "", start_.why, ""};
            return Looked{{*start_.place}, start_.position_u_m};
        }
        if (track_ == nullptr) return Refusal{"track", "", "no track, and no second position", ""};
        if (!*track_) return track_->refusals();
        const ReleaseView& release = *line_.release;
        const double receiver_u_m = release.position_u_m.value_or(usual_position_u_m);
        const auto end =
            hopper_on_track(*release.trip, (*track_)->fixes, *release.ended, receiver_u_m, longest_gap_s);
        if (!end) return end.refusals();
        if (test == "release_end") return Looked{{end->place}, end->u_m};
        auto way = hopper_way(release, (*track_)->fixes, longest_gap_s);
        if (!way) return way.refusals();
        return Looked{std::move(*way), end->u_m};
    }

 private:
    const LedgerLine& line_;
    const ReleasePlace& start_;
    const Checked<TripTrack>* track_;
};

/// The way is not known: that cannot be told, and what is known of its beginning is said.
void judge_start(const std::function<double(EastNorth)>& room, const ReleasePlace& start,
                 const std::string& why_not, PlaceFinding& found) {
    found.finding.why = why_not;
    if (found.test != "whole_release" || !start.place) return;
    const double room_m = room(*start.place);
    if (verdict(room_m, start.position_u_m) == PlaceVerdict::outside)
        found.finding.why +=
            fmt::format("; as the doors opened, {:.0f} m on the wrong side of the line", -room_m);
}

void judge_room(double room_m, double u_m, PlaceFinding& found) {
    found.room_m = room_m;
    const PlaceVerdict side = verdict(room_m, u_m);
    if (side == PlaceVerdict::inside) found.finding.state = Compliance::complied;
    if (side == PlaceVerdict::outside) {
        found.finding.state = Compliance::breached;
        found.finding.why = fmt::format("{:.0f} m on the wrong side of the line", -room_m);
    }
    if (side == PlaceVerdict::cannot_tell) found.finding.why = "nearer to the line than the position is sure";
}

}  // namespace

PlaceConditions::PlaceConditions(const Ledger& ledger) : ledger_(ledger), in_force_alone_(true) {
    for (const auto& condition : ledger.season().conditions.rows()) {
        if (condition.kind == "place") read(condition);
    }
}

PlaceConditions::PlaceConditions(const Ledger& ledger, const Condition& only)
    : ledger_(ledger), in_force_alone_(false) {
    read(only);
}

void PlaceConditions::read(const Condition& condition) {
    const json body = body_of(condition);
    const bool reads = body.is_object() && (body.contains("inside") || body.contains("outside"));
    if (!reads || !judges_releases(body)) return;
    Read found{&condition,
               AppliesTo(ledger_.season(), body),
               place_room(body, ledger_.season(), ledger_.grounds()),
               body.value("test", "release_start"),
               body.value("track_interval_s_max", usual_track_gap_s),
               std::nullopt};
    if (body.contains("position_u_m_max")) found.position_u_m_max = body.at("position_u_m_max").get<double>();
    read_.push_back(std::move(found));
}

std::vector<PlaceFinding> PlaceConditions::judge(const LedgerLine& line, const ReleasePlace& start,
                                                 const Checked<TripTrack>* track) const {
    std::vector<PlaceFinding> findings;
    const Look look(line, start, track);
    for (const auto& by : read_) {
        if (in_force_alone_ && !in_force(*by.condition, line.at)) continue;
        const auto not_recorded = by.applies.not_recorded(line);
        if (not_recorded.empty() && !by.applies(line)) continue;
        PlaceFinding& found = findings.emplace_back();
        found.finding = finding_on(ledger_, *by.condition, line);
        found.test = by.test;
        const auto looked = look.at(by.test, by.longest_gap_s);
        if (!by.room)
            found.finding.why = "the place that it names is not in the book";
        else if (!looked)
            judge_start(by.room, start, looked.refusals().front().what, found);
        else if (by.position_u_m_max && looked->u_m > *by.position_u_m_max)
            found.finding.why = "the position is less sure than the condition asks";
        else
            judge_room(least_along(looked->way, by.room), looked->u_m, found);
        if (!put_in_doubt(found.finding, not_recorded)) findings.pop_back();
    }
    return findings;
}

}  // namespace spoilbook
