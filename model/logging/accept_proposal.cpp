// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/accept_proposal.h"

#include "model/book/season.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

std::string joined(const std::vector<std::string>& labels) {
    std::string text;
    for (const auto& label : labels)
        text += (text.empty() ? "" : "; ") + label;
    return text;
}

}  // namespace

Checked<LogOutcome> accept_proposal(Book& book, const Act& act, const AcceptedProposal& proposal) {
    if (act.who.empty())
        return Refusal{"name-needed", "factor", "a factor is decided by somebody", "give --by"};
    if (act.why.empty())
        return Refusal{"reason-needed", "factor", "a factor is revised for a reason", "give --why"};
    const Kind& factors = kind("factor");
    std::vector<FieldInput> inputs{{"from", instant_text(proposal.from, book_zone(book))},
                                   {"material", proposal.material},
                                   {"factor", "bulking"},
                                   {"value", number_text(proposal.value)},
                                   {"by", act.who},
                                   {"why", act.why},
                                   {"evidence", joined(proposal.evidence)}};
    if (proposal.u) inputs.push_back({"u", number_text(*proposal.u)});
    return log_record(book, act, factors, next_label(book, factors, "F-", 2), inputs);
}

}  // namespace spoilbook
