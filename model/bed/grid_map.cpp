// SPDX-License-Identifier: GPL-3.0-or-later
#include <ogr_spatialref.h>

#include <algorithm>
#include <cmath>

#include "model/bed/bed_grid.h"
#include "model/place/ogr_shape.h"

namespace spoilbook {

namespace {

/// Pieces of an edge: an edge of a kilometre bends by less than a millimetre in between.
constexpr int pieces = 16;

using Way = std::unique_ptr<OGRCoordinateTransformation>;

EastNorth moved(OGRCoordinateTransformation& way, EastNorth place) {
    const HeardGdal heard;
    double x = place.easting_m, y = place.northing_m;
    int worked = 0;
    way.Transform(1, &x, &y, nullptr, &worked);
    if (worked == 0) return {std::nan(""), std::nan("")};
    return {x, y};
}

Ring moved(OGRCoordinateTransformation& way, const Ring& ring) {
    Ring result;
    for (std::size_t i = 0; i + 1 < ring.points.size(); ++i) {
        const EastNorth a = ring.points[i], b = ring.points[i + 1];
        for (int piece = 0; piece < pieces; ++piece) {
            const double t = static_cast<double>(piece) / pieces;
            result.points.push_back(moved(way, {a.easting_m + t * (b.easting_m - a.easting_m),
                                                a.northing_m + t * (b.northing_m - a.northing_m)}));
        }
    }
    if (!result.points.empty()) result.points.push_back(result.points.front());
    return result;
}

}  // namespace

struct GridMap::Ways {
    Way to_grid, to_book;
};

Checked<GridMap> GridMap::between(const Crs& book, const BedGrid& grid, const std::string& file) {
    GridMap map;
    if (grid.map_wkt().empty()) return map;
    OGRSpatialReference of_book, of_grid;
    of_book.importFromWkt(book.wkt().c_str());
    of_grid.importFromWkt(grid.map_wkt().c_str());
    of_book.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    of_grid.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    const HeardGdal heard;
    if (of_book.IsSame(&of_grid) != 0) return map;
    auto ways = std::make_shared<Ways>();
    OGRCoordinateTransformationOptions published;
    published.SetBallparkAllowed(false);  // a guess between two datums may be off by hundreds of metres
    ways->to_grid.reset(OGRCreateCoordinateTransformation(&of_book, &of_grid, published));
    ways->to_book.reset(OGRCreateCoordinateTransformation(&of_grid, &of_book, published));
    if (!ways->to_grid || !ways->to_book)
        return Refusal{"grid", file, "its map is not the book's, and no way between the two is known",
                       "bring the grid on the book's map, " + book.name()};
    map.ways_ = std::move(ways);
    return map;
}

Area GridMap::on_grid(const Area& area) const {
    if (is_one_map()) return area;
    Area result;
    for (const auto& part : area.parts) {
        auto& polygon = result.parts.emplace_back();
        for (const auto& ring : part.rings)
            polygon.rings.push_back(moved(*ways_->to_grid, ring));
        for (const auto& ring : polygon.rings) {
            if (!std::ranges::all_of(ring.points, [](EastNorth point) { return is_known(point); })) return {};
        }
    }
    return result;
}

EastNorth GridMap::in_book(EastNorth on_grid) const {
    return is_one_map() ? on_grid : moved(*ways_->to_book, on_grid);
}

}  // namespace spoilbook
