// SPDX-License-Identifier: GPL-3.0-or-later
// A release whose cell is blank, or another than its position's, and what limits by cell make of it.
#include "model/answer/cell_said.h"

#include <catch2/catch.hpp>

#include "model/consent/ledger.h"
#include "tests/support/small_id.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;
using Catch::Matchers::WithinAbs;

namespace {

std::string box(double west_deg, double east_deg) {
    const std::string west = std::to_string(west_deg), east = std::to_string(east_deg);
    return R"({"type":"Polygon","coordinates":[[[)" + west + ",-40.59],[" + east + ",-40.59],[" + east +
           ",-40.58],[" + west + ",-40.58],[" + west + R"(,-40.59]]]})";
}

const Id ground_id = id_of(1), west_id = id_of(2), trip_id = id_of(3), bare_id = id_of(4), load_id = id_of(5);

/// An invented ground, 0.02° by 0.01°, with one cell in its western half, and a ground without cells.
Season season_with_cells() {
    Season season;
    season.harbour.epsg = 32760;
    Ground ground;
    ground.id = ground_id;
    ground.ground = "Gannet Patch";
    ground.geometry = box(179.62, 179.64);
    season.grounds.add(ground);
    ground.id = bare_id;
    ground.ground = "Tern Hole";
    ground.geometry = box(179.72, 179.74);
    season.grounds.add(ground);
    Cell cell;
    cell.id = west_id;
    cell.cell = "W";
    cell.kind = "cell";
    cell.ground = ground_id;
    cell.geometry = box(179.62, 179.63);
    season.cells.add(cell);
    Load load;
    load.id = load_id;
    load.load = "L-1";
    season.loads.add(load);
    return season;
}

/// A trip that carries its own release.
struct Given {
    std::optional<double> lon;
    Id cell;
    Id ground = ground_id;
    bool released = true;
    std::string outcome{};
};

Fields fields_of(const Given& given) {
    Fields fields{{"trip", std::string("T-1")}, {"load", load_id}};
    if (given.released) fields.push_back({"release_end", time_of(morning())});
    if (given.ground) fields.push_back({"ground", given.ground});
    if (given.cell) fields.push_back({"cell", given.cell});
    if (given.lon) {
        fields.push_back({"lat", -40.585});
        fields.push_back({"lon", *given.lon});
    }
    if (!given.outcome.empty()) fields.push_back({"outcome", given.outcome});
    return fields;
}

CellSaid said(const Given& given) {
    const Season season = season_with_cells();
    return cell_said(season, GroundMap(season), kind("trip"),
                     Row{trip_id, values_of(kind("trip"), fields_of(given))});
}

/// The cell that limits count the same release in, by the ledger itself.
std::string counted_in(const Given& given) {
    Season season = season_with_cells();
    season.trips.add(definition<Trip>().read(Row{trip_id, values_of(kind("trip"), fields_of(given))}));
    const Ledger ledger(season);
    REQUIRE(ledger.released().size() == 1);
    const Cell* cell = season.cells.find(ledger.released().front().cell);
    return cell == nullptr ? "" : cell->cell;
}

}  // namespace

TEST_CASE("what is said of a blank cell is what limits by cell count", "[answer]") {
    for (const auto& [lon, ground, says] :
         {std::tuple(std::optional(179.625), ground_id, CellSays::by_position),
          std::tuple(std::optional(179.635), ground_id, CellSays::no_cell),
          std::tuple(std::optional<double>(), ground_id, CellSays::no_cell)}) {
        const Given given{lon, Id(), ground};
        CHECK(said(given).says == says);
        CHECK(counted_in(given) == (says == CellSays::by_position ? "W" : ""));
    }
}

TEST_CASE("nothing is said of a ground without cells, a trip that released nothing, and one yet to release",
          "[answer]") {
    CHECK(said({179.725, Id(), bare_id}).says == CellSays::nothing);
    CHECK(said({179.725, Id(), Id()}).says == CellSays::nothing);
    CHECK(said({{}, Id(), ground_id, false}).says == CellSays::nothing);
    CHECK(said({{}, Id(), ground_id, true, "returned_loaded"}).says == CellSays::nothing);
}

TEST_CASE("a position outside the written cell contradicts it from 2u on, and one that is odd does not",
          "[answer]") {
    const auto far = said({179.635, west_id});
    CHECK(far.says == CellSays::contradicts);
    // COMP, on the ellipsoid: 0.005° of longitude at 40.585° S are 423.3 m; the map's scale adds 0.1 m.
    CHECK_THAT(far.outside_m, WithinAbs(423.3, 0.5));
    CHECK(far.lies_in.empty());
    CHECK(said({179.63006, west_id}).says == CellSays::beside);
    CHECK(said({179.62999, west_id}).says == CellSays::nothing);
    CHECK(said({-179.625, west_id}).says == CellSays::nothing);
    CHECK(said({{}, west_id}).says == CellSays::nothing);
}
