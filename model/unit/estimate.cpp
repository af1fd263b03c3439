// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/unit/estimate.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace spoilbook {

SourceId Sources::of(const std::string& name) {
    const auto [place, fresh] = ids_.try_emplace(name, static_cast<SourceId>(names_.size()));
    if (fresh) names_.push_back(name);
    return place->second;
}

double Estimate::u() const {
    double sum = u_random * u_random;
    for (const auto& part : shared)
        sum += part.amount * part.amount;
    return std::sqrt(sum);
}

void Estimate::add_shared(SourceId source, double amount) {
    const auto place = std::lower_bound(shared.begin(), shared.end(), source,
                                        [](const SharedPart& part, SourceId id) { return part.source < id; });
    if (place != shared.end() && place->source == source) {
        place->amount += amount;
    } else {
        shared.insert(place, SharedPart{source, amount});
    }
}

Estimate operator+(const Estimate& a, const Estimate& b) {
    Estimate sum = a;
    sum.value += b.value;
    sum.u_random = std::hypot(a.u_random, b.u_random);
    for (const auto& part : b.shared)
        sum.add_shared(part.source, part.amount);
    return sum;
}

Estimate operator*(const Estimate& a, double factor) {
    Estimate scaled = a;
    scaled.value *= factor;
    scaled.u_random *= std::fabs(factor);
    for (auto& part : scaled.shared)
        part.amount *= factor;
    return scaled;
}

void Total::add(const Estimate& part, double factor) {
    const double x = part.value * factor;
    const double sum = sum_ + x;
    lost_ += std::fabs(sum_) >= std::fabs(x) ? (sum_ - sum) + x : (x - sum) + sum_;
    sum_ = sum;
    random_squares_ += part.u_random * part.u_random * factor * factor;
    for (const auto& shared : part.shared) {
        if (shared.source >= by_source_.size()) by_source_.resize(shared.source + 1, 0.0);
        by_source_[shared.source] += shared.amount * factor;
    }
}

Estimate Total::estimate() const {
    Estimate total{value(), std::sqrt(random_squares_), {}};
    for (SourceId id = 0; id < by_source_.size(); ++id) {
        if (by_source_[id] != 0) total.shared.push_back({id, by_source_[id]});
    }
    return total;
}

double probability_over(double used, double u, double limit) {
    if (!(u > 0)) return used > limit ? 1.0 : 0.0;
    return 0.5 * std::erfc((limit - used) / (u * std::numbers::sqrt2));
}

}  // namespace spoilbook
