// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/track_text.h"

#include <fmt/format.h>

#include "model/unit/time_text.h"

namespace spoilbook {

std::string track_csv(std::span<const ReceiverFix> fixes, Instant from, Instant until, const Zone& zone) {
    std::string file = "time,lat,lon\n";
    int rows = 0;
    for (const ReceiverFix& fix : fixes) {
        if (fix.at < from || fix.at > until) continue;
        file += fmt::format("{},{:.7f},{:.7f}\n", instant_text(fix.at, zone), fix.place.lat_deg,
                            fix.place.lon_deg);
        ++rows;
    }
    return rows < 2 ? std::string() : file;
}

}  // namespace spoilbook
