// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <limits>

#include "model/folder/object_shape.h"

namespace spoilbook {

/// The bound of a member that may be as large as a number can be.
constexpr double unbounded = std::numeric_limits<double>::max();

/// A member that holds one number, from `low` up to `high`, both in the unit that its name says.
inline ObjectMember number_member(const char* name, double low = -unbounded, double high = unbounded,
                                  bool required = false) {
    return {name, Holds::number, required, {}, nullptr, low, high};
}

}  // namespace spoilbook
