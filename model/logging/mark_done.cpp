// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/mark_done.h"

#include "model/book/season.h"
#include "model/folder/regular_file.h"
#include "model/record/duty_done.h"
#include "model/record/evidence_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

Checked<std::string> kept(Change& change, std::string text, const std::vector<EvidenceBytes>& files) {
    for (const auto& file : files) {
        // The text stands apart by "; ", and the name goes back out as a file's.
        if (!is_plain_name(file.name) || file.name.find(';') != std::string::npos)
            return Refusal{"bad-name", file.name, "it is no plain name of a file, or has a semicolon",
                           "give a copy another name"};
        if (file.bytes.empty())
            return Refusal{"empty-file", file.name, "the file is empty: it shows nothing",
                           "look whether it is the right one"};
        const auto digest = change.keep(file.bytes);
        if (!digest) return digest.refusals();
        text = with_evidence_file(text, {file.name, *digest});
    }
    return text;
}

bool has_duty(const Book& book, const DutyMark& mark) {
    const Kind& kind = definition<Condition>().kind();
    for (const Row& row : book.rows(kind)) {
        const auto condition = definition<Condition>().read(row);
        if (condition.kind != "duty" || condition.condition != mark.condition) continue;
        if (mark.consent.empty() ||
            book.label_of(definition<Consent>().kind(), condition.consent) == mark.consent)
            return true;
    }
    return false;
}

}  // namespace

Checked<LogOutcome> mark_done(Book& book, const Act& act, const DutyMark& mark) {
    if (!has_duty(book, mark))
        return Refusal{"no-such-row", "condition " + mark.condition, "no condition of that number is a duty",
                       "see them with sbk duties"};
    const Kind& kind = definition<DutyDone>().kind();
    const Zone zone = book_zone(book);
    LogOutcome outcome;
    const auto entry = book.change(act, [&](Change& change) -> Checked<Done> {
        const auto evidence = kept(change, mark.evidence, mark.files);
        if (!evidence) return evidence.refusals();
        const std::vector<FieldInput> inputs{
            {"consent", mark.consent},
            {"condition", mark.condition},
            {"covers_from", mark.covers_from ? instant_text(*mark.covers_from, zone) : ""},
            {"done_at", instant_text(mark.done_at, zone)},
            {"by", mark.by},
            {"evidence", *evidence},
            {"remarks", mark.remarks}};
        auto logged = log_record_in(change, kind, next_label(change.book(), kind, "DD-"), inputs);
        if (!logged) return logged.refusals();
        outcome = *logged;
        return Done{};
    });
    if (!entry) return entry.refusals();
    outcome.entry = *entry;
    return outcome;
}

Checked<LogOutcome> add_evidence(Book& book, const Act& act, const Id& duty_done, const EvidenceBytes& file) {
    const Kind& kind = definition<DutyDone>().kind();
    LogOutcome outcome;
    outcome.id = duty_done;
    const auto entry = book.change(act, [&](Change& change) -> Checked<Done> {
        const auto row = change.book().row(kind, duty_done);
        if (!row) return Refusal{"no-such-row", kind.name, "the book has no such record", "look it up again"};
        const auto evidence = kept(change, definition<DutyDone>().read(*row).evidence, {file});
        if (!evidence) return evidence.refusals();
        return change.set(kind, duty_done, *kind.index_of("evidence"), *evidence);
    });
    if (!entry) return entry.refusals();
    outcome.entry = *entry;
    return outcome;
}

}  // namespace spoilbook
