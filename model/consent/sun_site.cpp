// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/sun_site.h"

namespace spoilbook {

std::optional<LonLat> sun_site(const Ledger& ledger, const Id& ground) {
    const auto& map = ledger.grounds();
    const Area* area = map.open_ground(ground);
    for (const auto& other : ledger.season().grounds.rows()) {
        if (area == nullptr) area = map.open_ground(other.id);
    }
    if (area == nullptr || area->parts.empty()) return std::nullopt;
    return map.crs()->unproject(farthest_inside(*area));
}

}  // namespace spoilbook
