// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

#include "model/book/book.h"
#include "model/record/instrument.h"
#include "model/record/watched_water.h"

namespace spoilbook {

/// What the register tells of the calibration behind one reading.
enum class CalibrationState { valid, expired, not_recorded };

std::string_view text(CalibrationState state);

/// The instruments of one site as turbidity/instruments.csv has them, in order of their deployment. A row
/// without `deployed` tells nothing of any reading and comes last. Of what the book knows only what had
/// happened by the as-at counts: a recovery or calibration after it is not there yet.
std::vector<Instrument> instruments_at(const Book& book, const Site& site, Instant as_at);
/// The same from rows that are at hand. Pure.
std::vector<Instrument> instruments_of(std::vector<Instrument> rows, const Id& site, Instant as_at);

/// The instrument that stood at the site, of rows that overlap the one deployed last; null where none did.
const Instrument* standing_at(const std::vector<Instrument>& instruments, Instant at);

/// How the standing instrument's calibration stood: of all rows of its serial number at this site the newest
/// calibration made by then is asked; a blank `calibrated` is one made before the deployment. Not recorded
/// where no instrument stood there, or its calibration has no end. Common practice, no source.
CalibrationState calibration_at(const std::vector<Instrument>& instruments, Instant at);

}  // namespace spoilbook
