// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/signed_rows.h"

#include "model/book/changeset.h"
#include "model/book/inside.h"
#include "model/book/journal.h"
#include "model/book/row_store.h"

namespace spoilbook {

namespace {

Id reference(const Kind& kind, const Row& row, std::string_view field) {
    const auto index = kind.index_of(field);
    const auto* id = index ? std::get_if<Id>(&row.values[*index]) : nullptr;
    return id != nullptr ? *id : Id{};
}

Id reference_of(const Book& book, std::string_view kind_name, const Id& id, std::string_view field) {
    const Kind& of = kind(kind_name);
    const auto row = id ? book.row(of, id) : std::nullopt;
    return row ? reference(of, *row, field) : Id{};
}

/// The signed shift in which a load's loading ended.
Id shift_of_load(const Book& book, const Id& load) {
    if (!load) return {};
    SQLite::Statement shift(*book.inside().db,
                            "SELECT s.id FROM shift s, load l WHERE l.id = ? AND s.signed_at IS NOT NULL AND "
                            "s.struck IS NULL AND s.start <= l.loading_end AND (s.\"end\" IS NULL OR "
                            "l.loading_end < s.\"end\") ORDER BY s.id LIMIT 1");
    bind_id(shift, 1, load);
    return shift.executeStep() ? id_from(shift.getColumn(0)) : Id{};
}

Id shift_of(const Book& book, const Kind& kind, const Row& row) {
    const std::string& name = kind.name;
    if (name == "shift") return row.id;
    if (name == "station" || name == "crew" || name == "delay") return reference(kind, row, "shift");
    if (name == "sounding") return reference_of(book, "station", reference(kind, row, "station"), "shift");
    if (name == "tally") {
        const Id own = reference(kind, row, "shift");
        return own ? own : reference_of(book, "station", reference(kind, row, "station"), "shift");
    }
    if (name == "load") return shift_of_load(book, row.id);
    if (name == "trip") return shift_of_load(book, reference(kind, row, "load"));
    if (name == "release")
        return shift_of_load(book, reference_of(book, "trip", reference(kind, row, "trip"), "load"));
    return {};
}

/// Whether the row held something in that field when `signing` was written.
bool was_filled_then(const Book& book, const Kind& kind, const Id& id, std::size_t field,
                     const EntryName& signing) {
    bool filled = true;  // no later entry touched it: it is as it was
    for_each_entry(book, EntryOrder::newest_first, [&](const Entry& entry) {
        if (entry.name == signing) return false;
        for_each_touch(entry.changeset, [&](const Touch& touch) {
            if (touch.table != kind.name || touch.id != id) return true;
            if (touch.deed == Touch::Deed::insert) filled = false;
            const auto& before = touch.before[field + 1];
            if (before) filled = !is_blank(*before);
            return true;
        });
        return true;
    });
    return filled;
}

}  // namespace

std::optional<EntryName> signing_entry(const Book& book, const Id& shift) {
    const std::size_t column = *kind("shift").index_of("signed_at") + 1;
    std::optional<EntryName> found;
    for_each_entry(book, EntryOrder::newest_first, [&](const Entry& entry) {
        for_each_touch(entry.changeset, [&](const Touch& touch) {
            const bool signs = touch.table == "shift" && touch.id == shift && touch.after[column] &&
                               !is_blank(*touch.after[column]);
            if (signs) found = entry.name;
            return !found;
        });
        return !found;
    });
    return found;
}

std::optional<Signature> signed_shift_of(const Book& book, const Kind& of, const Row& row) {
    const Id shift_id = shift_of(book, of, row);
    const Kind& shifts = kind("shift");
    const auto shift = shift_id ? book.row(shifts, shift_id) : std::nullopt;
    if (!shift || shift->struck || is_blank(shift->values[*shifts.index_of("signed_at")]))
        return std::nullopt;
    const auto& by = shift->values[*shifts.index_of("signed_by")];
    return Signature{shift_id, book.label_of(shifts, shift_id),
                     is_blank(by) ? "" : std::get<std::string>(by)};
}

std::optional<Signature> signature_over(const Book& book, const Kind& of, const Row& row,
                                        std::optional<std::size_t> field) {
    auto signature = signed_shift_of(book, of, row);
    if (!signature || !field) return signature;
    const auto signing = signing_entry(book, signature->shift_id);
    if (signing && !was_filled_then(book, of, row.id, *field, *signing)) return std::nullopt;
    return signature;
}

}  // namespace spoilbook
