// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

/// What came off the bed of one claim between two of its surveys, as typed from the surveyor's report.
/// In-situ m³, each with its standard uncertainty.
struct Removed {
    Id id;
    std::string removed;
    Id before, after;  ///< surveys
    Id claim;
    std::optional<double> removed_in_situ_m3, removed_u_m3;
    std::optional<double> infill_in_situ_m3, infill_u_m3;
    std::optional<double> outside_in_situ_m3, outside_u_m3;
    std::string by, remarks;
    std::optional<double> deposited_in_situ_m3, deposited_u_m3;
    std::optional<double> within_allowance_m3, within_allowance_u_m3;  ///< of removed: below target, allowed
    std::optional<double> beyond_allowance_m3, beyond_allowance_u_m3;  ///< of removed: deeper than allowed
};

template <>
const Definition<Removed>& definition<Removed>();

}  // namespace spoilbook
