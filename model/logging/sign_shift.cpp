// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/sign_shift.h"

#include "model/record/records.h"

namespace spoilbook {

namespace {

Checked<Shift> signable(const Book& book, const Act& act, const std::string& label) {
    const Kind& shifts = kind("shift");
    const auto row = book.labelled(shifts, label);
    if (!row) return Refusal{"no-such-row", "shift " + label, "there is no such shift", "look its number up"};
    Shift shift = definition<Shift>().read(*row);
    if (shift.signed_at) {
        return Refusal{"signed", "shift " + label, "it was signed by " + shift.signed_by,
                       "correct what is wrong with a reason"};
    }
    if (!shift.end)
        return Refusal{"not-ended", "shift " + label, "it has no end yet", "log when it ended, then sign"};
    if (act.at < *shift.end)
        return Refusal{"not-ended", "shift " + label, "it has not ended yet", "sign it when it has"};
    return shift;
}

Checked<Done> may_sign(const Book& book, const std::string& name) {
    if (name.empty()) return Refusal{"no-name", "sign", "a signature needs a name", "say who signs"};
    const Kind& people = kind("person");
    if (!book.rows(people).empty() && !book.labelled(people, name)) {
        return Refusal{"unknown-person", "sign", "\"" + name + "\" is not one of the book's people",
                       "add the person first, or sign by a known name"};
    }
    return Done{};
}

}  // namespace

Checked<EntryName> sign_shift(Book& book, const Act& act, const std::string& label) {
    const auto shift = signable(book, act, label);
    if (!shift) return shift.refusals();
    if (auto may = may_sign(book, act.who); !may) return may.refusals();
    const Kind& shifts = kind("shift");
    Act signing = act;
    signing.kind = EntryKind::sign;
    const auto entry = book.change(signing, [&](Change& change) -> Checked<Done> {
        if (auto done = change.set(shifts, shift->id, *shifts.index_of("signed_by"), Value{act.who}); !done)
            return done;
        return change.set(shifts, shift->id, *shifts.index_of("signed_at"), Value{act.at.utc_ms});
    });
    if (!entry) return entry.refusals();
    return entry->value();
}

}  // namespace spoilbook
