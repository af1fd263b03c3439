// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/unfilled_blank.h"

#include <algorithm>

#include "model/consent/sentence.h"

namespace spoilbook::form {
namespace {

std::size_t gaps_of(const Draft& draft) {
    static const std::string gap = "…";
    const std::string sentence = condition_sentence(as_condition(draft));
    std::size_t count = 0;
    for (auto at = sentence.find(gap); at != std::string::npos; at = sentence.find(gap, at + gap.size()))
        ++count;
    return count;
}

/// Something that could stand there: what, is no matter.
QString any_entry(const Blank& blank) {
    for (const Choice& choice : blank.choices) {
        if (!choice.key.isEmpty()) return choice.key;
    }
    return QStringLiteral("1");
}

bool closes_a_gap(const Draft& draft, const Blank& blank, std::size_t gaps) {
    Draft filled = draft;
    put_in(filled, blank, any_entry(blank), QLocale::c());
    return gaps_of(filled) < gaps;
}

}  // namespace

Condition as_condition(const Draft& draft) {
    const Draft clean = without_blanks(draft);
    Condition condition;
    condition.kind = draft.value("kind", "");
    for (const auto& [field, into] :
         {std::pair("text", &condition.text), std::pair("wording", &condition.wording)}) {
        if (clean.contains(field) && clean[field].is_string()) *into = clean[field].get<std::string>();
    }
    condition.body = draft.dump();
    return condition;
}

std::vector<std::string> unfilled_blanks(const Draft& draft, const std::vector<Piece>& pieces) {
    const std::size_t gaps = gaps_of(draft);
    std::vector<std::string> unfilled, not_chosen;
    for (const Piece& piece : pieces) {
        if (gaps == 0 || !piece.blank || !held_in(draft, *piece.blank, QLocale::c()).isEmpty()) continue;
        const bool which = piece.blank->holds == BlankHolds::which;
        if (which) not_chosen.push_back(piece.blank->at + "?");
        if (closes_a_gap(draft, *piece.blank, gaps)) unfilled.push_back(piece.blank->at + (which ? "?" : ""));
    }
    // What is chosen there has blanks of its own, and closes no gap before they are filled.
    return unfilled.empty() ? not_chosen : unfilled;
}

}  // namespace spoilbook::form
