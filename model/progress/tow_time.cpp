// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/tow_time.h"

#include <algorithm>
#include <vector>

#include "model/record/release_view.h"

namespace spoilbook {

std::optional<std::int64_t> tow_time_ms(const Season& season) {
    constexpr std::size_t newest_tows = 20;
    std::vector<std::int64_t> times;
    const auto releases = releases_of(season);
    for (auto release = releases.rbegin(); release != releases.rend() && times.size() < newest_tows;
         ++release) {
        if (release->opened && release->trip->departed && *release->opened > *release->trip->departed)
            times.push_back(*release->opened - *release->trip->departed);
    }
    if (times.empty()) return std::nullopt;
    const auto middle = times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2);
    std::nth_element(times.begin(), middle, times.end());
    return *middle;
}

}  // namespace spoilbook
