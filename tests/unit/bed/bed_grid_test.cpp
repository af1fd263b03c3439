// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/bed/bed_grid.h"

#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include <fstream>
#include <functional>
#include <iterator>

#include "model/bed/scratch_copy.h"
#include "model/place/gdal_safety.h"
#include "tests/support/temp_folder.h"
#include "tests/unit/bed/grids.h"

namespace spoilbook::test {
namespace {

/// A GeoTIFF of 3 columns and 2 rows, 1 to 6, made by GDAL itself.
std::string geotiff(const std::array<double, 6>& place, int epsg,
                    const std::function<void(GDALRasterBand&)>& more = {}) {
    make_gdal_safe();
    const tests::TempFolder folder;
    const std::string path = folder.file("made.tif");
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    GDALDataset* made = driver->Create(path.c_str(), 3, 2, 1, GDT_Float32, nullptr);
    std::array<double, 6> copy = place;
    made->SetGeoTransform(copy.data());
    OGRSpatialReference map;
    if (epsg != 0) {
        map.importFromEPSG(epsg);
        made->SetSpatialRef(&map);
    }
    std::array<float, 6> numbers{1, 2, 3, 4, 5, 6};
    GDALRasterBand* band = made->GetRasterBand(1);
    if (more) more(*band);
    CHECK(band->RasterIO(GF_Write, 0, 0, 3, 2, numbers.data(), 3, 2, GDT_Float32, 0, 0) == CE_None);
    GDALClose(made);
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

std::string why_refused(const std::string& bytes) {
    const auto grid = BedGrid::open(HeldBytes(bytes), "survey SV-1");
    if (grid) return "";
    CHECK(grid.refusals().front().where == "survey SV-1");
    CHECK_FALSE(grid.refusals().front().mend.empty());
    return grid.refusals().front().what;
}

constexpr std::array<double, 6> north_up{711'640, 2, 0, 5'497'374, 0, -2};

}  // namespace

TEST_CASE("a grid gives its numbers window by window, and none where there is none", "[bed][grid]") {
    MadeGrid made;
    made.rows = {{1, 2, 3}, {4, NAN, 6}};
    const std::string text = made.text();
    const auto grid = BedGrid::open(HeldBytes(text), "survey SV-1");
    REQUIRE(grid);
    CHECK(grid->columns() == 3);
    CHECK(grid->rows() == 2);
    CHECK(grid->pixel_m2() == 1);
    CHECK(grid->map_wkt().empty());
    CHECK(grid->numbers({0, 0, 2, 1}) == std::vector<double>{1, 2});
    const auto lower = grid->numbers({1, 1, 2, 1});
    CHECK(std::isnan(lower[0]));
    CHECK(lower[1] == 6);
    // The middle of the first pixel lies half a metre in from the north-west corner.
    CHECK(grid->on_map({0.5, 0.5}) == EastNorth{711'640.5, 5'497'371.5});
    const GridPlace back = grid->in_grid({711'642.5, 5'497'370.5});
    CHECK_THAT(back.column, WithinAbs(2.5, 1e-9));
    CHECK_THAT(back.row, WithinAbs(1.5, 1e-9));
}

TEST_CASE("a GeoTIFF is read whichever way its rows run", "[bed][grid]") {
    const std::string down = geotiff(north_up, 32760);
    const auto grid = BedGrid::open(HeldBytes(down), "survey SV-1");
    REQUIRE(grid);
    CHECK(grid->pixel_m2() == 4);
    CHECK_FALSE(grid->map_wkt().empty());
    CHECK(GridMap::between(harbour_map(), *grid, "survey SV-1").value().is_one_map());
    const std::string up = geotiff({711'640, 2, 0, 5'497'370, 0, 2}, 32760);
    const auto other = BedGrid::open(HeldBytes(up), "survey SV-1");
    REQUIRE(other);
    // Its first row is the southern one.
    CHECK(other->on_map({0.5, 0.5}) == EastNorth{711'641, 5'497'371});
    CHECK(other->numbers({0, 0, 3, 1}) == std::vector<double>{1, 2, 3});
}

TEST_CASE("a grid on another map lies where its own map has it", "[bed][grid]") {
    // Zone 1 south lies next to zone 60 south, across the 180th meridian.
    const std::string bytes = geotiff({200'000, 2, 0, 5'497'374, 0, -2}, 32701);
    const auto grid = BedGrid::open(HeldBytes(bytes), "survey SV-1");
    REQUIRE(grid);
    const auto map = GridMap::between(harbour_map(), *grid, "survey SV-1");
    REQUIRE(map);
    CHECK_FALSE(map->is_one_map());
    const EastNorth corner{200'003, 5'497'372};
    const EastNorth in_book = map->in_book(corner);
    // By the model's own maps, both ways through latitude and longitude.
    const Crs zone_1 = Crs::from_epsg(32701).value();
    const EastNorth by_degrees = harbour_map().project(zone_1.unproject(corner));
    CHECK_THAT(in_book.easting_m, WithinAbs(by_degrees.easting_m, 0.001));
    CHECK_THAT(in_book.northing_m, WithinAbs(by_degrees.northing_m, 0.001));
    const Area square = area_of(
        {box(in_book.easting_m, in_book.northing_m, in_book.easting_m + 100, in_book.northing_m + 100)});
    const Area there = map->on_grid(square);
    CHECK_THAT(there.parts[0].rings[0].points[0].easting_m, WithinAbs(corner.easting_m, 0.001));
    CHECK_THAT(there.parts[0].rings[0].points[0].northing_m, WithinAbs(corner.northing_m, 0.001));
    CHECK_THAT(area_m2(there), WithinAbs(10'000, 60));
}

TEST_CASE("what is no usable grid is refused, with the reason", "[bed][grid]") {
    CHECK(why_refused("").find("not a grid") != std::string::npos);
    CHECK(why_refused("a letter from the surveyor").find("not a grid") != std::string::npos);
    CHECK(why_refused("\x89HDF\r\n\x1a\n cut short").find("not a grid") != std::string::npos);
    CHECK(why_refused("<VRTDataset rasterXSize=\"1\" rasterYSize=\"1\"></VRTDataset>").find("not a grid") !=
          std::string::npos);
    CHECK(why_refused(geotiff({711'640, 2, 0.1, 5'497'374, 0.1, -2}, 32760)) ==
          "it is turned against its map");
    CHECK(why_refused(geotiff({179.5, 0.001, 0, -40.6, 0, -0.001}, 4326)) == "its map is in degrees");
    // EPSG 2263 is in US survey feet.
    CHECK(why_refused(geotiff({300'000, 5, 0, 60'000, 0, -5}, 2263)) == "its map is not in metres");
}

TEST_CASE("numbers are as the band scales them, and none where it says so or no bed can be", "[bed][grid]") {
    const std::string scaled = geotiff(north_up, 32760, [](GDALRasterBand& band) {
        band.SetScale(0.5);
        band.SetOffset(-10);
        band.SetNoDataValue(4);
    });
    const auto grid = BedGrid::open(HeldBytes(scaled), "survey SV-1");
    REQUIRE(grid);
    const auto numbers = grid->numbers({0, 0, 3, 2});
    CHECK(numbers[0] == -9.5);
    CHECK(std::isnan(numbers[3]));
    CHECK(numbers[5] == -7);
    // -9999 that no header explains.
    const std::string text = "ncols 2\nnrows 1\nxllcorner 0\nyllcorner 0\ncellsize 1\n-9999 -8.5\n";
    const auto silent = BedGrid::open(HeldBytes(text), "survey SV-1");
    REQUIRE(silent);
    CHECK(std::isnan(silent->numbers({0, 0, 2, 1})[0]));
    CHECK(silent->numbers({0, 0, 2, 1})[1] == -8.5);
}

TEST_CASE("a file cut short behind its header is told where it is read", "[bed][grid]") {
    std::string bytes = geotiff(north_up, 32760);
    bytes.resize(bytes.size() - 10);
    const auto grid = BedGrid::open(HeldBytes(bytes), "survey SV-1");
    REQUIRE(grid);
    CHECK_THROWS_AS(grid->numbers({0, 0, 3, 2}), BrokenGrid);
    const auto bed = SurveyBed::open(survey_up(0.1), HeldBytes(bytes), harbour_map());
    REQUIRE(bed);
    const Area whole = area_of({box(711'640, 5'497'370, 711'646, 5'497'374)});
    const auto walked = walk(*bed, whole, [](const BedStrip&) { return true; });
    REQUIRE_FALSE(walked);
    CHECK(walked.refusals().front().what.find("cut short") != std::string::npos);
    CHECK_FALSE(shows(*bed, whole));
}

TEST_CASE("feet are not taken for metres", "[bed][grid]") {
    const auto in = [](const char* unit) {
        return geotiff(north_up, 32760, [unit](GDALRasterBand& band) { band.SetUnitType(unit); });
    };
    CHECK(why_refused(in("metre")).empty());
    CHECK(why_refused(in("US survey foot")) == "its numbers are not in metres");
}

TEST_CASE("pixels that no survey has are refused before anything is reckoned with them", "[bed][grid]") {
    const std::string head = "ncols 2\nnrows 1\nxllcorner 711640\nyllcorner 5497370\ncellsize ";
    CHECK(why_refused(head + "0.000000001\n-8 -8\n") == "its pixels are under 1 mm wide");
    CHECK(why_refused(geotiff({711'640, 1e-9, 0, 5'497'374, 0, -1}, 32760)) ==
          "its pixels are under 1 mm wide");
}

TEST_CASE("the copy that a grid is read from goes with it", "[bed][grid]") {
    std::filesystem::path path;
    {
        const auto copy = ScratchCopy::of(HeldBytes("0123456789"), ".asc");
        REQUIRE(copy);
        path = copy->path();
        CHECK(path.extension() == ".asc");
        CHECK(std::filesystem::file_size(path) == 10);
        const auto folder = std::filesystem::status(path.parent_path()).permissions();
        CHECK((folder & (std::filesystem::perms::group_all | std::filesystem::perms::others_all)) ==
              std::filesystem::perms::none);
    }
    CHECK_FALSE(std::filesystem::exists(path.parent_path()));
}

}  // namespace spoilbook::test
