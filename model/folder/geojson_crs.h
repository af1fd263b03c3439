// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "model/folder/map_ground.h"
#include "model/folder/member_reader.h"

namespace spoilbook {

/// The reference system that the `crs` member of a collection or feature says: blank for longitude and
/// latitude of WGS 84 (CRS84, EPSG:4326 read as longitude first), else the book's own "EPSG:32760"; `common`
/// where there is no such member. Any other is refused, and nothing answered.
std::optional<std::string> crs_of(const nlohmann::json& object, const std::string& path,
                                  const std::string& common, const MapGround& map,
                                  const JsonReading& reading);

}  // namespace spoilbook
