// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/undo.h"

#include <set>

#include "model/book/inside.h"
#include "model/book/journal.h"
#include "model/book/signed_rows.h"
#include "model/book/write.h"

namespace spoilbook {

namespace {

bool can_be_taken_back(const Entry& entry) {
    // An entry that only stored a file has nothing to take back: what is stored stays. A correction is of
    // something signed, and is corrected again with a reason.
    return entry.kind == EntryKind::change && !entry.changeset.empty();
}

bool opens_a_shift(const Entry& entry) {
    bool opens = false;
    for_each_touch(entry.changeset, [&](const Touch& touch) {
        opens = touch.table == "shift" && touch.deed == Touch::Deed::insert;
        return !opens;
    });
    return opens;
}

/// Whether `later` is in the way of taking back or restoring `target`: it changed the same field, or the row
/// that came or went with the one, or refers to it.
bool stands_on(const Touch& later, const Touch& target) {
    const bool whole_row = target.deed != Touch::Deed::update || later.deed != Touch::Deed::update;
    for (std::size_t i = 0; i < later.after.size(); ++i) {
        const auto& value = later.after[i];
        const auto* reference = value && i > 0 ? std::get_if<Id>(&*value) : nullptr;
        if (reference != nullptr && *reference == target.id && target.deed != Touch::Deed::update)
            return true;
        const bool same_field = value && i > 0 && i < target.after.size() && target.after[i];
        if (later.id == target.id && (whole_row || same_field)) return true;
    }
    return false;
}

/// The newest entry after `target` that stands on it, in words.
std::string standing_on(const Book& book, const Entry& target) {
    std::string found;
    for_each_entry(book, EntryOrder::newest_first, [&](const Entry& entry) {
        if (entry.name == target.name) return false;
        if (entry.name.device == target.name.device && entry.takes_back == target.name.seq) return true;
        for_each_touch(entry.changeset, [&](const Touch& later) {
            for_each_touch(target.changeset, [&](const Touch& touch) {
                if (stands_on(later, touch))
                    found = name_text(entry.name) + " by " + (entry.who.empty() ? "someone" : entry.who);
                return found.empty();
            });
            return found.empty();
        });
        return found.empty();
    });
    return found.empty() ? "a later change" : "entry " + found;
}

/// A refusal where undoing (or redoing) `target` would change what a signature covers.
Checked<Done> touches_nothing_signed(const Book& book, const Entry& target) {
    const EntryPlace when{target.name, target.at, target.stamp_ms, target.stamp_count, target.kind};
    std::optional<Refusal> refusal;
    for_each_touch(target.changeset, [&](const Touch& touch) {
        const Kind& of = kind(touch.table);
        const auto row = book.row(of, touch.id);
        const auto signature = row ? signed_shift_of(book, of, *row) : std::nullopt;
        const auto signing = signature ? signing_of(book, signature->shift_id) : std::nullopt;
        if (signing && !is_after(when, *signing)) {
            refusal = Refusal{
                "signed", touch.table + " " + book.label_of(of, touch.id),
                "it is signed with shift " + signature->shift + " (entry " + name_text(signing->name) + ")",
                "correct it with a reason instead"};
        }
        return !refusal;
    });
    if (refusal) return *refusal;
    return Done{};
}

Checked<EntryName> apply_again(Book& book, const Act& act, EntryKind kind, const Entry& target) {
    if (auto may = touches_nothing_signed(book, target); !may) return may.refusals();
    Act undoing = act;
    undoing.kind = kind;
    const std::string bytes = kind == EntryKind::undo ? inverted(target.changeset) : target.changeset;
    auto entry = write(book, undoing, [&](OpenChange& change) -> Checked<Done> {
        change.takes_back(target.name.seq);
        if (change.apply(bytes)) return Done{};
        return Refusal{"stands-on-it", "entry " + name_text(target.name),
                       "it cannot be taken back alone: " + standing_on(book, target) + " stands on it",
                       "undo that first, or change the value itself"};
    });
    if (!entry) return entry.refusals();
    return entry->value();
}

}  // namespace

std::optional<Entry> next_undo(const Book& book, const std::string& who) {
    std::set<std::int64_t> settled;  // seqs whose newest fate is known
    std::set<std::int64_t> undone;
    std::optional<Entry> found;
    for_each_entry_by(book, book.inside().device, [&](const Entry& entry) {
        if (entry.takes_back != 0) {
            if (settled.insert(entry.takes_back).second && entry.kind == EntryKind::undo)
                undone.insert(entry.takes_back);
            return true;
        }
        if (undone.contains(entry.name.seq)) return true;
        if (entry.who == who && can_be_taken_back(entry)) {
            found = entry;
            return false;
        }
        return !opens_a_shift(entry);
    });
    return found;
}

std::optional<Entry> next_redo(const Book& book, const std::string& who) {
    std::set<std::int64_t> restored;
    std::int64_t target = 0;
    for_each_entry_by(book, book.inside().device, [&](const Entry& entry) {
        if (entry.who != who) return true;
        if (entry.kind == EntryKind::redo) {
            restored.insert(entry.takes_back);
            return true;
        }
        if (entry.kind != EntryKind::undo) return false;
        if (restored.erase(entry.takes_back) > 0) return true;
        target = entry.takes_back;
        return false;
    });
    if (target == 0) return std::nullopt;
    return find_entry(book, {book.inside().device, target});
}

Checked<EntryName> undo(Book& book, const Act& act) {
    const auto target = next_undo(book, act.who);
    if (!target) {
        return Refusal{"nothing-to-undo", book.path(),
                       "there is no change of yours to take back since the shift was opened",
                       "change the value itself"};
    }
    return apply_again(book, act, EntryKind::undo, *target);
}

Checked<EntryName> redo(Book& book, const Act& act) {
    const auto target = next_redo(book, act.who);
    if (!target) {
        return Refusal{"nothing-to-redo", book.path(),
                       "nothing of yours was taken back since your last change", "log it again"};
    }
    return apply_again(book, act, EntryKind::redo, *target);
}

}  // namespace spoilbook
