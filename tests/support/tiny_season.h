// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "model/book/book.h"
#include "model/book/undo.h"

namespace spoilbook::tests {

/// 2025-03-03T06:00Z and some minutes: the first shift of an invented season.
constexpr Instant morning(std::int64_t minutes = 0) {
    return Instant{1740981600000} + minutes * ms_per_minute;
}
inline Value time_of(Instant at) {
    return at.utc_ms;
}

inline Act by(const std::string& who, std::int64_t minutes = 0, const std::string& why = "",
              EntryKind kind = EntryKind::change) {
    return {kind, morning(minutes), who, why};
}

using Fields = std::vector<std::pair<std::string, Value>>;

inline std::vector<Value> values_of(const Kind& kind, const Fields& fields) {
    std::vector<Value> values(kind.fields.size());
    for (const auto& [name, value] : fields)
        values.at(kind.index_of(name).value()) = value;
    return values;
}

/// One row logged by one change. Throws where the book refuses it.
inline Id log_row(Book& book, const Act& act, const std::string& kind_name, const Fields& fields) {
    const Kind& of = kind(kind_name);
    Id id;
    auto done = book.change(act, [&](Change& change) -> Checked<Done> {
        id = change.insert(of, values_of(of, fields));
        return Done{};
    });
    done.value();
    return id;
}

inline Checked<std::optional<EntryName>> set_field(Book& book, const Act& act, const std::string& kind_name,
                                                   const Id& id, const std::string& field,
                                                   const Value& value) {
    const Kind& of = kind(kind_name);
    return book.change(act,
                       [&](Change& change) { return change.set(of, id, of.index_of(field).value(), value); });
}

inline Checked<std::optional<EntryName>> strike_row(Book& book, const Act& act, const std::string& kind_name,
                                                    const Id& id) {
    return book.change(act, [&](Change& change) { return change.strike(kind(kind_name), id); });
}

inline Value field_of(const Book& book, const std::string& kind_name, const Id& id,
                      const std::string& field) {
    const Kind& of = kind(kind_name);
    return book.row(of, id).value().values.at(of.index_of(field).value());
}

/// One shift, with a station, one load dug in it and one trip with it.
struct TinySeason {
    Id harbour, barge, shift, station, load, trip;
};

/// Logged by Ana in six entries from 06:00 on; the load is full at 07:00, the trip back at 09:00.
inline TinySeason log_tiny_season(Book& book, const std::string& who = "Ana") {
    TinySeason ids;
    ids.harbour = log_row(book, by(who), "harbour", {{"name", "Marram"}, {"zone", "Pacific/Auckland"}});
    ids.barge = log_row(book, by(who, 1), "barge", {{"name", "Pipi"}, {"capacity_m3", 600.0}});
    ids.shift = log_row(book, by(who, 2), "shift",
                        {{"shift", "S1"}, {"start", time_of(morning())}, {"skipper", who}});
    ids.station = log_row(book, by(who, 3), "station", {{"station", "ST1"}, {"shift", ids.shift}});
    ids.load = log_row(book, by(who, 60), "load",
                       {{"load", "L1"}, {"barge", ids.barge}, {"loading_end", time_of(morning(60))}});
    ids.trip = log_row(book, by(who, 180), "trip",
                       {{"trip", "T1"}, {"load", ids.load}, {"returned", time_of(morning(180))}});
    return ids;
}

/// Signs a shift at its end: 18:00, twelve hours after morning().
inline EntryName sign_shift(Book& book, const Id& shift, const std::string& who = "Ana") {
    const Kind& shifts = kind("shift");
    auto entry = book.change(by(who, 720, "", EntryKind::sign), [&](Change& change) -> Checked<Done> {
        const auto set = [&](const char* field, const Value& value) {
            change.set(shifts, shift, *shifts.index_of(field), value).value();
        };
        set("end", time_of(morning(720)));
        set("signed_at", time_of(morning(720)));
        set("signed_by", who);
        return Done{};
    });
    return entry.value().value();
}

/// Every row of every kind, for comparing whole books.
inline std::vector<std::vector<Row>> all_rows(const Book& book) {
    std::vector<std::vector<Row>> rows;
    for (const auto& kind : all_kinds())
        rows.push_back(book.rows(kind, true));
    return rows;
}

inline bool same_rows(const std::vector<std::vector<Row>>& a, const std::vector<std::vector<Row>>& b) {
    const auto same = [](const Row& x, const Row& y) {
        return x.id == y.id && x.values == y.values && x.struck == y.struck;
    };
    for (std::size_t i = 0; i < a.size(); ++i) {
        if (!std::equal(a[i].begin(), a[i].end(), b[i].begin(), b[i].end(), same)) return false;
    }
    return a.size() == b.size();
}

}  // namespace spoilbook::tests
