// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/record/trip.h"

namespace spoilbook {

/// How the water stood at one site under one condition on turbidity, as the loggers tell.
struct WaterState {
    Id consent;
    std::string condition;  ///< its number
    std::string site;
    std::optional<Instant> event_since;   ///< an event is open; nothing: none is
    bool told = true;                     ///< false: below min_complete, or no reading that is new enough
    std::optional<Instant> silent_since;  ///< the last reading, where it is too old
};

/// What a release check needs beside the season: values that another room reads out of the book.
struct CheckFacts {
    std::optional<std::vector<WaterState>> water;  ///< nothing: the loggers were not asked
    std::vector<Watch> watches;
};

}  // namespace spoilbook
