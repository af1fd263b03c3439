// SPDX-License-Identifier: GPL-3.0-or-later
// A release that is planned in a small season, to say one thing about the check of it at a time.
#pragma once

#include "model/consent/release_check.h"
#include "support.h"

namespace spoilbook {

/// A load of 100 m³ of sand in situ from claim Q1 that waits full, and what was released before it.
struct Planned {
    SmallSeason small;
    Id sand, ground, cell_w, cell_e;
    PlannedRelease planned;
    CheckFacts facts;

    Planned() {
        sand = small.named(small.season.materials, &Material::material, "sand");
        ground = small.named(small.season.grounds, &Ground::ground, "Deep Hole");
        cell_w = cell("W");
        cell_e = cell("E");
        small.season.harbour.campaigns =
            R"([{"name":"spring","from":"2025-09-01","to":"2025-12-01"},{"name":"summer","from":"2025-12-01"}])";
        Load load;
        load.id = planned.load = small.id();
        load.load = "L-9";
        load.material = sand;
        load.stated_in_situ_m3 = 100;
        load.stated_hopper_m3 = 125;
        load.loading_start = small.at("2025-11-03T04:00");
        load.loading_end = small.at("2025-11-03T08:00");
        small.season.loads.add(load);
        planned.at = small.at("2025-11-03T10:00");
        planned.ground = ground;
    }
    Id cell(const char* name) {
        Cell row;
        row.id = small.id();
        row.ground = ground;
        row.cell = name;
        row.kind = "cell";
        small.season.cells.add(row);
        return row.id;
    }
    void condition(const char* kind, const std::string& body) { small.condition_of(kind, body); }
    void limit(const std::string& members) { condition("quantity", "{" + members + "}"); }
    ReleaseCheck check() { return check_release(Ledger(small.season), planned, facts).value(); }
    CheckState verdict() { return check().verdict; }
    std::optional<Instant> until() { return check().reasons.at(0).until; }
    void water(std::optional<Instant> since, bool told = true) {
        facts.water = {{small.consent, "9", "R1", since, told, {}}};
    }
};

}  // namespace spoilbook
