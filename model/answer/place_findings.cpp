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

class Judge {
 public:
    Judge(const Ledger& ledger, const LedgerLine& line, const ReleasePlace& start,
          const Checked<TripTrack>* track)
        : ledger_(ledger), line_(line), start_(start), track_(track) {}

    [[nodiscard]] PlaceFinding finding_of(const Condition& condition, const json& body) const {
        PlaceFinding found;
        found.finding = finding_on(ledger_, condition, line_);
        found.test = body.value("test", "release_start");
        const auto room = place_room(body, ledger_.season(), ledger_.grounds());
        const auto looked = looked_at(found.test, body.value("track_interval_s_max", usual_track_gap_s));
        if (!room)
            found.finding.why = "the place that it names is not in the book";
        else if (!looked)
            judge_start(room, looked.refusals().front().what, found);
        else if (body.contains("position_u_m_max") && looked->u_m > body.at("position_u_m_max").get<double>())
            found.finding.why = "the position is less sure than the condition asks";
        else
            judge(least_along(looked->way, room), looked->u_m, found);
        return found;
    }

 private:
    [[nodiscard]] Checked<Looked> looked_at(const std::string& test, double longest_gap_s) const {
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

    /// The way is not known: that cannot be told, and what is known of its beginning is said.
    void judge_start(const std::function<double(EastNorth)>& room, const std::string& why_not,
                     PlaceFinding& found) const {
        found.finding.why = why_not;
        if (found.test != "whole_release" || !start_.place) return;
        const double room_m = room(*start_.place);
        if (verdict(room_m, start_.position_u_m) == PlaceVerdict::outside)
            found.finding.why +=
                fmt::format("; as the doors opened, {:.0f} m on the wrong side of the line", -room_m);
    }

    static void judge(double room_m, double u_m, PlaceFinding& found) {
        found.room_m = room_m;
        const PlaceVerdict side = verdict(room_m, u_m);
        if (side == PlaceVerdict::inside) found.finding.state = Compliance::complied;
        if (side == PlaceVerdict::outside) {
            found.finding.state = Compliance::breached;
            found.finding.why = fmt::format("{:.0f} m on the wrong side of the line", -room_m);
        }
        if (side == PlaceVerdict::cannot_tell)
            found.finding.why = "nearer to the line than the position is sure";
    }

    const Ledger& ledger_;
    const LedgerLine& line_;
    const ReleasePlace& start_;
    const Checked<TripTrack>* track_;
};

}  // namespace

std::optional<PlaceFinding> place_finding(const Ledger& ledger, const Condition& condition,
                                          const LedgerLine& line, const ReleasePlace& start,
                                          const Checked<TripTrack>* track) {
    const json body = body_of(condition);
    const bool reads = body.is_object() && (body.contains("inside") || body.contains("outside"));
    if (!reads || !judges_releases(body) || !applies_to(ledger, line, body)) return std::nullopt;
    return Judge(ledger, line, start, track).finding_of(condition, body);
}

std::vector<PlaceFinding> place_findings(const Ledger& ledger, const LedgerLine& line,
                                         const ReleasePlace& start, const Checked<TripTrack>* track) {
    std::vector<PlaceFinding> findings;
    for (const auto& condition : ledger.season().conditions.rows()) {
        if (condition.kind != "place" || !in_force(condition, line.at)) continue;
        if (auto finding = place_finding(ledger, condition, line, start, track))
            findings.push_back(std::move(*finding));
    }
    return findings;
}

}  // namespace spoilbook
