// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/published/geos_plane.h"

#include <GeographicLib/TransverseMercatorExact.hpp>
#include <stdexcept>

namespace spoilbook::test {

namespace {

using Line = std::vector<std::pair<double, double>>;

GeosShape owned(GEOSGeometry* shape) {
    if (shape == nullptr) throw std::runtime_error("GEOS refused");
    return {shape, &GEOSGeom_destroy};
}

/// GEOS's functions of a context of their own are many; the plain ones want to be told once that they are
/// used.
void start_geos() {
    static const bool started = [] {
        initGEOS(nullptr, nullptr);
        return true;
    }();
    (void)started;
}

GEOSGeometry* ring_of(const Line& line) {
    GEOSCoordSequence* points = GEOSCoordSeq_create(static_cast<unsigned>(line.size()), 2);
    for (unsigned i = 0; i < line.size(); ++i)
        GEOSCoordSeq_setXY(points, i, line[i].first, line[i].second);
    return GEOSGeom_createLinearRing(points);
}

GEOSGeometry* polygon_of(const std::vector<Line>& rings) {
    std::vector<GEOSGeometry*> holes;
    for (std::size_t i = 1; i < rings.size(); ++i)
        holes.push_back(ring_of(rings[i]));
    return GEOSGeom_createPolygon(ring_of(rings.front()), holes.data(), static_cast<unsigned>(holes.size()));
}

GeosShape shape_of(const GeoJsonCoordinates& coordinates) {
    start_geos();
    std::vector<GEOSGeometry*> parts;
    for (const auto& part : coordinates)
        parts.push_back(polygon_of(part));
    return owned(
        GEOSGeom_createCollection(GEOS_MULTIPOLYGON, parts.data(), static_cast<unsigned>(parts.size())));
}

GeosShape point_of(EastNorth place) {
    return owned(GEOSGeom_createPointFromXY(place.easting_m, place.northing_m));
}

Line line_of(const GEOSGeometry* ring) {
    const GEOSCoordSequence* points = GEOSGeom_getCoordSeq(ring);
    unsigned size = 0;
    GEOSCoordSeq_getSize(points, &size);
    Line line(size);
    for (unsigned i = 0; i < size; ++i)
        GEOSCoordSeq_getXY(points, i, &line[i].first, &line[i].second);
    return line;
}

/// What of the area lies in a box of longitudes, moved east by `shift`.
void add_between(const GEOSGeometry* area, double west, double east, double shift,
                 GeoJsonCoordinates& parts) {
    const auto box = owned(polygon_of({{{west, -90}, {east, -90}, {east, 90}, {west, 90}, {west, -90}}}));
    const auto piece = owned(GEOSIntersection(area, box.get()));
    for (int i = 0; i < GEOSGetNumGeometries(piece.get()); ++i) {
        const GEOSGeometry* polygon = GEOSGetGeometryN(piece.get(), i);
        if (GEOSGeomTypeId(polygon) != GEOS_POLYGON || GEOSisEmpty(polygon) == 1) continue;
        auto& rings = parts.emplace_back();
        rings.push_back(line_of(GEOSGetExteriorRing(polygon)));
        for (int hole = 0; hole < GEOSGetNumInteriorRings(polygon); ++hole)
            rings.push_back(line_of(GEOSGetInteriorRingN(polygon, hole)));
        for (auto& ring : rings) {
            for (auto& point : ring)
                point.first += shift;
        }
    }
}

Line with_crossings(const Line& line) {
    Line all;
    for (std::size_t i = 0; i < line.size(); ++i) {
        if (i > 0 && (line[i - 1].first - 180) * (line[i].first - 180) < 0) {
            const auto [ax, ay] = line[i - 1];
            const auto [bx, by] = line[i];
            all.emplace_back(180, ay + (180 - ax) / (bx - ax) * (by - ay));
        }
        all.push_back(line[i]);
    }
    return all;
}

}  // namespace

std::pair<double, double> Zone32760::project(std::pair<double, double> lon_lat) {
    static const GeographicLib::TransverseMercatorExact map(6378137, 1 / 298.257223563, 0.9996);
    double x = 0, y = 0;
    map.Forward(177, lon_lat.second, lon_lat.first, x, y);
    return {x + 500'000, y + 10'000'000};
}

GeosArea::GeosArea(const GeoJsonCoordinates& coordinates)
    : shape_(shape_of(coordinates)), boundary_(owned(GEOSBoundary(shape_.get()))) {}

double GeosArea::area_m2() const {
    double m2 = 0;
    GEOSArea(shape_.get(), &m2);
    return m2;
}

double GeosArea::overlap_m2(const GeosArea& other) const {
    const GeosShape both(GEOSIntersection(shape_.get(), other.shape_.get()), &GEOSGeom_destroy);
    double m2 = 0;
    GEOSArea(both.get(), &m2);
    return m2;
}

bool GeosArea::covers(EastNorth place) const {
    return GEOSCovers(shape_.get(), point_of(place).get()) == 1;
}

double GeosArea::signed_distance_m(EastNorth place) const {
    double distance_m = 0;
    GEOSDistance(boundary_.get(), point_of(place).get(), &distance_m);
    return covers(place) ? distance_m : -distance_m;
}

bool GeosArea::boundary_within(EastNorth place, double distance_m) const {
    return GEOSDistanceWithin(boundary_.get(), point_of(place).get(), distance_m) == 1;
}

Cut cut_along_180(const GeoJsonCoordinates& area) {
    Cut cut{{}, area};
    for (auto& part : cut.whole) {
        for (auto& ring : part)
            ring = with_crossings(ring);
    }
    const auto shape = shape_of(cut.whole);
    add_between(shape.get(), 0, 180, 0, cut.parts);
    add_between(shape.get(), 180, 360, -360, cut.parts);
    return cut;
}

}  // namespace spoilbook::test
