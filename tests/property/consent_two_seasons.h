// SPDX-License-Identifier: GPL-3.0-or-later
// A random season told twice: to the model, and to the plain evaluator of the tests.
#pragma once

#include <fmt/format.h>

#include "tests/property/consent_plain_limits.h"
#include "tests/property/consent_seasons.h"

namespace spoilbook {

constexpr int things = 2;  ///< of grounds, cells, materials and barges

/// One season told twice: to the model, and to the plain evaluator.
class TwoSeasons {
 public:
    TwoSeasons()
        : zone_(*rc::gen::elementOf(zones())), clock_(zone_), place_(*rc::gen::inRange<std::size_t>(0, 4)) {
        small.season.zone = *Zone::named(zone_);
        name_things();
        frame_season();
        const int trips = *rc::gen::inRange(2, 10);
        for (int trip = 0; trip < trips; ++trip)
            add_trip(trip);
    }

    /// One more trip, anywhere in the season, with one release; answers what the plain evaluator was told.
    plain::Release late_trip() {
        add_trip(1000, false);
        return releases.back();
    }

    [[nodiscard]] Instant any_instant() const { return seasons::any_instant(small.season.zone, place_); }

    SmallSeason small;
    plain::Frame frame;
    std::vector<plain::Release> releases;
    std::vector<Id> grounds, cells, materials, barges;
    Id consent;

 private:
    static std::vector<std::string> zones() {
        return {"Pacific/Auckland", "Europe/Berlin", "America/Santiago", "UTC"};
    }

    void name_things() {
        for (int i = 0; i < things; ++i) {
            const std::string number = std::to_string(i);
            Ground ground;
            ground.id = small.id();
            ground.ground = "G" + number;
            small.season.grounds.add(ground);
            grounds.push_back(ground.id);
            Cell cell;
            cell.id = small.id();
            cell.cell = "C" + number;
            cell.ground = ground.id;
            small.season.cells.add(cell);
            cells.push_back(cell.id);
            Material material;
            material.id = small.id();
            material.material = "M" + number;
            small.season.materials.add(material);
            materials.push_back(material.id);
            Barge barge;
            barge.id = small.id();
            barge.name = "B" + number;
            small.season.barges.add(barge);
            barges.push_back(barge.id);
        }
    }

    void frame_season() {
        Consent row;
        row.id = consent = small.id();
        row.consent = "X-2";
        frame.year_month = *rc::gen::inRange(1, 13);
        frame.year_day = *rc::gen::element(1, 15, 28);
        row.year_starts = fmt::format("{:02}-{:02}", frame.year_month, frame.year_day);
        if (*rc::gen::arbitrary<bool>()) {
            row.commences = any_instant();
            frame.commences = row.commences->utc_ms;
        }
        small.season.consents.add(row);
        std::vector<std::int64_t> edges;
        for (int i = 0; i < 6; ++i)
            edges.push_back(any_instant().utc_ms);
        std::sort(edges.begin(), edges.end());
        frame.phase_from = edges[1];
        frame.phase_to = edges[4] + 1;
        frame.campaigns = {{edges[0], edges[2] + 1}, {edges[2] + 1, edges[5] + 2}};
        small.season.harbour.campaigns =
            fmt::format(R"([{{"name":"one","from":"{}","to":"{}"}},{{"name":"two","from":"{}","to":"{}"}}])",
                        text(edges[0]), text(edges[2] + 1), text(edges[2] + 1), text(edges[5] + 2));
    }

    [[nodiscard]] std::string text(std::int64_t ms) const {
        return instant_text(Instant{ms}, small.season.zone);
    }

    /// A load, released at once, or by a quarter and the rest later.
    void add_trip(int number, bool may_be_twice = true) {
        plain::Release told;
        told.trip = number;
        told.cell = *rc::gen::inRange(-1, things);
        told.ground = told.cell >= 0 ? told.cell : *rc::gen::inRange(0, things);
        told.material = *rc::gen::inRange(0, things);
        told.barge = *rc::gen::inRange(0, things);
        told.in_situ_m3 = any_amount();
        told.hopper_m3 = any_amount();
        Load load;
        load.id = small.id();
        load.load = "L" + std::to_string(number);
        load.material = materials[at(told.material)];
        load.barge = barges[at(told.barge)];
        load.stated_in_situ_m3 = told.in_situ_m3;
        load.stated_hopper_m3 = told.hopper_m3;
        small.season.loads.add(load);
        Trip trip;
        trip.id = small.id();
        trip.trip = "T" + std::to_string(number);
        trip.load = load.id;
        small.season.trips.add(trip);
        const bool twice = may_be_twice && *rc::gen::inRange(0, 4) == 0;
        if (twice) add_release(trip.id, told, 0.25);
        add_release(trip.id, told, twice ? 0.75 : 1);
    }

    void add_release(const Id& trip, plain::Release told, double share) {
        Release row;
        row.id = small.id();
        row.trip = trip;
        row.ground = grounds[at(told.ground)];
        if (told.cell >= 0) row.cell = cells[at(told.cell)];
        row.share = told.share = share;
        row.empty = any_instant();
        told.at = row.empty->utc_ms;
        if (const int halves = *rc::gen::inRange(0, 4); halves > 0) {
            told.hours = halves / 2.0;
            row.doors_open = *row.empty - halves * ms_per_hour / 2;
        }
        small.season.releases.add(row);
        releases.push_back(told);
    }

    static std::optional<double> any_amount() {
        const int m3 = *rc::gen::inRange(0, 5) * 100;
        return m3 == 0 ? std::nullopt : std::optional<double>(m3);
    }
    static std::size_t at(int number) { return static_cast<std::size_t>(number); }

    std::string zone_;
    plain::Clock clock_;
    std::size_t place_;
};

}  // namespace spoilbook
