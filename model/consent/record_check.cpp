// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "model/consent/allowed_sets.h"
#include "model/consent/kind_checks.h"

namespace spoilbook {

CheckReason check_record(const Ledger& ledger, const nlohmann::json& body, const LedgerLine& line) {
    auto allowed = allowed_sets(body, ledger, line);
    if (allowed.state == Compliance::complied) return reason_of(CheckState::clear);
    const bool breaks = allowed.state == Compliance::breached;
    return reason_of(breaks ? CheckState::hold : CheckState::cannot_tell, std::move(allowed.why));
}

}  // namespace spoilbook
