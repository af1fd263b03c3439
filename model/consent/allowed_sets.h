// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "model/consent/finding.h"

namespace spoilbook {

/// What a condition's allowed sets say of one release.
struct Allowance {
    Compliance state = Compliance::complied;
    std::string why;  ///< for what is not complied, in words
};

/// The member `allowed` of a condition of kind record: material → ground, claim → ground. The material is the
/// load's, else that of each of its parts; each claim that fed the load must be allowed. Breached where the
/// ground is not in the list of one that the condition names; cannot tell where material, claim or ground is
/// not recorded, and where the condition says nothing of it.
Allowance allowed_sets(const nlohmann::json& body, const Ledger& ledger, const LedgerLine& line);

}  // namespace spoilbook
