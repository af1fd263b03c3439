// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/release_rows.h"

#include <QCoreApplication>
#include <algorithm>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Releases", text);
}

ReleaseRow made_row(const ReleasePlace& place, const Ledger& ledger, const QLocale& locale) {
    const Season& season = ledger.season();
    ReleaseRow row;
    row.label = QString::fromStdString(place.release->label());
    row.trip = QString::fromStdString(place.release->trip->trip);
    if (const Ground* ground = season.grounds.find(place.ground))
        row.ground = QString::fromStdString(ground->ground);
    if (const Cell* cell = season.cells.find(place.cell)) row.cell = QString::fromStdString(cell->cell);
    row.why = QString::fromStdString(place.why);
    row.at = *place.release->ended;
    row.at_text = moment_shown(row.at, season.zone, locale);
    row.at_copy = QString::fromStdString(instant_text(row.at, season.zone));
    row.verdict = place.verdict;
    row.distance_m = place.distance_m;
    row.u_m = place.position_u_m;
    row.u_assumed = place.u_assumed;
    if (const auto at = ledger.grounds().place_of(*place.release))
        row.place = QPointF(at->easting_m, at->northing_m);
    return row;
}

MapShape shape_of(MapShape::Kind kind, const std::string& name, const Area* area) {
    MapShape shape{kind, QString::fromStdString(name), {}};
    if (!area) return shape;
    for (const Polygon& part : area->parts) {
        for (const Ring& ring : part.rings) {
            QPolygonF line;
            for (const EastNorth& p : ring.points)
                line << QPointF(p.easting_m, p.northing_m);
            shape.rings.push_back(line);
        }
    }
    return shape;
}

}  // namespace

std::vector<ReleaseRow> release_rows(const std::vector<ReleasePlace>& places, const Ledger& ledger,
                                     const QLocale& locale) {
    std::vector<ReleaseRow> rows;
    rows.reserve(places.size());
    for (const ReleasePlace& place : places)
        rows.push_back(made_row(place, ledger, locale));
    return rows;
}

std::vector<Column<ReleaseRow>> release_columns(const QLocale& locale) {
    using Row = ReleaseRow;
    const auto distance = [locale](const Row& r) {
        // Down: the distance inside is never made longer, the distance outside never shorter.
        return r.distance_m ? rounded_down(*r.distance_m, 0, locale) : QStringLiteral("–");
    };
    const auto u = [locale](const Row& r) {
        const QString value = rounded_up(r.u_m, 0, locale);
        return r.u_assumed ? tr("%1 (taken)").arg(value) : value;
    };
    return {
        Column<Row>(tr("Trip"), {}, [](const Row& r) { return r.label; }),
        Column<Row>(tr("Place"), {}, [](const Row& r) { return verdict_word(r.verdict); })
            .mark([](const Row& r) { return std::optional(verdict_state(r.verdict)); }),
        Column<Row>(tr("To the boundary"), QStringLiteral("m"), distance)
            .number([](const Row& r) { return r.distance_m; })
            .tip(tr("Positive inside the ground, negative outside; on the map")),
        Column<Row>(tr("± u"), QStringLiteral("m"), u)
            .number([](const Row& r) { return std::optional(r.u_m); })
            .tip(tr("Standard uncertainty of the position (68 %); “taken” where none is recorded")),
        Column<Row>(tr("Cell"), {}, [](const Row& r) { return r.cell; }),
        Column<Row>(tr("Release end"), {}, [](const Row& r) { return r.at_text; })
            .copied_as([](const Row& r) { return r.at_copy; }),
        Column<Row>(tr("Ground"), {}, [](const Row& r) { return r.ground; }),
        Column<Row>(tr("Why"), {}, [](const Row& r) { return r.why; }),
    };
}

State verdict_state(PlaceVerdict verdict) {
    switch (verdict) {
        case PlaceVerdict::inside:
            return State::clear;
        case PlaceVerdict::outside:
            return State::hold;
        case PlaceVerdict::cannot_tell:
            break;
    }
    return State::unknown;
}

QString verdict_word(PlaceVerdict verdict) {
    switch (verdict) {
        case PlaceVerdict::inside:
            return tr("inside");
        case PlaceVerdict::outside:
            return tr("outside");
        case PlaceVerdict::cannot_tell:
            break;
    }
    return tr("cannot tell");
}

namespace {

const char* counted_words(PlaceVerdict verdict) {
    if (verdict == PlaceVerdict::inside) return QT_TRANSLATE_NOOP("Releases", "%1 inside");
    if (verdict == PlaceVerdict::outside) return QT_TRANSLATE_NOOP("Releases", "%1 outside");
    return QT_TRANSLATE_NOOP("Releases", "%1 that cannot be told");
}

}  // namespace

QString releases_sentence(const std::vector<ReleaseRow>& rows, const QLocale& locale) {
    if (rows.empty()) return tr("Nothing has been released by the as-at.");
    QStringList parts;
    for (const auto verdict : {PlaceVerdict::outside, PlaceVerdict::cannot_tell, PlaceVerdict::inside}) {
        const auto n = std::count_if(rows.begin(), rows.end(),
                                     [verdict](const ReleaseRow& r) { return r.verdict == verdict; });
        if (n > 0) parts << tr(counted_words(verdict)).arg(locale.toString(qlonglong(n)));
    }
    return tr("Releases: %1, of them %2.")
        .arg(locale.toString(qlonglong(rows.size())), parts.join(QStringLiteral(", ")));
}

namespace {

// Clear of the cell's edges and of what is excluded from it.
std::optional<QPointF> name_place(const Ledger& ledger, const Cell& cell) {
    const EastNorth at = farthest_inside(ledger.grounds().open_cell(cell.id));
    if (is_known(at)) return QPointF(at.easting_m, at.northing_m);
    return std::nullopt;
}

}  // namespace

std::vector<MapShape> map_shapes(const Ledger& ledger) {
    std::vector<MapShape> shapes;
    const Season& season = ledger.season();
    for (const Ground& ground : season.grounds.rows())
        shapes.push_back(shape_of(MapShape::ground, ground.ground, ledger.grounds().open_ground(ground.id)));
    for (const Cell& cell : season.cells.rows()) {
        const auto kind = cell.kind == "exclusion" ? MapShape::exclusion : MapShape::cell;
        shapes.push_back(shape_of(kind, cell.cell, ledger.grounds().cell(cell.id)));
        if (kind == MapShape::cell) shapes.back().name_at = name_place(ledger, cell);
    }
    return shapes;
}

}  // namespace spoilbook::form
