// SPDX-License-Identifier: GPL-3.0-or-later
// bench_bed [COLUMNS]: a claim's bed judged on surveyed grids of COLUMNS by COLUMNS pixels (2 000) and of
// four times as many, as ratios to GDAL's own statistics of the same pixels; and the most memory that each
// took.
#include <fmt/format.h>
#include <gdal_priv.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <vector>

#include "model/bed/surface_look.h"
#include "model/place/gdal_safety.h"
#include "tests/bench/median.h"
#include "tests/bench/peak.h"
#include "tests/support/temp_folder.h"

using namespace spoilbook;
using namespace spoilbook::bench;

namespace {

constexpr double west = 711'640, south = 5'497'370, step_m = 0.5;

void write_grid(const std::string& path, int columns) {
    GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
    GDALDataset* made = driver->Create(path.c_str(), columns, columns, 1, GDT_Float32, nullptr);
    std::array<double, 6> place{west, step_m, 0, south + columns * step_m, 0, -step_m};
    made->SetGeoTransform(place.data());
    std::vector<float> row(static_cast<std::size_t>(columns));
    for (int r = 0; r < columns; ++r) {
        for (std::size_t c = 0; c < row.size(); ++c)
            row[c] =
                static_cast<float>(-9.6 + 0.2 * std::sin(static_cast<double>(c) / 40) * std::sin(r / 30.0));
        if (made->GetRasterBand(1)->RasterIO(GF_Write, 0, r, columns, 1, row.data(), columns, 1, GDT_Float32,
                                             0, 0) != CE_None)
            std::exit(1);
    }
    GDALClose(made);
}

/// A claim with 64 corners that fills most of the grid.
Area claim(int columns) {
    const double radius = columns * step_m / 2;
    Ring ring;
    for (int i = 0; i <= 64; ++i) {
        const double angle = 2 * M_PI * (i % 64) / 64;
        ring.points.push_back(
            {west + radius * (1 + std::cos(angle)), south + radius * (1 + std::sin(angle))});
    }
    return {{{{ring}}}};
}

void measure(int columns) {
    const tests::TempFolder folder;
    const std::string path = folder.file("grid.tif");
    write_grid(path, columns);
    std::ifstream file(path, std::ios::binary);
    const std::string bytes((std::istreambuf_iterator<char>(file)), {});
    const double yardstick = median_seconds([&] {
        GDALDataset* grid = GDALDataset::Open(path.c_str(), GDAL_OF_RASTER);
        double least = 0, most = 0, mean = 0, spread = 0;
        grid->GetRasterBand(1)->ComputeStatistics(0, &least, &most, &mean, &spread, nullptr, nullptr);
        GDALClose(grid);
    });
    Survey survey;
    survey.survey = "SV-1";
    survey.positive = "up";
    survey.u_m = 0.07;
    SurfaceBounds bounds;
    bounds.lowest_m = -9.7;
    const Crs crs = Crs::from_epsg(32760).value();
    const auto opened = [&] { return std::move(SurveyBed::open(survey, HeldBytes(bytes), crs).value()); };
    const double opening = median_seconds([&] { opened(); });
    const SurveyBed bed = opened();
    forget_peak();
    const double before_mb = peak_mb();
    const double judging = median_seconds([&] { (void)look(bed, nullptr, claim(columns), bounds); });
    bounds.most_rise_m = 0.1;
    const double rise = median_seconds([&] { (void)look(bed, &bed, claim(columns), bounds); });
    fmt::print(
        "{:.1f} million pixels, in GDAL statistics ({:.0f} ms): opening {:.2f}, a level {:.2f}, a rise "
        "over a baseline {:.2f}; memory grew by {:.0f} MB\n",
        columns * 1e-6 * columns, yardstick * 1000, opening / yardstick, judging / yardstick,
        rise / yardstick, peak_mb() - before_mb);
}

}  // namespace

int main(int argc, char** argv) {
    make_gdal_safe();
    const int columns = argc > 1 ? std::atoi(argv[1]) : 2'000;
    measure(columns);
    measure(2 * columns);
}
