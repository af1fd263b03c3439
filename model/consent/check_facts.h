// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/consent/compliance.h"
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

/// How the bed of a ground or cell stood under one condition of kind surface, by its newest survey.
struct BedState {
    Id condition;
    Id ground;
    Id cell;  ///< nil: the ground whole
    Compliance state = Compliance::cannot_tell;
    std::string named;  ///< "ground Gannet Patch by survey SV-7"
    std::string why;    ///< for what did not comply
};

/// What a release check needs beside the season: values that another room reads out of the book.
struct CheckFacts {
    std::optional<std::vector<WaterState>> water;  ///< nothing: the loggers were not asked
    std::vector<Watch> watches;
    std::vector<BedState> beds;  ///< of conditions that stop releases by the bed
};

}  // namespace spoilbook
