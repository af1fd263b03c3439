// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/choices.h"

#include <QCoreApplication>

namespace spoilbook::form {
namespace {

Choice as_choice(const std::string& text) {
    const QString key = QString::fromStdString(text);
    return {key, QString(key).replace(u'_', u' ')};
}

Id held_reference(const Book& book, const Kind& kind, const std::string& label, const std::string& column) {
    const auto at = kind.index_of(column);
    const auto row = label.empty() || !at ? std::nullopt : book.labelled(kind, label);
    if (!row) return {};
    const Id* id = std::get_if<Id>(&row->values[*at]);
    return id ? *id : Id();
}

template <class R>
void add_all(std::vector<Choice>& choices, const Shelf<R>& shelf, std::string R::*name) {
    for (const R& one : shelf.rows())
        choices.push_back(as_choice(one.*name));
}

}  // namespace

bool chosen_from_list(const Field& field) {
    static const std::vector<std::string> listed{"claim",  "barge", "tug",      "dredger",
                                                 "ground", "cell",  "material", "bucket"};
    return std::find(listed.begin(), listed.end(), field.refers_to) != listed.end();
}

std::vector<Choice> choices_for(const Season& season, const Book& book, const Kind& kind, const Field& field,
                                const std::string& label) {
    std::vector<Choice> choices{{QString(), QCoreApplication::translate("choices", "not recorded")}};
    for (const std::string& word : field.choices)
        choices.push_back(as_choice(word));
    const std::string& to = field.refers_to;
    if (to == "claim") add_all(choices, season.claims, &Claim::claim);
    if (to == "barge") add_all(choices, season.barges, &Barge::name);
    if (to == "tug") add_all(choices, season.tugs, &Tug::name);
    if (to == "dredger") add_all(choices, season.dredgers, &Dredger::name);
    if (to == "ground") add_all(choices, season.grounds, &Ground::ground);
    if (to == "material") add_all(choices, season.materials, &Material::material);
    if (to == "bucket") add_all(choices, season.buckets, &Bucket::name);
    if (to == "cell") {
        const Id ground = held_reference(book, kind, label, "ground");
        for (const Cell& cell : season.cells.rows()) {
            if (cell.kind != "exclusion" && (!ground || cell.ground == ground))
                choices.push_back(as_choice(cell.cell));
        }
    }
    return choices;
}

std::vector<Choice> delay_cause_choices() {
    std::vector<Choice> choices;
    for (const std::string& cause : delay_causes())
        choices.push_back(as_choice(cause));
    return choices;
}

}  // namespace spoilbook::form
