// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/answer/instruments.h"

namespace spoilbook {

/// One row of the register beside how it stood.
struct InstrumentStand {
    Instrument row;
    std::string site;       ///< its name
    bool standing = false;  ///< at the site at the as-at
    /// Of the calibration that counts for it: at the as-at while it stands, else just before it was
    /// recovered; not recorded where it was not yet, or never, deployed.
    CalibrationState calibration = CalibrationState::not_recorded;
};

/// Every instrument of every site by the as-at, in the order of the sites, of one site by deployment.
std::vector<InstrumentStand> instrument_stands(const Book& book, Instant as_at);

}  // namespace spoilbook
