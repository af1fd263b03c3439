// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;
using Catch::Matchers::Contains;

namespace {

/// The season with one file replaced.
std::string refused_with(const std::string& name, const std::string& text) {
    TempFolder folder;
    write_marram(folder);
    folder.with(name, text);
    return all_lines(refusals_of(folder));
}

std::string trip_row(const std::string& more_columns, const std::string& values) {
    return refused_with("trips.csv", "trip" + more_columns + "\nT-0001" + values + "\n");
}

}  // namespace

TEST_CASE("a column that no trip has is refused with the nearest name", "[folder]") {
    CHECK_THAT(trip_row(",relase_start", ","), Contains("unknown-column | trips.csv line 1 column 2") &&
                                                   Contains("did you mean release_start?"));
    CHECK_THAT(trip_row(",", ","), Contains("a column without a name"));
    CHECK_THAT(trip_row(",tug,tug", ",Plover,Plover"), Contains("twice | trips.csv line 1 column 3"));
}

TEST_CASE("a value that does not parse is refused where it stands", "[folder]") {
    CHECK_THAT(trip_row(",lat", ",\"-40,61\""), Contains("not-a-number | trips.csv line 2 column lat"));
    CHECK_THAT(trip_row(",lat", ",nan"), Contains("not-a-number"));
    CHECK_THAT(trip_row(",lat", ",inf"), Contains("not-a-number"));
    CHECK_THAT(trip_row(",position_u_m", ",1 000"), Contains("not-a-number"));
    CHECK_THAT(trip_row(",lat", ",0x1F"), Contains("not-a-number"));
    CHECK_THAT(trip_row(",departed", ",04/08/2025"), Contains("trips.csv line 2 column departed"));
    CHECK_THAT(trip_row(",departed", ",2025-02-30T01:00Z"), Contains("trips.csv line 2 column departed"));
    CHECK_THAT(trip_row(",outcome", ",sunk"), Contains("not-a-choice") && Contains("returned_loaded"));
}

TEST_CASE("a local time that happens twice or never needs its offset", "[folder]") {
    CHECK_THAT(trip_row(",departed", ",2026-04-05T02:30"), Contains("trips.csv line 2 column departed"));
    CHECK_THAT(trip_row(",departed", ",2025-09-28T02:30"), Contains("trips.csv line 2 column departed"));
    CHECK(trip_row(",load,departed", ",L-1,2026-04-05T02:30+12:00").find("departed") == std::string::npos);
}

TEST_CASE("a number outside its unit's range is refused", "[folder]") {
    CHECK_THAT(trip_row(",lat", ",-90.5"), Contains("out-of-range | trips.csv line 2 column lat"));
    CHECK_THAT(refused_with("loads.csv", "load,dips_m\nL-1,0.9 50.1\n"),
               Contains("out-of-range") && Contains("50.1"));
    CHECK_THAT(refused_with("loads.csv", "load,full_draughts_m\nL-1,30.5 1 1 1 1 1\n"),
               Contains("out-of-range"));
    CHECK_THAT(
        refused_with("plant.json", R"({"barges": [{"name": "Teal", "ullage_table": [[0, 420], [51, 0]]}]})"),
        Contains("out-of-range | plant.json barges[0].ullage_table[1]"));
    CHECK_THAT(refused_with("plant.json",
                            R"({"barges": [{"name": "Teal", "hydrostatic_table": [[0, 20], [31, 9]]}]})"),
               Contains("out-of-range | plant.json barges[0].hydrostatic_table[1]"));
}

TEST_CASE("an end before its own start is refused, an end at its start is not", "[folder]") {
    CHECK_THAT(trip_row(",load,departed,returned", ",L-1,2025-08-04T11:00Z,2025-08-04T10:59Z"),
               Contains("backwards | trips.csv line 2 column returned"));
    CHECK(trip_row(",load,departed,returned", ",L-1,2025-08-04T11:00Z,2025-08-04T11:00Z") == "");
    CHECK_THAT(refused_with("shifts.csv", "shift,start,end\nS-01,2025-08-04T18:00,2025-08-04T06:00\n"),
               Contains("backwards"));
}

