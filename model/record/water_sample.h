// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

/// Water taken at a site, and what a laboratory found in it.
struct WaterSample {
    Id id;
    std::string sample;
    Id site;
    std::optional<Instant> time;
    std::optional<double> turbidity;  ///< as the site's sensor read then, in the site's unit
    std::optional<double> solids_mg_l;
    std::string lab, by;
};

template <>
const Definition<WaterSample>& definition<WaterSample>();

}  // namespace spoilbook
