// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/named_by_conditions.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <set>

#include "model/record/consent.h"
#include "model/record/duty_done.h"

namespace spoilbook {

namespace {

using nlohmann::json;

/// Kinds whose rows conditions name by their names.
constexpr std::array named_kinds{"ground", "cell", "claim", "material", "barge", "tug", "dredger"};

/// As a value, or as the key of an allowed set.
bool names(const json& value, const std::string& name) {
    if (value.is_string()) return value.get<std::string>() == name;
    if (!value.is_structured()) return false;
    return std::any_of(value.items().begin(), value.items().end(), [&](const auto& item) {
        return (value.is_object() && item.key() == name) || names(item.value(), name);
    });
}

bool names(const Condition& condition, const std::string& name) {
    const auto body = json::parse(condition.body.empty() ? "{}" : condition.body, nullptr, false);
    if (!body.is_object()) return false;
    const std::array members{"applies", "inside", "outside", "allowed"};
    return std::any_of(members.begin(), members.end(), [&](const char* member) {
        return body.contains(member) && names(body.at(member), name);
    });
}

template <class R, class Does>
std::set<std::string> those(const Book& book, std::string R::*label, Does does) {
    std::set<std::string> found;
    for (const Row& row : book.rows(definition<R>().kind())) {
        const R read = definition<R>().read(row);
        if (does(read)) found.insert(read.*label);
    }
    return found;
}

Refusal refusal(const Kind& kind, const std::string& was, const std::string& who) {
    return {"named", kind.name + " " + was, who + " know it by this name",
            "keep the name; say another one in remarks, or put a new row beside it"};
}

}  // namespace

std::optional<Refusal> why_not_renamed(const Book& book, const Kind& kind, const std::string& was) {
    if (std::find(named_kinds.begin(), named_kinds.end(), kind.name) != named_kinds.end()) {
        const auto conditions = those<Condition>(
            book, &Condition::condition, [&](const Condition& condition) { return names(condition, was); });
        if (!conditions.empty())
            return refusal(kind, was, fmt::format("conditions {}", fmt::join(conditions, ", ")));
    }
    if (kind.name != "condition") return std::nullopt;
    const auto is_own = [&](const auto& row) { return row.condition == was; };
    if (!those<Opening>(book, &Opening::condition, is_own).empty())
        return refusal(kind, was, "amounts of before the book");
    if (!those<DutyDone>(book, &DutyDone::condition, is_own).empty())
        return refusal(kind, was, "records of duties done");
    return std::nullopt;
}

}  // namespace spoilbook
