// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/season.h"

#include "model/book/book_error.h"
#include "model/book/inside.h"
#include "model/book/row_store.h"
#include "model/book/snapshot.h"

namespace spoilbook {

namespace {

template <class R>
void fill(const Book& book, Shelf<R>& shelf) {
    const auto& made = definition<R>();
    read_from(book, [&] {
        SQLite::Statement statement(*book.inside().db,
                                    select_sql(made.kind(), "WHERE struck IS NULL ORDER BY uuid"));
        while (statement.executeStep())
            shelf.add(made.read(row_from(statement, made.kind())));
    });
}

std::optional<Harbour> harbour_of(const Book& book) {
    Shelf<Harbour> shelf;
    fill(book, shelf);
    if (shelf.size() == 0) return std::nullopt;
    return shelf.rows().front();
}

Zone zone_of(const std::optional<Harbour>& harbour) {
    if (!harbour || harbour->zone.empty()) return Zone::utc();
    const auto zone = Zone::named(harbour->zone);
    if (!zone) throw BookError("the book's time zone \"" + harbour->zone + "\" is not known on this machine");
    return *zone;
}

}  // namespace

Zone book_zone(const Book& book) {
    return zone_of(harbour_of(book));
}

Season read_season(const Book& book) {
    const Snapshot still(book);
    Season season;
    const auto harbour = harbour_of(book);
    if (harbour) season.harbour = *harbour;
    season.zone = zone_of(harbour);
    const auto all = [&](auto&... shelves) { (fill(book, shelves), ...); };
    all(season.people, season.materials, season.factors, season.suitabilities, season.dredgers,
        season.buckets, season.tugs, season.barges, season.claims, season.grounds, season.cells,
        season.consents, season.conditions, season.openings, season.shifts, season.stations, season.delays,
        season.loads, season.tallies, season.light_readings, season.trips, season.releases, season.events,
        season.observations, season.soundings, season.tides, season.tracks, season.crew, season.handovers,
        season.surveys, season.removed, season.duties_done);
    return season;
}

}  // namespace spoilbook
