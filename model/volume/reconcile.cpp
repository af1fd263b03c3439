// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/reconcile.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <map>

#include "model/volume/quantiles.h"
#include "model/volume/reconcile_groups.h"

namespace spoilbook {

namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr int most_steps = 200;
constexpr double standing = 1e-12;  // a step that is no step any more, as a share of the factor
constexpr double significance = 0.05;

Eigen::Index at(std::size_t i) {
    return static_cast<Eigen::Index>(i);
}

bool weighs(const std::optional<BulkingPrior>& prior) {
    return prior && prior->u.value_or(0) > 0;
}

/// The claim-periods of one group, as numbers to solve.
class Fit {
 public:
    Fit(std::span<const ClaimPeriod> periods, std::span<const std::optional<BulkingPrior>> priors,
        FitGroup& group)
        : periods_(periods), priors_(priors), group_(group) {
        for (const std::size_t k : group_.periods) {
            for (const auto& part : periods_[k].bulked)
                columns_.try_emplace(part.material, 0);
        }
        for (auto& [material, column] : columns_) {
            column = group_.materials.size();
            group_.materials.push_back(material);
        }
    }

    /// Sets group.why_not where there is no solution.
    void solve() {
        if (!begin()) return;
        for (int step = 0; step < most_steps; ++step) {
            if (!linearize()) {
                group_.why_not = "nothing in these claim-periods is uncertain, so they have no weights";
                return;
            }
            const VectorXd change = normal_.ldlt().solve(gradient_);
            if (!change.allFinite()) break;
            double share = 1;  // a factor stays above 0, however far the first step would go
            while (((factors_ + share * change).array() < 0.2 * factors_.array()).any())
                share /= 2;
            factors_ += share * change;
            if ((change.array().abs() <= standing * factors_.array()).all()) return finish();
        }
        group_.why_not = "no bulking factor closes these claim-periods";
    }

    [[nodiscard]] std::vector<BulkingFit> fits(std::size_t group_number) const {
        std::vector<BulkingFit> fits;
        const bool scatters = group_.p_value && *group_.p_value < significance;
        const double k =
            scatters ? student_t_quantile(0.975, group_.dof) * std::sqrt(group_.chi_square / group_.dof)
                     : normal_quantile(0.975);
        for (std::size_t m = 0; m < group_.materials.size(); ++m) {
            const double b = factors_(at(m)), u = std::sqrt(covariance_(at(m), at(m)));
            fits.push_back({group_.materials[m], b, u, b - k * u, b + k * u, group_number});
        }
        return fits;
    }

    /// u of a residual after the fit: √(V − J C Jᵀ) on the diagonal.
    [[nodiscard]] Measured residual(std::size_t k) const {
        const MatrixXd left = spread_ - slopes_ * covariance_ * slopes_.transpose();
        return {residuals_(at(k)), std::sqrt(std::max(0.0, left(at(k), at(k))))};
    }

 private:
    /// Begins at the prior, else at what would close all of the material's claim-periods as one.
    bool begin() {
        factors_ = VectorXd(at(group_.materials.size()));
        for (std::size_t m = 0; m < group_.materials.size(); ++m) {
            const auto& prior = priors_[group_.materials[m]];
            double hopper = 0, bed = 0;
            for (const std::size_t k : group_.periods) {
                const PeriodBalance balanced = balance(periods_[k]);
                bed += balanced.bed.value - periods_[k].weighed_m3.value;
                for (const auto& part : periods_[k].bulked)
                    hopper += part.hopper_m3.value;
            }
            const bool known = prior && prior->value > 0;
            factors_(at(m)) = known ? prior->value : hopper / bed;
            if (!known && !(hopper > 0 && bed > 0)) {
                group_.why_not = "the bed gave nothing that hopper volumes could be held against";
                return false;
            }
        }
        return true;
    }

