// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>

namespace spoilbook {

/// Random numbers from a seed: the same seed gives the same numbers on every machine (the standard library's
/// distributions do not). Generator: SplitMix64 (Steele, Lea, Flood 2014).
class Chance {
 public:
    explicit Chance(std::uint64_t seed) : state_(seed) {}

    /// 0 … count − 1, count > 0.
    std::size_t below(std::size_t count);
    /// (0, 1)
    double uniform();
    /// Standard normal, by Box and Muller (1958).
    double normal();

 private:
    std::uint64_t next();

    std::uint64_t state_;
};

}  // namespace spoilbook
