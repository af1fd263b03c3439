// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/volume_rows.h"

#include <QCoreApplication>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"
#include "model/consent/sweep.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Volumes", text);
}

using Amount = std::optional<Estimate> Amounts::*;

std::vector<Column<VolumeRow>> amount_columns(const QString& title, const QString& unit, Amount amount,
                                              const QLocale& locale) {
    using Row = VolumeRow;
    const auto value = [amount](const Row& r) {
        const auto& e = r.amounts.*amount;
        return e ? std::optional(e->value) : std::nullopt;
    };
    const auto u = [amount](const Row& r) {
        const auto& e = r.amounts.*amount;
        return e ? std::optional(e->u()) : std::nullopt;
    };
    const auto shown = [locale](std::optional<double> v, auto* text) {
        return v ? text(*v, 1, locale) : QStringLiteral("–");
    };
    return {
        Column<Row>(title, unit, [=](const Row& r) { return shown(value(r), &number_shown); }).number(value),
        Column<Row>(tr("± u"), {}, [=](const Row& r) { return shown(u(r), &rounded_up); })
            .number(u)
            .tip(tr("Standard uncertainty (68 %)"))};
}

}  // namespace

QString grouping_shown(GroupBy by) {
    switch (by) {
        case GroupBy::claim:
            return tr("Claim");
        case GroupBy::month:
            return tr("Month");
        case GroupBy::ground:
            return tr("Ground");
        case GroupBy::cell:
            return tr("Cell");
        case GroupBy::material:
            return tr("Material");
        case GroupBy::barge:
            break;
    }
    return tr("Barge");
}

QString volume_key(const VolumeRow& row, GroupBy by, const QLocale& locale) {
    const auto& key = row.keys.front();
    if (!key) return tr("none named");
    return by == GroupBy::month ? month_shown(*key, locale) : QString::fromStdString(*key);
}

std::vector<Column<VolumeRow>> volume_columns(GroupBy by, const QLocale& locale) {
    using Row = VolumeRow;
    const auto count = [locale](std::size_t n) { return locale.toString(qulonglong(n)); };
    std::vector<Column<Row>> columns{
        Column<Row>(grouping_shown(by), {}, [by, locale](const Row& r) { return volume_key(r, by, locale); })
            .copied_as([](const Row& r) { return QString::fromStdString(r.keys.front().value_or("")); }),
        Column<Row>(tr("Trips"), {}, [count](const Row& r) { return count(r.trips); })
            .number([](const Row& r) { return std::optional(double(r.trips)); }),
        Column<Row>(tr("Loads"), {}, [count](const Row& r) {
            return count(r.loads);
        }).number([](const Row& r) { return std::optional(double(r.loads)); })};
    const auto append = [&columns](const std::vector<Column<Row>>& more) {
        columns.insert(columns.end(), more.begin(), more.end());
    };
    append(amount_columns(tr("In situ"), QStringLiteral("m³"), &Amounts::in_situ_m3, locale));
    append(amount_columns(tr("Hopper"), QStringLiteral("m³"), &Amounts::hopper_m3, locale));
    append(amount_columns(tr("Dry solids"), QStringLiteral("t"), &Amounts::dry_t, locale));
    columns.push_back(Column<Row>(tr("Loads not known"), {}, [count](const Row& r) {
                          return r.unknown ? count(r.unknown) : QString();
                      }).number([](const Row& r) {
                            return std::optional(double(r.unknown));
                        }).tip(tr("Loads that no method can value: not counted, and not nil")));
    return columns;
}

BarsData volume_bars(const std::vector<VolumeRow>& rows, GroupBy by, std::optional<double> monthly_limit,
                     const QLocale& locale) {
    BarsData data;
    data.axis = tr("released, in situ, m³; whisker ± u");
    data.empty_text = tr("Nothing has been released by the as-at.");
    if (by == GroupBy::month) data.limit = monthly_limit;
    if (data.limit) data.limit_text = tr("limit %1 m³ a month").arg(number_shown(*data.limit, 0, locale));
    for (const VolumeRow& row : rows) {
        Bar bar{volume_key(row, by, locale), {}, 0, {}};
        if (const auto& in_situ = row.amounts.in_situ_m3) {
            bar.value = in_situ->value;
            bar.u = in_situ->u();
            bar.value_text = rounded_up(in_situ->value, 0, locale);
            bar.over = data.limit && exceeds(in_situ->value, *data.limit);
        }
        data.bars.push_back(std::move(bar));
    }
    return data;
}

}  // namespace spoilbook::form
