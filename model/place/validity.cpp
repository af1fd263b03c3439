// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <array>
#include <string_view>

#include "model/place/ogr_shape.h"
#include "model/place/polygon.h"

namespace spoilbook {
namespace {

std::string at(EastNorth place) {
    return fmt::format("easting {:.2f}, northing {:.2f}", place.easting_m, place.northing_m);
}

std::optional<std::string> why_bad(const Ring& ring, std::size_t part, std::size_t number) {
    const std::string which = fmt::format("part {} ring {}", part + 1, number + 1);
    if (ring.points.empty()) return which + " has no points";
    for (std::size_t i = 0; i < ring.points.size(); ++i) {
        if (!is_known(ring.points[i])) {
            return fmt::format("{}: point {} has a coordinate that is not a number", which, i + 1);
        }
    }
    if (ring.points.front() != ring.points.back()) {
        return fmt::format("{} is not closed: it begins at {} and ends at {}", which, at(ring.points.front()),
                           at(ring.points.back()));
    }
    if (ring.points.size() < 4) {
        return fmt::format("{} has {} points at {}; the fewest is four, the last being the first again",
                           which, ring.points.size(), at(ring.points.front()));
    }
    return std::nullopt;
}

struct Wording {
    std::string_view geos;
    std::string_view plain;
};

/// The reasons of GEOS 3.11 (TopologyValidationError.cpp), in the words of a person with a chart.
constexpr std::array wordings{
    Wording{"Hole lies outside shell", "a hole lies outside its outer ring"},
    Wording{"Holes are nested", "a hole lies inside another hole"},
    Wording{"Interior is disconnected", "holes and outer ring cut the area in two"},
    Wording{"Ring Self-intersection", "a ring touches itself"},
    Wording{"Self-intersection", "the edges cross or lie on one another"},
    Wording{"Nested shells", "a part lies inside another part"},
    Wording{"Duplicate Rings", "two rings are the same"},
    Wording{"Too few points", "a ring has too few different points"},
};

/// GEOS says "Self-intersection at or near point 5.5 7.25".
std::string in_plain_words(const std::string& said) {
    std::string place;
    if (const auto point = said.rfind("point "); point != std::string::npos) {
        const std::string rest = said.substr(point + 6);
        const std::size_t space = rest.find(' ');
        if (space != std::string::npos) {
            place =
                fmt::format(" near easting {}, northing {}", rest.substr(0, space), rest.substr(space + 1));
        }
    }
    for (const Wording& wording : wordings) {
        if (said.starts_with(wording.geos)) return std::string(wording.plain) + place;
    }
    return "the rings do not make an area" + place;
}

}  // namespace

std::optional<std::string> why_invalid(const Area& area) {
    if (area.parts.empty()) return "the area has no parts";
    for (std::size_t part = 0; part < area.parts.size(); ++part) {
        const auto& rings = area.parts[part].rings;
        if (rings.empty()) return fmt::format("part {} has no rings", part + 1);
        for (std::size_t ring = 0; ring < rings.size(); ++ring) {
            if (auto fault = why_bad(rings[ring], part, ring)) return fault;
        }
    }
    const HeardGdal heard;
    if (to_ogr(area)->IsValid()) return std::nullopt;
    return in_plain_words(heard.said());
}

}  // namespace spoilbook
