// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "model/consent/window.h"
#include "model/unit/checked.h"
#include "model/volume/method.h"

namespace spoilbook {

enum class Activity { release, dredge };
enum class LimitMeasure { in_situ_m3, hopper_m3, wet_t, dry_t, trips, days, hours };
enum class EachOf { none, claim, ground, cell, material, plant };

std::string measure_text(LimitMeasure measure);
std::string each_of_text(EachOf each_of);

/// What a condition applies to; an empty list means any. Names as in the consent.
struct Scope {
    Activity activity = Activity::release;  ///< limits count releases unless the consent says dredge
    std::vector<std::string> claims, grounds, cells, materials, classes, plant;
};

/// Held back until unlocked.
struct Reserve {
    double value = 0;
    std::optional<Instant> unlocked_on;
};

/// A limit: a condition of kind quantity, read from its JSON (docs/conditions.md).
struct Quantity {
    Scope scope;
    LimitMeasure measure = LimitMeasure::in_situ_m3;
    std::string method;  ///< blank: ullage, else draughts, else tally, else stated
    bool at_most = true;
    std::optional<double> value;           ///< in the measure's unit
    std::optional<double> share_of_total;  ///< fraction of `of_value`, or of the total so far past `of_floor`
    std::optional<double> of_value, of_floor;
    WindowRule window;
    EachOf each_of = EachOf::none;
    std::optional<Reserve> reserve;
    std::vector<double> warn_at;
};

/// The measure as one of a load's amounts; nothing for trips, days and hours.
std::optional<Measure> measure_of(const Quantity& quantity);

/// The member `applies` of a condition of any kind. Throws json's exceptions where it does not read.
Scope scope_from(const nlohmann::json& body);

/// Reads the members of a condition of kind quantity. Times without an offset are read in `zone`. The members
/// were checked when the condition entered the book; what still does not read is refused.
Checked<Quantity> quantity_from(const Condition& condition, const Zone& zone);

/// The limit in force at t, reserve taken off while it is locked; the share itself for a share.
std::optional<double> limit_at(const Quantity& quantity, Instant t);

}  // namespace spoilbook
