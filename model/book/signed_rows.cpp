// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/signed_rows.h"

#include <algorithm>
#include <tuple>

#include "model/book/changeset.h"
#include "model/book/inside.h"
#include "model/book/journal.h"
#include "model/book/row_store.h"
#include "model/book/schema.h"

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
    const Kind& loads = kind("load");
    const auto row = load ? book.row(loads, load) : std::nullopt;
    const auto* ended =
        row ? std::get_if<std::int64_t>(&row->values[*loads.index_of("loading_end")]) : nullptr;
    if (ended == nullptr) return {};
    return read_from(book, [&] {
        // Two searches of shift_by_end: shifts not ended, and those that ended later. The + keeps SQLite
        // from walking all shifts in the order of their ids.
        auto& shift = book.inside().prepared(
            "SELECT uuid FROM shift WHERE (\"end\" IS NULL OR \"end\" > ?1) AND start <= ?1 "
            "AND signed_at IS NOT NULL AND struck IS NULL ORDER BY +uuid LIMIT 1");
        shift.bind(1, *ended);
        const Id found = shift.executeStep() ? id_from(shift.getColumn(0)) : Id{};
        shift.tryReset();
        return found;
    });
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

bool puts_a_signature(const Book& book, const EntryName& name, const Id& shift) {
    const Kind& shifts = kind("shift");
    const std::size_t column = *shifts.index_of("signed_at") + first_field_column;
    const auto entry = find_entry(book, name);
    const auto touch = entry ? find_touch(entry->changeset, shifts.name, shift) : std::nullopt;
    return touch && touch->after[column] && !is_blank(*touch->after[column]);
}

/// Whether the row held something in that field when the first of `later` had not been written yet.
bool was_filled_before(const Book& book, const std::vector<EntryPlace>& later, const Kind& kind,
                       const Row& row, std::size_t field) {
    for (const auto& place : later) {
        const auto entry = find_entry(book, place.name);
        const auto touch = entry ? find_touch(entry->changeset, kind.name, row.id) : std::nullopt;
        const std::size_t column = field + first_field_column;
        // An entry from before the field came knows nothing of it.
        if (touch && column < touch->before.size() && touch->before[column])
            return !is_blank(*touch->before[column]);
    }
    return !is_blank(row.values[field]);  // no later entry changed it: it is as it was
}

}  // namespace

bool is_after(const EntryPlace& entry, const EntryPlace& signing) {
    const bool same_import = entry.kind == EntryKind::import && signing.kind == EntryKind::import &&
                             entry.name.device == signing.name.device && entry.at == signing.at;
    const auto order = [](const EntryPlace& of) {
        return std::tie(of.stamp_ms, of.stamp_count, of.name.device);
    };
    return !same_import && order(entry) > order(signing);
}

std::optional<EntryPlace> signing_of(const Book& book, const Id& shift) {
    const Kind& shifts = kind("shift");
    const auto row = book.row(shifts, shift);
    if (!row || is_blank(row->values[*shifts.index_of("signed_at")])) return std::nullopt;
    const auto places = entries_of(book, shift);
    const auto found = std::find_if(places.rbegin(), places.rend(), [&](const EntryPlace& place) {
        return puts_a_signature(book, place.name, shift);
    });
    if (found == places.rend()) return std::nullopt;
    return *found;
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

std::optional<EntryPlace> SignatureCover::signing(const Id& shift) {
    const auto place = signings_.find(shift);
    if (place != signings_.end()) return place->second;
    auto found = signing_of(book_, shift);
    if (found) signings_.emplace(shift, found);
    return found;
}

std::optional<Signature> SignatureCover::over(const Kind& of, const Row& row,
                                              std::optional<std::size_t> field) {
    auto signature = signed_shift_of(book_, of, row);
    const auto signed_by = signature ? signing(signature->shift_id) : std::nullopt;
    if (!signed_by) return std::nullopt;
    auto places = entries_of(book_, row.id);
    const auto first_later = std::find_if(
        places.begin(), places.end(), [&](const EntryPlace& place) { return is_after(place, *signed_by); });
    const bool was_there = first_later != places.begin();
    places.erase(places.begin(), first_later);
    if (!was_there) return std::nullopt;
    if (field && !was_filled_before(book_, places, of, row, *field)) return std::nullopt;
    return signature;
}

}  // namespace spoilbook
