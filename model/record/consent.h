// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

struct Consent {
    Id id;
    std::string consent, holder, authority;
    std::string granted;  ///< day
    std::optional<Instant> commences, lapses, expires;
    std::string year_starts;  ///< MM-DD; blank: 01-01
    std::string not_working;  ///< JSON: {weekends, dates[], yearly[]}
};

/// One numbered requirement, in one version; `body` holds the members of its kind (docs/conditions.md).
struct Condition {
    Id id;
    std::string condition;
    Id consent;
    std::optional<Instant> from, to;
    std::string text, wording, kind;
    std::string body;  ///< JSON object with every other member
};

/// What counted before the book began, or by others, under one limit.
struct Opening {
    Id id;
    std::string opening;
    Id consent;
    std::string condition;
    std::optional<Instant> from, to;
    std::optional<double> value, u;
    std::string source, member;
};

template <>
const Definition<Consent>& definition<Consent>();
template <>
const Definition<Condition>& definition<Condition>();
template <>
const Definition<Opening>& definition<Opening>();

}  // namespace spoilbook
