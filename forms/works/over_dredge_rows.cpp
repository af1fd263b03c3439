// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/over_dredge_rows.h"

#include <QCoreApplication>
#include <QStringList>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"

namespace spoilbook::form {
namespace {

using Row = OverDredgeRow;

QString tr(const char* text) {
    return QCoreApplication::translate("OverDredge", text);
}

Row row_of(const OverDredge& dug, std::optional<double> unit_cost) {
    Row row;
    row.claim = dug.claim == nullptr ? tr("All") : QString::fromStdString(dug.claim->claim);
    row.within = dug.within;
    row.beyond = dug.beyond;
    row.below = dug.below_target();
    row.share = dug.share();
    row.cost = dug.cost(unit_cost);
    QStringList reports, assumed;
    for (const auto& report : dug.reports)
        reports << QString::fromStdString(report);
    for (const auto& taken : dug.assumed)
        assumed << QString::fromUtf8(taken.data(), qsizetype(taken.size()));
    row.reports = reports.join(QStringLiteral(", "));
    row.assumed = assumed.join(QStringLiteral("; "));
    return row;
}

QString shown(const std::optional<Measured>& measured, const QLocale& locale) {
    return measured ? tr("%1 ± %2").arg(number_shown(measured->value, 0, locale),
                                        rounded_up(measured->u, 0, locale))
                    : QStringLiteral("–");
}

Column<Row> measured(const QString& title, const QString& unit, std::optional<Measured> Row::*member,
                     const QLocale& locale) {
    return Column<Row>(title, unit, [=](const Row& row) { return shown(row.*member, locale); })
        .number(
            [=](const Row& row) { return row.*member ? std::optional((row.*member)->value) : std::nullopt; });
}

}  // namespace

std::vector<OverDredgeRow> over_dredge_rows(const OverDredged& dug, std::optional<double> unit_cost) {
    std::vector<OverDredgeRow> rows;
    for (const auto& claim : dug.claims)
        rows.push_back(row_of(claim, unit_cost));
    if (!rows.empty()) rows.push_back(row_of(dug.all, unit_cost));
    return rows;
}

std::vector<Column<OverDredgeRow>> over_dredge_columns(const QLocale& locale) {
    const QString in_situ = tr("m³ in situ");
    return {Column<Row>(tr("Claim"), {}, [](const Row& row) { return row.claim; }),
            measured(tr("Within the allowance"), in_situ, &Row::within, locale),
            measured(tr("Beyond it"), in_situ, &Row::beyond, locale),
            measured(tr("Below target"), in_situ, &Row::below, locale),
            Column<Row>(tr("Of removed"), QStringLiteral("%"),
                        [=](const Row& row) {
                            return row.share ? number_shown(100 * *row.share, 1, locale)
                                             : QStringLiteral("–");
                        })
                .number([](const Row& row) { return row.share; }),
            measured(tr("Cost"), tr("money"), &Row::cost, locale)
                .tip(tr("What was dug below target, times the unit cost typed here. Never in a return.")),
            Column<Row>(tr("Reports"), {}, [](const Row& row) { return row.reports; })
                .tip(tr("The rows of what was removed that tell of it")),
            Column<Row>(tr("Taken"), {}, [](const Row& row) { return row.assumed; })};
}

QString over_dredge_sentence(const OverDredged& dug, std::optional<double> unit_cost, const QLocale& locale) {
    const auto below = dug.all.below_target();
    if (!below)
        return tr(
            "No surveyor's report tells of over-dredge yet: it stands with what was removed between two "
            "surveys.");
    QString words = tr("%1 m³ in situ were dug below target level").arg(shown(below, locale));
    if (const auto share = dug.all.share())
        words += tr(", %1 % of what was removed").arg(number_shown(100 * *share, 1, locale));
    if (dug.all.beyond) words += tr("; %1 m³ of it beyond the allowance").arg(shown(dug.all.beyond, locale));
    if (const auto paid = dug.all.cost(unit_cost)) words += tr(". It cost %1").arg(shown(paid, locale));
    return words + u'.';
}

}  // namespace spoilbook::form
