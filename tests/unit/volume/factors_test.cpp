// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/factors.h"

#include <catch2/catch.hpp>

#include "tests/unit/volume/a_season.h"

using namespace spoilbook;
using namespace spoilbook::test;

namespace {

struct Booked {
    Sources sources;
    Season season;
    FactorBook book;

    explicit Booked(const ASeason& a, std::optional<Instant> accepted_by = std::nullopt)
        : season(a.made()), book(season, sources, accepted_by) {}
    [[nodiscard]] double bulking_at(std::optional<Instant> at) const {
        return book.factors_for(id(sand), id(general), at).bulking->value;
    }
    [[nodiscard]] double fill_at(std::optional<Instant> at, unsigned bucket) const {
        return book.factors_for(id(sand), id(bucket), at).fill->value;
    }
};

}  // namespace

TEST_CASE("without a revision the factors of materials.csv are in force", "[factors]") {
    const Booked b{ASeason{}};
    const FactorSet set = b.book.factors_for(id(sand), id(general), hours(5));
    CHECK(set.bulking->value == 1.25);
    CHECK(set.bulking->u == 0.05);
    CHECK(set.fill->value == 0.9);
    CHECK(set.situ_density->value == 1.9);
    CHECK(set.grain_density->value == 2.65);
    CHECK_FALSE(set.bulking->revised);
    CHECK(b.sources.name(set.bulking->source) == "bulking factor of sand, materials.csv");
}

TEST_CASE("a revision is in force from its first instant on, not before", "[factors]") {
    ASeason a;
    a.revise("bulking", sand, hours(72), 1.3);
    a.revise("bulking", sand, hours(48), 1.2);
    const Booked b{a};
    CHECK(b.bulking_at(Instant{hours(48).utc_ms - 1}) == 1.25);
    CHECK(b.bulking_at(hours(48)) == 1.2);
    CHECK(b.bulking_at(hours(72)) == 1.3);
    CHECK(b.bulking_at(std::nullopt) == 1.25);
    const auto set = b.book.factors_for(id(sand), Id{}, hours(80));
    CHECK(b.sources.name(set.bulking->source) == "bulking factor of sand from 1970-01-04");
    CHECK(set.bulking->revised);
}

TEST_CASE("of two revisions that start together the later row counts, and each is a source of its own",
          "[factors]") {
    ASeason a;
    a.revise("bulking", sand, hours(48), 1.2);
    a.revise("bulking", sand, hours(48), 1.21);
    const Booked b{a};
    CHECK(b.bulking_at(hours(50)) == 1.21);
    CHECK(b.sources.name(b.book.factors_for(id(sand), Id{}, hours(50)).bulking->source) ==
          "bulking factor of sand from 1970-01-03, row 2");
}

TEST_CASE("a fill factor of one bucket beats a newer one for all buckets", "[factors]") {
    ASeason a;
    a.revise("fill", sand, hours(10), 0.7, 0.02, ripping);
    a.revise("fill", sand, hours(20), 0.95);
    const Booked b{a};
    CHECK(b.fill_at(hours(30), ripping) == 0.7);
    CHECK(b.fill_at(hours(30), general) == 0.95);
    CHECK(b.fill_at(hours(5), ripping) == 0.9);
}

TEST_CASE("a row of factors.csv without value or first instant decides nothing", "[factors]") {
    ASeason a;
    a.revise("bulking", sand, std::nullopt, 1.6);
    a.revise("bulking", sand, hours(1), 1.7);
    a.factors.back().value.reset();
    CHECK(Booked{a}.bulking_at(hours(5)) == 1.25);
}

TEST_CASE("as reported, only revisions that the authority had accepted count", "[factors]") {
    ASeason a;
    a.revise("bulking", sand, hours(10), 1.2, 0, 0, hours(40));
    a.revise("bulking", sand, hours(20), 1.3);
    CHECK(Booked{a}.bulking_at(hours(30)) == 1.3);
    CHECK(Booked(a, hours(39)).bulking_at(hours(30)) == 1.25);
    CHECK(Booked(a, hours(40)).bulking_at(hours(30)) == 1.2);
}

TEST_CASE("an unknown material has no factors, a blank one is missing alone", "[factors]") {
    ASeason a;
    a.materials[0].bulking_factor.reset();
    const Booked b{a};
    CHECK(b.book.factors_for(Id{}, Id{}, hours(1)).fill == nullptr);
    CHECK(b.book.factors_for(id(sand), Id{}, hours(1)).bulking == nullptr);
    CHECK(b.book.factors_for(id(sand), Id{}, hours(1)).fill != nullptr);
}
