// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/ogr_shape.h"

#include <cpl_error.h>

#include <algorithm>
#include <cmath>

namespace spoilbook {
namespace {

void hear(CPLErr, CPLErrorNum, const char* message) {
    *static_cast<std::string*>(CPLGetErrorHandlerUserData()) = message;
}

OGRLinearRing to_ogr(const Ring& ring) {
    OGRLinearRing line;
    for (const EastNorth& point : ring.points)
        line.addPoint(point.easting_m, point.northing_m);
    line.closeRings();
    return line;
}

Ring from_ogr(const OGRLinearRing& line, bool clockwise) {
    Ring ring;
    for (int i = 0; i < line.getNumPoints(); ++i)
        ring.points.push_back({line.getX(i), line.getY(i)});
    if ((line.isClockwise() != 0) != clockwise) std::reverse(ring.points.begin(), ring.points.end());
    return ring;
}

bool is_sliver(const OGRLinearRing& line) {
    return line.get_Area() <= boundary_width_m * line.get_Length() / 2;
}

void add_polygon(const OGRPolygon& shape, Area& area) {
    if (shape.IsEmpty() || is_sliver(*shape.getExteriorRing())) return;
    Polygon polygon;
    polygon.rings.push_back(from_ogr(*shape.getExteriorRing(), false));
    for (int i = 0; i < shape.getNumInteriorRings(); ++i) {
        const OGRLinearRing& hole = *shape.getInteriorRing(i);
        if (!is_sliver(hole)) polygon.rings.push_back(from_ogr(hole, true));
    }
    area.parts.push_back(std::move(polygon));
}

void add_polygons(const OGRGeometry& geometry, Area& area) {
    const OGRwkbGeometryType type = wkbFlatten(geometry.getGeometryType());
    if (type == wkbPolygon) {
        add_polygon(*geometry.toPolygon(), area);
    } else if (OGR_GT_IsSubClassOf(type, wkbGeometryCollection)) {
        for (const OGRGeometry* member : *geometry.toGeometryCollection())
            add_polygons(*member, area);
    }
}

}  // namespace

HeardGdal::HeardGdal() {
    CPLPushErrorHandlerEx(hear, &said_);
}

HeardGdal::~HeardGdal() {
    CPLPopErrorHandler();
}

std::unique_ptr<OGRMultiPolygon> to_ogr(const Area& area) {
    auto shape = std::make_unique<OGRMultiPolygon>();
    for (const Polygon& part : area.parts) {
        OGRPolygon polygon;
        for (const Ring& ring : part.rings) {
            OGRLinearRing line = to_ogr(ring);
            polygon.addRing(&line);
        }
        shape->addGeometry(&polygon);
    }
    return shape;
}

Area from_ogr(const OGRGeometry& geometry) {
    Area area;
    add_polygons(geometry, area);
    return area;
}

}  // namespace spoilbook