TEST_CASE("a blank id is refused, a row without an id that needs none is not", "[folder]") {
    CHECK_THAT(refused_with("trips.csv", "trip,load\n ,L-1\n"),
               Contains("blank-id | trips.csv line 2 column trip"));
    CHECK_THAT(refused_with("trips.csv", "load\nL-1\n"), Contains("blank-id"));
    CHECK(refused_with("delays.csv", "shift,cause\nS-01,weather\nS-01,weather\n") == "");
}

TEST_CASE("an unknown reference is refused with the nearest label", "[folder]") {
    CHECK_THAT(trip_row(",load", ",L-l"),
               Contains("unknown-reference | trips.csv line 2 column load") && Contains("did you mean L-1?"));
    CHECK_THAT(trip_row(",load,ground,cell", ",L-1,Gannet Patch,GP9"), Contains("no cell of Gannet Patch"));
    CHECK_THAT(refused_with("tallies.csv", "load,station,bucket,count\nL-1,ST-1,clam,3\n"),
               Contains("no bucket of Heron"));
    CHECK_THAT(refused_with("opening.csv", "consent,condition,value\nMHB-25-117,12,100\n"),
               Contains("has no condition \"12\""));
}

TEST_CASE("the same id twice in one kind is refused with both lines", "[folder]") {
    CHECK_THAT(refused_with("trips.csv", "trip,load\nT-0001,L-1\nT-2,L-1\nT-0001,L-1\n"),
               Contains("twice | trips.csv line 4") && Contains("trips.csv line 2"));
    CHECK_THAT(refused_with("plant.json", R"({"tugs": [{"name": "Plover"}, {"name": "Plover "}]})"),
               Contains("twice | plant.json tugs[1]"));
}

TEST_CASE("two dredgers may have a bucket of one name, and two grounds a cell", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    folder.with("plant.json", R"({"dredgers": [{"name": "Heron", "buckets": [{"name": "general"}]},
        {"name": "Egret", "buckets": [{"name": "general"}]}], "tugs": [{"name": "Plover"}],
        "barges": [{"name": "Teal"}]})");
    CHECK(all_lines(refusals_of(folder)) == "");
    folder.with("factors.csv", "from,material,bucket,factor,value\n2025-09-01,sand,general,fill,0.8\n");
    CHECK_THAT(all_lines(refusals_of(folder)), Contains("ambiguous | factors.csv line 2 column bucket"));
    folder.with("factors.csv", "from,material,bucket,factor,value\n2025-09-01,sand,Egret/general,fill,0.8\n");
    CHECK(all_lines(refusals_of(folder)) == "");
}

TEST_CASE("all reasons are given at once", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    folder.with("trips.csv", "trip,lat,nonsense\nT-0001,91,x\nT-0002,abc,x\n")
        .with("people.csv", "name,role\nAna,captain\n")
        .with("plant.json",
              R"({"tugs": [{"nam": "Plover"}], "barges": [{"name": "Teal", "capacity_m3": "420"}]})");
    const std::string refused = all_lines(refusals_of(folder));
    CHECK_THAT(refused, Contains("trips.csv line 1 column 3") && Contains("trips.csv line 2 column lat") &&
                            Contains("trips.csv line 3 column lat") &&
                            Contains("people.csv line 2 column role") &&
                            Contains("unknown-member | plant.json tugs[0].nam") &&
                            Contains("wrong-type | plant.json barges[0].capacity_m3"));
}

