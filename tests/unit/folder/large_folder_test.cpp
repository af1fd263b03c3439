// SPDX-License-Identifier: GPL-3.0-or-later
// Hidden unless asked for by [large]: a book of ten seasons, 150 000 loads and trips and 300 000 tallies, has
// to land in well under a minute in a Release build.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <chrono>

#include "model/unit/time_text.h"
#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;

namespace {

constexpr int loads = 150'000;

void write_large(TempFolder& folder) {
    write_marram(folder);
    const Zone zone = *Zone::named("Pacific/Auckland");
    const auto at = [&](std::int64_t minutes) {
        return instant_text(Instant{1'754'244'000'000 + minutes * ms_per_minute}, zone);
    };
    std::string rows = "load,barge,material,loading_start,loading_end,dips_m,stated_hopper_m3\n";
    std::string trips =
        "trip,load,tug,departed,release_start,release_end,returned,ground,cell,lat,lon,position_u_m,wave_"
        "height_m,"
        "remarks\n";
    std::string tallies = "load,station,bucket,count\n";
    for (int i = 1; i <= loads; ++i) {
        const std::int64_t t = std::int64_t{i} * 240;
        rows += fmt::format("L-{},Teal,sand,{},{},0.91 1.02 1.10 0.95 1.00 0.99,{}\n", i, at(t), at(t + 100),
                            300 + i % 50);
        trips += fmt::format(
            "T-{:06},L-{},Plover,{},{},{},{},Gannet Patch,GP1,-40.61,179.605{},8,0.5,\"calm, light\"\n", i, i,
            at(t + 100), at(t + 190), at(t + 198), at(t + 239), i % 10);
        for (int n = 0; n < 2; ++n)
            tallies += fmt::format("L-{},ST-1,general,{}\n", i, 40 + n);
    }
    folder.with("loads.csv", rows).with("trips.csv", trips).with("tallies.csv", tallies).without("tracks");
}

template <class Do>
double seconds(Do work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

}  // namespace

TEST_CASE("ten seasons land in well under a minute", "[.][large]") {
    TempFolder folder;
    write_large(folder);
    auto created = Book::create(folder.in("large.sbook"), "office");
    Book& book = *created;
    std::optional<FolderContents> contents;
    std::optional<ImportPlan> plan;
    const double reading = seconds([&] { contents = read_folder(folder.path(), basis_of(book)); });
    const double planning = seconds([&] { plan = std::move(*plan_import(std::move(*contents), &book)); });
    const double landing =
        seconds([&] { CHECK(land(book, *plan, act_at_noon())->added.at("trip") == loads); });
    const double again = seconds([&] {
        const auto twice = import_folder(book, folder.path(), act_at_noon());
        CHECK(all_lines(twice.refusals()) == "");
        CHECK(twice->added_in_all() == 0);
    });
    const double out = seconds([&] { CHECK(export_folder(book, folder.in("out")).ok()); });
    WARN(fmt::format(
        "reading {:.1f} s, checking {:.1f} s, landing {:.1f} s; again {:.1f} s; writing out {:.1f} s",
        reading, planning, landing, again, out));
    CHECK(reading + planning + landing < 60);
}
