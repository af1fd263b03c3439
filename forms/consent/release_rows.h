// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>
#include <QPointF>
#include <QPolygonF>

#include "forms/shared/table_model.h"
#include "model/answer/release_places.h"

namespace spoilbook::form {

/// One release held against its ground, ready to be read.
struct ReleaseRow {
    QString label, trip, ground, cell, why, at_text, at_copy;
    Instant at;
    PlaceVerdict verdict = PlaceVerdict::cannot_tell;
    std::optional<double> distance_m;
    double u_m = 0;
    bool u_assumed = false;
    std::optional<QPointF> place;  ///< easting, northing, m
};

std::vector<ReleaseRow> release_rows(const std::vector<ReleasePlace>& places, const Ledger& ledger,
                                     const QLocale& locale);
std::vector<Column<ReleaseRow>> release_columns(const QLocale& locale);

State verdict_state(PlaceVerdict verdict);
QString verdict_word(PlaceVerdict verdict);
/// "600 releases: 597 inside, 1 outside, 2 cannot tell."
QString releases_sentence(const std::vector<ReleaseRow>& rows, const QLocale& locale);

/// One outline on the map, in metres of the book's CRS.
struct MapShape {
    enum Kind { ground, cell, exclusion };
    Kind kind = ground;
    QString name;
    std::vector<QPolygonF> rings;
    std::optional<QPointF> name_at = {};  ///< of a cell: the open place farthest from any edge
};

/// All grounds, cells and exclusions of the book, grounds first.
std::vector<MapShape> map_shapes(const Ledger& ledger);

}  // namespace spoilbook::form
