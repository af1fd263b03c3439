// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/load_tables.h"

#include <QCoreApplication>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("LoadView", text);
}

std::optional<double> value_of(const std::optional<Estimate>& estimate) {
    return estimate ? std::optional(estimate->value) : std::nullopt;
}

std::optional<double> u_of(const std::optional<Estimate>& estimate) {
    return estimate ? std::optional(estimate->u()) : std::nullopt;
}

/// A value and its ± u beside it, from one member of a row.
template <class Row, class Get>
void add_estimate(std::vector<Column<Row>>& columns, const QString& title, const QString& unit,
                  const QLocale& locale, Get get) {
    const auto text = [locale](std::optional<double> number, auto* shown) {
        return number ? shown(*number, 1, locale) : QStringLiteral("–");
    };
    columns.push_back(Column<Row>(title, unit, [=](const Row& row) {
                          return text(value_of(get(row)), &number_shown);
                      }).number([=](const Row& row) { return value_of(get(row)); }));
    columns.push_back(Column<Row>(tr("± u"), {}, [=](const Row& row) {
                          return text(u_of(get(row)), &rounded_up);
                      }).number([=](const Row& row) {
                            return u_of(get(row));
                        }).tip(tr("Standard uncertainty (68 %)")));
}

QString day_or_time(const std::optional<Instant>& at, const Zone& zone, const QLocale& locale) {
    if (!at) return {};
    const Day day = zone.day_of(*at);
    return zone.day_start(day) == *at ? day_shown(day, locale) : moment_shown(*at, zone, locale);
}

}  // namespace

std::vector<Column<MethodRow>> method_columns(const QLocale& locale) {
    using Row = MethodRow;
    std::vector<Column<Row>> columns{
        Column<Row>(tr("Method"), {}, [](const Row& row) { return row.name; }),
        Column<Row>(tr("Stands"), {}, [](const Row& row) { return row.word; }).mark([](const Row& row) {
            return std::optional(row.state);
        }),
    };
    const QString m3 = QStringLiteral("m³");
    const QString t = QStringLiteral("t");
    add_estimate(columns, tr("Hopper"), m3, locale, [](const Row& row) { return row.amounts.hopper_m3; });
    add_estimate(columns, tr("In situ"), m3, locale, [](const Row& row) { return row.amounts.in_situ_m3; });
    add_estimate(columns, tr("Wet"), t, locale, [](const Row& row) { return row.amounts.wet_t; });
    add_estimate(columns, tr("Dry"), t, locale, [](const Row& row) { return row.amounts.dry_t; });
    return columns;
}

std::vector<Column<PairRow>> pair_columns(const QLocale& locale) {
    using Row = PairRow;
    return {
        Column<Row>(tr("Method"), {}, [](const Row& row) { return row.a; }),
        Column<Row>(tr("against"), {}, [](const Row& row) { return row.b; }),
        Column<Row>(tr("by their"), {}, [](const Row& row) { return row.measure; }),
        Column<Row>(tr("E_n"), {}, [locale](const Row& row) { return number_shown(row.e_n, 2, locale); })
            .number([](const Row& row) { return std::optional(row.e_n); })
            .tip(tr("Their difference over its expanded uncertainty; over 1 they disagree")),
        Column<Row>(tr("Stands"), {},
                    [](const Row& row) { return row.disagree ? tr("disagree") : tr("agree"); })
            .mark(
                [](const Row& row) { return std::optional(row.disagree ? State::attention : State::clear); }),
    };
}

std::vector<Column<PartRow>> part_columns(const QLocale& locale) {
    using Row = PartRow;
    const auto percent = [locale](std::optional<double> share) {
        return share ? number_shown(*share * 100, 1, locale) : QStringLiteral("–");
    };
    std::vector<Column<Row>> columns{
        Column<Row>(tr("Claim"), {}, [](const Row& row) { return row.claim; }),
        Column<Row>(tr("Material"), {}, [](const Row& row) { return row.material; }),
        Column<Row>(tr("Of the hopper"), QStringLiteral("%"),
                    [=](const Row& row) { return percent(row.hopper_share); })
            .number([](const Row& row) { return std::optional(row.hopper_share * 100); }),
        Column<Row>(tr("Of the in-situ"), QStringLiteral("%"),
                    [=](const Row& row) { return percent(row.in_situ_share); })
            .number([](const Row& row) {
                return row.in_situ_share ? std::optional(*row.in_situ_share * 100) : std::nullopt;
            }),
    };
    add_estimate(columns, tr("In situ"), QStringLiteral("m³"), locale,
                 [](const Row& row) { return row.in_situ_m3; });
    return columns;
}

std::vector<Column<FactorRow>> factor_columns(const Zone& zone, const QLocale& locale) {
    using Row = FactorRow;
    const auto number = [locale](double value) { return number_shown(value, 3, locale); };
    return {
        Column<Row>(tr("Version"), {}, [](const Row& row) { return row.what; }),
        Column<Row>(tr("Value"), {},
                    [number](const Row& row) {
                        return row.unit.isEmpty() ? number(row.value) : number(row.value) + u' ' + row.unit;
                    })
            .number([](const Row& row) { return std::optional(row.value); }),
        Column<Row>(tr("± u"), {},
                    [locale](const Row& row) {
                        return row.u > 0 ? rounded_up(row.u, 3, locale) : tr("none recorded");
                    })
            .number([](const Row& row) { return std::optional(row.u); }),
        Column<Row>(tr("From"), {},
                    [=](const Row& row) {
                        return row.from ? day_or_time(row.from, zone, locale) : tr("as the book began");
                    })
            .copied_as([zone](const Row& row) {
                return row.from ? QString::fromStdString(instant_text(*row.from, zone)) : QString();
            }),
        Column<Row>(tr("By"), {}, [](const Row& row) { return row.by; }),
        Column<Row>(tr("Why"), {}, [](const Row& row) { return row.why; }),
        Column<Row>(tr("Accepted"), {},
                    [=](const Row& row) {
                        return row.from
                                   ? (row.accepted ? day_or_time(row.accepted, zone, locale) : tr("not yet"))
                                   : QString();
                    })
            .tip(tr("When the authority accepted the revision")),
    };
}

std::vector<Column<SaidRow>> said_columns() {
    using Row = SaidRow;
    return {
        Column<Row>(tr("Method"), {}, [](const Row& row) { return row.method; }),
        Column<Row>(tr("Is"), {}, [](const Row& row) { return row.what; }),
        Column<Row>(tr("Because"), {}, [](const Row& row) { return row.sentence; }),
    };
}

std::vector<Column<NamedRow>> named_columns() {
    using Row = NamedRow;
    return {
        Column<Row>(tr("Reading"), {}, [](const Row& row) { return row.name; }),
        Column<Row>(tr("As logged"), {}, [](const Row& row) { return row.value; }),
    };
}

std::vector<Column<StepRow>> step_columns(const Zone& zone, const QLocale& locale) {
    using Row = StepRow;
    return {
        Column<Row>(tr("When"), {}, [=](const Row& row) { return moment_shown(row.at, zone, locale); })
            .copied_as([zone](const Row& row) { return QString::fromStdString(instant_text(row.at, zone)); }),
        Column<Row>(tr("Who"), {}, [](const Row& row) { return row.who; }),
        Column<Row>(tr("What"), {}, [](const Row& row) { return row.what; }),
        Column<Row>(tr("Why"), {}, [](const Row& row) { return row.why; }),
    };
}

}  // namespace spoilbook::form
