// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <utility>
#include <vector>

namespace spoilbook {

/// Adds up random parts of standard uncertainty over loads: those of one load's releases come from the same
/// readings and add as they stand; those of different loads add in squares (GUM 5.1.2, 5.2.2).
class RandomParts {
 public:
    void add_of_load(std::uint32_t load, double u) {
        if (u == 0) return;
        if (!of_loads_.empty() && of_loads_.back().first == load)
            of_loads_.back().second += u;
        else
            of_loads_.emplace_back(load, u);
    }
    void add_independent(double u) { squares_ += u * u; }
    [[nodiscard]] double u() const;

 private:
    double squares_ = 0;
    /// As they came: the releases of a load mostly follow one another, but need not.
    std::vector<std::pair<std::uint32_t, double>> of_loads_;
};

}  // namespace spoilbook
