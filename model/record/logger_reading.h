// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "model/unit/instant.h"

namespace spoilbook {

/// One line of a turbidity logger, in the unit of its site; a blank value is a reading that is missing.
struct LoggerReading {
    Instant time;
    std::optional<double> value;

    bool operator==(const LoggerReading&) const = default;
};

}  // namespace spoilbook
