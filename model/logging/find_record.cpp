// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/find_record.h"

#include "model/folder/nearest.h"

namespace spoilbook {

namespace {

Id reference(const Kind& kind, const Values& values, const std::string& field) {
    const auto index = kind.index_of(field);
    const auto* id = index ? std::get_if<Id>(&values[*index]) : nullptr;
    return id != nullptr ? *id : Id{};
}

Id reference_of(const Book& book, const std::string& kind_name, const Id& id, const std::string& field) {
    const Kind& of = kind(kind_name);
    const auto row = id ? book.row(of, id) : std::nullopt;
    return row ? reference(of, row->values, field) : Id{};
}

/// The row in which a reference's label is to be found: its parent.
Id parent_of(const Book& book, const Kind& kind, const Field& field, const Values& values) {
    if (field.within.empty()) return {};
    if (kind.index_of(field.within)) {
        const Id own = reference(kind, values, field.within);
        // A release's ground may be blank: then it is its trip's.
        return own || kind.name != "release"
                   ? own
                   : reference_of(book, "trip", reference(kind, values, "trip"), field.within);
    }
    const Id own =
        reference(kind, values, "shift");  // a tally's shift, where it names one, before its station's
    const Id shift = own ? own : reference_of(book, "station", reference(kind, values, "station"), "shift");
    return reference_of(book, "shift", shift, field.within);
}

bool labelled_so(const Row& row, const Kind& kind, const std::string& label) {
    const auto* text = std::get_if<std::string>(&row.values[*kind.index_of(kind.label.front())]);
    return text != nullptr && *text == label;
}

/// The labels that stand there, of one parent where there is one.
std::vector<std::string> labels_in(const Book& book, const Kind& kind, const Id& parent) {
    std::vector<std::string> labels;
    for (const Row& row : book.rows(kind)) {
        if (parent && kind.label.size() > 1 && reference(kind, row.values, kind.label[1]) != parent) continue;
        // Nobody releases in an exclusion on purpose.
        if (kind.name == "cell" && row.values[*kind.index_of("kind")] == Value{std::string("exclusion")})
            continue;
        const auto* text = std::get_if<std::string>(&row.values[*kind.index_of(kind.label.front())]);
        if (text != nullptr) labels.push_back(*text);
    }
    return labels;
}

}  // namespace

Checked<std::optional<Row>> find_record(const Book& book, const Kind& kind, const std::string& label,
                                        const std::optional<Id>& parent) {
    if (kind.label.size() < 2) return book.labelled(kind, label);
    if (parent && *parent) return book.labelled(kind, label, parent);
    std::optional<Row> found;
    for (auto& row : book.rows(kind)) {
        if (!labelled_so(row, kind, label)) continue;
        if (found) {
            return Refusal{"which-one", kind.name + " " + label, "several have this label",
                           "say which by giving its " + kind.label[1] + " too"};
        }
        found = std::move(row);
    }
    return found;
}

Checked<Id> find_referred(const Book& book, const Kind& kind, const Field& field, const std::string& label,
                          const Values& values) {
    const Kind& to = spoilbook::kind(field.refers_to);
    const Id parent = parent_of(book, kind, field, values);
    auto found = find_record(book, to, label, parent);
    if (!found) return found.refusals();
    if (!*found) {
        return Refusal{"unknown-reference", field.name, "there is no " + to.name + " \"" + label + "\"",
                       labels_there_are(label, labels_in(book, to, parent))};
    }
    return (*found)->id;
}

}  // namespace spoilbook
