// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/quantity.h"

namespace spoilbook {

/// A limit's unit with its basis, as people read it: "m³ in situ"; "%" for a share.
std::string unit_text(const Quantity& quantity);
/// The unit of what the limit counts, with its basis: of a share that of its parts.
std::string counted_unit(const Quantity& quantity);
/// What a figure of the limit is multiplied by to be in that unit: 100 for a share.
double shown_scale(const Quantity& quantity);
/// Digits after the point: one for a share and for hours, else none.
int shown_decimals(const Quantity& quantity);

}  // namespace spoilbook
