// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;
using Catch::Matchers::Contains;

namespace {

std::string noted_with(const std::string& name, const std::string& text) {
    TempFolder folder;
    write_marram(folder);
    return all_lines(notes_of(folder.with(name, text)));
}

const std::string shift_columns = "shift,start,end,dredger,skipper,signed_at\n";

}  // namespace

TEST_CASE("spans of one plant that overlap in time are noted, those that touch are not", "[folder]") {
    CHECK_THAT(noted_with("shifts.csv",
                          "shift,start,end,dredger\nS-01,2025-08-04T06:00,2025-08-04T18:00,Heron\n"
                          "S-02,2025-08-04T17:00,2025-08-04T23:00,Heron\n"),
               Contains("shifts.csv line 3: overlaps in time with shift S-01"));
    CHECK_THAT(noted_with("shifts.csv",
                          "shift,start,end,dredger\nS-01,2025-08-04T06:00,2025-08-04T18:00,Heron\n"
                          "S-02,2025-08-04T18:00,2025-08-04T23:00,Heron\n"),
               !Contains("overlaps"));
    CHECK_THAT(noted_with("trips.csv",
                          "trip,load,tug,departed,returned\n"
                          "T-0001,L-1,Plover,2025-08-04T08:00,2025-08-04T11:00\n"
                          "T-0002,L-1,Plover,2025-08-04T10:00,2025-08-04T12:00\n"),
               Contains("trips.csv line 3: overlaps in time with trip T-0001"));
    CHECK_THAT(noted_with("loads.csv",
                          "load,barge,loading_start,loading_end\nL-1,Teal,2025-08-04T06:00,2025-08-04T09:00\n"
                          "L-2,Teal,2025-08-04T08:00,2025-08-04T10:00\n"),
               Contains("loads.csv line 3: overlaps in time with load L-1"));
}

TEST_CASE("a row that overlaps what the book has is noted", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    Book book = book_from(folder);
    TempFolder more;
    more.with("shifts.csv", "shift,start,end,dredger\nS-00,2025-08-04T00:00,2025-08-04T07:00,Heron\n");
    const auto outcome = import_folder(book, more.path(), act_at_noon());
    REQUIRE(outcome.ok());
    CHECK_THAT(all_lines(outcome->notes), Contains("shifts.csv line 2: overlaps in time with shift S-01"));
}

TEST_CASE("a shift that is signed before it ended, or does not close, is noted", "[folder]") {
    CHECK_THAT(
        noted_with("shifts.csv",
                   shift_columns + "S-01,2025-08-04T06:00,2025-08-04T18:00,Heron,Ana,2025-08-04T17:59\n"),
        Contains("shifts.csv line 2: shift S-01 is signed before it ended"));
    CHECK_THAT(
        noted_with("delays.csv", "shift,start,end,cause\nS-01,2025-08-04T12:30,2025-08-04T18:00,weather\n"),
        Contains("shifts.csv line 2: shift S-01 does not close: 30 minutes are neither station nor delay"));
    CHECK(noted_with("delays.csv",
                     "shift,start,end,cause\nS-01,2025-08-04T12:05,2025-08-04T18:00,weather\n") == "");
    CHECK_THAT(
        noted_with("delays.csv", "shift,start,end,cause\nS-01,2025-08-04T12:00,2025-08-04T19:00,weather\n"),
        Contains("does not close: a delay reaches 60 minutes beyond it"));
}

TEST_CASE("a trip that outlasts its shift is noted", "[folder]") {
    CHECK_THAT(
        noted_with("trips.csv",
                   "trip,load,tug,departed,returned\nT-0001,L-1,Plover,2025-08-04T17:00,2025-08-04T19:30\n"),
        Contains("trips.csv line 2: trip T-0001 outlasts shift S-01 by 90 minutes"));
}

TEST_CASE("a logged cell where the position is not is noted", "[folder]") {
    const std::string columns = "trip,load,ground,cell,lat,lon\n";
    CHECK_THAT(noted_with("trips.csv", columns + "T-0001,L-1,Gannet Patch,GP1,-40.61,179.617\n"),
               Contains("trips.csv line 2: T-0001 is logged in cell GP1, its position is 169 m outside"));
    CHECK(noted_with("trips.csv", columns + "T-0001,L-1,Gannet Patch,GP1,-40.61,179.614\n") == "");
    CHECK_THAT(noted_with("releases.csv", "release,trip,cell,lat,lon\nR-1,T-0001,GP1,-40.7,179.6\n"),
               Contains("releases.csv line 2: R-1 is logged in cell GP1"));
}

TEST_CASE("a load over her barge's capacity and dips outside her table are noted", "[folder]") {
    const std::string columns = "load,barge,material,dips_m,stated_hopper_m3\n";
    CHECK_THAT(noted_with("loads.csv", columns + "L-1,Teal,sand,,420.5\n"),
               Contains("loads.csv line 2: load L-1 is over the capacity of Teal: 420.5 hopper m³ as stated, "
                        "420.0 hold"));
    CHECK_THAT(noted_with("loads.csv", columns + "L-1,Teal,sand,3.0 4.1,\n"),
               Contains("load L-1 has dips outside the table of Teal (0 to 4 m)"));
    // 112 · 4.2 · 0.9 = 423.36
    CHECK_THAT(noted_with("tallies.csv", "load,station,bucket,count\nL-1,ST-1,general,112\n"),
               Contains("423.4 hopper m³ by tally"));
}

TEST_CASE("names, causes and shares that do not fit are noted", "[folder]") {
    CHECK_THAT(
        noted_with("shifts.csv", shift_columns + "S-01,2025-08-04T06:00,2025-08-04T18:00,Heron,Anna,\n"),
        Contains("Anna is not in people.csv (did you mean Ana?)"));
    CHECK_THAT(noted_with("delays.csv",
                          "shift,start,end,cause\nS-01,2025-08-04T12:00,2025-08-04T15:00,lunch\n"
                          "S-01,2025-08-04T15:00,2025-08-04T18:00,lunch\n"),
               Contains("delays.csv line 2: the cause \"lunch\" is not on the list of causes, 2 times"));
    CHECK_THAT(
        noted_with("releases.csv", "release,trip,share\nR-1,T-0001,0.7\nR-2,T-0001,0.4\n"),
        Contains("releases.csv line 3: the releases of trip T-0001 have shares of 1.1 in all, over 1"));
}

TEST_CASE("a map to whose datum no way is published is noted once", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    // ATS77: the registry has no transformation from it to WGS 84.
    folder.with("harbour.json", R"({"name": "M", "epsg": 2220, "zone": "America/Moncton"})");
    folder.with("claims.geojson", R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":
        {"claim":"FB1"},"geometry":{"type":"Polygon","coordinates":[[[-66.5,45.0],[-66.49,45.0],[-66.49,44.99],
        [-66.5,45.0]]]}}]})");
    CHECK_THAT(all_lines(notes_of(folder)), Contains("off by some hundred metres"));
}

TEST_CASE("a map whose scale is off where the claims lie is noted once", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    // Web Mercator at 40.6 degrees south stretches by about 1/cos(40.6°) = 1.32.
    folder.with("harbour.json", R"({"name": "M", "epsg": 3857, "zone": "Pacific/Auckland"})");
    folder.with("claims.geojson", R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":
        {"claim":"FB1"},"geometry":{"type":"Polygon","coordinates":[[[179.5,-40.6],[179.51,-40.6],[179.51,-40.61],
        [179.5,-40.6]]]}}]})");
    CHECK_THAT(all_lines(notes_of(folder)), Contains("the scale of EPSG:3857 is off by +31."));
}
