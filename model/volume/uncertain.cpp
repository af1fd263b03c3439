// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/uncertain.h"

#include <cmath>

namespace spoilbook {
namespace {

// What is left of a source that cancels: a share of the value far below any uncertainty on a barge.
constexpr double rounding = 1e-13;

}  // namespace

Uncertain Uncertain::shared(double value, double u, SourceId source) {
    Uncertain made(value);
    if (u != 0) made.parts_.push_back({source, u});
    return made;
}

Uncertain Uncertain::random(double value, double u, RandomInput input) {
    return shared(value, u, static_cast<SourceId>(input));
}

double Uncertain::u() const {
    double squares = 0;
    for (const auto& part : parts_)
        squares += part.amount * part.amount;
    return std::sqrt(squares);
}

Estimate Uncertain::estimate() const {
    Estimate made{value_, 0, {}};
    made.shared.reserve(parts_.size());
    double squares = 0;
    for (const auto& part : parts_) {
        if (part.source >= static_cast<SourceId>(RandomInput::ullage_reading)) {
            squares += part.amount * part.amount;
        } else if (std::fabs(part.amount) > rounding * std::fabs(value_)) {
            made.shared.push_back(part);
        }
    }
    made.u_random = std::sqrt(squares);
    return made;
}

Uncertain Uncertain::through(double value, double slope) const {
    Uncertain made = *this;
    made.value_ = value;
    for (auto& part : made.parts_)
        part.amount *= slope;
    return made;
}

Uncertain Uncertain::linear(double value, const Uncertain& a, double by_a, const Uncertain& b, double by_b) {
    if (b.parts_.empty()) return a.through(value, by_a);
    if (a.parts_.empty()) return b.through(value, by_b);
    Uncertain made(value);
    auto x = a.parts_.begin();
    auto y = b.parts_.begin();
    while (x != a.parts_.end() || y != b.parts_.end()) {
        if (y == b.parts_.end() || (x != a.parts_.end() && x->source < y->source)) {
            made.parts_.push_back({x->source, x->amount * by_a});
            ++x;
        } else if (x == a.parts_.end() || y->source < x->source) {
            made.parts_.push_back({y->source, y->amount * by_b});
            ++y;
        } else {
            made.parts_.push_back({x->source, x->amount * by_a + y->amount * by_b});
            ++x;
            ++y;
        }
    }
    return made;
}

Uncertain operator+(const Uncertain& a, const Uncertain& b) {
    return Uncertain::linear(a.value_ + b.value_, a, 1, b, 1);
}
Uncertain operator-(const Uncertain& a, const Uncertain& b) {
    return Uncertain::linear(a.value_ - b.value_, a, 1, b, -1);
}
Uncertain operator*(const Uncertain& a, const Uncertain& b) {
    return Uncertain::linear(a.value_ * b.value_, a, b.value_, b, a.value_);
}
Uncertain operator/(const Uncertain& a, const Uncertain& b) {
    return Uncertain::linear(a.value_ / b.value_, a, 1 / b.value_, b, -a.value_ / (b.value_ * b.value_));
}

}  // namespace spoilbook
