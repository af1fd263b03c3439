// SPDX-License-Identifier: GPL-3.0-or-later
#include <stdexcept>

#include "model/place/ogr_shape.h"
#include "model/place/polygon.h"

namespace spoilbook {
namespace {

std::unique_ptr<OGRGeometry> united(const std::vector<Area>& areas) {
    OGRMultiPolygon pieces;
    for (const Area& area : areas) {
        const auto shape = to_ogr(area);
        for (const OGRPolygon* polygon : *shape)
            pieces.addGeometry(polygon);
    }
    if (pieces.IsEmpty()) return std::make_unique<OGRMultiPolygon>();
    const HeardGdal heard;
    std::unique_ptr<OGRGeometry> whole(pieces.UnionCascaded());
    if (!whole) throw std::invalid_argument("areas that are not sound cannot be joined: " + heard.said());
    return whole;
}

}  // namespace

Area without(const Area& ground, const std::vector<Area>& exclusions) {
    const auto out = united(exclusions);
    const auto shape = to_ogr(ground);
    if (out->IsEmpty() || shape->IsEmpty()) return from_ogr(*shape);
    const HeardGdal heard;
    const std::unique_ptr<OGRGeometry> left(shape->Difference(out.get()));
    if (!left) throw std::invalid_argument("an area that is not sound cannot be cut: " + heard.said());
    return from_ogr(*left);
}

Area together(const std::vector<Area>& areas) {
    return from_ogr(*united(areas));
}

}  // namespace spoilbook
