// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/crs.h"

#include <cpl_conv.h>
#include <fmt/format.h>

#include "model/place/crs_way.h"
#include "model/place/gdal_safety.h"
#include "model/place/ogr_shape.h"

namespace spoilbook {
namespace {

Refusal refused(int code, std::string what, std::string mend) {
    return {"crs", fmt::format("EPSG:{}", code), std::move(what), std::move(mend)};
}

/// Why a CRS that the registry knows cannot be a book's, or an empty text.
std::string why_unfit(const OGRSpatialReference& srs) {
    if (srs.IsGeographic()) return "is in degrees, and a book measures in metres";
    if (!srs.IsProjected() || srs.IsCompound()) return "is not a projected CRS";
    const char* unit = nullptr;
    const double metres = srs.GetLinearUnits(&unit);
    if (metres != 1.0) {
        return fmt::format("has the unit {} ({} m), and a book measures in metres", unit, metres);
    }
    bool east = false, north = false;
    for (int axis = 0; axis < 2; ++axis) {
        OGRAxisOrientation direction = OAO_Other;
        srs.GetAxis(nullptr, axis, &direction);
        east = east || direction == OAO_East;
        north = north || direction == OAO_North;
    }
    return east && north ? "" : "has axes that do not point east and north";
}

OGRSpatialReference geographic_of(const OGRSpatialReference& projected) {
    const std::unique_ptr<OGRSpatialReference> base(projected.CloneGeogCS());
    OGRSpatialReference result(*base);
    result.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    return result;
}

OGRSpatialReference wgs84() {
    OGRSpatialReference result;
    result.importFromEPSG(4326);
    result.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    return result;
}

CrsWay::Transformation way_between(const OGRSpatialReference& from, const OGRSpatialReference& to,
                                   bool published_only) {
    OGRCoordinateTransformationOptions options;
    options.SetBallparkAllowed(!published_only);
    const HeardGdal heard;
    return CrsWay::Transformation(OGRCreateCoordinateTransformation(&from, &to, options));
}

/// A way between datums may exist on paper and not where the CRS is used: try it in the middle of there.
bool works_where_used(const CrsWay& way, const OGRSpatialReference& srs) {
    if (!way.from_wgs84 || !way.to_wgs84) return false;
    double west = 0, south = 0, east = 0, north = 0;
    if (!srs.GetAreaOfUse(&west, &south, &east, &north, nullptr)) return true;
    if (east < west) east += 360;
    const LonLat middle{(south + north) / 2, (west + east) / 2};
    return is_known(way.project(*way.from_wgs84, std::span(&middle, 1)).front());
}

/// False where PROJ has no way at all.
bool find_ways(CrsWay& way, const OGRSpatialReference& srs) {
    const OGRSpatialReference own = geographic_of(srs);
    const OGRSpatialReference world = wgs84();
    way.from_own = way_between(own, srs, false);
    way.to_own = way_between(srs, own, false);
    way.from_wgs84 = way_between(world, srs, true);
    way.to_wgs84 = way_between(srs, world, true);
    if (!works_where_used(way, srs)) {
        way.from_wgs84 = way_between(world, srs, false);
        way.to_wgs84 = way_between(srs, world, false);
        way.datum_note = fmt::format(
            "no way from WGS 84 to the datum of {} is published: the two are taken as one, and positions may "
            "be off by some hundred metres",
            way.name);
    }
    return way.from_own && way.to_own && way.from_wgs84 && way.to_wgs84;
}

std::string wkt_of(const OGRSpatialReference& srs) {
    char* text = nullptr;
    srs.exportToWkt(&text);
    std::string result = text ? text : "";
    CPLFree(text);
    return result;
}

}  // namespace

Crs::Crs(std::shared_ptr<const CrsWay> way) : way_(std::move(way)) {}

Checked<Crs> Crs::from_epsg(int code) {
    make_gdal_safe();
    const std::string wanted = "give the code of a projected CRS in metres, axes east and north";
    OGRSpatialReference srs;
    {
        const HeardGdal heard;
        if (srs.importFromEPSG(code) != OGRERR_NONE) {
            return refused(code, "the EPSG registry has no CRS of this code", wanted);
        }
    }
    const std::string name = srs.GetName() ? srs.GetName() : "this CRS";
    if (const std::string fault = why_unfit(srs); !fault.empty()) {
        return refused(code, name + " " + fault, wanted);
    }
    srs.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);

    auto way = std::make_shared<CrsWay>();
    way->epsg = code;
    way->name = name;
    way->wkt = wkt_of(srs);
    way->equatorial_radius_m = srs.GetSemiMajor();
    const double flattening = srs.GetInvFlattening() > 0 ? 1 / srs.GetInvFlattening() : 0;
    way->eccentricity_squared = flattening * (2 - flattening);
    if (!find_ways(*way, srs)) {
        return refused(code, name + " cannot be reached from latitude and longitude", wanted);
    }
    return Crs(std::move(way));
}

int Crs::epsg() const {
    return way_->epsg;
}
const std::string& Crs::name() const {
    return way_->name;
}
const std::string& Crs::wkt() const {
    return way_->wkt;
}
const std::string& Crs::datum_note() const {
    return way_->datum_note;
}

}  // namespace spoilbook
