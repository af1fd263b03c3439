// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/geojson_crs.h"

#include <fmt/format.h>

#include "model/folder/json_text.h"
#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

using nlohmann::json;

/// The name in {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::32760"}}.
std::optional<std::string> name_in(const json& crs) {
    if (!crs.is_object() || crs.value("type", json()) != "name") return std::nullopt;
    const auto properties = crs.find("properties");
    if (properties == crs.end() || !properties->is_object()) return std::nullopt;
    const auto name = properties->find("name");
    if (name == properties->end() || !name->is_string()) return std::nullopt;
    return canonical(*name).get<std::string>();
}

/// The EPSG code in "EPSG:32760" or "urn:ogc:def:crs:EPSG:10.1:32760".
std::optional<std::int64_t> epsg_in(const std::string& name) {
    const auto colon = name.rfind(':');
    const bool form = name.starts_with("EPSG:") || name.starts_with("urn:ogc:def:crs:EPSG:");
    return form && colon != std::string::npos ? parse_integer(name.substr(colon + 1)) : std::nullopt;
}

bool is_crs84(const std::string& name) {
    return (name.starts_with("urn:ogc:def:crs:OGC:") && name.ends_with(":CRS84")) || name == "OGC:CRS84" ||
           name == "CRS84";
}

}  // namespace

std::optional<std::string> crs_of(const json& object, const std::string& path, const std::string& common,
                                  const MapGround& map, const JsonReading& reading) {
    const auto found = object.find("crs");
    if (found == object.end() || found->is_null()) return common;
    const std::string at = member_path(path, "crs");
    const auto name = name_in(*found);
    if (!name) {
        reading.refuse("crs", at, "no named reference system",
                       R"(write {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::32760"}})");
        return std::nullopt;
    }
    const auto epsg = epsg_in(*name);
    constexpr int wgs84 = 4326;
    if (is_crs84(*name) || epsg == wgs84) return "";
    if (epsg && map.epsg && *epsg == *map.epsg) return map.name();
    reading.refuse("crs", at,
                   fmt::format("{} is neither longitude and latitude nor the book's own system", *name),
                   map.epsg ? fmt::format("give longitude and latitude, or {}", map.name())
                            : std::string("give longitude and latitude"));
    return std::nullopt;
}

}  // namespace spoilbook
