// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/track_reading.h"

#include <algorithm>

namespace spoilbook {

void TrackReading::fault(std::size_t line, std::string what) {
    ++bad_lines;
    if (faults.size() < most_faults_kept) faults.push_back({line, std::move(what)});
}

void TrackReading::put_in_order() {
    Instant latest{INT64_MIN};
    for (const auto& fix : fixes) {
        if (fix.at < latest) ++out_of_order;
        latest = std::max(latest, fix.at);
    }
    if (out_of_order > 0) std::ranges::stable_sort(fixes, {}, &ReceiverFix::at);
    const auto same = std::ranges::unique(fixes, {}, &ReceiverFix::at);
    fixes.erase(same.begin(), same.end());
}

}  // namespace spoilbook
