// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/history.h"

#include "model/book/changeset.h"
#include "model/book/journal.h"
#include "model/book/signed_rows.h"

namespace spoilbook {

namespace {

std::vector<FieldStep> fields_of(const Kind& kind, const Touch& touch) {
    std::vector<FieldStep> steps;
    for (std::size_t i = 1; i < touch.after.size(); ++i) {
        const Value before = touch.before[i].value_or(Value{});
        const Value after = touch.after[i].value_or(Value{});
        if (before == after) continue;
        const bool struck = i > kind.fields.size();
        steps.push_back({struck ? "struck" : kind.fields[i - 1].name, before, after});
    }
    return steps;
}

}  // namespace

std::vector<RowStep> history(const Book& book, const Kind& kind, const Id& id) {
    const auto row = book.row(kind, id);
    const auto signature = row ? signed_shift_of(book, kind, *row) : std::nullopt;
    const auto signing = signature ? signing_entry(book, signature->shift_id) : std::nullopt;
    bool is_signed = false;
    std::vector<RowStep> steps;
    for_each_entry(book, EntryOrder::replay, [&](const Entry& entry) {
        for_each_touch(entry.changeset, [&](const Touch& touch) {
            if (touch.table != kind.name || touch.id != id) return true;
            RowStep step{entry.name,
                         entry.at,
                         entry.who,
                         entry.why,
                         entry.kind,
                         touch.deed == Touch::Deed::insert,
                         touch.deed == Touch::Deed::remove,
                         is_signed,
                         fields_of(kind, touch)};
            steps.push_back(std::move(step));
            return true;
        });
        is_signed = is_signed || (signing && entry.name == *signing);
        return true;
    });
    return steps;
}

}  // namespace spoilbook
