// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/record/season.h"

namespace spoilbook {

/// One record that a signature would cover, as it is read through before signing.
struct SheetLine {
    std::string kind;  ///< the word: station
    std::string label;
    std::string words;  ///< claim, barge, cause, crew member
    std::optional<Instant> from, to;
    std::optional<double> number;      ///< buckets of a tally or load, level or depth of a sounding
    std::vector<std::string> missing;  ///< fields of it that a return asks for and that are blank
};

/// Everything of a shift that its signature covers, in the order of work: its crew, stations, tallies,
/// delays, soundings, and the loads whose loading ended in it with their trips and releases. It says what is
/// blank and judges nothing.
std::vector<SheetLine> shift_sheet(const Season& season, const Shift& shift);

}  // namespace spoilbook
