// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "model/folder/label_file.h"
#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;
using Catch::Matchers::Contains;

namespace {

std::string added(Book& book, const TempFolder& folder) {
    const auto outcome = import_folder(book, folder.path(), act_at_noon());
    if (!outcome) return all_lines(outcome.refusals());
    return std::to_string(outcome->added_in_all()) + " added";
}

Book marram_book() {
    TempFolder folder;
    write_marram(folder);
    return book_from(folder);
}

}  // namespace

TEST_CASE("tracks, loggers' files and grids are kept as they came", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    const Book book = book_from(folder);
    for (const auto& [name, file] : {std::pair{"track", "tracks/T-0001.csv"},
                                     {"logger_file", "turbidity/R1.csv"},
                                     {"survey", "surveys/before.xyz"}}) {
        const auto rows = book.rows(kind(name));
        REQUIRE(rows.size() == 1);
        CHECK(book.material(text_of(kind(name), rows[0].values, "digest")) == text_of_file(folder.in(file)));
    }
}

TEST_CASE("a track needs a trip, and a trip has one track", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    folder.with("tracks/T-9.nmea", "$GPGGA,1\n");
    CHECK_THAT(all_lines(refusals_of(folder)), Contains("unknown-reference | tracks/T-9.nmea"));
    folder.without("tracks/T-9.nmea").with("tracks/T-0001.gpx", "<gpx/>");
    CHECK_THAT(all_lines(refusals_of(folder)), Contains("twice | tracks/T-0001.gpx"));
    folder.without("tracks/T-0001.csv").with("tracks/T-0001.gpx", "hello");
    CHECK_THAT(all_lines(refusals_of(folder)), Contains("not-gpx"));
    folder.without("tracks/T-0001.gpx").with("tracks/T-0001.csv", "time,lat\n2025-08-04T09:40,-95\n");
    CHECK_THAT(all_lines(refusals_of(folder)), Contains("the column lon is missing"));

    Book book = marram_book();
    TempFolder more;
    more.with("tracks/T-0001.csv", "time,lat,lon\n2025-08-04T09:40,-40.61,179.605\n");
    CHECK(added(book, more) == "0 added");
    more.with("tracks/T-0001.csv", "time,lat,lon\n2025-08-04T09:41,-40.61,179.605\n");
    CHECK_THAT(added(book, more), Contains("other-values | tracks/T-0001.csv"));
}

TEST_CASE("a logger's file is read strictly", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    folder.with("turbidity/R1.csv",
                "time,value\n2025-08-04T06:00,3.1\nyesterday,3\n2025-08-04T06:20,3 NTU\n,4\n");
    CHECK_THAT(all_lines(refusals_of(folder)), Contains("turbidity/R1.csv line 3 column time") &&
                                                   Contains("turbidity/R1.csv line 4 column value") &&
                                                   Contains("blank-time | turbidity/R1.csv line 5"));
    folder.with("turbidity/R1.csv", "time,turbidity\n");
    CHECK_THAT(all_lines(refusals_of(folder)),
               Contains("unknown-column") && Contains("column value is missing"));
    folder.with("turbidity/R1.csv", "time,value\n").with("turbidity/R7.csv", "time,value\n");
    CHECK_THAT(all_lines(refusals_of(folder)), Contains("unknown-reference | turbidity/R7.csv"));
}

