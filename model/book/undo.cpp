// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/undo.h"

#include <set>

#include "model/book/inside.h"
#include "model/book/journal.h"
#include "model/book/signed_rows.h"
#include "model/book/write.h"

namespace spoilbook {

namespace {

bool can_be_taken_back(EntryKind kind) {
    return kind == EntryKind::change || kind == EntryKind::correct;
}

bool opens_a_shift(const Entry& entry) {
    bool opens = false;
    for_each_touch(entry.changeset, [&](const Touch& touch) {
        opens = touch.table == "shift" && touch.deed == Touch::Deed::insert;
        return !opens;
    });
    return opens;
}

bool refers_to(const Touch& touch, const Id& id) {
    if (touch.id == id) return true;
    for (const auto& value : touch.after) {
        const auto* reference = value ? std::get_if<Id>(&*value) : nullptr;
        if (reference != nullptr && *reference == id) return true;
    }
    return false;
}

/// The newest entry after `target` that touches one of its rows or refers to one.
std::string standing_on(const Book& book, const Entry& target) {
    std::set<Id> rows;
    for_each_touch(target.changeset, [&](const Touch& touch) {
        rows.insert(touch.id);
        return true;
    });
    std::string found;
    for_each_entry(book, EntryOrder::newest_first, [&](const Entry& entry) {
        if (entry.name == target.name) return false;
        for_each_touch(entry.changeset, [&](const Touch& touch) {
            for (const auto& row : rows) {
                if (refers_to(touch, row))
                    found = name_text(entry.name) + " by " + (entry.who.empty() ? "someone" : entry.who);
            }
            return found.empty();
        });
        return found.empty();
    });
    return found.empty() ? "a later change" : "entry " + found;
}

bool later(const Book& book, const EntryName& a, const Entry& b) {
    const auto entry = find_entry(book, a);
    return entry && std::pair(entry->stamp_ms, entry->stamp_count) > std::pair(b.stamp_ms, b.stamp_count);
}

/// A refusal where undoing (or redoing) `target` would change what a signature covers.
Checked<Done> touches_nothing_signed(const Book& book, const Entry& target) {
    std::optional<Refusal> refusal;
    for_each_touch(target.changeset, [&](const Touch& touch) {
        const Kind& of = kind(touch.table);
        const auto row = book.row(of, touch.id);
        const auto signature = row ? signed_shift_of(book, of, *row) : std::nullopt;
        const auto signing = signature ? signing_entry(book, signature->shift_id) : std::nullopt;
        if (signing && (target.kind == EntryKind::correct || later(book, *signing, target))) {
            refusal = Refusal{
                "signed", touch.table + " " + book.label_of(of, touch.id),
                "it is signed with shift " + signature->shift + " (entry " + name_text(*signing) + ")",
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
    std::optional<Entry> found;
    std::set<std::int64_t> undone;
    for_each_entry(book, EntryOrder::newest_first, [&](const Entry& entry) {
        if (entry.name.device != book.inside().device) return true;
        const bool mine = entry.who == who;
        if (mine && (entry.kind == EntryKind::undo || entry.kind == EntryKind::redo)) {
            if (settled.insert(entry.takes_back).second && entry.kind == EntryKind::undo)
                undone.insert(entry.takes_back);
        } else if (mine && can_be_taken_back(entry.kind) && undone.count(entry.name.seq) == 0) {
            found = entry;
            return false;
        }
        const bool taken_back = undone.count(entry.name.seq) > 0;
        return taken_back || entry.kind == EntryKind::undo || entry.kind == EntryKind::redo ||
               !opens_a_shift(entry);
    });
    return found;
}

std::optional<Entry> next_redo(const Book& book, const std::string& who) {
    std::set<std::int64_t> restored;
    std::int64_t target = 0;
    for_each_entry(book, EntryOrder::newest_first, [&](const Entry& entry) {
        if (entry.name.device != book.inside().device || entry.who != who) return true;
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
