// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/return/return_facts.h"

namespace spoilbook {

/// The releases of a period up to the as-at, in order of their ends, each with its volume fixed to a tenth.
std::vector<ScheduleLine> schedule_of(const Ledger& ledger, const Period& period, Instant as_at,
                                      const std::set<std::int64_t>& import_stamps_ms, TripTracks* tracks);

/// Rounds to whole tenths, halves away from zero.
Tenths tenths_of(double value);

/// Shares a rounded whole out so that the parts are whole tenths and their sum is the whole: each rounded
/// down, then one tenth each to those that lost most.
std::vector<Tenths> shared_out(Tenths whole, const std::vector<double>& parts);

}  // namespace spoilbook
