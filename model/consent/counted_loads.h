// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <span>
#include <vector>

#include "model/volume/load_figures.h"

namespace spoilbook {

/// Values without their uncertainty, one for each Measure in its own unit; blank where none is known.
class CountedAmounts {
 public:
    [[nodiscard]] const std::optional<double>& of(Measure measure) const {
        return by_measure_.at(static_cast<std::size_t>(measure));
    }
    void put(Measure measure, const std::optional<Estimate>& amount) {
        if (amount) by_measure_.at(static_cast<std::size_t>(measure)) = amount->value;
    }

 private:
    std::array<std::optional<double>, 4> by_measure_;
};

struct CountedPart {
    Id claim, material;  ///< as in LoadPart
    CountedAmounts amounts;
};

/// What counts of a load where no method is named: in each measure that of the first method that gives it.
struct CountedLoad {
    CountedAmounts whole;
    std::span<const CountedPart> parts;  ///< in the order of LoadFigures::parts
};

/// What counts of many loads, side by side in memory. A limit judged over twenty years reads every load and
/// wants one number of it: through the figures each is a few jumps away from the last, here it is the next.
class CountedLoads {
 public:
    explicit CountedLoads(std::span<const LoadFigures> figures);
    CountedLoads(const CountedLoads&) = delete;
    CountedLoads& operator=(const CountedLoads&) = delete;
    CountedLoads(CountedLoads&&) = default;
    CountedLoads& operator=(CountedLoads&&) = default;
    ~CountedLoads() = default;

    /// By its place among the figures.
    [[nodiscard]] const CountedLoad& operator[](std::size_t load) const { return loads_[load]; }

 private:
    std::vector<CountedPart> parts_;
    std::vector<CountedLoad> loads_;
};

}  // namespace spoilbook
