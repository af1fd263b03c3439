// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

namespace spoilbook {

/// Told how far long work is, 0 to 1, or less than 0 where nobody knows; answers false where the work should
/// stop and leave everything as it was. Called on the thread that works; empty: nobody watches.
using GoingOn = std::function<bool(double share)>;

}  // namespace spoilbook
