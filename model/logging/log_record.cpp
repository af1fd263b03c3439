// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/log_record.h"

#include <fmt/format.h>

#include <algorithm>

#include "model/book/season.h"
#include "model/folder/nearest.h"
#include "model/logging/by_hand.h"
#include "model/logging/find_record.h"
#include "model/logging/label.h"
#include "model/logging/named_by_conditions.h"
#include "model/record/field_text.h"
#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

struct FieldValue {
    std::size_t field = 0;
    Value value;
};

struct Parsed {
    std::vector<FieldValue> values;
    bool strikes = false;
};

Refusal unknown_column(const Kind& kind, const std::string& column) {
    std::vector<std::string> names;
    for (const auto& field : kind.fields)
        names.push_back(field.name);
    const auto nearest = nearest_name(column, names);
    return {"unknown-column", kind.name, "there is no column \"" + column + "\"",
            nearest.empty() ? "see docs/book-folder.md" : "did you mean " + nearest + "?"};
}

/// Reads every input; references wait until the others are in, since a cell is looked for in the row's
/// ground.
Checked<Parsed> parse_inputs(const Book& book, const Kind& kind, const std::vector<FieldInput>& inputs,
                             Values values) {
    Parsed parsed;
    Refusals refusals;
    const Zone zone = book_zone(book);
    const auto refuse = [&](const Field& field, Refusals found) {
        for (auto& refusal : found) {
            refusal.where = kind.name + " " + field.name;
            refusals.push_back(std::move(refusal));
        }
    };
    std::vector<FieldValue> references;
    for (const auto& input : inputs) {
        if (input.column == "struck") {
            parsed.strikes = true;
            continue;
        }
        const auto index = kind.index_of(input.column);
        if (!index) {
            refusals.push_back(unknown_column(kind, input.column));
            continue;
        }
        auto value = parse_field(kind.fields[*index], input.text, zone);
        if (!value)
            refuse(kind.fields[*index], value.refusals());
        else if (auto why = why_not_by_hand(kind, kind.fields[*index], *value))
            refusals.push_back(*why);
        else if (kind.fields[*index].type == FieldType::reference && !is_blank(*value))
            references.push_back({*index, *value});
        else
            parsed.values.push_back({*index, *value});
    }
    // What is found within another reference waits for it.
    std::sort(references.begin(), references.end(), [&](const auto& a, const auto& b) {
        return std::pair(!kind.fields[a.field].within.empty(), a.field) <
               std::pair(!kind.fields[b.field].within.empty(), b.field);
    });
    for (const auto& [index, label] : references) {
        const auto id = find_referred(book, kind, kind.fields[index], std::get<std::string>(label), values);
        if (!id) {
            refuse(kind.fields[index], id.refusals());
            continue;
        }
        values[index] = *id;
        parsed.values.push_back({index, *id});
    }
    if (!refusals.empty()) return refusals;
    return parsed;
}

Checked<Done> in_order(const Kind& kind, const Values& values, const Zone& zone) {
    const auto shown = [&](const std::string& column, const Value& value) {
        return fmt::format("{}, {}", kind.field(column).doc, field_text(kind.field(column), value, zone));
    };
    for (const auto& [start, end] : kind.ordered) {
        const auto& a = values[*kind.index_of(start)];
        const auto& b = values[*kind.index_of(end)];
        if (is_blank(a) || is_blank(b) || !(b < a)) continue;
        return Refusal{"end-before-start", fmt::format("{} {}", kind.name, end),
                       fmt::format("{}, is before {}", shown(end, b), shown(start, a)),
                       "mend the one of the two that is wrong"};
    }
    return Done{};
}

Checked<LogOutcome> make_new(Change& change, const Kind& kind, const std::string& label, const Parsed& parsed,
                             Values values) {
    const auto place = *kind.index_of(kind.label.front());
    if (!is_blank(values[place]) && values[place] != Value{label}) {
        return Refusal{"no-such-row", kind.name + " " + label, "there is no such " + kind.name + " to rename",
                       "look its label up"};
    }
    values[place] = label;
    if (kind.name == "harbour" && !change.book().rows(kind).empty()) {
        return Refusal{"twice", "harbour " + label, "the book has a harbour of another name",
                       "a book is about one harbour"};
    }
    if (auto taken = why_label_taken(change.book(), kind, std::nullopt, values)) return *taken;
    if (auto fits = in_order(kind, values, book_zone(change.book())); !fits) return fits.refusals();
    if (parsed.strikes)
        return Refusal{"no-such-row", kind.name + " " + label, "there is nothing to strike out",
                       "look the label up"};
    return LogOutcome{std::nullopt, change.insert(kind, values), true, EntryKind::change};
}

