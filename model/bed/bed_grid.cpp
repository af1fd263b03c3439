// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/bed/bed_grid.h"

#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "model/bed/scratch_copy.h"
#include "model/bed/text_grid.h"
#include "model/place/gdal_safety.h"
#include "model/place/ogr_shape.h"

namespace spoilbook {

namespace {

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();
constexpr double least_step_m = 0.001;
constexpr int most_columns = 1'000'000;
constexpr std::string_view hdf5_mark = "\x89HDF\r\n\x1a\n";

Refusal refused(const std::string& file, std::string what) {
    return {
        "grid", file, std::move(what),
        "bring a grid as GeoTIFF, ESRI ASCII, BAG or XYZ on a regular raster, in metres on a projected map"};
}

/// GDAL tells a BAG by its name.
std::string extension_of(const ByteSource& bytes) {
    return bytes.piece(0, hdf5_mark.size()) == hdf5_mark ? ".bag" : "";
}

/// Blank: the file does not say, and nobody surveys a bed in anything else without saying so.
bool is_metres(std::string_view unit) {
    static constexpr std::array<std::string_view, 6> names{"", "m", "metre", "metres", "meter", "meters"};
    return std::ranges::find(names, unit) != names.end();
}

GDALDataset* opened(const std::filesystem::path& path) {
    // Read-only, and nothing that is not a raster.
    return GDALDataset::Open(path.c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY);
}

}  // namespace

void BedGrid::Closes::operator()(GDALDataset* dataset) const {
    GDALClose(dataset);
}

BedGrid::BedGrid(std::unique_ptr<GDALDataset, Closes> dataset) : dataset_(std::move(dataset)) {}
BedGrid::BedGrid(BedGrid&&) noexcept = default;
BedGrid& BedGrid::operator=(BedGrid&&) noexcept = default;
BedGrid::~BedGrid() = default;

Checked<BedGrid> BedGrid::open(const ByteSource& bytes, const std::string& file) {
    make_gdal_safe();
    // Gone as soon as GDAL has it open: nothing stays behind, however the program ends.
    const auto copy = ScratchCopy::of(bytes, extension_of(bytes));
    if (!copy) return copy.refusals();
    if (const auto why = why_not_openable(copy->path())) return refused(file, *why);
    const HeardGdal heard;
    std::unique_ptr<GDALDataset, Closes> dataset(opened(copy->path()));
    if (dataset == nullptr) return refused(file, "it is not a grid that can be read");
    if (dataset->GetRasterCount() < 1) return refused(file, "it has no band");
    BedGrid grid(std::move(dataset));
    if (const auto why = grid.why_unfit(); !why.empty()) return refused(file, why);
    if (grid.driver() == "AAIGrid") {
        const auto pixels =
            static_cast<std::uint64_t>(grid.columns()) * static_cast<std::uint64_t>(grid.rows());
        if (const auto why = why_text_grid_is_unfit(bytes, pixels); !why.empty()) return refused(file, why);
    }
    return grid;
}

std::string BedGrid::why_unfit() {
    std::array<double, 6> place{};
    if (dataset_->GetGeoTransform(place.data()) != CE_None) return "it does not say where it lies";
    if (place[2] != 0 || place[4] != 0) return "it is turned against its map";
    first_corner_ = {place[0], place[3]};
    step_east_m_ = place[1];
    step_north_m_ = place[5];
    if (!std::isfinite(step_east_m_) || !std::isfinite(step_north_m_) || !is_known(first_corner_))
        return "it does not say where it lies";
    if (std::abs(step_east_m_) < least_step_m || std::abs(step_north_m_) < least_step_m)
        return "its pixels are under 1 mm wide";
    if (columns() > most_columns || rows() > most_columns) return "it has over a million columns or rows";
    GDALRasterBand* band = dataset_->GetRasterBand(1);
    if (!is_metres(band->GetUnitType())) return "its numbers are not in metres";
    int is_given = 0;
    const double scale = band->GetScale(&is_given);
    if (is_given != 0) scale_ = scale;
    const double offset = band->GetOffset(&is_given);
    if (is_given != 0) offset_ = offset;
    const OGRSpatialReference* map = dataset_->GetSpatialRef();
    if (map == nullptr || map->IsEmpty()) return "";
    if (map->IsCompound() != 0 && map->GetTargetLinearUnits("VERT_CS") != 1.0)
        return "its numbers are not in metres";
    OGRSpatialReference flat(*map);
    flat.StripVertical();
    if (flat.IsLocal()) return "";  // "unknown": the file does not say
    if (!flat.IsProjected()) return "its map is in degrees";
    if (flat.GetLinearUnits() != 1.0) return "its map is not in metres";
    char* wkt = nullptr;
    flat.exportToWkt(&wkt);
    if (wkt != nullptr) map_wkt_ = wkt;
    CPLFree(wkt);
    return "";
}

int BedGrid::columns() const {
    return dataset_->GetRasterXSize();
}

int BedGrid::rows() const {
    return dataset_->GetRasterYSize();
}

double BedGrid::pixel_m2() const {
    return std::abs(step_east_m_ * step_north_m_);
}

GridPlace BedGrid::in_grid(EastNorth place) const {
    return {(place.easting_m - first_corner_.easting_m) / step_east_m_,
            (place.northing_m - first_corner_.northing_m) / step_north_m_};
}

EastNorth BedGrid::on_map(GridPlace place) const {
    return {first_corner_.easting_m + place.column * step_east_m_,
            first_corner_.northing_m + place.row * step_north_m_};
}

std::vector<double> BedGrid::numbers(const GridWindow& window) const {
    std::vector<double> numbers(window.size());
    std::vector<GByte> is_number(window.size());
    const HeardGdal heard;
    GDALRasterBand* band = dataset_->GetRasterBand(1);
    const auto read = [&](GDALRasterBand* from, void* to, GDALDataType type) {
        if (from->RasterIO(GF_Read, window.column, window.row, window.columns, window.rows, to,
                           window.columns, window.rows, type, 0, 0, nullptr) != CE_None)
            throw BrokenGrid("its grid does not read to the end: the file is cut short or damaged");
    };
    read(band, numbers.data(), GDT_Float64);
    read(band->GetMaskBand(), is_number.data(), GDT_Byte);
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        const double number = numbers[i] * scale_ + offset_;
        numbers[i] = is_number[i] != 0 && std::abs(number) <= no_bed_beyond_m ? number : no_number;
    }
    return numbers;
}

std::string BedGrid::driver() const {
    return dataset_->GetDriver()->GetDescription();
}

bool BedGrid::is_elevation_by_format() const {
    return driver() == "BAG";
}

}  // namespace spoilbook
