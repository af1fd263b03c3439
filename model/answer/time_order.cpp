// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/time_order.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

/// One time of one record.
struct Step {
    const char* kind = "";
    Id id;
    const std::string* label = nullptr;
    const char* column = "";
    std::optional<Instant> at;
};

/// Holds pairs of steps of which the first cannot come after the second, and keeps those of one record that
/// do.
class Order {
 public:
    Order(const Kind& kind, const Id& id) : kind_(kind), id_(id) {}

    void before(const Step& first, const Step& second) {
        if (!first.at || !second.at || *first.at <= *second.at) return;
        if (is_asked(first)) add(first, second, false);
        if (is_asked(second)) add(second, first, true);
    }

    std::vector<TimeFinding> take() {
        std::stable_sort(found_.begin(), found_.end(), [this](const auto& a, const auto& b) {
            return *kind_.index_of(a.column) < *kind_.index_of(b.column);
        });
        return std::move(found_);
    }

 private:
    [[nodiscard]] bool is_asked(const Step& step) const { return step.id == id_; }
    void add(const Step& own, const Step& other, bool early) {
        found_.push_back(
            {own.column, *own.at, &kind(other.kind), *other.label, other.column, *other.at, early});
    }

    const Kind& kind_;
    Id id_;
    std::vector<TimeFinding> found_;
};

Step of(const Trip& trip, const char* column, std::optional<Instant> at) {
    return {"trip", trip.id, &trip.trip, column, at};
}

Step of(const Release& release, const char* column, std::optional<Instant> at) {
    return {"release", release.id, &release.release, column, at};
}

Step loaded(const Load& load) {
    return {"load", load.id, &load.load, "loading_end", load.loading_end};
}

void release_in_trip(const Release& release, const Trip& trip, Order& order) {
    const Step departed = of(trip, "departed", trip.departed), returned = of(trip, "returned", trip.returned);
    const std::array steps{of(release, "doors_open", release.doors_open), of(release, "empty", release.empty),
                           of(release, "doors_shut", release.doors_shut)};
    for (const Step& step : steps) {
        order.before(departed, step);
        order.before(step, returned);
    }
    order.before(steps[1], steps[2]);
}

void own_release(const Trip& trip, Order& order) {
    const Step departed = of(trip, "departed", trip.departed), returned = of(trip, "returned", trip.returned);
    for (const Step& step :
         {of(trip, "release_start", trip.release_start), of(trip, "release_end", trip.release_end)}) {
        order.before(departed, step);
        order.before(step, returned);
    }
}

void trip_order(const Season& season, const Trip& trip, Order& order) {
    if (const Load* load = season.loads.find(trip.load))
        order.before(loaded(*load), of(trip, "departed", trip.departed));
    own_release(trip, order);
    for (const Release& release : season.releases.rows()) {
        if (release.trip == trip.id) release_in_trip(release, trip, order);
    }
}

void load_order(const Season& season, const Load& load, Order& order) {
    for (const Trip& trip : season.trips.rows()) {
        if (trip.load == load.id) order.before(loaded(load), of(trip, "departed", trip.departed));
    }
}

/// From `from` to `to` within the shift. Its end may come later: what stands is handed over.
void within_shift(const Shift* shift, const Step& from, Order& order) {
    if (shift == nullptr) return;
    order.before({"shift", shift->id, &shift->shift, "start", shift->start}, from);
    order.before(from, {"shift", shift->id, &shift->shift, "end", shift->end});
}

}  // namespace

std::vector<TimeFinding> time_findings(const Season& season, const Kind& kind, const Id& id) {
    Order order(kind, id);
    if (kind.name == "trip") {
        if (const Trip* trip = season.trips.find(id)) trip_order(season, *trip, order);
    } else if (kind.name == "release") {
        const Release* release = season.releases.find(id);
        const Trip* trip = release == nullptr ? nullptr : season.trips.find(release->trip);
        if (trip != nullptr) release_in_trip(*release, *trip, order);
    } else if (kind.name == "load") {
        if (const Load* load = season.loads.find(id)) load_order(season, *load, order);
    } else if (kind.name == "station") {
        if (const Station* one = season.stations.find(id))
            within_shift(season.shifts.find(one->shift),
                         {"station", one->id, &one->station, "spuds_down", one->spuds_down}, order);
    } else if (kind.name == "delay") {
        if (const Delay* one = season.delays.find(id))
            within_shift(season.shifts.find(one->shift), {"delay", one->id, &one->delay, "start", one->start},
                         order);
    }
    return order.take();
}

std::string time_finding_text(const TimeFinding& finding, const Zone& zone) {
    return fmt::format("{}, {}, is {} {} of {} {}, {}: mend the one that is wrong", finding.column,
                       instant_text(finding.at, zone), finding.early ? "before" : "after",
                       finding.other_column, finding.other_kind->name, finding.other,
                       instant_text(finding.other_at, zone));
}

}  // namespace spoilbook
