// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "model/folder/complaints.h"
#include "model/folder/given.h"
#include "model/folder/map_ground.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// claims.geojson and grounds.geojson (RFC 7946): Polygon and MultiPolygon features, longitude and latitude
/// unless a `crs` member of the collection says that they are in the book's own EPSG; a feature's own `crs`
/// goes before the collection's. Refused: another crs, another geometry, rings that are not closed or have
/// fewer than 4 positions, coordinates that are not finite or not on earth, shapes that cross themselves;
/// unknown members and properties. The geometry is kept as given, canonical.
void read_claims(std::string_view bytes, const Zone& zone, const MapGround& map, FolderContents& contents,
                 Complaints& complaints);

/// A feature of kind ground (or without a cell) is a ground, one of kind cell or exclusion a part of it.
void read_grounds(std::string_view bytes, const Zone& zone, const MapGround& map, FolderContents& contents,
                  Complaints& complaints);

}  // namespace spoilbook
