// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/season.h"

namespace spoilbook {

/// The newest release of the trip in a row of its own; null where it has none.
inline const Release* newest_release(const Season& season, const Trip& trip) {
    const Release* newest = nullptr;
    for (const auto& release : season.releases.rows()) {
        if (release.trip == trip.id) newest = &release;
    }
    return newest;
}

}  // namespace spoilbook
