// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <utility>

#include "model/unit/refusal.h"

namespace spoilbook {

/// What a track cannot answer, and how to mend it; where it came from is said by whoever read it.
inline Refusal track_refused(std::string what, std::string mend) {
    return {"track", "", std::move(what), std::move(mend)};
}

}  // namespace spoilbook
