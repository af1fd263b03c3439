// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "model/unit/estimate.h"

namespace spoilbook {

/// The ways to know how much is in a barge, in the order in which they count where a consent names none.
enum class Method { ullage, draughts, tally, stated };
/// "ullage", "draughts", "tally", "stated": as in consents and in JSON.
std::string_view method_name(Method method);
std::optional<Method> method_named(std::string_view name);

enum class Measure { hopper_m3, in_situ_m3, wet_t, dry_t };
std::string_view measure_name(Measure measure);

/// One amount of spoil in each measure; blank where something that it needs is not recorded.
struct Amounts {
    std::optional<Estimate> hopper_m3, in_situ_m3, wet_t, dry_t;

    [[nodiscard]] const std::optional<Estimate>& of(Measure measure) const;
};

/// A number behind a figure, for the eye: {"mean_dip_m", 1.27}. The name carries the unit.
struct Fact {
    std::string_view name;
    double value = 0;
};

/// What one method says about a load. Texts are constants of the program.
struct MethodResult : Amounts {
    Method method = Method::stated;
    /// One for each part of the load, in the order of LoadFigures::parts; empty where the load has one part.
    /// Their random parts are one reading's and so fully dependent: add them up with together().
    std::vector<Amounts> by_part;
    /// What was dredged for this load: each part less its share of what was left in the hopper before, tonnes
    /// in proportion to the in-situ volume. Empty where nothing was left: all of it was dredged for this
    /// load.
    std::vector<Amounts> dredged_by_part;
    std::vector<std::string_view> assumed;  ///< sentences: what was not recorded and how it was taken
    std::vector<SourceId> versions;         ///< factors used, once each; their names are in Sources
    std::vector<Fact> facts;

    [[nodiscard]] const Amounts& part(std::size_t i) const { return by_part.empty() ? *this : by_part.at(i); }
    [[nodiscard]] const Amounts& dredged(std::size_t i) const {
        return dredged_by_part.empty() ? part(i) : dredged_by_part.at(i);
    }
};

/// A method whose readings are there but which cannot be used, and why.
struct LeftOut {
    Method method = Method::stated;
    std::string_view why;
};

/// Sum of two amounts of the same load: their random parts are fully dependent and add as they stand.
Estimate together(const Estimate& a, const Estimate& b);

}  // namespace spoilbook