TEST_CASE("a site's next file may go over the same time again, with the same values", "[folder]") {
    Book book = marram_book();
    TempFolder more;
    more.with("turbidity/R1.csv", "time,value\n2025-08-04T06:20,3.4\n2025-08-04T06:30,3.6\n");
    CHECK(added(book, more) == "1 added");
    CHECK(added(book, more) == "0 added");
    TempFolder other;
    other.with("turbidity/R1.csv", "time,value\n2025-08-04T06:20,9.9\n");
    CHECK_THAT(added(book, other),
               Contains("other-values | turbidity/R1.csv") && Contains("the book has 3.4, the folder 9.9"));
    TempFolder known;
    known.with("turbidity/R1.csv", "time,value\n2025-08-04T06:30+12:00,3.60\n");
    CHECK(added(book, known) == "0 added");

    TempFolder out;
    REQUIRE(export_folder(book, out.in("out")).ok());
    CHECK(text_of_file(out.in("out/turbidity/R1.csv")) ==
          "time,value\n2025-08-04T06:00:00+12:00,3.1\n2025-08-04T06:10:00+12:00,\n2025-08-04T06:20:00+12:00,"
          "3.4\n"
          "2025-08-04T06:30:00+12:00,3.6\n");
    CHECK(import_folder(book, out.in("out"), act_at_noon())->added_in_all() == 0);
}

TEST_CASE("a survey's file stays in its folder", "[folder]") {
    for (const char* name : {"../harbour.json", "/etc/passwd", "a/b.tif", "..", ".hidden", "a\\\\b.tif"}) {
        TempFolder folder;
        write_marram(folder);
        folder.with("surveys.csv", std::string("survey,file\nbefore,") + name + "\n");
        CHECK_THAT(all_lines(refusals_of(folder)), Contains("path | surveys.csv line 2 column file"));
    }
    TempFolder folder;
    write_marram(folder);
    folder.without("surveys/before.xyz");
    CHECK_THAT(all_lines(refusals_of(folder)), Contains("no-file | surveys.csv line 2 column file"));
    std::filesystem::create_symlink("/etc/hostname", folder.in("surveys/before.xyz"));
    CHECK_THAT(all_lines(refusals_of(folder)), Contains("not-a-file | surveys/before.xyz"));
    folder.without("surveys");
    std::filesystem::create_directory_symlink("/etc", folder.in("surveys"));
    CHECK_THAT(all_lines(refusals_of(folder)), Contains("not-a-folder | surveys"));
}

TEST_CASE("a survey that the book has needs no file, and no other may take its file's name", "[folder]") {
    Book book = marram_book();
    TempFolder more;
    more.with("surveys.csv",
              "survey,file,surveyed_on,kind,positive,offset_m,u_m\n"
              "before,before.xyz,2025-08-01,before,up,0,0.1\n");
    CHECK(added(book, more) == "0 added");
    more.with("surveys.csv", "survey,file\nafter,before.xyz\n")
        .with("surveys/before.xyz", "711650 5497400 -9.7\n");
    CHECK_THAT(added(book, more), Contains("survey before in the book has another file of this name"));
}

TEST_CASE("a trip's label that no file can bear is written out in its track's name", "[folder]") {
    CHECK(file_stem_of("T-0412") == "T-0412");
    for (const std::string label : {"T/04:12", "100%", "%2F", ".hidden", "sites", "a b", "Ōtāhuhu 1"}) {
        INFO(label);
        CHECK(label_of_stem(file_stem_of(label)) == label);
        CHECK(file_stem_of(label).find_first_of("/:") == std::string::npos);
        CHECK(file_stem_of(label) != "sites");
    }
}

TEST_CASE("an export goes into a new or empty folder only, and is whole or not there", "[folder]") {
    const Book book = marram_book();
    TempFolder out;
    out.with("full/x.txt", "x");
    CHECK_THAT(all_lines(export_folder(book, out.in("full")).refusals()), Contains("not-empty"));
    CHECK_THAT(all_lines(export_folder(book, out.in("full/x.txt")).refusals()), Contains("not-empty"));
    std::filesystem::create_directory(out.in("empty"));
    CHECK(export_folder(book, out.in("empty/")).ok());
    CHECK(std::filesystem::exists(out.in("empty/trips.csv")));
    CHECK_THAT(all_lines(export_folder(book, out.in("no/where")).refusals()), Contains("unwritable"));
    std::size_t entries = 0;
    for ([[maybe_unused]] const auto& entry : std::filesystem::directory_iterator(out.path()))
        ++entries;
    CHECK(entries == 2);
}
