// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "model/unit/checked.h"

namespace spoilbook {

enum class Axis { latitude, longitude };

/// A latitude or longitude as a person writes it, in degrees, north and east positive:
///   -41.20575   41.20575 S   41°12.345'S   S 41 12.345   41-12.345S   41°12'20.7"S   -41 12 20.7
/// Degrees alone may go without a letter. With minutes the letter must stand, or a minus: without either they
/// may be of the other half of the earth ("unclear-position"), as may a minus beside a letter. Minutes and
/// seconds lie below 60 ("out-of-range"); how many degrees there may be is the caller's. Anything else is
/// "not-a-number". The refusal's `where` is left empty for the caller.
Checked<double> parse_degrees(std::string_view text, Axis axis);

}  // namespace spoilbook