    /// Residuals, their slopes and their covariance V at the factors as they stand. False where V has no
    /// inverse.
    bool linearize() {
        const auto n = at(group_.periods.size()), p = at(group_.materials.size());
        residuals_ = VectorXd::Zero(n);
        slopes_ = MatrixXd::Zero(n, p);
        spread_ = MatrixXd::Zero(n, n);
        std::map<SourceId, VectorXd> by_source;
        for (Eigen::Index row = 0; row < n; ++row) {
            const ClaimPeriod& period = periods_[group_.periods[static_cast<std::size_t>(row)]];
            Estimate barges = period.weighed_m3;
            for (const auto& part : period.bulked) {
                const auto column = at(columns_.at(part.material));
                const double b = factors_(column);
                barges = barges + part.hopper_m3 * (1 / b);
                slopes_(row, column) -= part.hopper_m3.value / (b * b);
            }
            const Measured bed = balance(period).bed;
            residuals_(row) = bed.value - barges.value;
            spread_(row, row) = bed.u * bed.u + barges.u_random * barges.u_random;
            for (const auto& shared : barges.shared)
                by_source.try_emplace(shared.source, VectorXd::Zero(n)).first->second(row) = shared.amount;
        }
        for (const auto& [source, amounts] : by_source)
            spread_ += amounts * amounts.transpose();
        return weigh();
    }

    bool weigh() {
        const Eigen::LDLT<MatrixXd> inverse(spread_);
        const auto pivots = inverse.vectorD();
        if (inverse.info() != Eigen::Success || !(pivots.minCoeff() > 1e-14 * pivots.maxCoeff()))
            return false;
        normal_ = slopes_.transpose() * inverse.solve(slopes_);
        gradient_ = slopes_.transpose() * inverse.solve(residuals_);
        chi_square_ = residuals_.dot(inverse.solve(residuals_));
        for (std::size_t m = 0; m < group_.materials.size(); ++m) {
            const auto& prior = priors_[group_.materials[m]];
            if (!weighs(prior)) continue;
            const double off = (prior->value - factors_(at(m))) / *prior->u;
            normal_(at(m), at(m)) += 1 / (*prior->u * *prior->u);
            gradient_(at(m)) += off / *prior->u;
            chi_square_ += off * off;
        }
        return true;
    }

    void finish() {
        if (!linearize()) return;
        const Eigen::LDLT<MatrixXd> inverse(normal_);
        const auto p = normal_.rows();
        covariance_ = inverse.solve(MatrixXd::Identity(p, p));
        if (!covariance_.allFinite() || !(inverse.vectorD().minCoeff() > 0)) {
            group_.why_not = "these claim-periods do not tell their materials apart";
            return;
        }
        group_.chi_square = chi_square_;
        group_.dof = static_cast<int>(group_.periods.size()) - static_cast<int>(group_.materials.size());
        for (const std::size_t material : group_.materials)
            group_.dof += weighs(priors_[material]) ? 1 : 0;
        if (group_.dof > 0) group_.p_value = chi_square_above(group_.chi_square, group_.dof);
    }

    std::span<const ClaimPeriod> periods_;
    std::span<const std::optional<BulkingPrior>> priors_;
    FitGroup& group_;
    std::map<std::size_t, std::size_t> columns_;  ///< material → column
    VectorXd factors_, residuals_, gradient_;
    MatrixXd slopes_, spread_, normal_, covariance_;
    double chi_square_ = 0;
};

}  // namespace

Reconciled reconcile(std::span<const ClaimPeriod> periods,
                     std::span<const std::optional<BulkingPrior>> priors) {
    Reconciled found;
    found.residuals.resize(periods.size());
    for (auto& members : linked_periods(periods)) {
        FitGroup group;
        group.periods = std::move(members);
        Fit fit(periods, priors, group);
        fit.solve();
        if (group.why_not.empty()) {
            for (const auto& one : fit.fits(found.groups.size()))
                found.fits.push_back(one);
            for (std::size_t k = 0; k < group.periods.size(); ++k)
                found.residuals[group.periods[k]] = fit.residual(k);
            found.chi_square += group.chi_square;
            found.dof += group.dof;
        }
        found.groups.push_back(std::move(group));
    }
    std::sort(found.fits.begin(), found.fits.end(),
              [](const BulkingFit& a, const BulkingFit& b) { return a.material < b.material; });
    if (found.dof > 0) found.p_value = chi_square_above(found.chi_square, found.dof);
    return found;
}

}  // namespace spoilbook
