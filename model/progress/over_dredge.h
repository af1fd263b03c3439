// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/record/season.h"
#include "model/volume/reconcile_period.h"

namespace spoilbook {

/// What was dug below target level, in-situ m³, as the surveyor's reports say (removed.csv).
struct OverDredge {
    const Claim* claim = nullptr;            ///< null for all claims together
    std::optional<Measured> within, beyond;  ///< the allowance; nothing: no report says
    std::optional<double> removed_m3;  ///< Σ removed of the same reports; nothing where one does not say
    std::vector<std::string> reports;  ///< labels of removed.csv
    std::vector<std::string_view> assumed;  ///< in words, each once

    /// Within and beyond. A part that a report does not give is taken as none, and `assumed` says so.
    [[nodiscard]] std::optional<Measured> below_target() const;
    /// Of what was removed, a fraction.
    [[nodiscard]] std::optional<double> share() const;
    /// Of what lies below target, at so much money for a cubic metre in situ; in that money. Never part of a
    /// return. Nothing without a unit cost.
    [[nodiscard]] std::optional<Measured> cost(std::optional<double> unit_cost) const;
};

struct OverDredged {
    std::vector<OverDredge> claims;  ///< those of which a report tells, in the order of the book
    OverDredge all;
    std::vector<std::string> left_out;  ///< reports of a time that shorter ones of the claim cover already
};

/// From the reports whose later survey's day was over by `as_at`, of one claim the shorter ones first. Pure.
/// Uncertainties add up one for one: the same soundings stand behind what is within and what is beyond, and
/// behind neighbouring claims, and nobody has told how much of their error is shared.
OverDredged over_dredge(const Season& season, Instant as_at);

}  // namespace spoilbook
