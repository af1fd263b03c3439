// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/allowed_sets.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "model/consent/scope_filter.h"

namespace spoilbook {

namespace {

using nlohmann::json;

void worsen(Allowance& all, Compliance state, std::string why) {
    if (state <= all.state) return;
    all.state = state;
    all.why = std::move(why);
}

/// One name of the load held against the lists of one set.
void judge(const json& set, const char* what, const std::string& name, const std::string& ground,
           Allowance& all) {
    if (name.empty())
        return worsen(all, Compliance::cannot_tell, std::string("its ") + what + " is not recorded");
    const auto list = set.find(name);
    if (list == set.end())
        return worsen(all, Compliance::cannot_tell, "the condition says nothing of " + name);
    if (ground.empty() && !list->empty())
        return worsen(all, Compliance::cannot_tell, "it is not recorded to which ground it goes");
    const bool listed =
        std::any_of(list->begin(), list->end(), [&](const json& one) { return one == ground; });
    if (!listed)
        worsen(all, Compliance::breached,
               name + " may not go to " + (ground.empty() ? "any ground" : ground));
}

std::set<std::string> materials_of(const LedgerLine& line, const Season& season) {
    if (line.load == nullptr) return {""};
    if (line.load->material) return {name_of(season.materials, line.load->material, &Material::material)};
    std::set<std::string> names;
    for (const auto& part : line.figures->parts)
        names.insert(name_of(season.materials, part.material, &Material::material));
    return names;
}

std::set<std::string> claims_of(const LedgerLine& line, const Season& season) {
    if (line.figures == nullptr) return {""};
    std::set<std::string> names;
    for (const auto& part : line.figures->parts)
        names.insert(name_of(season.claims, part.claim, &Claim::claim));
    return names;
}

}  // namespace

Allowance allowed_sets(const json& body, const Ledger& ledger, const LedgerLine& line) {
    Allowance all;
    const auto sets = body.find("allowed");
    if (sets == body.end()) return all;
    const Season& season = ledger.season();
    const std::string ground = name_of(season.grounds, line.ground, &Ground::ground);
    if (const auto set = sets->find("material_ground"); set != sets->end()) {
        for (const auto& name : materials_of(line, season))
            judge(*set, "material", name, ground, all);
    }
    if (const auto set = sets->find("claim_ground"); set != sets->end()) {
        for (const auto& name : claims_of(line, season))
            judge(*set, "claim", name, ground, all);
    }
    return all;
}

}  // namespace spoilbook
