// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "model/record/season.h"
#include "model/volume/load_figures.h"

namespace spoilbook::test {

/// Ids 1, 2, 3 …: a number is all that a test needs of them.
inline Id id(unsigned n) {
    Id made;
    made.bytes[14] = static_cast<std::uint8_t>(n >> 8U);
    made.bytes[15] = static_cast<std::uint8_t>(n);
    return made;
}

inline Instant hours(std::int64_t n) {
    return {n * ms_per_hour};
}

constexpr unsigned sand = 1, clay = 2, general = 11, ripping = 12, teal = 21, c1 = 31, c2 = 32, in_c1 = 41,
                   in_c2 = 42;

/// A tally line of a load under test.
struct Line {
    unsigned station = in_c1;
    std::optional<double> count = std::nullopt;
    unsigned bucket = general;
    unsigned material = 0;
    std::optional<double> part_buckets = std::nullopt;
};

/// Marram Harbour in small: two materials, two claims with a station each, two buckets, one barge, and one
/// load full at hour 100. Each test changes what it is about.
struct ASeason {
    Harbour harbour;
    std::vector<Material> materials;
    std::vector<Factor> factors;
    std::vector<Line> lines;
    std::vector<LightReading> light_readings;
    Barge barge;
    Load load;
    double general_m3 = 4;
    std::optional<double> ripping_m3 = 2.5;

    ASeason() {
        materials.push_back({id(sand), "sand", 1.9, 2.65, 1.25, 0.05, 0.9, 0.03});
        materials.push_back({id(clay), "clay", 1.7, 2.70, 1.40, 0.07, 0.8, 0.04});
        barge.id = id(teal);
        barge.name = "Teal";
        barge.capacity_m3 = 420;
        barge.ullage_table = {{0, 420}, {1, 320}, {2, 200}, {3, 60}};
        barge.ullage_u_m = 0.02;
        barge.hydrostatic_table = {{0.5, 200}, {1, 420}, {2, 880}, {3, 1360}, {4, 1860}};
        barge.hydrostatic_density_t_m3 = 1.025;
        barge.draught_u_m = 0.01;
        load.id = id(100);
        load.load = "L-1";
        load.barge = id(teal);
        load.loading_start = hours(96);
        load.loading_end = hours(100);
    }

    void revise(const char* factor, unsigned material, std::optional<Instant> from, double value,
                double u = 0, unsigned bucket = 0, std::optional<Instant> accepted = std::nullopt) {
        Factor row;
        row.id = id(static_cast<unsigned>(500 + factors.size()));
        row.from = from;
        row.material = id(material);
        row.bucket = bucket == 0 ? Id{} : id(bucket);
        row.factor = factor;
        row.value = value;
        row.u = u;
        row.accepted = accepted;
        factors.push_back(row);
    }

    [[nodiscard]] Season made() const {
        Season season;
        season.harbour = harbour;
        for (const auto& m : materials)
            season.materials.add(m);
        for (const auto& f : factors)
            season.factors.add(f);
        season.dredgers.add({id(10), "Heron", {}, {}, {}, {}, {}});
        season.buckets.add({id(general), "general", id(10), general_m3});
        season.buckets.add({id(ripping), "ripping", id(10), ripping_m3});
        season.barges.add(barge);
        Claim claim;
        claim.id = id(c1);
        claim.material = id(sand);
        season.claims.add(claim);
        claim.id = id(c2);
        claim.material = id(clay);
        season.claims.add(claim);
        season.stations.add({id(in_c1), "P1", {}, id(c1), {}, {}, {}, {}, {}});
        season.stations.add({id(in_c2), "P2", {}, id(c2), {}, {}, {}, {}, {}});
        season.loads.add(load);
        for (std::size_t i = 0; i < lines.size(); ++i) {
            Tally tally;
            tally.id = id(static_cast<unsigned>(200 + i));
            tally.load = load.id;
            tally.station = lines[i].station == 0 ? Id{} : id(lines[i].station);
            tally.bucket = id(lines[i].bucket);
            tally.count = lines[i].count;
            tally.material = lines[i].material == 0 ? Id{} : id(lines[i].material);
            tally.part_buckets = lines[i].part_buckets;
            season.tallies.add(tally);
        }
        for (const auto& reading : light_readings)
            season.light_readings.add(reading);
        return season;
    }
};

/// The figures of the load of a season; `sources` names what they share.
struct Worked {
    Sources sources;
    LoadFigures figures;

    explicit Worked(const ASeason& a, std::optional<Instant> accepted_by = std::nullopt) {
        const Season season = a.made();
        const LoadIndex index(season, sources, accepted_by);
        figures = spoilbook::figures(index, season.loads.rows().front());
    }
    [[nodiscard]] const MethodResult& by(Method method) const {
        const MethodResult* found = figures.by(method);
        if (found == nullptr) throw std::runtime_error("no figure by " + std::string(method_name(method)));
        return *found;
    }
    /// The part of the combined uncertainty that comes from a source, signed; 0 where none does.
    [[nodiscard]] double shared(const Estimate& estimate, const std::string& source) const {
        for (const auto& part : estimate.shared) {
            if (sources.name(part.source) == source) return part.amount;
        }
        return 0;
    }
    [[nodiscard]] bool assumes(Method method, std::string_view piece) const {
        for (const auto sentence : by(method).assumed) {
            if (sentence.find(piece) != std::string_view::npos) return true;
        }
        return false;
    }
    [[nodiscard]] std::string why_not(Method method) const {
        for (const auto& left_out : figures.left_out) {
            if (left_out.method == method) return std::string(left_out.why);
        }
        return "";
    }
};

}  // namespace spoilbook::test
