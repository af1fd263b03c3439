// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/write_condition.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "model/book/season.h"
#include "model/folder/condition_members.h"
#include "model/folder/nearest.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

const Kind& condition_kind() {
    return definition<Condition>().kind();
}

std::vector<std::string> labels_of(const Book& book, const std::string& name) {
    const Kind& of = kind(name);
    const auto place = *of.index_of(of.label.front());
    std::vector<std::string> labels;
    for (const auto& row : book.rows(of)) {
        if (const auto* label = std::get_if<std::string>(&row.values[place])) labels.push_back(*label);
    }
    return labels;
}

std::vector<Value> values_of(const Condition& condition) {
    const Kind& kind = condition_kind();
    std::vector<Value> values(kind.fields.size());
    const auto text = [&](const char* field, const std::string& value) {
        if (!value.empty()) values[*kind.index_of(field)] = value;
    };
    const auto time = [&](const char* field, const std::optional<Instant>& at) {
        if (at) values[*kind.index_of(field)] = at->utc_ms;
    };
    text("condition", condition.condition);
    text("text", condition.text);
    text("wording", condition.wording);
    text("kind", condition.kind);
    text("body", condition.body);
    time("from", condition.from);
    time("to", condition.to);
    values[*kind.index_of("consent")] = condition.consent;
    return values;
}

/// The newest other version; nothing where the number is new.
std::optional<Condition> newest_version(const Book& book, const Condition& condition) {
    std::optional<Condition> newest;
    for (const auto& row : book.rows(condition_kind())) {
        auto version = definition<Condition>().read(row);
        const bool same = version.consent == condition.consent && version.condition == condition.condition;
        if (same && (!newest || newest->from <= version.from)) newest = std::move(version);
    }
    return newest;
}

std::optional<Refusal> why_no_version(const Book& book, const Act& act, const Condition& condition,
                                      const Condition& before) {
    const std::string where = "condition from";
    if (!condition.from)
        return Refusal{"missing-member", where, "a new version without the time from which it is in force",
                       "say from when it is in force: the version before it ends there"};
    if (before.from && *condition.from <= *before.from)
        return Refusal{"twice", where,
                       fmt::format("a version of {} is in force from {} already", condition.condition,
                                   instant_text(*before.from, book_zone(book))),
                       "a new version begins after it: none is written over"};
    if (act.why.empty())
        return Refusal{"reason-needed", "condition why", "a changed condition without a reason",
                       "say why it changes: the letter, or what was wrong"};
    return std::nullopt;
}

Checked<Done> end_at(Change& change, const Condition& before, Instant at) {
    if (before.to && *before.to <= at) return Done{};
    const Kind& kind = condition_kind();
    return change.set(kind, before.id, *kind.index_of("to"), at.utc_ms);
}

}  // namespace

Refusals unknown_names(const Book& book, const Condition& condition, const std::string& file) {
    Refusals refusals;
    const auto body = nlohmann::json::parse(condition.body.empty() ? "{}" : condition.body, nullptr, false);
    for (const auto& named : names_in(body)) {
        if (named.kind == "site" || named.kind == "plant") continue;
        const auto labels = labels_of(book, named.kind);
        // GROUND/CELL where cells of one name lie in several grounds.
        const std::string own = named.name.substr(named.name.rfind('/') + 1);
        const bool known =
            std::find(labels.begin(), labels.end(), named.name) != labels.end() ||
            (named.kind == "cell" && std::find(labels.begin(), labels.end(), own) != labels.end());
        if (known) continue;
        refusals.push_back({"unknown-reference", file + " " + named.path,
                            fmt::format("\"{}\" is no {} of the book", named.name, named.kind),
                            did_you_mean(named.name, labels)});
    }
    return refusals;
}

Checked<Id> write_condition(Book& book, const Act& act, const Condition& condition) {
    if (!book.row(definition<Consent>().kind(), condition.consent))
        return Refusal{"unknown-reference", "condition consent", "the book has no such consent",
                       "choose one that it has"};
    if (auto refusals = unknown_names(book, condition, "condition"); !refusals.empty()) return refusals;
    Id id;
    const auto entry = book.change(act, [&](Change& change) -> Checked<Done> {
        if (const auto before = newest_version(change.book(), condition)) {
            if (auto why_not = why_no_version(change.book(), act, condition, *before)) return *why_not;
            if (auto ended = end_at(change, *before, *condition.from); !ended) return ended.refusals();
        }
        id = change.insert(condition_kind(), values_of(condition));
        return Done{};
    });
    if (!entry) return entry.refusals();
    return id;
}

}  // namespace spoilbook