TEST_CASE("faults of reading and of meaning are given together", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    folder.with("people.csv", "name,role\nAna,captain\n")
        .with("trips.csv", "trip,load,tug\nT-0001,L-7,Plover\nT-0001,L-1,Plover\n")
        .with("plant.json", "{");
    const std::string refused = all_lines(refusals_of(folder));
    CHECK_THAT(refused, Contains("not-a-choice | people.csv") && Contains("not-json | plant.json") &&
                            Contains("unknown-reference | trips.csv line 2 column load") &&
                            Contains("twice | trips.csv line 3"));
    // The tug may well stand in the file that did not read.
    CHECK_THAT(refused, !Contains("Plover"));
}

TEST_CASE("a value of a megabyte is told in brief", "[folder]") {
    const std::string refused =
        refused_with("trips.csv", "trip,lat\nT-1," + std::string(1'000'000, '9') + "x\n");
    CHECK_THAT(refused, Contains("not-a-number"));
    CHECK(refused.size() < 3000);
    CHECK_THAT(refused_with("trips.csv", std::string(20'000, ',') + "\n"),
               Contains("too-wide | trips.csv line 1"));
}

TEST_CASE("a file of rubbish is refused with as many reasons as help", "[folder]") {
    std::string text = "trip,lat\n";
    for (int i = 0; i < 5000; ++i)
        text += "T-" + std::to_string(i) + ",north\n";
    TempFolder folder;
    write_marram(folder);
    const Refusals refusals = refusals_of(folder.with("trips.csv", text));
    CHECK(refusals.size() >= 1001);
    CHECK(refusals.size() < 1010);
    CHECK_THAT(all_lines(refusals), Contains("4000 more are wrong here"));
}

TEST_CASE("a harbour must have a name, a zone that exists and a system in metres", "[folder]") {
    CHECK_THAT(refused_with("harbour.json", R"({"name": "M", "epsg": 32760, "zone": "Pacific/Aukland"})"),
               Contains("unknown-zone | harbour.json zone"));
    CHECK_THAT(refused_with("harbour.json", R"({"name": "M", "epsg": 4326, "zone": "Pacific/Auckland"})"),
               Contains("crs | harbour.json epsg"));
    CHECK_THAT(refused_with("harbour.json", R"({"epsg": 32760, "zone": "Pacific/Auckland"})"),
               Contains("blank-id | harbour.json name"));
    CHECK_THAT(refused_with("harbour.json", R"({"name": "M", "epsg": 32760, "zone": "../../etc/passwd"})"),
               Contains("unknown-zone"));
    CHECK_THAT(refused_with("harbour.json", R"({"name": "M", "epsg": 32760, "zone": "Pacific/Auckland",
        "campaigns": [{"name": "a", "from": "soon", "till": "2026-01-01"}]})"),
               Contains("harbour.json campaigns[0].from") && Contains("campaigns[0].till"));
    TempFolder folder;
    write_marram(folder);
    CHECK_THAT(all_lines(refusals_of(folder.without("harbour.json"))), Contains("no-harbour"));
}

TEST_CASE("links, folders and pipes in the place of files are refused", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    folder.without("people.csv");
    std::filesystem::create_symlink("/etc/hostname", folder.in("people.csv"));
    folder.without("tide.csv");
    std::filesystem::create_directory(folder.in("tide.csv"));
    CHECK_THAT(all_lines(refusals_of(folder)),
               Contains("not-a-file | people.csv") && Contains("not-a-file | tide.csv"));
    CHECK_THAT(all_lines(read_folder(folder.in("nowhere"), std::nullopt).complaints.refusals()),
               Contains("not-a-folder"));
}

TEST_CASE("strangers in a folder are left out and noted, not refused", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    folder.with("README.md", "hello")
        .with("trip.csv", "x")
        .with(".gitignore", "x")
        .with("tracks/notes.txt", "x");
    CHECK(all_lines(refusals_of(folder)) == "");
    const std::string notes = all_lines(notes_of(folder));
    CHECK_THAT(notes, Contains("README.md: left out") && Contains("did you mean trips.csv?") &&
                          Contains("tracks/notes.txt: left out") && !Contains(".gitignore"));
}
