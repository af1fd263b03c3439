// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "model/place/crs_way.h"
#include "model/place/ogr_shape.h"

namespace spoilbook {
namespace {

constexpr double not_known = std::numeric_limits<double>::quiet_NaN();
constexpr double radians = std::numbers::pi / 180;

/// In place; what cannot be transformed becomes NaN in both.
void run(OGRCoordinateTransformation& way, std::vector<double>& x, std::vector<double>& y) {
    std::vector<int> worked(x.size(), 0);
    const HeardGdal heard;
    way.Transform(static_cast<int>(x.size()), x.data(), y.data(), nullptr, worked.data());
    for (std::size_t i = 0; i < x.size(); ++i) {
        if (worked[i] == 0 || !std::isfinite(x[i]) || !std::isfinite(y[i])) x[i] = y[i] = not_known;
    }
}

}  // namespace

std::vector<EastNorth> CrsWay::project(OGRCoordinateTransformation& way,
                                       std::span<const LonLat> places) const {
    std::vector<double> x(places.size(), not_known), y(places.size(), not_known);
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (!is_known(places[i])) continue;
        x[i] = places[i].lon_deg;
        y[i] = places[i].lat_deg;
    }
    {
        const std::lock_guard guard(lock);
        run(way, x, y);
    }
    std::vector<EastNorth> result(places.size());
    for (std::size_t i = 0; i < places.size(); ++i)
        result[i] = {x[i], y[i]};
    return result;
}

std::vector<LonLat> CrsWay::unproject(OGRCoordinateTransformation& way,
                                      std::span<const EastNorth> places) const {
    std::vector<double> x(places.size()), y(places.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
        x[i] = places[i].easting_m;
        y[i] = places[i].northing_m;
    }
    {
        const std::lock_guard guard(lock);
        run(way, x, y);
    }
    std::vector<LonLat> result(places.size());
    for (std::size_t i = 0; i < places.size(); ++i)
        result[i] = {y[i], x[i]};
    return result;
}

CrsWay::Stretch CrsWay::stretch(EastNorth place) const {
    const LonLat centre = unproject(*to_own, std::span(&place, 1)).front();
    // Some 100 m either way: far above rounding, and the scale is even over it to 1e-9.
    constexpr double step_deg = 1e-3;
    const std::array<LonLat, 4> around{{{centre.lat_deg, centre.lon_deg - step_deg},
                                        {centre.lat_deg, centre.lon_deg + step_deg},
                                        {centre.lat_deg - step_deg, centre.lon_deg},
                                        {centre.lat_deg + step_deg, centre.lon_deg}}};
    const std::vector<EastNorth> map = project(*from_own, around);
    // Radii of curvature of the ellipsoid across and along the meridian.
    const double sine = std::sin(centre.lat_deg * radians);
    const double w_squared = 1 - eccentricity_squared * sine * sine;
    const double across_m = equatorial_radius_m / std::sqrt(w_squared) * std::cos(centre.lat_deg * radians);
    const double along_m = equatorial_radius_m * (1 - eccentricity_squared) / std::pow(w_squared, 1.5);
    const double east_m = across_m * 2 * step_deg * radians;
    const double north_m = along_m * 2 * step_deg * radians;
    return {(map[1].easting_m - map[0].easting_m) / east_m, (map[1].northing_m - map[0].northing_m) / east_m,
            (map[3].easting_m - map[2].easting_m) / north_m,
            (map[3].northing_m - map[2].northing_m) / north_m};
}

EastNorth Crs::project(LonLat place) const {
    return project(std::span(&place, 1)).front();
}

LonLat Crs::unproject(EastNorth place) const {
    return unproject(std::span(&place, 1)).front();
}

std::vector<EastNorth> Crs::project(std::span<const LonLat> places) const {
    return way_->project(*way_->from_wgs84, places);
}

std::vector<LonLat> Crs::unproject(std::span<const EastNorth> places) const {
    return way_->unproject(*way_->to_wgs84, places);
}

EastNorth Crs::project_own_datum(LonLat place) const {
    return way_->project(*way_->from_own, std::span(&place, 1)).front();
}

LonLat Crs::unproject_own_datum(EastNorth place) const {
    return way_->unproject(*way_->to_own, std::span(&place, 1)).front();
}

double Crs::scale_factor(EastNorth place) const {
    const CrsWay::Stretch s = way_->stretch(place);
    return std::sqrt(std::abs(s.east_x * s.north_y - s.east_y * s.north_x));
}

double Crs::true_north_deg(EastNorth place) const {
    const CrsWay::Stretch s = way_->stretch(place);
    return std::atan2(s.north_x, s.north_y) / radians;
}

}  // namespace spoilbook
