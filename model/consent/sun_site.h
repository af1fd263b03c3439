// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/ledger.h"

namespace spoilbook {

/// Where sunrise and sunset are looked at: the middle of the ground, else of the first one that is drawn;
/// nothing where none is.
std::optional<LonLat> sun_site(const Ledger& ledger, const Id& ground);

}  // namespace spoilbook
