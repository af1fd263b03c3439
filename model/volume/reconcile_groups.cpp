// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/reconcile_groups.h"

#include <map>
#include <numeric>

namespace spoilbook {

namespace {

/// Sets that grow together: union and find.
class Links {
 public:
    explicit Links(std::size_t n) : parent_(n) { std::iota(parent_.begin(), parent_.end(), 0); }
    std::size_t root(std::size_t i) {
        while (parent_[i] != i)
            i = parent_[i] = parent_[parent_[i]];
        return i;
    }
    void join(std::size_t a, std::size_t b) { parent_[root(a)] = root(b); }

 private:
    std::vector<std::size_t> parent_;
};

}  // namespace

std::vector<std::vector<std::size_t>> linked_periods(std::span<const ClaimPeriod> periods) {
    Links links(periods.size());
    std::map<std::size_t, std::size_t> first_of_material;
    std::map<SourceId, std::size_t> first_of_source;
    for (std::size_t k = 0; k < periods.size(); ++k) {
        if (periods[k].bulked.empty()) continue;
        const auto of_source = [&](const Estimate& estimate) {
            for (const auto& part : estimate.shared)
                links.join(k, first_of_source.try_emplace(part.source, k).first->second);
        };
        of_source(periods[k].weighed_m3);
        for (const auto& part : periods[k].bulked) {
            of_source(part.hopper_m3);
            links.join(k, first_of_material.try_emplace(part.material, k).first->second);
        }
    }
    std::map<std::size_t, std::vector<std::size_t>> by_root;
    for (std::size_t k = 0; k < periods.size(); ++k) {
        if (!periods[k].bulked.empty()) by_root[links.root(k)].push_back(k);
    }
    std::vector<std::vector<std::size_t>> groups;
    for (auto& [root, members] : by_root)
        groups.push_back(std::move(members));
    return groups;
}

}  // namespace spoilbook
