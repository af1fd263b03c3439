// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <boost/container/small_vector.hpp>

#include "model/unit/estimate.h"

namespace spoilbook {

/// The random inputs of one load; each is independent of the others and of every other load's.
enum class RandomInput : SourceId {
    ullage_reading = 0x8000'0000U,  ///< list, trim and coaming behind one load's dips and top dips
    dip_scatter,                    ///< scatter of the mean dip
    top_dip_scatter,                ///< scatter of the mean dip to the water on top
    full_draughts,
    light_draughts,
};

/// A value that remembers how it hangs on each uncertain input (sensitivity · u(input), in its own unit), so
/// that what two figures share cancels or adds as it must. First order only: JCGM 100:2008 (GUM) 5.1.2 and
/// 5.2.2, inputs independent of each other. Division by zero is the caller's to avoid.
class Uncertain {
 public:
    Uncertain(double value = 0) : value_(value) {}  // an exact number
    static Uncertain shared(double value, double u, SourceId source);
    static Uncertain random(double value, double u, RandomInput input);

    [[nodiscard]] double value() const { return value_; }
    [[nodiscard]] double u() const;
    /// Random inputs of the load become u_random, the others stay shared.
    [[nodiscard]] Estimate estimate() const;
    /// f(this) for a function with that value and slope here.
    [[nodiscard]] Uncertain through(double value, double slope) const;

    friend Uncertain operator+(const Uncertain& a, const Uncertain& b);
    friend Uncertain operator-(const Uncertain& a, const Uncertain& b);
    friend Uncertain operator*(const Uncertain& a, const Uncertain& b);
    friend Uncertain operator/(const Uncertain& a, const Uncertain& b);

 private:
    static Uncertain linear(double value, const Uncertain& a, double by_a, const Uncertain& b, double by_b);

    double value_ = 0;
    /// Ascending by source. So many that a load of a few buckets rarely needs the heap: valuing a book is
    /// little else than making these.
    boost::container::small_vector<SharedPart, 8> parts_;
};

}  // namespace spoilbook
