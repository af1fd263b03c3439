// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/record/release_view.h"

namespace spoilbook {

/// The trip's number, and the release's own where it has one: "T-7", "T-7 R-12".
inline std::string name_with_trip(const ReleaseView& release) {
    return release.trip->trip + (release.row != nullptr ? " " + release.row->release : "");
}

}  // namespace spoilbook
