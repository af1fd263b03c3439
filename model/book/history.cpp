// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/history.h"

#include "model/book/changeset.h"
#include "model/book/journal.h"
#include "model/book/schema.h"
#include "model/book/signed_rows.h"
#include "model/book/snapshot.h"

namespace spoilbook {

namespace {

std::vector<FieldStep> fields_of(const Kind& kind, const Touch& touch) {
    std::vector<FieldStep> steps;
    for (std::size_t i = struck_column; i < touch.after.size(); ++i) {
        const Value before = touch.before[i].value_or(Value{});
        const Value after = touch.after[i].value_or(Value{});
        if (before == after) continue;
        const bool struck = i == struck_column;
        steps.push_back({struck ? "struck" : kind.fields[i - first_field_column].name, before, after});
    }
    return steps;
}

}  // namespace

std::vector<RowStep> history(const Book& book, const Kind& kind, const Id& id) {
    const Snapshot still(book);
    const auto row = book.row(kind, id);
    const auto signature = row ? signed_shift_of(book, kind, *row) : std::nullopt;
    const auto signing = signature ? signing_of(book, signature->shift_id) : std::nullopt;
    std::vector<RowStep> steps;
    for (const auto& place : entries_of(book, id)) {
        const auto entry = find_entry(book, place.name);
        const auto touch = entry ? find_touch(entry->changeset, kind.name, id) : std::nullopt;
        if (!touch) continue;
        steps.push_back({entry->name, entry->at, entry->who, entry->why, entry->kind,
                         touch->deed == Touch::Deed::insert, touch->deed == Touch::Deed::remove,
                         signing && is_after(place, *signing), fields_of(kind, *touch)});
    }
    return steps;
}

}  // namespace spoilbook
