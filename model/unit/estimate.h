// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

namespace spoilbook {

/// A number that stands for a source of shared uncertainty: "bulking factor of sand from 2025-08-04".
using SourceId = std::uint32_t;

/// The names of the shared sources of one set of figures, so that sums over thousands of loads compare
/// numbers and not texts. Handed in, never global.
class Sources {
 public:
    SourceId of(const std::string& name);
    [[nodiscard]] const std::string& name(SourceId id) const { return names_.at(id); }
    [[nodiscard]] std::size_t size() const { return names_.size(); }

 private:
    std::vector<std::string> names_;
    std::unordered_map<std::string, SourceId> ids_;
};

struct SharedPart {
    SourceId source = 0;
    double amount = 0;  ///< sensitivity · u(source), signed, in the value's unit
};

/// A value with its standard uncertainty (k = 1), split as the GUM asks when sums follow: the random part is
/// independent from load to load and adds in squares; each shared part comes from one source (one bulking
/// factor, one fill factor, one hydrostatic table) and adds as it stands, with its sign.
struct Estimate {
    double value = 0;
    double u_random = 0;
    std::vector<SharedPart> shared;  ///< ascending by source, each source once

    /// Combined standard uncertainty: √(u_random² + Σ shared²). Sources are independent of each other.
    [[nodiscard]] double u() const;
    void add_shared(SourceId source, double amount);
};

/// Sum of two estimates whose random parts are independent. Source: JCGM 100:2008 (GUM), 5.1.2 and 5.2.2.
Estimate operator+(const Estimate& a, const Estimate& b);
/// An estimate times an exactly known factor.
Estimate operator*(const Estimate& a, double factor);

/// Adds up many estimates whose random parts are independent, without rounding loss that would matter
/// (Neumaier's compensated sum).
class Total {
 public:
    void add(const Estimate& part, double factor = 1);
    [[nodiscard]] Estimate estimate() const;
    [[nodiscard]] double value() const { return sum_ + lost_; }

 private:
    double sum_ = 0;
    double lost_ = 0;
    double random_squares_ = 0;
    std::vector<double> by_source_;
};

/// P(X > limit) for X normal about `used` with standard uncertainty u ≥ 0; 0 or 1 where u is 0.
double probability_over(double used, double u, double limit);

}  // namespace spoilbook
