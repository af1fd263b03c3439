// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/evidence_periods.h"

#include <algorithm>
#include <set>

namespace spoilbook {

namespace {

/// The row of factors.csv that a version stands in; null for materials.csv.
const Factor* row_of(const FactorVersion& version, const Id& material, const Season& season) {
    const Factor* found = nullptr;
    for (const auto& row : season.factors.rows()) {
        if (version.revised && row.material == material && row.factor == "bulking" && row.bucket.is_nil() &&
            row.from == version.from && row.value == version.value)
            found = &row;
    }
    return found;
}

/// "R-1; R-2" →.
std::set<std::string> labels_in(const std::string& text) {
    std::set<std::string> labels;
    std::size_t begin = 0;
    while (begin <= text.size()) {
        const std::size_t end = std::min(text.find(';', begin), text.size());
        const auto first = text.find_first_not_of(' ', begin);
        if (first < end) {
            const auto last = text.find_last_not_of(' ', end - 1);
            labels.insert(text.substr(first, last - first + 1));
        }
        begin = end + 1;
    }
    return labels;
}

/// Whether the factor in force of one of its materials was made from this claim-period.
bool is_in_a_factor(const ReconciledPeriod& period, const Ledger& ledger, Instant as_at) {
    return std::any_of(period.loads.materials.begin(), period.loads.materials.end(), [&](const Id& material) {
        const auto* version = ledger.loads().factors().factors_for(material, Id{}, as_at).bulking;
        const auto* row = version == nullptr ? nullptr : row_of(*version, material, ledger.season());
        return row != nullptr && labels_in(row->evidence).contains(period.row->removed);
    });
}

bool overlap(const ReconciledPeriod& a, const ReconciledPeriod& b) {
    return a.claim == b.claim && *a.from < *b.to && *b.from < *a.to;
}

}  // namespace

std::optional<BulkingPrior> bulking_prior(const Ledger& ledger, const Id& material, Instant as_at) {
    const auto* version = ledger.loads().factors().factors_for(material, Id{}, as_at).bulking;
    if (version == nullptr) return std::nullopt;
    return BulkingPrior{version->value, version->u > 0 ? std::optional(version->u) : std::nullopt};
}

std::vector<ReconciledPeriod*> evidence_periods(
    std::vector<ReconciledPeriod>& periods, const Ledger& ledger, Instant as_at,
    std::vector<std::pair<std::string, std::string_view>>& left_out) {
    std::vector<ReconciledPeriod*> able;
    for (auto& period : periods) {
        if (period.held == Held::cannot_tell || period.loads.materials.empty()) continue;
        if (is_in_a_factor(period, ledger, as_at)) {
            left_out.emplace_back(period.row->removed, "the factor in force rests on it already");
        } else {
            able.push_back(&period);
        }
    }
    // Shorter ones first: of one claim surveyed three times the two halves tell more than the whole.
    std::vector<ReconciledPeriod*> by_length = able;
    std::stable_sort(by_length.begin(), by_length.end(),
                     [](const auto* a, const auto* b) { return *a->to - *a->from < *b->to - *b->from; });
    std::vector<ReconciledPeriod*> taken;
    for (auto* period : by_length) {
        const bool covered = std::any_of(taken.begin(), taken.end(),
                                         [&](const auto* other) { return overlap(*period, *other); });
        if (covered)
            left_out.emplace_back(period->row->removed, "other claim-periods of the claim cover its time");
        else
            taken.push_back(period);
    }
    std::erase_if(able,
                  [&](auto* period) { return std::find(taken.begin(), taken.end(), period) == taken.end(); });
    return able;
}

}  // namespace spoilbook