Checked<LogOutcome> change_old(Change& change, const Kind& kind, const Row& row, const Parsed& parsed,
                               const Values& values) {
    if (auto fits = in_order(kind, values, book_zone(change.book())); !fits) return fits.refusals();
    // A row that needs no label of its own may go without.
    const bool named =
        !kind.label.empty() && (kind.label_required || !is_blank(values[*kind.index_of(kind.label.front())]));
    if (named && values != row.values && !parsed.strikes) {
        if (auto taken = why_label_taken(change.book(), kind, row.id, values)) return *taken;
    }
    const auto label = kind.label.empty() ? std::nullopt : kind.index_of(kind.label.front());
    for (const auto& [field, value] : parsed.values) {
        const bool renames = field == label && !is_blank(row.values[field]) && value != row.values[field];
        if (renames && kind.fields[field].type != FieldType::reference) {
            const auto& was = std::get<std::string>(row.values[field]);
            if (auto why = why_not_renamed(change.book(), kind, was)) return *why;
        }
        if (auto done = change.set(kind, row.id, field, value); !done) return done.refusals();
    }
    if (parsed.strikes) {
        if (auto done = change.strike(kind, row.id); !done) return done.refusals();
    }
    return LogOutcome{std::nullopt, row.id, false, EntryKind::change};
}

std::optional<Id> parent_given(const Book& book, const Kind& kind, const std::vector<FieldInput>& inputs) {
    if (kind.label.size() < 2 || kind.field(kind.label[1]).type != FieldType::reference) return std::nullopt;
    for (const auto& input : inputs) {
        if (input.column != kind.label[1]) continue;
        const auto parent = book.labelled(spoilbook::kind(kind.field(kind.label[1]).refers_to), input.text);
        if (parent) return parent->id;
    }
    return std::nullopt;
}

}  // namespace

Checked<LogOutcome> log_record_in(Change& change, const Kind& kind, const std::string& as_typed,
                                  const std::vector<FieldInput>& inputs) {
    if (auto refusals = why_not_logged(kind, as_typed, inputs); !refusals.empty()) return refusals;
    const std::string label(trimmed(as_typed));
    const auto old = find_record(change.book(), kind, label, parent_given(change.book(), kind, inputs));
    if (!old) return old.refusals();
    Values values = *old ? (*old)->values : Values(kind.fields.size());
    const auto parsed = parse_inputs(change.book(), kind, inputs, values);
    if (!parsed) return parsed.refusals();
    for (const auto& [field, value] : parsed->values)
        values[field] = value;
    return *old ? change_old(change, kind, **old, *parsed, values)
                : make_new(change, kind, label, *parsed, values);
}

Checked<LogOutcome> change_record(Book& book, const Act& act, const Kind& kind, const Id& id,
                                  const std::vector<FieldInput>& inputs) {
    if (auto refusals = why_not_typed(kind, inputs); !refusals.empty()) return refusals;
    LogOutcome outcome;
    const auto entry = book.change(act, [&](Change& change) -> Checked<Done> {
        const auto row = change.book().row(kind, id);
        if (!row) return Refusal{"no-such-row", kind.name, "the book has no such record", "look it up again"};
        Values values = row->values;
        const auto parsed = parse_inputs(change.book(), kind, inputs, values);
        if (!parsed) return parsed.refusals();
        for (const auto& [field, value] : parsed->values)
            values[field] = value;
        auto changed = change_old(change, kind, *row, *parsed, values);
        if (!changed) return changed.refusals();
        outcome = *changed;
        return Done{};
    });
    if (!entry) return entry.refusals();
    outcome.entry = *entry;
    return outcome;
}

Checked<LogOutcome> log_record(Book& book, const Act& act, const Kind& kind, const std::string& label,
                               const std::vector<FieldInput>& inputs) {
    LogOutcome outcome;
    const auto entry = book.change(act, [&](Change& change) -> Checked<Done> {
        auto logged = log_record_in(change, kind, label, inputs);
        if (!logged) return logged.refusals();
        outcome = *logged;
        return Done{};
    });
    if (!entry) return entry.refusals();
    outcome.entry = *entry;
    return outcome;
}

std::string next_label(const Book& book, const Kind& kind, const std::string& prefix, int digits) {
    std::int64_t highest = 0;
    const auto place = *kind.index_of(kind.label.front());
    for (const auto& row : book.rows(kind, true)) {
        const auto* label = std::get_if<std::string>(&row.values[place]);
        if (label == nullptr || label->rfind(prefix, 0) != 0) continue;
        highest =
            std::max(highest, parse_integer(std::string_view(*label).substr(prefix.size())).value_or(0));
    }
    return fmt::format("{}{:0{}}", prefix, highest + 1, digits);
}

}  // namespace spoilbook
