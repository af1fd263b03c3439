// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/label.h"

#include <algorithm>
#include <set>

#include "model/folder/utf8.h"
#include "model/record/field_text.h"

namespace spoilbook {

Refusals why_not_logged(const Kind& kind, const std::string& label, const std::vector<FieldInput>& inputs) {
    if (kind.label.empty() || kind.field(kind.label.front()).type != FieldType::text) {
        return {Refusal{"not-logged", kind.name, "a " + kind.name + " is not logged one by one",
                        "bring it with a book folder"}};
    }
    Refusals refusals;
    if (trimmed(label).empty())
        refusals.push_back({"blank-id", kind.name, "it has no label", "give it one, such as T-0412"});
    if (auto bad = why_not_text(label, kind.name + " label")) refusals.push_back(*bad);
    const Refusals typed = why_not_typed(kind, inputs);
    refusals.insert(refusals.end(), typed.begin(), typed.end());
    return refusals;
}

Refusals why_not_typed(const Kind& kind, const std::vector<FieldInput>& inputs) {
    Refusals refusals;
    std::set<std::string> seen;
    for (const auto& input : inputs) {
        const std::string where = kind.name + " " + input.column;
        if (auto bad = why_not_text(input.column + input.text, kind.name)) refusals.push_back(*bad);
        if (!seen.insert(input.column).second)
            refusals.push_back({"twice", where, "the column is given twice", "keep one"});
        if (input.column == "struck" && input.text != "yes") {
            refusals.push_back({"not-a-choice", where, "\"" + input.text + "\" is not yes",
                                "struck=yes strikes out; what was struck out comes back by undo"});
        }
    }
    return refusals;
}

std::optional<Refusal> why_label_taken(const Book& book, const Kind& kind, const std::optional<Id>& own,
                                       const std::vector<Value>& values) {
    const auto place = *kind.index_of(kind.label.front());
    const auto* label = std::get_if<std::string>(&values[place]);
    if (label == nullptr)
        return Refusal{"blank-id", kind.name, "it would have no label", "give it one, such as T-0412"};
    const auto same = [&](const Row& row) {
        return std::all_of(kind.label.begin(), kind.label.end(), [&](const std::string& name) {
            const auto index = *kind.index_of(name);
            return row.values[index] == values[index];
        });
    };
    const auto taken = [&](const Row& row) { return (!own || row.id != *own) && same(row); };
    if (kind.label.size() == 1) {
        // The newest of that label is another row, or is the row itself and stands alone by this same rule.
        const auto row = book.labelled(kind, *label);
        if (!row || !taken(*row)) return std::nullopt;
    } else {
        const auto rows = book.rows(kind);
        if (std::none_of(rows.begin(), rows.end(), taken)) return std::nullopt;
    }
    return Refusal{"twice", kind.name + " " + *label, "the book has a " + kind.name + " of this label",
                   "give every row its own"};
}

}  // namespace spoilbook
