// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/instrument_stands.h"

#include <algorithm>
#include <iterator>

namespace spoilbook {

namespace {

/// Where rows of several loggers overlap, each is asked for its own serial number.
CalibrationState calibration_of(const Instrument& one, const std::vector<Instrument>& rows, Instant as_at) {
    const bool stood = one.deployed && (!one.recovered || *one.deployed < *one.recovered);
    if (!stood) return CalibrationState::not_recorded;
    std::vector<Instrument> own;
    std::copy_if(rows.begin(), rows.end(), std::back_inserter(own),
                 [&](const auto& other) { return other.serial == one.serial; });
    return calibration_at(own, one.recovered ? *one.recovered - 1 : as_at);
}

}  // namespace

std::vector<InstrumentStand> instrument_stands(const Book& book, Instant as_at) {
    std::vector<InstrumentStand> stands;
    for (const Row& row : book.rows(definition<Site>().kind())) {
        const auto site = definition<Site>().read(row);
        const auto rows = instruments_at(book, site, as_at);
        const Instrument* standing = standing_at(rows, as_at);
        for (const auto& one : rows)
            stands.push_back({one, site.site, &one == standing, calibration_of(one, rows, as_at)});
    }
    return stands;
}

}  // namespace spoilbook
