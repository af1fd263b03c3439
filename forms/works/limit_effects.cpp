// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/limit_effects.h"

#include <QCoreApplication>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Reconcile", text);
}

std::optional<double> scaled(std::optional<double> value, double scale) {
    return value ? std::optional(*value * scale) : std::nullopt;
}

}  // namespace

std::vector<EffectRow> effect_rows(const Ledger& ledger, const FactorToBe& factor, Instant as_at) {
    Factor revision;
    revision.from = factor.from;
    revision.factor = "bulking";
    revision.value = factor.value;
    revision.u = factor.u;
    for (const Material& material : ledger.season().materials.rows()) {
        if (material.material == factor.material) revision.material = material.id;
    }
    std::vector<EffectRow> rows;
    for (const LimitEffect& effect : effect_of(ledger, revision, as_at)) {
        const Quantity& quantity = effect.now.quantity;
        const double scale = limit_scale(quantity);
        EffectRow row;
        row.name = limit_name(effect.now);
        row.unit = limit_unit(quantity);
        row.decimals = limit_decimals(quantity);
        row.used = effect.now.used * scale;
        row.used_u = effect.now.used_u * scale;
        row.revised = effect.used * scale;
        row.revised_u = effect.used_u * scale;
        row.judged = effect.judged * scale;
        row.headroom = scaled(effect.now.headroom(), scale);
        row.headroom_revised = scaled(effect.headroom, scale);
        row.p_over = effect.now.p_over;
        row.p_over_revised = effect.p_over;
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<Column<EffectRow>> effect_columns(const QLocale& locale) {
    using Row = EffectRow;
    const auto up = [locale](const QString& title, double Row::*member) {
        return Column<Row>(title, {},
                           [=](const Row& row) { return rounded_up(row.*member, row.decimals, locale); })
            .number([=](const Row& row) { return std::optional(row.*member); });
    };
    const auto down = [locale](const QString& title, std::optional<double> Row::*member) {
        return Column<Row>(title, {},
                           [=](const Row& row) {
                               return row.*member ? rounded_down(*(row.*member), row.decimals, locale)
                                                  : QString();
                           })
            .number([=](const Row& row) { return row.*member; });
    };
    const auto chance = [locale](const QString& title, std::optional<double> Row::*member) {
        return Column<Row>(title, {},
                           [=](const Row& row) {
                               return row.*member ? probability_shown(*(row.*member), locale) : QString();
                           })
            .number([=](const Row& row) { return row.*member; });
    };
    return {
        Column<Row>(tr("Limit"), {}, [](const Row& row) { return row.name; }),
        Column<Row>(tr("Counts"), {}, [](const Row& row) { return row.unit; }),
        up(tr("Used now"), &Row::used),
        up(tr("± u"), &Row::used_u),
        up(tr("With it"), &Row::revised),
        up(tr("± u"), &Row::revised_u),
        down(tr("Headroom now"), &Row::headroom),
        down(tr("With it"), &Row::headroom_revised),
        up(tr("Judged until accepted"), &Row::judged),
        chance(tr("P(over) now"), &Row::p_over),
        chance(tr("With it"), &Row::p_over_revised),
    };
}

}  // namespace spoilbook::form
