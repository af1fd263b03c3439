// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

/// One logger, by its serial number, while it stands at a site, and the calibration that it stands there
/// with.
struct Instrument {
    Id id;
    std::string instrument;
    Id site;
    std::string serial;
    std::optional<Instant> deployed, recovered;           ///< [deployed, recovered)
    std::optional<Instant> calibrated, calibrated_until;  ///< [calibrated, calibrated_until)
    std::string by, remarks;
};

template <>
const Definition<Instrument>& definition<Instrument>();

}  // namespace spoilbook
