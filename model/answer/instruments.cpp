// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/instruments.h"

#include <algorithm>

namespace spoilbook {

namespace {

/// When the calibration of a row counts from.
std::optional<Instant> calibrated_from(const Instrument& row) {
    return row.calibrated ? row.calibrated : row.deployed;
}

void forget_after(std::optional<Instant>& at, Instant as_at) {
    if (at && as_at < *at) at.reset();
}

}  // namespace

std::string_view text(CalibrationState state) {
    switch (state) {
        case CalibrationState::valid:
            return "valid";
        case CalibrationState::expired:
            return "expired";
        case CalibrationState::not_recorded:
            break;
    }
    return "not_recorded";
}

std::vector<Instrument> instruments_of(std::vector<Instrument> rows, const Id& site, Instant as_at) {
    std::erase_if(rows, [&](const Instrument& row) {
        return row.site != site || (row.deployed && as_at < *row.deployed);
    });
    for (auto& row : rows) {
        forget_after(row.recovered, as_at);
        // How long a calibration will hold is known when it is made: its end may lie ahead.
        if (row.calibrated && as_at < *row.calibrated) row.calibrated_until.reset();
        forget_after(row.calibrated, as_at);
    }
    std::stable_sort(rows.begin(), rows.end(), [](const Instrument& a, const Instrument& b) {
        if (!a.deployed || !b.deployed) return a.deployed.has_value() && !b.deployed;
        return *a.deployed < *b.deployed;
    });
    return rows;
}

std::vector<Instrument> instruments_at(const Book& book, const Site& site, Instant as_at) {
    std::vector<Instrument> rows;
    for (const Row& row : book.rows(definition<Instrument>().kind()))
        rows.push_back(definition<Instrument>().read(row));
    return instruments_of(std::move(rows), site.id, as_at);
}

const Instrument* standing_at(const std::vector<Instrument>& instruments, Instant at) {
    const auto found =
        std::find_if(instruments.rbegin(), instruments.rend(), [&](const Instrument& instrument) {
            return instrument.deployed && *instrument.deployed <= at &&
                   (!instrument.recovered || at < *instrument.recovered);
        });
    return found == instruments.rend() ? nullptr : &*found;
}

CalibrationState calibration_at(const std::vector<Instrument>& instruments, Instant at) {
    const Instrument* standing = standing_at(instruments, at);
    if (standing == nullptr) return CalibrationState::not_recorded;
    const Instrument* newest = nullptr;
    for (const auto& row : instruments) {
        const auto from = calibrated_from(row);
        if (row.serial != standing->serial || !row.calibrated_until || !from || at < *from) continue;
        if (newest == nullptr || *calibrated_from(*newest) <= *from) newest = &row;
    }
    if (newest == nullptr) return CalibrationState::not_recorded;
    return at < *newest->calibrated_until ? CalibrationState::valid : CalibrationState::expired;
}

}  // namespace spoilbook
